"""The austenite record: laws, and the traps a workshop falls into."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.heat.bar_equivalent import ideal_diameter_mm
from selector.metallurgy.austenite import austenite
from selector.metallurgy.ideal_diameter import ideal_diameter
from selector.metallurgy.martensite import as_quenched
from selector.metallurgy.transformation import critical_temperatures

SILVER_STEEL = {"C": 1.15, "Mn": 0.35, "Cr": 0.7, "V": 0.1}
C45 = {"C": 0.46, "Mn": 0.65, "Si": 0.25}
STRUCTURES = ("quenched and tempered", "normalised", "ferrite-pearlite", "spheroidised")


def test_spheroidised_bar_heated_for_seconds_has_dissolved_less_than_after_ten_minutes():
    brief = austenite(SILVER_STEEL, 790.0, 5.0, 10.0, "spheroidised")
    soaked = austenite(SILVER_STEEL, 790.0, 600.0, 10.0, "spheroidised")
    assert float(brief.dissolved_wt_pct["C"]) < 0.6 * float(soaked.dissolved_wt_pct["C"])
    assert float(brief.dissolved_wt_pct["Cr"]) < float(soaked.dissolved_wt_pct["Cr"])
    assert brief.undissolved_carbide_fraction > soaked.undissolved_carbide_fraction
    assert as_quenched(brief.dissolved_wt_pct).hrc < 55.0
    assert as_quenched(soaked.dissolved_wt_pct).hrc > 62.0


def test_much_of_silver_steel_hardenability_stays_in_carbide():
    dissolved = austenite(SILVER_STEEL, 785.0, 600.0, 0.1, "spheroidised").dissolved_wt_pct
    assert float(ideal_diameter(SILVER_STEEL)) == pytest.approx(50.0, rel=0.10)
    # An article on BS 1407 (read) hardens it in oil up to 8 mm: in Grossmann's chart, oil of
    # 0.25 to 0.35, that bar stands for an ideal one of 33 to 38 mm; a diameter is true to 15 %.
    least, most = ideal_diameter_mm(8.0, np.array([0.35, 0.25]))
    assert least / 1.15 < float(ideal_diameter(dissolved)) < 1.15 * most


def test_hypereutectoid_steel_soaked_too_hot_keeps_austenite_and_gets_softer_and_coarser():
    right = austenite(SILVER_STEEL, 785.0, 900.0, 0.1, "spheroidised")
    too_hot = austenite(SILVER_STEEL, 920.0, 3600.0, 0.1, "spheroidised")
    assert too_hot.undissolved_carbide_fraction < right.undissolved_carbide_fraction
    assert too_hot.grain_size_astm < right.grain_size_astm - 0.5
    fine, coarse = as_quenched(right.dissolved_wt_pct), as_quenched(too_hot.dissolved_wt_pct)
    assert coarse.retained_austenite_fraction > fine.retained_austenite_fraction + 0.1
    assert coarse.hrc < fine.hrc - 2.0


def test_nothing_forms_below_ac1_and_all_above_ac3():
    lines = critical_temperatures(C45)
    peaks = [float(lines.ac1_c) - 1.0, float(lines.ac3_c) + 20.0]
    state = austenite(C45, peaks, 1200.0, 0.1, "normalised")
    assert state.fraction.tolist() == [0.0, 1.0]
    assert float(state.dissolved_wt_pct["C"][0]) == 0.0
    assert float(state.dissolved_wt_pct["C"][1]) == pytest.approx(C45["C"], rel=1e-6)
    assert float(state.dissolved_wt_pct["Mn"][1]) == pytest.approx(C45["Mn"], rel=1e-6)


def test_austenite_between_the_lines_is_richer_in_carbon_than_the_steel():
    state = austenite(C45, 755.0, 1200.0, 0.1, "normalised")
    assert 0.5 < float(state.fraction) < 1.0
    assert float(state.dissolved_wt_pct["C"]) > C45["C"]


def test_quick_heating_needs_more_heat_and_holding_makes_up_for_it():
    quick = austenite(C45, 800.0, 0.0, 20.0, "ferrite-pearlite").fraction
    held = austenite(C45, 800.0, 600.0, 20.0, "ferrite-pearlite").fraction
    slow = austenite(C45, 800.0, 600.0, 0.1, "ferrite-pearlite").fraction
    assert quick < held
    assert held == slow == 1.0


def test_finer_structure_dissolves_sooner():
    carbon = [
        float(austenite(C45, 840.0, 3.0, 15.0, name).dissolved_wt_pct["C"])
        for name in STRUCTURES
    ]
    assert carbon == sorted(carbon, reverse=True)


def test_common_hardening_leaves_the_grain_size_that_tables_presume():
    state = austenite(C45, 860.0, 1800.0, 0.1, "normalised")
    assert float(state.grain_size_astm) == pytest.approx(7.0, abs=0.2)


@given(
    st.floats(0.1, 1.3),
    st.floats(650.0, 1000.0),
    st.floats(0.0, 3600.0),
    st.floats(0.05, 50.0),
    st.sampled_from(STRUCTURES),
)
def test_shares_are_shares_and_carbon_balances(carbon, peak_c, hold_s, rate, structure):
    state = austenite({"C": carbon, "Mn": 0.5, "Cr": 0.5}, peak_c, hold_s, rate, structure)
    share, carbide = float(state.fraction), float(state.undissolved_carbide_fraction)
    held = float(state.dissolved_wt_pct["C"])
    assert 0.0 <= share <= 1.0
    assert 0.0 <= carbide < 0.25
    total = carbide * (6.69 - held) + share * held
    assert total == pytest.approx(carbon, abs=1e-6)
    assert float(state.dissolved_wt_pct["Cr"]) <= 0.5


def test_longer_holding_never_dissolves_less():
    holds = np.geomspace(1.0, 3600.0, 30)
    state = austenite(SILVER_STEEL, 790.0, holds, 5.0, "spheroidised")
    assert np.all(np.diff(state.dissolved_wt_pct["C"]) >= 0.0)


def test_arrays_broadcast_as_samples_by_points():
    steel = {"C": np.linspace(0.4, 0.5, 5)[:, None], "Mn": 0.7}
    state = austenite(steel, np.array([760.0, 800.0, 850.0]), 10.0, 10.0, "normalised")
    assert state.fraction.shape == state.dissolved_wt_pct["C"].shape == (5, 3)
    assert state.grain_size_astm.shape == state.undissolved_carbide_fraction.shape == (5, 3)


def test_unknown_structure_is_refused():
    with pytest.raises(OutOfRangeError, match=r"structure must be one of .*; got 'cast'"):
        austenite(C45, 850.0, 10.0, 10.0, "cast")
