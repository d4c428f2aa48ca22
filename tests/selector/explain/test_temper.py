from selector.explain.temper import temper_words
from selector.record import TemperOut


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
    assert words == "250 °C, torch, 5 min (200 to 250 °C serves); shows brown"


def test_no_temper_is_none():
    assert temper_words(temper(means="none", temperature_c=None, time_min=None)) == "none"


def test_a_band_of_one_temperature_is_not_worth_saying():
    assert "serves" not in temper_words(temper(band_c=(250.0, 250.0)))


def test_cycles_are_said_and_returning_heat_has_no_time():
    assert "60 min × 2" in temper_words(temper(time_min=60.0, cycles=2))
    assert "min" not in temper_words(temper(means="residual", time_min=1.0))
