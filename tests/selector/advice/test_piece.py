import pytest

from selector.advice.advise import advise
from selector.advice.piece import pieces, without, worth
from selector.errors import RequirementError
from tests.dog import asked, only

KNOWN = only("c45", "42crmo4")
SHOP = {"workshop.heat": [{"source": "oxy-propane"}, {"source": "kitchen-oven"}]}


def test_every_piece_of_a_workshop_can_be_taken_away():
    whole = asked({**SHOP, "workshop.subcontract": True})
    for name in pieces(whole.workshop):
        assert name not in pieces(without(whole, name).workshop)


def test_what_it_has_not_got_is_refused_with_what_it_has():
    with pytest.raises(RequirementError, match="oxy-propane"):
        without(asked(SHOP), "kiln")


def test_a_piece_is_worth_what_comes_first_with_and_without_it():
    whole = advise(asked(SHOP), KNOWN)
    less = advise(without(asked(SHOP), "kitchen-oven"), KNOWN)
    said = worth(whole, less, "kitchen-oven")
    assert said.startswith("With kitchen-oven: ")
    assert "Without it: " in said


def test_a_torch_that_is_the_only_heat_is_worth_everything():
    whole = advise(asked(), KNOWN, route="local-torch")
    less = advise(without(asked(), "oxy-propane"), KNOWN, route="local-torch")
    assert worth(whole, less, "oxy-propane").startswith("Without oxy-propane nothing is left.")
    assert "either" in worth(less, less, "oxy-propane")


def test_what_changes_nothing_says_so():
    whole = advise(asked(SHOP), KNOWN)
    assert "makes no difference" in worth(whole, whole, "magnet")
