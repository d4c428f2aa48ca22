"""Critical temperatures: laws and the advice that rests on them."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.heat.colour import heat_colour, heat_colour_named
from selector.metallurgy.austenite import austenite
from selector.metallurgy.transformation import (
    SHIFT_PER_DECADE,
    carbon_solubility,
    critical_temperatures,
    eutectoid_carbon,
    hardening_window,
    martensite_start,
    rapid_heating_shift,
)

SILVER_STEEL = {"C": 1.15, "Mn": 0.35, "Si": 0.25, "Cr": 0.7, "V": 0.1}
BEARING_STEEL = {"C": 1.03, "Mn": 0.35, "Si": 0.25, "Cr": 1.45}
C45 = {"C": 0.46, "Mn": 0.65, "Si": 0.25}


@pytest.mark.parametrize(
    "steel",
    [
        SILVER_STEEL,
        {"C": 1.10, "Mn": 0.35, "Si": 0.2, "Cr": 0.40},
        {"C": 1.15, "Mn": 0.35, "Cr": 0.7, "V": 0.1},
    ],
)
def test_silver_steel_is_hardened_from_760_to_810(steel):
    window = hardening_window(steel)
    assert float(window.low_c) >= 760.0
    assert float(window.high_c) <= 810.0


@pytest.mark.parametrize(
    ("steel", "least_c"),
    [
        pytest.param({"C": 0.405, "Mn": 0.875, "Si": 0.25, "Cr": 0.975, "Mo": 0.2}, 820.0),
        pytest.param(C45, 810.0),
        pytest.param(
            {"C": 0.34, "Mn": 0.65, "Si": 0.25, "Ni": 1.5, "Cr": 1.5, "Mo": 0.2}, 800.0
        ),
    ],
    ids=["4140", "C45", "34CrNiMo6"],
)
def test_trap_15_losing_the_magnet_at_770_c_is_a_floor_not_a_hardening_heat(steel, least_c):
    assert float(hardening_window(steel).low_c) > least_c
    at_the_magnet = austenite(steel, 770.0, 600.0, 1.0, "normalised")
    assert float(at_the_magnet.fraction) < 0.95


def test_trap_20_no_colour_is_as_narrow_as_the_hardening_range():
    window = hardening_window(SILVER_STEEL)
    middle = 0.5 * float(window.low_c + window.high_c)
    seen = heat_colour_named(heat_colour(middle).name)
    assert seen.high_c - seen.low_c > 2.0 * float(window.high_c - window.low_c)
    assert seen.sd_c > 0.5 * float(window.high_c - window.low_c)


def test_hypereutectoid_steel_is_never_taken_to_accm():
    lines = critical_temperatures(SILVER_STEEL)
    assert float(hardening_window(SILVER_STEEL).high_c) < float(lines.accm_c) - 50.0
    assert np.isnan(lines.ac3_c)


def test_hypoeutectoid_steel_is_hardened_above_ac3():
    lines, window = critical_temperatures(C45), hardening_window(C45)
    assert float(window.low_c - lines.ac3_c) == pytest.approx(30.0)
    assert float(window.high_c - lines.ac3_c) == pytest.approx(50.0)
    assert np.isnan(lines.accm_c)


def test_window_low_end_has_no_jump_at_the_eutectoid():
    carbon = np.linspace(0.60, 0.90, 301)
    low = hardening_window({"C": carbon, "Mn": 0.4}).low_c
    assert np.abs(np.diff(low)).max() < 3.0


def test_accm_reads_the_solubility_line_backwards():
    lines = critical_temperatures({"C": 1.0, "Mn": 0.3})
    assert float(carbon_solubility({"Mn": 0.3}, lines.accm_c)) == pytest.approx(1.0, abs=0.01)


def test_hotter_hardening_lowers_the_martensite_start_of_a_tool_steel_only():
    cool, hot = critical_temperatures(SILVER_STEEL, [780.0, 900.0]).ms_c
    assert hot < cool - 50.0
    cool, hot = critical_temperatures(C45, [830.0, 900.0]).ms_c
    assert hot == cool


@given(st.floats(0.1, 1.2), st.floats(0.2, 1.8), st.floats(0.0, 2.0), st.floats(0.0, 4.0))
def test_lines_stand_in_order(carbon, manganese, chromium, nickel):
    lines = critical_temperatures({"C": carbon, "Mn": manganese, "Cr": chromium, "Ni": nickel})
    upper = np.fmax(lines.ac3_c, lines.accm_c)
    assert float(upper) >= float(lines.ac1_c)
    assert float(lines.mf_c) < float(lines.ms_c) < float(lines.ac1_c)


@given(st.sampled_from(["Mn", "Si", "Ni", "Cr", "Mo", "V", "W"]), st.floats(0.05, 3.0))
def test_every_alloying_element_lowers_the_eutectoid(element, content):
    assert eutectoid_carbon({element: content}) < eutectoid_carbon({})


def test_arrays_broadcast_as_samples_by_points():
    steel = {"C": np.full((6, 1), 1.0), "Cr": 0.5}
    lines = critical_temperatures(steel, np.array([780.0, 800.0, 820.0]))
    assert lines.ms_c.shape == lines.ac1_c.shape == (6, 3)


def test_error_grows_beyond_low_alloy_steel():
    low, high = critical_temperatures({"C": 0.4, "Cr": [1.0, 12.0]}).sd_ac1_c
    assert high > 2.0 * low


def test_martensite_start_falls_with_carbon():
    assert np.all(np.diff(martensite_start({"C": np.linspace(0.1, 1.2, 12)})) < 0.0)


def test_no_shift_at_furnace_rates():
    for structure in SHIFT_PER_DECADE:
        assert not rapid_heating_shift([0.02, 0.1, 0.5], structure).ac3_c.any()


def test_coarser_structure_shifts_more():
    order = ("quenched and tempered", "normalised", "ferrite-pearlite", "spheroidised")
    for line in ("ac1_c", "ac3_c"):
        shifts = [float(getattr(rapid_heating_shift(15.0, name), line)) for name in order]
        assert shifts == sorted(shifts)
        assert shifts[0] > 0.0
        assert shifts[-1] < 100.0


def test_unknown_structure_is_refused():
    with pytest.raises(OutOfRangeError, match=r"structure must be one of .*; got 'bainite'"):
        rapid_heating_shift(10.0, "bainite")
