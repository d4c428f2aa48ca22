import numpy as np
import pytest

from catalog import load_catalog
from selector.duty.pair import left_open, pair_gate
from selector.job.job import resolved
from selector.need.words import gaps
from tests.dog import GONE, asked

MATE = {"material": "cast ring", "hardness": "40 HRC"}


def near(changes=None):
    return resolved(asked(changes), load_catalog())


@pytest.mark.parametrize(
    ("should", "hrc", "verdict", "words"),
    [
        ("mate", 55.0, "pass", "the mate wears"),
        ("part", 55.0, "marginal", "the mate wears: 55 HRC here against 40 HRC"),
        ("part", 30.0, "pass", "this part wears"),
        (
            "mate",
            30.0,
            "marginal",
            "this part wears: 30 HRC here against 40 HRC of cast ring; ",
        ),
    ],
)
def test_which_of_the_pair_wears_is_answered(should, hrc, verdict, words):
    job = near({"zone.0.mate": {**MATE, "should_wear": should}})
    gate = pair_gate(np.full(8, hrc), job.leading, job.asked)
    assert gate.verdict == verdict
    assert words in gate.text


def test_a_pair_that_may_go_either_way_says_how_often():
    job = near({"zone.0.mate": {**MATE, "should_wear": "mate"}})
    gate = pair_gate(np.array([38.0, 45.0, 45.0, 45.0]), job.leading, job.asked)
    assert gate.verdict == "marginal"
    assert "the other way round 25 times in 100" in gate.text


@pytest.mark.parametrize(
    "mate",
    [GONE, {"material": "ring", "should_wear": "mate"}, {**MATE, "should_wear": "either"}],
    ids=["none", "hardness unknown", "either"],
)
def test_a_pair_that_cannot_or_need_not_be_judged(mate):
    job = near({} if mate is GONE else {"zone.0.mate": mate})
    assert pair_gate(np.full(4, 50.0), job.leading, job.asked) is None


@pytest.mark.parametrize(
    ("mate", "said"),
    [
        ({}, "Which should wear, this part or brass ring, is not said: let it be the one"),
        ({"should_wear": "part"}, "for this part wears for certain only if it is 4 HRC"),
        ({"should_wear": "mate"}, "for brass ring wears for certain only if it is 4 HRC"),
    ],
)
def test_which_of_a_pair_ought_to_wear_is_asked_back(mate, said):
    given = asked({"zone.0.mate": {"material": "brass ring", **mate}})
    assert said in left_open(given.zone[0])
    assert any(said in sentence for sentence in gaps(given))


def test_a_pair_that_is_answered_by_its_window_is_not_asked_back():
    mate = {"material": "brass ring", "hardness": "90 HB", "should_wear": "mate"}
    assert left_open(asked({"zone.0.mate": mate}).zone[0]) is None


@pytest.mark.parametrize(
    ("material", "asked_back"),
    [("bridle leather", False), ("gritty clay", False), ("graphite packing", False),
     ("oak block", False), ("pump gland packing", False), ("wet sand", False),
     ("cast iron", True), ("bronze bush", True), ("EN8 roller", True), ("silver steel", True),
     ("rail steel", True), ("glass-hard steel ring", True)],
)  # fmt: skip
def test_nobody_is_asked_for_the_hardness_of_leather(material, asked_back):
    for wearing in ("mate", "either"):
        zone = asked({"zone.0.mate": {"material": material, "should_wear": wearing}}).zone[0]
        assert (left_open(zone) is not None) is asked_back
