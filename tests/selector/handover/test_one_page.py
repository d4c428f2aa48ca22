"""A card is one page, on A4 and on Letter, whatever part is drawn on it and in which units."""

from datetime import date
from functools import cache
from io import BytesIO
from types import MappingProxyType

import pytest
from pypdf import PdfReader

from selector.handover.card import card
from selector.handover.chosen import chosen
from selector.handover.imperial import imperial_card
from selector.handover.part_block import Sheeted, features, pictures, sizes
from selector.handover.sheet import sheet
from tests.dog import asked, only
from tests.selector.handover.drawing.test_any_drawing import marks_number
from tests.whole_requirement import requirement_number

NUMBERS = range(0, 120, 3)
# A local flame has the most steps and cautions, an unproved bar a trial besides.
UNPROVED = MappingProxyType({"workshop.stock": [{"steel": "42CrMo4", "evidence": "none"}]})
OPTION = "42crmo4/annealed/local-torch.oil/oven-225c-60min"


@cache
def work(*, inches: bool) -> dict[str, object]:
    """Return the card of a long job."""
    found = chosen(asked(dict(UNPROVED)), only("42crmo4", "s235"), OPTION)
    made = card(found, "a4", date(2026, 11, 29), "0.0")
    return imperial_card(made) if inches else made


@pytest.mark.parametrize("number", NUMBERS)
def test_any_part_and_its_work_stand_on_one_page(number):
    part = requirement_number(number).part
    paper, inches = ("a4", "letter")[number % 2], number % 4 == 0
    on = Sheeted(paper, inches)
    first, *smaller = pictures(part, marks_number(number, part.length_mm), on)
    data = {
        **work(inches=inches),
        "picture": first,
        "smaller": smaller,
        "sizes": sizes(part, (0,), "+0.20 mm a side", on),
        "features": features(part, on),
    }
    pages = PdfReader(BytesIO(sheet("card", data, ".pdf", paper).content)).pages
    assert len(pages) == 1
    assert "Keep this card" in pages[0].extract_text()
