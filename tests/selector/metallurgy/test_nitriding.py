import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.metallurgy.nitriding import (
    bound_nitrogen,
    compound_layer,
    nitrided_depth,
    nitrogen_diffusivity,
    nitrogen_solubility,
    time_to_nitride_h,
)

HEATS, HOURS = st.floats(480.0, 580.0), st.floats(1.0, 100.0)
CHROMIUM = st.floats(0.0, 5.0)


@given(CHROMIUM, HEATS, HOURS)
def test_a_nitrided_layer_grows_with_the_root_of_time_and_with_heat(chromium, heat_c, hours):
    steel = {"C": 0.4, "Cr": chromium}
    depth = float(nitrided_depth(steel, heat_c, hours))
    assert float(nitrided_depth(steel, heat_c, 4 * hours)) == pytest.approx(2 * depth)
    assert nitrided_depth(steel, heat_c + 5, hours) > depth
    assert float(time_to_nitride_h(steel, heat_c, depth)) == pytest.approx(hours)
    assert compound_layer(heat_c + 5, hours) > compound_layer(heat_c, hours)


@given(CHROMIUM, HEATS, HOURS)
def test_what_binds_nitrogen_makes_the_layer_thin(chromium, heat_c, hours):
    lean = {"C": 0.4, "Cr": chromium}
    rich = {**lean, "Al": 1.0}
    assert bound_nitrogen(rich) > bound_nitrogen(lean)
    assert nitrided_depth(rich, heat_c, hours) < nitrided_depth(lean, heat_c, hours)


@given(HEATS)
def test_ferrite_holds_and_carries_more_nitrogen_where_it_is_hotter(heat_c):
    assert nitrogen_solubility(heat_c + 5) > nitrogen_solubility(heat_c)
    assert nitrogen_diffusivity(heat_c + 5) > nitrogen_diffusivity(heat_c)


def test_chromium_of_primary_carbide_binds_no_nitrogen():
    assert bound_nitrogen({"C": 1.5, "Cr": 5.0}) == 0.0
    assert bound_nitrogen({"C": 0.4, "Cr": 5.0}) == pytest.approx(5 * 14 / 52)
