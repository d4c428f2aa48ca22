import pytest

from selector.advice.output import advice_out
from tests.once import advise_once
from tests.ui.conftest import ASKED, KNOWN
from ui import sheets


@pytest.mark.parametrize(("suffix", "start"), [(".pdf", b"%PDF"), (".html", b"<!DOCTYPE")])
def test_the_card_of_any_option_can_be_taken_along(suffix, start):
    advice = advise_once(ASKED, KNOWN)
    record = advice_out(advice).options[1]
    content = sheets.card_file(advice, record, suffix)
    assert content[:9].upper().startswith(start.upper())
    assert sheets.chosen_of(advice, record).option.id == record.id
