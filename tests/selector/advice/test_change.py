import pytest

from catalog import load_catalog
from selector.advice.advise import SURE, advise
from selector.advice.altered import sent_out, thought_of
from selector.advice.change import (
    GAIN,
    STEELS,
    TOLD,
    changes,
    nearest,
    nearest_first,
    promising,
)
from selector.advice.output import advice_out
from tests.dog import GONE, asked, only

# A hardness that lies where 42CrMo4 turns brittle, by eye: a crayon gets past it.
SPRING_HARD = {
    "zone.0.hardness": {"min": "46 HRC", "max": "50 HRC", "must": True},
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
    bent = {"limit.runout": "0.012 mm", "workshop.stock": [{"steel": "115CrV3"}]}
    advice = advise(asked(bent), only("115crv3", "100cr6", "c60"))
    near = nearest_first(advice)
    mixed = 0
    for tenth in range(1, 11):
        level = [item for item in near if round(item.nearness(None), 1) == tenth / 10]
        racked = [item.treatment.stock is not None for item in level]
        assert racked == sorted(racked, reverse=True)
        mixed += len(set(racked)) > 1
    assert mixed
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


# A blade in cider: plain steel rusts, soft stainless steel is too soft, and nothing is at hand
# to harden the stainless steel that is hard enough.
CIDER = {
    "part.name": "blade",
    "part.feature": GONE,
    "part.section": [{"shape": "flat", "size": 2, "width": 25, "length": 160}],
    "zone.1": GONE,
    "zone.0.wear": "abrasive",
    "zone.0.severity": "light",
    "zone.0.hardness": {"min": "52 HRC", "max": "60 HRC", "must": True},
    "limit.corrosion": "severe",
    "load.torque": GONE,
    "workshop.heat": [],
    "workshop.bath": [],
}


def test_work_sent_out_is_tried_with_the_steels_that_it_alone_lets_in():
    stopped = advise(asked(CIDER), load_catalog())
    assert not stopped.options
    sent = next(iter(sent_out(stopped.asked)))
    steels = promising(stopped, sent)
    catalog = stopped.job.catalog
    assert nearest(stopped) < steels
    assert len(steels) <= 2 * STEELS
    let_in = [change for change in changes(stopped) if change.text.startswith(sent.text)]
    assert [catalog.steels[c.id.split("/")[0]].kind for c in let_in] == [
        "martensitic-stainless"
    ]


def test_a_demand_eased_is_tried_with_what_it_had_stopped(stuck):
    eased = {gate for change in thought_of(stuck) for gate in change.eases}
    assert {"hard_enough", "not_too_hard"} <= eased
    for change in thought_of(stuck):
        assert promising(stuck, change) >= nearest(stuck, change.eases)
