"""Letters over a colour are told from it, whatever the colour."""

import pytest

from selector.handover.drawing.canvas import Box, Canvas
from selector.handover.drawing.look import DARK, LIGHT, PAPER
from selector.handover.drawing.tint import contrast, letters_over, luminance

COLOURS = sorted({c for look in (LIGHT, DARK, PAPER) for c in (*look.steps, *look.hot)})


def test_black_and_white_are_as_far_apart_as_can_be():
    """WCAG 2.2, "contrast ratio": from 1 to 21."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#7694b4", "#7694b4") == 1.0
    assert luminance("#808080") == pytest.approx(0.2159, abs=1e-4)


@pytest.mark.parametrize("colour", COLOURS)
def test_letters_are_told_from_every_step(colour):
    assert contrast(letters_over(colour), colour) >= 4.5


def test_over_two_colours_that_ask_for_two_inks_there_is_none():
    canvas = Canvas(LIGHT, "k")
    canvas.tint(Box(0.0, 0.0, 10.0, 10.0), "#641507")
    canvas.tint(Box(10.0, 0.0, 20.0, 10.0), "#f6f3f1")
    assert canvas.letters_over(Box(1.0, 1.0, 9.0, 9.0)) == "#ffffff"
    assert canvas.letters_over(Box(11.0, 1.0, 19.0, 9.0)) == "#16191d"
    assert canvas.letters_over(Box(5.0, 1.0, 15.0, 9.0)) is None
    assert canvas.letters_over(Box(30.0, 1.0, 40.0, 9.0)) is None
