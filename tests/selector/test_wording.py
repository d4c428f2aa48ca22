import math
import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.figure import Provenance, figure
from selector.record import LayerOut, TemperOut, spread_out
from selector.wording import (
    beside,
    chance_words,
    days_words,
    hours_words,
    in_100,
    in_sentence,
    layer_words,
    means_words,
    minutes_words,
    quenched_words,
    right_words,
    shown,
    shown_mm,
    shown_range,
    shown_spread,
    temper_words,
    times_in_100,
)


@pytest.mark.parametrize(
    ("hrc", "text"), [(58.2, "58 HRC"), (20.0, "20 HRC"), (67.6, "68 HRC")]
)
def test_from_twenty_up_it_is_rockwell(hrc, text):
    assert shown(hrc) == text


@given(st.floats(-30, 19.99))
def test_below_twenty_it_is_brinell(hrc):
    number, unit = shown(hrc).split()
    assert unit == "HB"
    # ASTM E140 Table 1 puts 226 HB beside 20 HRC.
    assert 60 < float(number) <= 227


@given(st.floats(-30, 68), st.floats(0, 20))
def test_harder_never_reads_softer(hrc, more):
    def rank(text):
        number, unit = text.split()
        return (unit == "HRC", float(number))

    assert rank(shown(hrc)) <= rank(shown(min(hrc + more, 68.0)))


def test_what_does_not_exist_is_unknown():
    assert shown(math.nan) == "unknown"
    assert shown_range(math.nan, math.nan) == "unknown"


def test_a_range_names_its_unit_once_where_it_can():
    assert shown_range(56.0, 60.0) == "56 to 60 HRC"
    assert shown_range(57.9, 58.1) == "58 HRC"


def test_a_range_has_one_scale():
    assert shown_range(10.0, 30.0) == "under 20 to 30 HRC"
    assert shown_range(10.0, 22.0).endswith(" HB")
    assert "HRC" not in shown_range(10.0, 22.0)


@given(st.floats(-30, 66), st.floats(0, 20), st.floats(0, 20))
def test_a_spread_has_the_scale_of_its_middle(low, more, most):
    sample = np.array([low, low + more, low + more + most]).clip(max=68.0)
    text = shown_spread(spread_out(figure(sample, Provenance("HRC", "measured", "none", {}))))
    assert len(set(re.findall("HRC|HB", text))) == 1


@pytest.mark.parametrize(
    ("share", "chance", "times"),
    [
        (0.0, "under 1 in 100", "less than once in 100"),
        (0.01, "1 in 100", "once in 100"),
        (0.23, "23 in 100", "23 times in 100"),
        (1.0, "over 99 in 100", "over 99 times in 100"),
    ],
)
def test_a_chance_is_whole_and_never_nil_or_certain(share, chance, times):
    assert in_100(share) == chance
    assert times_in_100(share) == times


def test_a_movement_is_read_to_a_hundredth():
    assert shown_mm(0.052) == "0.05 mm"
    assert shown_mm(0.002) == "under 0.01 mm"


def test_only_the_first_letter_of_a_name_is_made_small():
    assert in_sentence("Warm water (30 to 60 °C)") == "warm water (30 to 60 °C)"


def test_a_spread_that_rounds_to_one_hardness_is_given_once():
    measured = Provenance("HRC", "measured", "none", {})
    one = spread_out(figure(np.array([55.0, 55.1, 55.2]), measured))
    assert shown_spread(one) == "55 HRC"
    wide = spread_out(figure(np.linspace(52.0, 58.0, 101), measured))
    assert shown_spread(wide).startswith("55 HRC (5")


def temper(**changes):
    usual = {
        "label": "torch-250c-5min",
        "means": "torch",
        "temperature_c": 250.0,
        "time_min": 5.0,
        "cycles": 1,
        "band_c": (200.0, 250.0),
        "colour": "brown",
    }
    return TemperOut(**{**usual, **changes})


