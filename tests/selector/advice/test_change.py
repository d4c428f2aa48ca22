import pytest

from selector.advice.advise import SURE, advise
from selector.advice.change import GAIN, TOLD, changes, nearest_first
from selector.advice.output import advice_out
from tests.dog import asked, only

# A hardness that lies where 42CrMo4 turns brittle, by eye: a crayon gets past it.
SPRING_HARD = {
    "zone.0.hardness": {"min": "44 HRC", "max": "48 HRC", "must": True},
    "workshop.heat": [{"source": "oxy-propane"}],
    "workshop.measure": ["eye"],
    "load.impact": "none",
}


@pytest.fixture(scope="module")
def stuck():
    return advise(asked(SPRING_HARD), only("42crmo4"))


@pytest.fixture(scope="module")
def found(stuck):
    """Changes that help, each of them weighed anew."""
    return changes(stuck)


def test_a_change_says_what_comes_of_it(found):
    assert found
    assert len(found) <= TOLD
    assert any(change.text.startswith("With a temperature crayon: ") for change in found)
    shares = [change.passing_all for change in found]
    assert shares == sorted(shares, reverse=True)


def test_what_came_as_near_is_taken_from_the_rack_first_then_the_usual():
    bent = {"limit.runout": "0.01 mm", "workshop.stock": [{"steel": "115CrV3"}]}
    advice = advise(asked(bent), only("115crv3", "100cr6", "c60"))
    near = nearest_first(advice)
    first = round(near[0].nearness(None), 1)
    level = [item for item in near if round(item.nearness(None), 1) == first]
    racked = [item.treatment.stock is not None for item in level]
    assert any(racked)
    assert racked == sorted(racked, reverse=True)
    assert sorted(map(id, near)) == sorted(map(id, advice.rejected))


def test_a_change_helps_by_enough_or_is_not_told(stuck, found):
    before = stuck.options[0].judged.passing_all if stuck.options else 0.0
    assert before < SURE
    assert all(change.passing_all >= before + GAIN for change in found)


def test_what_comes_right_is_left_alone():
    assert changes(advise(asked(), only("42crmo4"))) == ()


def test_where_lives_depend_on_it_nothing_is_eased():
    assert changes(advise(asked({**SPRING_HARD, "safety_use": "brake"}), only("42crmo4"))) == ()


def test_changes_are_weighed_where_they_are_asked_for(stuck, found, monkeypatch):
    monkeypatch.setattr("selector.advice.output.changes", {stuck: found}.get)
    assert advice_out(stuck).changes == ()
    assert advice_out(stuck, changed=True).changes == found
