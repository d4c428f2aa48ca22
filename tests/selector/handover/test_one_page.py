"""A card is one page, on A4 and on Letter, whatever part is drawn on it and in which units."""

from datetime import date
from functools import cache, partial
from types import MappingProxyType

import pytest

from selector.handover.card import card
from selector.handover.chosen import chosen
from selector.handover.imperial import imperial_card
from selector.handover.part_block import Sheeted, features, pictures, sizes
from selector.handover.sheet import Paper, sheet
from tests.dog import asked, only
from tests.pdf_text import pages_of
from tests.selector.handover.drawing.test_any_drawing import marks_number
from tests.svg_text import box
from tests.whole_requirement import requirement_number

NUMBERS = range(0, 120, 3)
# So many of those parts are printed, which ask the most room.
PRINTED = 2
# A row of the tables of sizes and features. [mm]
ROW_MM = 4.0
# A local flame has the most steps and cautions, an unproved bar a trial besides.
UNPROVED = MappingProxyType({"workshop.stock": [{"steel": "42CrMo4", "evidence": "none"}]})
OPTION = "42crmo4/annealed/local-torch.oil/oven-225c-60min"


@cache
def work(*, inches: bool) -> dict[str, object]:
    """Return the card of a long job."""
    found = chosen(asked(dict(UNPROVED)), only("42crmo4", "s235"), OPTION)
    made = card(found, "a4", date(2026, 11, 29), "0.0")
    return imperial_card(made) if inches else made


@cache
def of_part(number: int, paper: Paper, *, inches: bool) -> dict[str, object]:
    """Return what a card holds of a part: drawings, as large as may be first, and tables."""
    part, on = requirement_number(number).part, Sheeted(paper, inches)
    first, *smaller = pictures(part, marks_number(number, part.length_mm), on)
    return {
        "picture": first,
        "smaller": smaller,
        "sizes": sizes(part, (0,), "+0.20 mm a side", on),
        "features": features(part, on),
    }


def room_mm(number: int, *, inches: bool) -> float:
    """Return how high on its card a part is at least: the smallest drawing and the tables."""
    held = of_part(number, "a4", inches=inches)
    least = (held["smaller"] or [held["picture"]])[-1]
    wide, high = box(least["svg"])
    return least["wide"] * high / wide + ROW_MM * (len(held["sizes"]) + len(held["features"]))


@pytest.mark.parametrize("inches", [False, True], ids=["mm", "inches"])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_parts_that_ask_most_room_and_their_work_stand_on_one_page(paper, inches):
    crowded = sorted(NUMBERS, key=partial(room_mm, inches=inches))[-PRINTED:]
    assert room_mm(crowded[-1], inches=inches) > 60.0
    for number in crowded:
        data = {**work(inches=inches), **of_part(number, paper, inches=inches)}
        (page,) = pages_of(sheet("card", data, ".pdf", paper).content)
        assert "Keep this card" in page
