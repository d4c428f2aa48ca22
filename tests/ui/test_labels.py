import pytest

from selector.record import Spread, TemperOut
from selector.wording import shown_spread, temper_words
from ui import labels


def spread(low, middle, high, unit="HRC"):
    return Spread(
        p05=low, p50=middle, p95=high, unit=unit, relation="", inputs={}, source="", validity=()
    )


def test_words_depend_on_the_field_where_they_must():
    assert labels.words("none", "zone.wear") == "No wear"
    assert labels.words("none") == "None"
    assert labels.words("sharp-corner") == "Sharp corner"


def test_formatting_in_a_name_is_taken_literally():
    assert labels.plain("50$ *pin* :red[x]") == r"50\$ \*pin\* \:red\[x\]"


def test_units_keep_their_capitals():
    assert labels.upper("colour misread by 25 °C") == "Colour misread by 25 °C"
    assert labels.lower("Warm water (60 °C)") == "warm water (60 °C)"


def test_hardness_goes_over_to_brinell_below_the_scale():
    assert shown_spread(spread(52.1, 55.1, 57.8)) == "55 HRC (52 to 58 HRC)"
    assert shown_spread(spread(12.9, 17.6, 22.1)).startswith("217 HB (")
    assert shown_spread(spread(None, None, None)) == "unknown"


def test_a_span_has_its_unit():
    assert labels.span(spread(0.86, 1.95, 4.42, "mm"), 1) == "1.9 mm (0.9 to 4.4)"
    assert labels.span(spread(None, 1.0, 2.0, "mm")) == "unknown"


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [(10.098, "HRC", "10.1 HRC"), (2.0, "-", "2"), (66.76, "currency", "66.8 EUR")],
)
def test_a_number_has_its_unit(value, unit, text):
    assert labels.number(value, unit, "EUR").replace("\u00a0", " ") == text


def test_a_share_is_counted_in_100():
    assert labels.share(0.984).replace("\u00a0", " ") == "98 in 100"
    assert labels.share(None) == "not sampled"


def test_a_temper_tells_band_time_cycles_and_colour():
    advice = TemperOut(
        label="oven", means="oven", temperature_c=200.0, time_min=60.0, cycles=2,
        band_c=(175.0, 225.0), colour="straw",
    )  # fmt: skip
    assert temper_words(advice) == (
        "200 °C in the oven, 60 min × 2 (175 to 225 °C serves); shows straw"
    )
    none = advice.model_copy(update={"temperature_c": None})
    assert temper_words(none) == "none"
