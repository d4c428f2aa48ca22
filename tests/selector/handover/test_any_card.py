"""Any option of any part in a full workshop has a card that can be worked from."""

import re
from datetime import date
from io import BytesIO

import pytest
from pypdf import PdfReader

from selector.advice.advise import advise
from selector.decision.output import option_out
from selector.handover.card import card, template_of
from selector.handover.chosen import Chosen
from selector.handover.sheet import sheet
from selector.requirement.workshop import Workshop
from tests.whole_requirement import catalog_for, requirement_number

SHOP = {
    "heat": [{"source": slug} for slug in ("oxy-propane", "kiln", "kitchen-oven")],
    "bath": [{"medium": "water"}, {"medium": "oil"}],
    "turns_part": True,
    "subcontract": True,
}
NUMBERS = (8, 12, 31, 34, 39)
# So many leading options of each part, of a route each.
LOOKED_AT = 4


def bare(text: str) -> str:
    """Return a text without blanks and without marks where a long word may break."""
    return re.sub(r"[\s\u200b]+", "", text)


@pytest.mark.parametrize("number", NUMBERS)
def test_every_step_of_any_option_is_on_its_card(number):
    changes = {"workshop": Workshop.model_validate(SHOP), "safety_use": "none"}
    asked = requirement_number(number).model_copy(update=changes)
    advice = advise(asked, catalog_for(asked, number, 8))
    by_route = {o.treatment.route.slug: o for o in reversed(advice.options)}
    assert by_route
    for option in [*by_route.values()][:LOOKED_AT]:
        record = option_out(advice.job, option, 1, advice.ranges)
        found = Chosen(advice.job, option, record, "")
        paper = "letter" if number % 2 else "a4"
        data = card(found, paper, date(2026, 11, 29), "0.0")
        pages = PdfReader(
            BytesIO(sheet(template_of(found), data, ".pdf", paper).content)
        ).pages  # fmt: skip
        text = bare("".join(page.extract_text() for page in pages))
        for step in record.procedure:
            for said in (step.action, step.means, step.check):
                assert bare(said) in text, (option.id, said)
        assert len(pages) <= 2, option.id
        assert record.id in text
