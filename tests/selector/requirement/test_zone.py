import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from selector.requirement.zone import Window, Zone

HRC = st.floats(20, 68).map(lambda value: round(value, 3))


@given(HRC, HRC)
def test_a_window_is_taken_in_order_only(first, second):
    low, high = min(first, second), max(first, second)
    window = Window.model_validate({"min": low, "max": f"{high} HRC"})
    assert window.min <= window.max
    assert window.must is False


def test_a_window_in_two_scales():
    window = Window.model_validate({"min": "240 HB", "max": "50 HRC"})
    assert window.min < window.max


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        ({}, "min, max or both"),
        ({"must": True}, "min, max or both"),
        ({"min": 60, "max": 50}, r"min does not exceed its max \(min 60, max 50\)"),
        ({"min": "500 HB", "max": "30 HRC"}, "does not exceed"),
        ({"max": "15 HRC"}, "20 HRC or more"),
    ],
)
def test_an_impossible_window_is_refused(data, rule):
    with pytest.raises(ValidationError, match=rule):
        Window.model_validate(data)


def test_defaults_change_nothing():
    zone = Zone.model_validate({"section": [1], "wear": "none"})
    assert (zone.severity, zone.hardness, zone.depth, zone.mate) == ("light", None, None, None)


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"section": []}, "at least 1 item"),
        ({"section": [0]}, "greater than or equal to 1"),
        ({"section": [True]}, "a number"),
        ({"wear": "rubbing"}, "rubbing"),
        ({"severity": "brutal"}, "brutal"),
        ({"depth": "-1 mm"}, "between 0.01 and 5000 mm"),
        ({"life_ratio": 0}, "greater than 0"),
        ({"mate": {"material": "bronze", "should_wear": "both"}}, "both"),
    ],
)
def test_an_impossible_zone_is_refused(changes, rule):
    with pytest.raises(ValidationError, match=rule):
        Zone.model_validate({"section": [1], "wear": "none", **changes})
