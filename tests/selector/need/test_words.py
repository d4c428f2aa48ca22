import pytest

from selector.need import words
from selector.need.words import Window
from selector.record import Spread
from tests.dog import asked


def spread(middle, unit="HRC"):
    return Spread(
        p05=middle, p50=middle, p95=middle, unit=unit, relation="", inputs={}, source="",
        validity=(),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("sure", "stated", "text"),
    [
        (None, None, "no hardness stands the torque here"),
        (None, Window(40.0, 44.0), "40 HRC just stands the torque; no hardness does so"),
        (Window(None, None), Window(None, None), "any steel stands the torque"),
        (Window(30.0, None), Window(25.0, None), "30 HRC or more stands the torque nine"),
        (Window(30.0, 47.0), Window(25.0, 50.0), "above 47 HRC its notch no longer yields"),
    ],
)
def test_strength_in_words(sure, stated, text):
    assert text in words.strength(sure, stated, "torque")


def test_contact_in_words():
    depths = {"soft bar": spread(0.8, "mm"), "pre-hardened bar": spread(0.0, "mm")}
    text = words.contact(900.0, spread(52.0), depths, rolling=True)
    assert "900 MPa of contact pressure, rolled over for long: 52 HRC or more" in text
    assert "0.80 mm over soft bar, none needed over pre-hardened bar" in text
    assert "no hardness bears it" in words.contact(9000.0, None, {}, rolling=False)


def test_gaps_are_named():
    assert words.gaps(asked()) == ()
    (line,) = words.gaps(asked({"load.contact": "1 kN"}))
    assert "whole length" in line
