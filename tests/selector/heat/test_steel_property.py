"""Property sets: the standard's lines, austenite's, and what joins them."""

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.steel_property import (
    austenite_heat_capacity,
    cooling_steel,
    en_conductivity,
    en_heat_capacity,
    heating_steel,
)


@pytest.mark.parametrize(
    "steel", [heating_steel(), heating_steel("high-alloy"), cooling_steel()]
)
def test_table_reads_back_the_integrals(steel):
    table = steel.table()
    middle = 1234
    enthalpy = table.first_enthalpy + middle / table.per_enthalpy
    total = float(steel.enthalpy_j_per_m3(table.temperature[middle]))
    assert total == pytest.approx(enthalpy, rel=1e-6)
    slope = np.diff(table.theta) * table.per_enthalpy  # conductivity over heat capacity
    assert np.all(slope > 0.0)


def test_heat_to_warm_steel_to_hardening_heat_is_known_to_practice():
    """About 0.6 MJ/kg from cold to 850 °C, the transformation in it (from memory)."""
    heat = heating_steel().enthalpy_j_per_m3([20.0, 850.0])
    assert float(np.diff(heat)[0]) / 7850.0 == pytest.approx(0.60e6, rel=0.06)


def test_standard_lines_join_without_a_step():
    for place in (600.0, 735.0, 900.0):
        low, high = en_heat_capacity([place - 0.01, place + 0.01])
        assert abs(high - low) < 60.0
    assert float(np.ptp(en_conductivity([799.99, 800.01]))) < 0.1


def test_austenite_conducts_worse_than_ferrite_and_better_when_hot():
    steel = cooling_steel()
    assert steel.conductivity_at(500.0) < heating_steel().conductivity_at(500.0)
    assert np.all(np.diff(steel.conductivity) > 0.0)
    assert np.all(np.diff(austenite_heat_capacity(np.arange(20.0, 1200.0, 50.0))) > 0.0)


def test_high_alloy_austenite_conducts_worse_below_the_point_where_all_meet():
    assert cooling_steel("high-alloy").conductivity_at(300.0) < (
        cooling_steel().conductivity_at(300.0)
    )


def test_after_transformation_the_heating_set_takes_over_and_latent_heat_is_stated():
    changed = cooling_steel(change_c=400.0, recalescence_k=130.0)
    assert changed.conductivity_at(200.0) == pytest.approx(en_conductivity(200.0))
    span = np.array([300.0, 400.0])
    plain = cooling_steel(change_c=400.0)
    latent = np.diff(changed.enthalpy_j_per_m3(span) - plain.enthalpy_j_per_m3(span))[0]
    austenite = np.diff(cooling_steel().enthalpy_j_per_m3(span))[0]
    assert latent == pytest.approx(1.3 * austenite, rel=0.02)


def test_unknown_class_is_refused():
    with pytest.raises(OutOfRangeError, match=r"steel_class must be .*got 'brass'"):
        heating_steel("brass")
    with pytest.raises(OutOfRangeError, match=r"steel_class must be .*got 'brass'"):
        cooling_steel("brass")