def test_heat_means_time_band_and_colour_are_said():
    words = temper_words(temper())
    assert words == "250 °C by torch, 5 min (200 to 250 °C serves); shows brown"


def test_no_temper_is_none():
    assert temper_words(temper(means="none", temperature_c=None, time_min=None)) == "none"


def test_a_band_of_one_temperature_is_not_worth_saying():
    assert "serves" not in temper_words(temper(band_c=(250.0, 250.0)))


def test_cycles_are_said_and_returning_heat_has_no_time():
    assert "60 min × 2" in temper_words(temper(time_min=60.0, cycles=2))
    assert "min" not in temper_words(temper(means="residual", time_min=1.0))


@pytest.mark.parametrize(
    ("hours", "text"), [(0.15, "9 min"), (1.0, "1.0 h"), (5.46, "5.5 h"), (43.4, "43 h")]
)
def test_a_time_at_heat_is_told_in_minutes_or_hours(hours, text):
    assert hours_words(hours) == text


def test_a_layer_is_told_with_what_was_asked_and_how_it_is_grown():
    layer = LayerOut(
        medium="energised", temperature_c=925.0, hours=4.0, asked_mm=0.5, removed_mm=0.1,
        depth_mm=0.69, falls_short=False,
    )  # fmt: skip
    assert layer_words(layer) == (
        "0.69 mm for the 0.5 mm asked, 0.1 mm ground off: energised pack, 4.0 h at 925 °C"
    )
    plain = layer.model_copy(update={"asked_mm": 0.0, "removed_mm": 0.0, "medium": "liquid"})
    assert layer_words(plain) == "0.69 mm: liquid, 4.0 h at 925 °C"


def test_right_and_inside_the_budget_are_two_chances():
    assert right_words(0.99, None) == "comes out right 99 times in 100"
    assert right_words(0.99, 0.4).endswith("; inside the budget 40 times in 100")
    assert chance_words(0.5, None) == "right 50 in 100"
    assert chance_words(0.999, 0.001) == (
        "right over 99 in 100, inside the budget under 1 in 100"
    )


@pytest.mark.parametrize(
    ("medium", "what", "words"),
    [
        ("warm-water", "", "quench in warm water"),
        ("water", "the end", "quench the end in water"),
        ("air", "", "cool in air"),
        ("plates", "", "cool between plates"),
    ],
)
def test_a_quench_is_an_instruction(medium, what, words):
    assert quenched_words(medium, what) == words


@pytest.mark.parametrize(
    ("time_s", "words"),
    [
        (20, "20 s"),
        (119, "119 s"),
        (120, "2 min"),
        (1500, "25 min"),
        (7200, "2 h"),
        (9000, "2.5 h"),
    ],
)
def test_a_time_is_whole_minutes(time_s, words):
    assert minutes_words(time_s) == words


def test_the_means_of_a_temper_are_those_of_the_bench():
    assert means_words("oven") == "in the oven"
    assert means_words("torch") == "by torch"
    assert means_words("residual") == "by the heat left behind"
    assert means_words("sand") == "in hot sand over the fire"


def test_a_wait_of_one_day_is_no_days():
    assert [days_words(days) for days in (1.0, 2.5)] == ["1 day", "2.5 days"]


@pytest.mark.parametrize(
    ("value", "limit", "digits", "text"),
    [
        (0.0213, 0.02, 2, "0.021"),
        (0.0187, 0.02, 2, "0.019"),
        (0.02, 0.02, 2, "0.02"),
        (0.0304, 0.02, 2, "0.03"),
        (0.02003, 0.02, 2, "0.0200"),
        (40.3, 40.0, 0, "40.3"),
        (44.0, 40.0, 0, "44"),
    ],
)
def test_a_figure_beside_its_limit_has_the_digits_that_tell_the_side(
    value, limit, digits, text
):
    assert beside(value, limit, digits) == text
