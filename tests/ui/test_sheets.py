import tomllib

import pytest

from selector import advise
from selector.advice.output import advice_out
from selector.requirement import requirement_from
from ui import sheets


@pytest.mark.parametrize(("suffix", "start"), [(".pdf", b"%PDF"), (".html", b"<!DOCTYPE")])
def test_the_card_of_any_option_can_be_taken_along(claw_text, suffix, start):
    advice = advise(requirement_from(tomllib.loads(claw_text)))
    record = advice_out(advice).options[1]
    content = sheets.card_file(advice, record, suffix)
    assert content[:9].upper().startswith(start.upper())
    assert sheets.chosen_of(advice, record).option.id == record.id
