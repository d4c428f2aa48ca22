import tomllib

import pytest

from selector.handover.letter.editable import changed, text_of
from selector.handover.letter.letter import composed
from selector.handover.letter.made import Sender
from selector.requirement import requirement_from
from ui import offer


@pytest.mark.parametrize(
    ("suffix", "start"), [(".pdf", b"%PDF"), (".html", b"<!doctype"), (".docx", b"PK")]
)
def test_the_letter_can_be_taken_along(claw_text, advice, suffix, start):
    asked = requirement_from(tomllib.loads(claw_text))
    letter = composed(asked, advice, advice.options[0])
    assert (
        offer.content(letter, Sender(), None, letter, suffix).lower().startswith(start.lower())
    )


def test_its_text_says_the_same_without_the_command_line(claw_text, advice):
    asked = requirement_from(tomllib.loads(claw_text))
    letter = composed(asked, advice, advice.options[0])
    text = offer.plainly(letter)
    assert "--from" not in text
    assert changed(letter, text) == changed(letter, text_of(letter))


def test_the_letter_is_seen_as_it_prints(claw_text, advice):
    asked = requirement_from(tomllib.loads(claw_text))
    fresh = composed(asked, advice, advice.options[0])
    longer = changed(fresh, offer.plainly(fresh) + "\n[Our promise]\n" + "It lasts. " * 900)
    one, two = (offer.as_printed(x, Sender(), None, fresh) for x in (fresh, longer))
    assert all(page.startswith(b"\x89PNG") for page in (*one, *two))
    assert len(one) == 1 < len(two)
