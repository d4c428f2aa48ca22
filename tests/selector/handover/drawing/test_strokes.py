"""Lines of a path, and whether they run through a place."""

import pytest

from selector.handover.drawing.canvas import Box, Canvas
from selector.handover.drawing.look import LIGHT
from selector.handover.drawing.strokes import Stroke, crosses, strokes_of


def test_a_path_is_taken_apart_into_its_straight_lines():
    path = "M1 2 H5 V-3 L0 0 M7 7 A2 2 0 0 1 9 9 q1 1 0 2 Z"
    assert strokes_of(path) == [(1, 2, 5, 2), (5, 2, 5, -3), (5, -3, 0, 0), (7, 7, 9, 9)]


@pytest.mark.parametrize(
    ("line", "through"),
    [
        ((0, 5, 20, 5), True),
        ((0, 0, 12, 12), True),
        ((0, 0, 20, 0), False),
        ((10, 0, 10, 3), False),
        ((0, 9, 9, 20), False),
    ],
)
def test_a_line_through_a_place_is_seen(line, through):
    assert crosses(Stroke(*line), (4.0, 4.0), (10.0, 10.0)) == through


def test_no_text_is_set_on_a_line_that_was_drawn():
    canvas = Canvas(LIGHT, "k")
    canvas.path("M0 30 L200 60", stroke=1.0)
    assert not canvas.is_free(Box(90.0, 40.0, 110.0, 52.0))
    assert canvas.is_free(Box(90.0, 40.0, 110.0, 52.0), lines=False)
    assert canvas.is_free(Box(90.0, 60.0, 110.0, 72.0))
