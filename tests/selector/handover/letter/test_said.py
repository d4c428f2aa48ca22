import pytest

from selector.advice.output import advice_out
from selector.handover.letter.document import document
from selector.handover.letter.record import Letter, Row, Section, Table
from selector.handover.letter.said import (
    check_words,
    done_words,
    duty_words,
    goes_wrong,
    is_hardened,
    is_sent_out,
    one_in,
    pieces,
    steel_words,
    tried_words,
    way_words,
)
from selector.record import StepOut
from selector.requirement.zone import Mate, Zone

ZONE = Zone(section=(1,), wear="edge-impact", name="claws")


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (0.0, "hardly ever"),
        (0.02, "seldom"),
        (0.05, "about one time in twenty"),
        (0.17, "about one time in six"),
        (0.25, "about one time in four"),
        (0.5, "about every other time"),
        (0.9, "more often than not"),
    ],
)
def test_chances_in_words(share, words):
    assert one_in(share) == words
    assert goes_wrong(share) in {f"{words} goes wrong", f"goes wrong {words}"}


@pytest.mark.parametrize("wear", ["none", "sliding", "abrasive", "rolling-contact"])
def test_a_duty_is_a_sentence(wear):
    zone = Zone(section=(1,), wear=wear, mate=Mate(material="a cam", should_wear="mate"))
    text = duty_words(zone)
    assert text.startswith("The working end")
    assert text.endswith(".")
    assert ("while the mate wears (a cam)" in text) == (wear != "none")


@pytest.mark.parametrize("wear", ["sliding", "abrasive", "rolling-contact", "edge-impact"])
def test_what_is_to_wear_first_is_not_told_to_last(wear):
    zone = Zone(section=(1,), wear=wear, mate=Mate(material="a screw", should_wear="part"))
    text = duty_words(zone)
    assert text.endswith("and must wear before the mate does (a screw).")
    assert not any(word in text for word in ("without wearing", "stand up", "stay sharp"))


def test_every_way_of_an_advice_is_said_in_plain_words(advice):
    for option in advice_out(advice).options:
        done, way = done_words(option, ZONE), way_words(option, ZONE)
        assert done[0].isupper()
        assert done.endswith(".")
        assert "{" not in done + way
        assert is_hardened(option) == ("not hardened" not in way and "as it comes" not in way)
        assert not is_sent_out(option) or "firm" in done + way
        if option.temper.temperature_c is not None and is_hardened(option):
            assert f"{option.temper.temperature_c:.0f} °C" in done
        assert steel_words(option).startswith(option.spoken)


def test_checks_and_numbers():
    step = StepOut(
        stage="check",
        action="See that it runs true within 0.30 mm",
        length_mm=0.3,
        check="expect 0.02 mm",
        otherwise="bent",
    )
    assert check_words(step, ZONE) == "how true it runs (0.30 mm allowed; expect 0.02 mm)"
    assert check_words(StepOut(stage="check", action="Oil it"), ZONE) is None
    assert (pieces(1), pieces(4)) == ("one piece", "4 pieces")
    assert tried_words(62.0) == "A new file tried on it skates."


def test_a_letter_of_one_section_makes_a_document():
    letter = Letter(
        option=None, reference="r", date="d", greeting="g", is_offer=False, small_print=(),
        sections=(Section(key="own", head="h", paragraphs=("p",)),),
        table=Table(heads=("Proposed",), rows=(Row(name="price", cells=("1 EUR",)),)),
    )  # fmt: skip
    told = {
        **letter.model_dump(), "title": "t", "author": "a", "logo": None, "sender": None,
        "terms": [], "sign": ["s"], "picture": None, "small_print": [],
        "sections": [
            {"key": "own", "head": "h", "paragraphs": [[{"text": "p", "marked": True}]]}
        ],
    }  # fmt: skip
    assert document(told).startswith(b"PK")
