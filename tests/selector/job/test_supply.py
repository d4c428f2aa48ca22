import pytest

from catalog import load_catalog
from selector.job.supply import Racked, presumed, stated, taken_as
from selector.requirement.workshop import Stock

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
