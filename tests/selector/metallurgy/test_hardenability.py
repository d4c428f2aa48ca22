"""Hardenability: laws and traps."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.metallurgy.austenite import austenite
from selector.metallurgy.hardenability import (
    critical_cooling_time,
    heat_curve,
    jominy_curve,
    martensite_fraction_at,
)
from selector.metallurgy.ideal_diameter import ideal_diameter, multiplying_factors
from selector.metallurgy.martensite import hardness

PLAIN_1040 = {"C": 0.40, "Mn": 0.75, "Si": 0.2}
RESIDUAL = {"Cr": 0.1, "Ni": 0.1, "Mo": 0.02, "Cu": 0.2}
DEEP = {"C": 0.34, "Mn": 0.65, "Si": 0.25, "Ni": 1.5, "Cr": 1.5, "Mo": 0.22}
SILVER_STEEL = {"C": 1.15, "Mn": 0.35, "Si": 0.2, "Cr": 0.7, "V": 0.1}
STEEL = st.fixed_dictionaries(
    {
        "C": st.floats(0.1, 0.65),
        "Mn": st.floats(0.3, 1.7),
        "Si": st.floats(0.15, 2.0),
        "Ni": st.floats(0.0, 4.0),
        "Cr": st.floats(0.0, 2.0),
        "Mo": st.floats(0.0, 0.6),
    }
)

# Time from 700 to 500 °C at the centre of a bar, by bar charts and the SAE J406 cooling rates.
OIL_8_MM_S, OIL_30_MM_S, WATER_13_MM_S, OIL_55_MM_S = 2.0, 11.0, 1.2, 28.0
# Still air takes 60 W/(m² K) from a bar about 600 °C: 6 mm needs 45 s, as J 26 mm does.
AIR_6_MM_S, AIR_6_MM_JOMINY_MM = 45.0, 26.0


def test_residual_elements_lift_the_ideal_diameter_of_1040_from_22_to_31_mm():
    assert float(ideal_diameter(PLAIN_1040)) == pytest.approx(22.0, abs=0.5)
    assert float(ideal_diameter(PLAIN_1040 | RESIDUAL)) == pytest.approx(31.0, abs=0.5)


def test_residual_elements_count_in_the_end_quench_curve():
    none = dict.fromkeys(RESIDUAL, 0.0)
    usual, presumed, clean = (
        jominy_curve(PLAIN_1040 | rest, [3.0, 5.0, 8.0]).hrc for rest in (RESIDUAL, {}, none)
    )
    assert np.all(usual > clean + 3.0)
    assert np.all(usual > presumed + 0.5)
    assert np.all(presumed > clean + 2.0)


@pytest.mark.parametrize("element", ["Si", *RESIDUAL])
def test_each_residual_element_counts(element):
    least = jominy_curve(PLAIN_1040 | {element: 0.0}, 5.0).hrc
    presumed = jominy_curve({e: c for e, c in PLAIN_1040.items() if e != element}, 5.0).hrc
    assert presumed > least
    assert jominy_curve(PLAIN_1040 | {element: 0.3}, 5.0).hrc > presumed


def test_deep_hardening_steel_hardens_in_air_at_6_mm():
    assert jominy_curve(DEEP, AIR_6_MM_JOMINY_MM).hrc > 48.0
    assert critical_cooling_time(DEEP) > AIR_6_MM_S
    assert jominy_curve(PLAIN_1040 | RESIDUAL, AIR_6_MM_JOMINY_MM).hrc < 30.0


def test_trap_10_silver_steel_hardens_through_in_oil_at_8_mm_but_not_at_30_mm():
    state = austenite(SILVER_STEEL, 785.0, 900.0, 0.1, "spheroidised")
    critical = float(critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm))
    assert OIL_8_MM_S < critical < OIL_30_MM_S / 2.0


@pytest.mark.parametrize(
    ("steel", "limit_s"),
    [
        pytest.param({"C": 0.75, "Mn": 0.30, "Cr": 0.42, "Si": 0.2}, OIL_8_MM_S, id="silver"),
        pytest.param({"C": 0.89, "Mn": 0.24, "Cr": 0.08, "Si": 0.2}, WATER_13_MM_S, id="W1"),
        pytest.param(
            {"C": 0.77, "Mn": 1.12, "Cr": 0.43, "Si": 0.31, "W": 0.43, "V": 0.04},
            OIL_55_MM_S,
            id="O1",
        ),
    ],
)
def test_critical_time_meets_the_section_limit_within_its_stated_factor(steel, limit_s):
    assert 1.0 / 1.5 < float(critical_cooling_time(steel)) / limit_s < 1.5


def test_trap_10_drill_rod_may_be_three_steels_of_three_depths():
    rods = {
        "W1": {"C": 1.0, "Mn": 0.25, "Si": 0.2},
        "silver steel": SILVER_STEEL,
        "O1": {"C": 0.95, "Mn": 1.2, "Si": 0.3, "Cr": 0.5, "W": 0.5, "V": 0.1},
        "A2": {"C": 1.0, "Mn": 0.8, "Si": 0.3, "Cr": 5.1, "Mo": 1.1, "V": 0.25},
    }
    heats_c = (780.0, 785.0, 800.0, 970.0)
    critical_s = []
    for rod, heat_c in zip(rods.values(), heats_c, strict=True):
        state = austenite(rod, heat_c, 900.0, 0.1, "spheroidised")
        critical_s.append(float(critical_cooling_time(state.dissolved_wt_pct)))
    water, silver, oil, air = critical_s
    assert water < silver / 2.0
    assert silver < oil / 3.0
    assert oil < air / 5.0


def test_boron_deepens_hardening():
    steel = {"C": 0.29, "Mn": 1.25, "Si": 0.2}
    with_boron = steel | {"B": 0.002}
    factor = float(ideal_diameter(with_boron) / ideal_diameter(steel))
    assert factor == pytest.approx(2.5, abs=0.1)
    assert jominy_curve(with_boron, 9.0).hrc > jominy_curve(steel, 9.0).hrc + 5.0
    assert jominy_curve(with_boron, 9.0).model.endswith("with boron factor")
    trace = steel | {"B": 0.0002}
    assert float(ideal_diameter(trace)) == float(ideal_diameter(steel))


@given(STEEL)
def test_curve_falls_and_stays_between_zero_and_full_martensite(steel):
    curve = jominy_curve(steel, np.linspace(1.5, 60.0, 80))
    assert np.all(np.diff(curve.hrc) <= 0.0)
    assert float(curve.hrc[0]) <= float(hardness(steel["C"], 1.0)) + 2.0
    assert float(curve.hrc[-1]) > 0.0
    assert np.all(curve.sd_hrc >= 1.0)


@given(STEEL, st.sampled_from(["Mn", "Ni", "Cr", "Mo"]))
def test_more_alloy_never_hardens_less(steel, element):
    richer = steel | {element: steel[element] + 0.1}
    distance = np.array([5.0, 15.0, 40.0])
    assert np.all(
        jominy_curve(richer, distance).hrc >= jominy_curve(steel, distance).hrc - 1e-6
    )


def test_coarser_grain_hardens_deeper():
    assert ideal_diameter(PLAIN_1040, 5.0) > ideal_diameter(PLAIN_1040, 8.0)
    assert jominy_curve(PLAIN_1040, 6.0, 5.0).hrc > jominy_curve(PLAIN_1040, 6.0, 8.0).hrc


def test_nearer_than_one_millimetre_counts_as_one():
    near, one = jominy_curve(PLAIN_1040, [0.1, 1.0]).hrc
    assert near == one


def test_error_is_largest_on_the_slope_and_doubles_outside_the_range():
    steel = {"C": 0.4, "Mn": 0.8, "Si": 0.25, "Cr": 1.0}
    flat, slope = jominy_curve(steel, [1.5, 15.0]).sd_hrc
    assert slope > 1.5 * flat
    inside, edge, outside = jominy_curve(steel | {"Cr": [1.9, 2.05, 2.3]}, 1.5).sd_hrc
    assert outside == pytest.approx(2.0 * inside, rel=0.05)
    assert inside < edge < 1.4 * inside


def test_martensite_fraction_falls_from_full_to_little():
    near, far = martensite_fraction_at(PLAIN_1040 | RESIDUAL, [1.5, 20.0])
    assert near > 0.9
    assert far < 0.4


def test_factors_meet_where_their_pieces_join():
    for element, joint, step in (("Mn", 1.2, 0.01), ("Ni", 1.5, 0.01)):
        below, above = multiplying_factors({element: [joint, joint + 1e-6]})[element]
        assert above == pytest.approx(below, rel=step)
    for joint in (0.39, 0.55, 0.65, 0.75, 0.9):
        below, above = multiplying_factors({"C": [joint, joint + 1e-6]})["C"]
        assert above == pytest.approx(below, rel=0.01)


def test_arrays_broadcast_as_samples_by_points():
    steel = {"C": np.linspace(0.4, 0.5, 7)[:, None], "Mn": 0.7, "B": np.zeros((7, 1))}
    curve = jominy_curve(steel, np.array([1.5, 5.0, 10.0]))
    assert curve.hrc.shape == curve.sd_hrc.shape == (7, 3)
    assert martensite_fraction_at(steel, np.array([1.5, 5.0, 10.0])).shape == (7, 3)


def test_averaged_over_heats_the_curve_of_a_heat_is_the_end_quench_curve():
    distance = np.geomspace(1.6, 40.0, 20)
    for steel in (PLAIN_1040, {"C": 0.41, "Mn": 0.85, "Si": 0.25, "Cr": 0.95, "Mo": 0.2}):
        lean, rich = (
            heat_curve({**steel, "Mn": steel["Mn"] * by}, distance).hrc for by in (0.62, 1.42)
        )
        assert np.abs(0.5 * (lean + rich) - jominy_curve(steel, distance).hrc).mean() < 3.0


def test_a_heat_counts_and_presumes_residuals_as_the_end_quench_curve_does():
    none = dict.fromkeys(RESIDUAL, 0.0)
    usual, presumed, clean = (
        heat_curve(PLAIN_1040 | rest, 5.0).hrc for rest in (RESIDUAL, {}, none)
    )
    assert usual > presumed > clean
