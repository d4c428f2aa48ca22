from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.job.supply import (
    Racked,
    at_hand,
    at_hand_words,
    presumed,
    stated,
    taken_as,
)
from selector.requirement.workshop import Stock
from tests.dog import work

STEELS = load_catalog().steels


def bar(condition):
    return Stock(steel="any", condition=condition)


def test_the_label_of_a_bar_may_say_more_than_its_condition():
    assert stated(bar("normalised, black")) == {"normalised"}
    assert stated(bar("as it came")) == set()


@pytest.mark.parametrize(
    ("steel", "condition", "answer"),
    [
        ("c45", "cold-drawn", ("cold-drawn",)),
        ("c45", "normalised", ("hot-rolled",)),
        ("42crmo4", "prehard", ("prehard",)),
        ("42crmo4", "normalised", ("annealed",)),
        ("115crv3", "hot-rolled", ("annealed",)),
        ("c45", "prehard", ()),
        ("115crv3", "hard-element", ()),
    ],
)
def test_a_bar_is_in_a_condition_its_steel_is_listed_in(steel, condition, answer):
    assert taken_as(bar(condition), STEELS[steel]) == answer


def test_a_bar_without_a_condition_may_be_in_any_but_that_of_a_hard_element():
    assert taken_as(bar(None), STEELS["c45"]) == ("hot-rolled", "cold-drawn")
    assert taken_as(bar(None), STEELS["linear-shaft"]) == ()


def test_every_steel_with_a_soft_condition_takes_every_soft_bar():
    for steel in STEELS.values():
        soft = {c.name for c in steel.condition} & {"normalised", "hot-rolled", "annealed"}
        if soft:
            assert taken_as(bar("normalised"), steel)


def test_what_is_judged_in_another_condition_is_said():
    stock = [Racked(bar(name), STEELS["c45"]) for name in ("normalised", "cold-drawn")]
    assert presumed(stock) == ["C45 normalised: judged as hot-rolled bar."]


@pytest.mark.parametrize(
    ("name", "condition"),
    [
        ("EN24T", "prehard"),
        ("817M40T", "prehard"),
        ("4140PH", "prehard"),
        ("42CrMo4+QT", "prehard"),
        ("C45+C", "cold-drawn"),
        ("1018 CD", "cold-drawn"),
        ("EN16U", "prehard"),
    ],
)
def test_a_bar_named_by_its_condition_is_in_it(name, condition):
    (steel,) = load_catalog().find(name)
    assert taken_as(Stock(steel=name), steel) == (condition,)


def test_what_a_bar_is_said_to_be_goes_before_its_name():
    (steel,) = load_catalog().find("EN24T")
    assert taken_as(Stock(steel="EN24T", condition="annealed"), steel) == ("annealed",)


def test_a_bar_at_hand_is_had_before_any():
    racked = replace(work("60wcrv8"), stock=Stock(steel="60WCrV8"))
    assert at_hand(racked) > at_hand(work("c45")) > at_hand(work("60wcrv8"))
    assert at_hand_words(racked) == "in the rack"
