import pytest

from selector.advice.advise import advise
from selector.advice.why import SHOWN, why
from selector.errors import RequirementError
from tests.dog import asked, only


@pytest.fixture(scope="module")
def advice():
    return advise(asked(), only("c45", "42crmo4", "115crv3", "s235"))


def test_an_option_says_its_place_and_why_it_is_not_first(advice):
    first, *later = [way for way in why(advice, "42CrMo4") if way.place]
    best = advice.options[0].treatment.steel.slug
    assert (first.place == 1) == (best == "42crmo4")
    assert all("Not first:" in way.text for way in later)


def test_what_is_out_says_the_gate_and_the_number(advice):
    ways = why(advice, "S235JR")
    assert ways
    assert all(way.gate for way in ways if way.place is None)
    assert len({way.text for way in ways}) == len(ways) <= SHOWN


def test_a_route_is_asked_for_like_a_steel(advice):
    assert any("austemper" in way.treatment for way in why(advice, "austemper"))


def test_an_unknown_name_is_refused_with_what_to_do(advice):
    with pytest.raises(RequirementError, match="temperwright steels"):
        why(advice, "mithril")


def test_what_could_be_done_here_comes_before_what_wants_a_firm():
    gear = {"part.feature": [{"kind": "teeth", "at": "5 mm"}], "zone.0.wear": "rolling-contact"}
    found = advise(asked(gear), only("115crv3", "42crmo4", "16mncr5"))
    said = [row.gate for row in why(found, "silver steel")]
    unlikely = {"equipment", "response"}
    first = next(k for k, gate in enumerate(said) if gate in unlikely)
    assert all(gate in unlikely for gate in said[first:])
