"""What a part has at its end or across it is drawn in its end view."""

import re

import pytest

from selector.handover.drawing.canvas import Canvas
from selector.handover.drawing.end_features import draw_end_features
from selector.handover.drawing.look import PAPER
from selector.requirement.part import Feature, Part, Section

ROUND = Section(shape="round", size=20, length=30)


def paths(feature: Feature, section: Section = ROUND) -> list[str]:
    """Return what is drawn of one feature, its middle at 50, 50, at full size."""
    canvas = Canvas(PAPER, "k")
    draw_end_features(
        canvas, Part(name="p", section=(section,), feature=(feature,)), (50, 50), 1
    )
    return canvas.elements


def numbers(path: str) -> list[float]:
    return [float(v) for v in re.findall(r"-?\d+\.?\d*", path.split('"')[1])]


def test_a_hole_across_is_two_hidden_lines_its_width_apart():
    (path,) = paths(Feature(kind="cross-hole", at=10, size=6))
    assert "stroke-dasharray" in path
    x0, y0, x1, _, y1, _ = numbers(path)
    assert (y0, y1) == (47.0, 53.0)
    # At the height of the hole's edge the round is narrower than its diameter.
    assert x1 - x0 == pytest.approx(2 * (10**2 - 3**2) ** 0.5, abs=0.01)


@pytest.mark.parametrize("kind", ["keyway", "slot"])
def test_a_cut_lies_at_the_side_that_faces_the_reader(kind):
    (path,) = paths(Feature(kind=kind, at=10, size=6))
    face, top, foot, low, _ = numbers(path)
    assert 50 < foot < face < 60
    assert (top, low) == (47.0, 53.0)


def test_claws_are_drawn_as_two_and_a_rim_of_teeth_by_its_circles():
    claws = paths(Feature(kind="teeth", at=4))
    assert len(claws) == 4
    root, rolling = paths(Feature(kind="teeth", size=1.5))
    assert "dasharray" in rolling
    assert "dasharray" not in root
    # A tooth is 1.43 of its thickness deep and stands 0.64 of it over where it rolls.
    radii = [float(re.search(r"A([\d.]+)", path)[1]) for path in (root, rolling)]
    assert radii == pytest.approx([10 - 1.4324 * 1.5, 10 - 0.6366 * 1.5], abs=0.001)


def test_what_has_no_size_is_not_guessed():
    assert paths(Feature(kind="cross-hole", at=10)) == []
    assert paths(Feature(kind="keyway", at=10)) == []
    assert len(paths(Feature(kind="thread", at=10))) == 1
