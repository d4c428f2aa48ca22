from dataclasses import replace

from selector.handover.drawing.bracket import Bracket, draw_brackets
from selector.handover.drawing.look import PAPER
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.part_drawing import drawn
from selector.requirement.part import Part, Section
from tests.svg_text import spots

PART = Part(
    name="pin",
    section=(
        Section(shape="round", size=20.0, length=6.0),
        Section(shape="round", size=16.0, length=90.0),
    ),
)
BARE = replace(PAPER, end_view=False, sizes=False, strips=False, labels=False)


def test_brackets_are_said_under_the_part_and_never_over_each_other():
    words = (
        Bracket(0.0, 6.0, "a long word for a short stretch"),
        Bracket(6.0, 96.0, "left soft"),
    )
    said = spots(drawn(PART, Marks(), BARE, words).svg)
    assert [spot.text for spot in said] == [bracket.words for bracket in words]
    assert not said[0].meets(said[1])
    assert all(spot.left >= 0.0 and spot.right <= BARE.width for spot in said)
    assert callable(draw_brackets)


def test_a_drawing_without_brackets_is_as_it_was():
    assert not spots(drawn(PART, Marks(), BARE).svg)
