"""The part on its card: what is left on it, its sizes in mm or inches, smaller drawings."""

import pytest

from selector.handover.drawing.marks import Marks
from selector.handover.part_block import Sheeted, features, left_on, pictures, sizes
from selector.record import StepOut
from tests.dog import asked
from tests.svg_text import spots

PART = asked().part


@pytest.mark.parametrize(
    ("action", "left"),
    [
        ("Leave 0.20 mm a side on working faces; the rest to size", "+0.20 mm a side"),
        ("polish; leave 0.2 mm on the cutting faces, to be ground", "+0.2 mm a side"),
        ("polish; leave the cutting edge 0.5 mm thick", "edge 0.5 mm thick"),
        ("coat bore with fireclay, or leave 1 mm on to turn off", ""),
        ("Machine all of it to size", ""),
    ],
)
def test_what_is_left_on_is_read_from_the_steps(action, left):
    assert left_on([StepOut(stage="prepare", action=action)]) == left
    assert left_on([StepOut(stage="bar", action=action)]) == ""


def test_the_table_leaves_stock_on_the_working_sections_alone():
    rows = sizes(PART, (0,), "+0.20 mm a side", Sheeted("a4"))
    assert [row["leave"] for row in rows] == ["+0.20 mm a side", "to size"]
    assert [row["size"] for row in rows] == ["Ø25 × 30", "Ø25 × 150"]


def test_letter_paper_has_inches_beside_and_inches_have_mm_beside():
    assert sizes(PART, (), "", Sheeted("letter"))[0]["size"] == "Ø25 × 30 (0.984 × 1.181 in)"
    rows = sizes(PART, (), "", Sheeted("a4", inches=True))
    assert rows[0]["size"] == "Ø0.984 × 1.181 in / Ø25 × 30 mm"
    tube = {"part.section.0.shape": "tube", "part.section.0.bore": "12.7 mm"}
    (row, _) = sizes(asked(tube).part, (), "", Sheeted("a4", inches=True))
    assert row["size"] == "Ø0.984 × 1.181, bore Ø0.5 in / Ø25 × 30, bore Ø12.7 mm"
    hole = {"part.feature": [{"kind": "cross-hole", "at": "110 mm", "size": "6 mm"}]}
    part = asked(hole).part
    assert features(part, Sheeted("a4"))[0] == "Ø6 across at 110"
    assert features(part, Sheeted("a4", inches=True))[0] == "Ø0.236 across at 4.331"


def test_a_drawing_in_inches_has_no_size_in_mm():
    large, *smaller = pictures(PART, Marks(), Sheeted("a4", inches=True))
    assert len(smaller) == 3
    assert large["wide"] > smaller[0]["wide"] > smaller[-1]["wide"]
    assert "inches" in large["legend"]
    texts = [spot.text for spot in spots(large["svg"])]
    assert "7.087" in texts
    assert not {"25", "Ø25", "180", "mm"} & set(texts)
