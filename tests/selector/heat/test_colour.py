from itertools import pairwise

import pytest

from selector.errors import OutOfRangeError
from selector.heat.colour import (
    HEAT_COLOURS,
    TEMPER_COLOURS,
    heat_colour,
    heat_colour_named,
    temper_colour,
    temper_colour_named,
)


@pytest.mark.parametrize("table", [HEAT_COLOURS, TEMPER_COLOURS], ids=["heat", "temper"])
def test_colours_rise_and_every_mean_lies_in_its_range(table):
    means = [colour.temperature_c for colour in table.values()]
    assert all(low < high for low, high in pairwise(means))
    assert all(c.low_c <= c.temperature_c <= c.high_c for c in table.values())
    assert all(c.sd_c >= 5 for c in table.values())


@pytest.mark.parametrize("name", list(HEAT_COLOURS))
def test_a_heat_colour_is_found_again_at_its_own_temperature(name):
    assert heat_colour(heat_colour_named(name).temperature_c).name == name


@pytest.mark.parametrize("name", list(TEMPER_COLOURS))
@pytest.mark.parametrize("hold_s", [480.0, 3600.0])
def test_a_temper_colour_is_found_again_after_the_same_hold(name, hold_s):
    named = temper_colour_named(name, hold_s)
    assert temper_colour(named.temperature_c, hold_s) == named


def test_an_eye_in_changing_light_is_worse_than_the_tables():
    assert heat_colour_named("cherry").sd_c > HEAT_COLOURS["cherry"].sd_c


def test_an_hour_in_the_oven_brings_the_colour_forward():
    short, long = temper_colour_named("blue"), temper_colour_named("blue", 3600.0)
    assert short.temperature_c - long.temperature_c == pytest.approx(50)
    assert long.sd_c > short.sd_c
    assert temper_colour_named("blue", 60.0) == short


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: heat_colour(300.0), "temperature_c must be between 475 and 1315.*got 300"),
        (lambda: temper_colour(450.0), "temperature_c must be between 176 and 371.*got 450"),
        (lambda: heat_colour_named("blood"), "name must be one of faint red.*got blood"),
        (lambda: temper_colour_named("pink"), "name must be one of pale yellow.*got pink"),
    ],
)
def test_no_colour_is_no_answer(call, words):
    with pytest.raises(OutOfRangeError, match=words):
        call()
