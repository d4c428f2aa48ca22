import pytest

from selector.need import words
from selector.record import Spread
from tests.dog import asked


def spread(middle, unit="HRC"):
    return Spread(
        p05=middle, p50=middle, p95=middle, unit=unit, relation="", inputs={}, source="",
        validity=(),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("sure", "stated", "told"),
    [
        (None, None, "no hardness bears the torque here"),
        (None, (40.0, 44.0), "40 HRC just bears the torque; no hardness does so surely"),
        ((None, None), (None, None), "any steel bears the torque"),
        ((30.0, None), (25.0, None), "30 HRC or more bears the torque nine times in ten"),
        ((30.0, 47.0), (25.0, 50.0), "above 47 HRC its notch no longer yields"),
    ],
)
def test_strength_in_words(sure, stated, told):
    assert told in words.strength(sure, stated, "torque")


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
