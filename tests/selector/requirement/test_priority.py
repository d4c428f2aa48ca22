from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from selector.requirement.priority import CRITERIA, Preset, Priorities


def weights(**data):
    return Priorities.model_validate(data).weights()


@pytest.mark.parametrize("preset", get_args(Preset))
def test_a_preset_weighs_every_criterion_and_adds_up_to_one(preset):
    computed = weights(preset=preset)
    assert set(computed) == set(CRITERIA)
    assert sum(computed.values()) == pytest.approx(1)
    assert all(weight > 0 for weight in computed.values())


@pytest.mark.parametrize(
    ("preset", "owner"),
    [
        ("wear", "hardness"),
        ("toughness", "snap_margin"),
        ("cheap", "cost"),
        ("quick", "days"),
        ("safe hands", "operator_sensitivity"),
    ],
)
def test_a_preset_puts_its_own_criterion_first(preset, owner):
    computed = weights(preset=preset)
    assert max(computed, key=computed.__getitem__) == owner
    assert computed[owner] > weights()[owner]


def test_nothing_said_is_balanced():
    assert weights() == weights(preset="balanced")


@given(st.permutations(CRITERIA), st.integers(1, len(CRITERIA)))
def test_an_order_weighs_in_its_order_and_the_rest_alike(order, count):
    named, rest = order[:count], order[count:]
    computed = weights(order=named)
    assert sum(computed.values()) == pytest.approx(1)
    placed = [computed[name] for name in named]
    assert placed == sorted(placed, reverse=True)
    assert len({round(computed[name], 12) for name in rest}) <= 1
    assert all(computed[name] < min(placed) for name in rest)


@given(st.dictionaries(st.sampled_from(CRITERIA), st.floats(0.01, 1000), min_size=1))
def test_points_count_by_their_share(points):
    computed = weights(points=points)
    assert sum(computed.values()) == pytest.approx(1)
    for name in CRITERIA:
        assert computed[name] == pytest.approx(points.get(name, 0) / sum(points.values()))


@given(st.floats(0.1, 3))
def test_only_the_ratio_of_points_counts(factor):
    once = weights(points={"cost": 30, "days": 10})
    more = weights(points={"cost": 30 * factor, "days": 10 * factor})
    assert more == pytest.approx(once)


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        ({"preset": "wear", "points": {"cost": 1}}, "only one of preset, order, points"),
        ({"order": ["cost"], "points": {"cost": 1}}, "only one of preset, order, points"),
        ({"points": {"cost": 0}}, "more than 0"),
        ({"points": {}}, "more than 0"),
        ({"points": {"cost": -1}}, "greater than or equal to 0"),
        ({"points": {"colour": 1}}, "colour"),
        ({"order": ["cost", "cost"]}, "without repetition"),
        ({"preset": "best"}, "best"),
    ],
)
def test_an_impossible_weighing_is_refused(data, rule):
    with pytest.raises(ValidationError, match=rule):
        Priorities.model_validate(data)


CYCLE = {"hardness/cost": 3, "cost/days": 3, "hardness/days": 1 / 3}


def test_comparisons_weigh_what_they_compare_and_nothing_else():
    computed = weights(pairwise={"hardness/cost": 3, "days/cost": 1 / 3, "hardness/days": 9})
    assert computed["hardness"] == pytest.approx(9 / 13)
    assert computed["cost"] == pytest.approx(3 / 13)
    assert computed["days"] == pytest.approx(1 / 13)
    assert sum(computed.values()) == pytest.approx(1)


def test_comparisons_that_agree_are_consistent_and_a_circle_is_not():
    agreed = Priorities(pairwise={"hardness/cost": 3, "cost/days": 3, "hardness/days": 9})
    assert agreed.inconsistency == pytest.approx(0.0, abs=1e-9)
    circle = Priorities(pairwise=CYCLE)
    assert circle.inconsistency > 0.1
    assert set(circle.oddest) <= {"hardness", "cost", "days"}
    assert Priorities().inconsistency == 0.0


@pytest.mark.parametrize(
    ("pairs", "message"),
    [
        ({"hardness/cost": 3, "cost/days": 2}, "Add hardness/days"),
        ({"hardness/beauty": 3}, "hardness/beauty"),
        ({"cost/cost": 3}, "two criteria"),
        ({"hardness": 3}, "two criteria"),
        ({"hardness/cost": 3, "cost/hardness": 2}, "compared once"),
        ({"hardness/cost": 12}, "less than or equal to 9"),
        ({}, "every pair"),
    ],
)
def test_comparisons_that_do_not_make_a_whole_are_refused(pairs, message):
    with pytest.raises(ValidationError, match=message):
        Priorities.model_validate({"pairwise": pairs})


def test_comparisons_and_points_are_one_too_many():
    with pytest.raises(ValidationError, match="only one of"):
        Priorities.model_validate({"pairwise": {"hardness/cost": 3}, "points": {"cost": 1}})
