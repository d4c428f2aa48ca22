"""Any valid part is drawn: no text on another, nothing outside, the same each time."""

import random
from dataclasses import replace
from itertools import combinations
from xml.etree import ElementTree as ET

import numpy as np
import pytest

from selector.handover.drawing.look import DARK, LIGHT, PAPER, Look, for_paper, for_screen
from selector.handover.drawing.marks import Band, Field, Marks, Note
from selector.handover.drawing.part_drawing import Drawing, drawn
from selector.handover.drawing.tint import contrast
from tests.svg_text import Spot, box, crosses, segments, spots, tints
from tests.whole_requirement import requirement_number

NUMBERS = range(120)
# As on a crowded card, and on one in inches.
SMALL = replace(for_paper(108, 16), places=False, sides=3.6)
INCHES = replace(PAPER, inches=True)
LOOKS = (PAPER, LIGHT, DARK, for_screen(340, 90), for_paper(120, 25))
# Least contrast of letters of this size (WCAG 2.2, 1.4.3). [-]
TOLD_APART = 4.5


def marks_number(number: int, length_mm: float) -> Marks:
    """Return marks by number: none, bands, or a field; heated, dipped, noted or not."""
    dice = random.Random(number)  # noqa: S311 - nothing here is secret
    at = sorted(round(dice.uniform(0.0, length_mm), 2) for _ in range(4))
    marks = Marks(
        bands=(Band(at[0], at[2], dice.choice((None, 0.3, 2.0)), 54.0, "54 HRC, hard"),),
        said=("54 HRC right through", "asked 50 to 56, at least 1.5 deep"),
        notes=(Note(at[2], "hard to 27"), Note(at[3], "soft from 30"), Note(at[3], "ring 22")),
        rest="as bought, 216 HB · a file cuts it",
    )
    if dice.random() < 0.5:
        marks = replace(
            marks, heated_mm=(at[0], at[3]), heat_words="FLAME 0–25 mm: " + "x" * 60
        )
    if dice.random() < 0.3:
        marks = replace(marks, water_mm=at[1])
    if dice.random() < 0.5:
        along, share = np.linspace(0.0, length_mm, 40), np.linspace(0.0, 1.0, 9)
        hrc = 55.0 - 40.0 * (along[None, :] / length_mm) ** 2 + 0.0 * share[:, None]
        marks = replace(marks, field=Field(along, share, hrc, 15.0 * hrc), bands=())
    return Marks() if number % 7 == 0 else marks


def drawn_number(number: int, look: Look) -> Drawing:
    """Return a part by number with its marks."""
    part = requirement_number(number).part
    return drawn(part, marks_number(number, part.length_mm), look)


def beyond(svg: str) -> list[str]:
    """Return the lines of an SVG that leave its box."""
    wide, high = box(svg)
    found = []
    for element in ET.fromstring(svg).iter():  # noqa: S314 - our own
        seen = "line" in element.tag and element.get("stroke") != "none"
        for key, most in (("x1", wide), ("x2", wide), ("y1", high), ("y2", high)):
            value = element.get(key) if seen else None
            if value is not None and not -0.01 <= float(value) <= most + 0.01:
                found.append(ET.tostring(element, encoding="unicode"))
    return found


def covered(svg: str) -> list[str]:
    """Return the texts that stand on another or on a line."""
    found, lines = spots(svg), segments(svg)
    assert len(lines) > 5
    on_texts = [f"{a.text!r} on {b.text!r}" for a, b in combinations(found, 2) if a.meets(b)]
    return on_texts + [f"{s.text!r} on {li}" for s in found for li in lines if crosses(s, li)]


def outside(svg: str) -> list[str]:
    """Return the texts and lines that leave the box."""
    wide, high = box(svg)
    return beyond(svg) + [
        f"{spot}"
        for spot in spots(svg)
        if not (
            0.0 <= spot.left <= spot.right <= wide and 0.0 <= spot.top <= spot.bottom <= high
        )
    ]


def test_any_part_is_drawn_in_its_box_no_text_on_another_or_on_a_line():
    faults = []
    for number in NUMBERS:
        svg = drawn_number(number, LOOKS[number % len(LOOKS)]).svg
        faults += [f"{number}: {fault}" for fault in (*covered(svg), *outside(svg))]
    assert faults == []


@pytest.mark.parametrize("number", NUMBERS[::10])
def test_any_part_is_drawn_the_same_each_time(number):
    assert drawn_number(number, PAPER).svg == drawn_number(number, PAPER).svg


def faint(svg: str) -> list[str]:
    """Return the texts that are not told from a colour under them."""
    filled = tints(svg)
    return [
        f"{spot} on {tint.text}"
        for spot in spots(svg)
        for tint in filled
        if tint.meets(spot) and contrast(tint.text, spot.colour) < TOLD_APART
    ]


@pytest.mark.parametrize("look", [LIGHT, DARK], ids=["light", "dark"])
def test_letters_are_told_from_every_colour_under_them(look):
    svgs = {number: drawn_number(number, look).svg for number in NUMBERS[::4]}
    assert [f"{number}: {fault}" for number, svg in svgs.items() for fault in faint(svg)] == []


def test_most_strips_have_room_for_words_that_are_told_from_them():
    lettered = 0
    for number in (marked := [n for n in NUMBERS[::3] if n % 7]):
        svg = drawn_number(number, LIGHT).svg
        filled = tints(svg)
        lettered += any(tint.meets(spot) for spot in spots(svg) for tint in filled)
    assert lettered >= 0.75 * len(marked)


@pytest.mark.parametrize("look", [SMALL, INCHES], ids=["small", "inches"])
def test_small_and_in_inches_no_text_stands_on_another_or_on_a_line(look):
    svgs = {number: drawn_number(number, look).svg for number in NUMBERS[::3]}
    assert [
        f"{number}: {fault}" for number, svg in svgs.items() for fault in covered(svg)
    ] == []


def test_a_line_through_a_text_is_seen():
    spot = Spot("54 HRC", 10.0, 10.0, 20.0, 13.0)
    assert crosses(spot, (15.0, 0.0, 15.0, 30.0))
    assert crosses(spot, (0.0, 5.0, 30.0, 15.0))
    assert not crosses(spot, (21.0, 0.0, 21.0, 30.0))
    assert not crosses(spot, (0.0, 13.5, 30.0, 13.5))


def test_the_length_of_the_part_is_always_there():
    seen = 0
    for number in NUMBERS[::3]:
        part = requirement_number(number).part
        texts = [spot.text for spot in spots(drawn(part, Marks(), PAPER).svg)]
        total = f"{part.length_mm:.2f}".rstrip("0").rstrip(".")
        seen += total in texts
    assert seen == len(NUMBERS[::3])
