"""Whatever a user writes in any field is text on the card, and loses no step of it."""

import re
from datetime import date

import pytest

from selector.handover.card import card
from selector.handover.chosen import chosen
from selector.handover.sheet import sheet
from tests.dog import asked, only
from tests.pdf_text import pages_of

OPTION = "42crmo4/annealed/local-torch.oil/oven-225c-60min"
# As long as a name may be.
LONG = 200
MARKUP = '#panic() $x$ <script>x()</script> {{ 7*7 }} & "q" *b* _i_ `c` @r \\ //'
NAME = "Worn-out drive dog of the left-hand reversing gear"
TEXTS = (MARKUP, NAME, "W" * LONG, "\u05e9\u05dc\u05d5\u05dd " * 40, "\u4e2d\u6587" * 40)
FIELDS = (
    "part.name",
    "part.section.0.name",
    "part.section.1.name",
    "zone.0.name",
    "zone.1.name",
)


@pytest.mark.parametrize("text", TEXTS, ids=["markup", "name", "endless", "hebrew", "han"])
def test_a_hostile_text_in_every_field_does_no_harm(text):
    changes = {field: text.strip()[:LONG] for field in FIELDS}
    mate = {"material": text.strip()[:LONG], "hardness": "56 HRC", "should_wear": "part"}
    changes |= {"zone.0.mate": mate, "workshop.machine": [f"lathe {text}"[:LONG]]}
    found = chosen(asked(changes), only("42crmo4"), OPTION)
    for paper in ("a4", "letter") if text == NAME else ("letter",):
        data = card(found, paper, date(2026, 11, 29), "0.0")
        pages = pages_of(sheet("card", data, ".pdf", paper).content)
        assert len(pages) == 1 or text not in {MARKUP, NAME}
        shown = re.sub(r"[\s\u200b]+", "", "".join(pages))
        for step in found.record.procedure:
            assert re.sub(r"\s+", "", step.check) in shown
    page = sheet("card", data, ".html").content.decode()
    assert "<script" not in page
    assert "49" not in page.split("<style")[0]
    assert "<svg" in page
