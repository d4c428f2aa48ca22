"""As-quenched hardness and retained austenite: laws and traps."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.metallurgy.martensite import (
    as_quenched,
    fraction,
    fraction_from_hardness,
    hardness,
    retained_austenite,
)


def test_low_carbon_steel_never_reaches_50_hrc():
    assert float(hardness(0.15, 1.0)) < 45.0
    assert float(as_quenched({"C": 0.15, "Mn": 1.6, "Cr": 2.0, "Ni": 3.0}).hrc) < 50.0


def test_trap_06_stainless_410_of_unknown_carbon_may_miss_40_hrc():
    """Its standard gives only a maximum; two lots of one cycle came out at 40 and 32 HRC."""
    lots = as_quenched({"C": [0.04, 0.15], "Cr": 12.5, "Mn": 0.5})
    assert float(lots.hrc[0] - 1.645 * lots.sd_hrc[0]) < 33.0
    assert float(lots.hrc[1] + lots.sd_hrc[1]) > 40.0


def test_half_martensite_is_far_softer_than_full():
    assert float(hardness(0.4, 1.0) - hardness(0.4, 0.5)) > 10.0


@given(st.floats(0.02, 1.1), st.floats(0.0, 0.99), st.floats(0.0, 0.01))
def test_hardness_rises_with_martensite(carbon, share, more):
    assert hardness(carbon, share + more) >= hardness(carbon, share)


@given(st.floats(0.02, 1.0), st.floats(0.5, 1.0))
def test_hardness_rises_with_carbon(carbon, share):
    assert hardness(carbon + 0.05, share) >= hardness(carbon, share)


@given(st.floats(0.05, 1.0), st.floats(0.02, 0.99))
def test_fraction_is_the_inverse_of_hardness(carbon, share):
    assert float(fraction_from_hardness(carbon, hardness(carbon, share))) == pytest.approx(
        share
    )


def test_fraction_from_hardness_stays_a_fraction():
    assert fraction_from_hardness(0.4, [-5.0, 70.0]).tolist() == [0.0, 0.999]


def test_no_martensite_at_or_above_its_start():
    assert fraction(200.0, [200.0, 300.0]).tolist() == [0.0, 0.0]


def test_warm_bath_leaves_more_austenite_and_a_cold_box_less():
    warm = retained_austenite(200.0, 60.0)
    room = retained_austenite(200.0, 20.0)
    cold = retained_austenite(200.0, 20.0, -75.0)
    assert warm > room > cold > 0.0
    assert retained_austenite(200.0, 20.0, 50.0) == room


def test_retained_austenite_costs_hardness():
    """About 30 % takes a rich martensite from 67 to about 61 HRC, from memory."""
    rich = as_quenched({"C": 1.20, "Mn": 0.35, "Cr": 0.65})
    assert float(rich.retained_austenite_fraction) == pytest.approx(0.3, abs=0.05)
    assert 59.0 < float(rich.hrc) < 63.0
    cooled = as_quenched({"C": 1.20, "Mn": 0.35, "Cr": 0.65}, -75.0)
    assert cooled.hrc > rich.hrc + 2.0
    assert cooled.sd_hrc < rich.sd_hrc


def test_transformed_part_is_no_martensite():
    state = as_quenched({"C": 0.4, "Mn": 0.8}, 20.0, [0.0, 0.5, 1.0])
    assert np.all(np.diff(state.hrc) < 0.0)
    assert float(state.martensite_fraction[2]) == 0.0
    total = state.martensite_fraction + state.retained_austenite_fraction
    assert total.tolist() == pytest.approx([1.0, 0.5, 0.0])


def test_arrays_broadcast_as_samples_by_points():
    steel = {"C": np.linspace(0.4, 0.5, 4)[:, None], "Mn": 0.7}
    state = as_quenched(steel, np.array([20.0, 60.0, 150.0]))
    assert state.hrc.shape == state.sd_hrc.shape == state.martensite_fraction.shape == (4, 3)
