import pytest

from catalog import load_catalog
from selector.hardening.model_range import ranges_left

STEELS = load_catalog().steels
CURVE, TEMPERING = "hardenability.heat_curve", "tempering.tempered_hardness"


@pytest.mark.parametrize("slug", ["c45", "42crmo4", "817m40"])
def test_a_common_steel_stays_in_both_ranges(slug):
    assert ranges_left(CURVE, STEELS[slug]) == ()
    assert ranges_left(TEMPERING, STEELS[slug], temperature_c=400.0, time_s=3600.0) == ()


def test_an_element_outside_is_named_with_the_range_and_its_source():
    (sentence,) = ranges_left(CURVE, STEELS["31crmo12"])
    assert sentence.startswith("Cr 3.05 wt % is outside 0 to 2 wt %")
    assert "32 hardenability bands" in sentence


def test_further_inputs_are_judged_too():
    (sentence,) = ranges_left(TEMPERING, STEELS["c45"], temperature_c=720.0)
    assert sentence.startswith("temperature_c 720 °C is outside")


def test_an_unknown_model_is_a_slip_of_the_programmer():
    with pytest.raises(KeyError, match=r"hardenability\.brightness"):
        ranges_left("hardenability.brightness", STEELS["c45"])
