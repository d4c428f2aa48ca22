import pytest

from selector.advice.advise import advise
from selector.advice.let_in import let_in, way_of
from selector.advice.why import why
from tests.dog import asked, only

DEAR = {"limit": {"budget": 150, "currency": "EUR"}}


@pytest.fixture(scope="module")
def advice():
    return advise(asked(DEAR), only("42crmo4"))


def test_a_furnace_lets_in_what_wants_one_and_its_result_is_told(advice):
    stopped = [i for i in advice.rejected if i.treatment.route.slug == "through-furnace"]
    found = let_in(advice, stopped)
    change = found["42crmo4", "through-furnace"]
    assert "furnace" in change.text
    assert change.id.startswith("42crmo4/")
    assert change.passing_all > 0.0


def test_a_firm_and_money_together_let_in_what_wants_both(advice):
    stopped = [i for i in advice.rejected if i.treatment.route.slug == "subcontract-vacuum"]
    change = let_in(advice, stopped)["42crmo4", "subcontract-vacuum"]
    assert change.text.startswith("Sent out to a firm")


def test_what_no_change_lets_in_is_left_out(advice):
    stopped = [i for i in advice.rejected if i.gate.name == "response"]
    assert stopped
    found = let_in(advice, stopped)
    assert all(way_of(item.treatment) not in found for item in stopped)


def test_why_carries_the_change(advice):
    ways = why(advice, "through-furnace")
    assert any(way.change is not None for way in ways if way.place is None)
    assert all(way.change is None for way in ways if way.place is not None)


def test_where_lives_depend_on_it_nothing_is_let_in():
    brake = advise(asked({"safety_use": "brake"}), only("c45"))
    assert let_in(brake, brake.rejected) == {}
