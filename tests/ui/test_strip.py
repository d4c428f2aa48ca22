import re

import pytest

from ui import strip


def test_a_scale_holds_all_that_is_shown():
    scale = strip.scale_over([50.0, None, 58.0], asked=(48.0, 56.0), limit=60.0)
    assert scale.low < 48
    assert scale.high > 60
    assert 0 < scale.at(50.0) < scale.at(58.0) < 100
    assert strip.scale_over([]).high > strip.scale_over([]).low


@pytest.mark.parametrize(("share", "filled"), [(0.0, 0), (0.984, 98), (1.0, 100)])
def test_squares_are_filled_by_the_chance(share, filled):
    assert strip.squares(share).count("s-on") == filled
    assert strip.squares(share).count("<rect") == 100


def test_a_bar_runs_from_end_to_end_with_its_middle():
    svg = strip.bar(50.0, 54.0, 58.0, strip.Scale(40.0, 60.0, (52.0, 56.0), 59.0))
    assert re.search(r"s-range' x1='50.0' x2='90.0'", svg)
    assert re.search(r"s-middle' x1='70.0'", svg)
    assert "s-asked" in svg
    assert "s-limit" in svg
    assert "s-range" not in strip.bar(None, None, None, strip.Scale(0, 1))


@pytest.mark.parametrize(("days", "filled"), [(0.0, 1), (2.5, 5), (100.0, 28)])
def test_half_days_are_counted(days, filled):
    assert strip.half_days(days).count("s-on") == filled


def test_ticks_are_round_and_stand_where_their_value_is():
    html = strip.ticks(strip.Scale(47.0, 61.0))
    assert re.findall(r">(\d+)<", html) == ["50", "55", "60"]
    assert "left:21.4%" in html
