from functools import cache

import pytest

from selector.figure import median
from selector.option.cost import bar_per_kg
from selector.versus.axis import Line
from selector.versus.side import Pair
from selector.versus.swap import _crossing, swaps
from tests.selector.versus.test_side import CATALOG, near, pair, side


@cache
def found():
    """Return where the two change places, by axis and measure."""
    return {(swap.axis, swap.by): swap for swap in swaps(pair())}


def costs(two):
    return [median(bill.cost) for bill in two.bills()]


def test_cheap_with_care_loses_to_better_with_simple_at_a_stated_quantity():
    turn = found()["quantity", "cost"]
    assert turn.ahead_now == "first"
    assert turn.at is not None
    before = costs(pair().of_quantity(turn.at - 1))
    after = costs(pair().of_quantity(turn.at))
    assert before[0] <= before[1]
    assert after[0] > after[1]
    assert f"from {turn.at:.0f} (pieces)" in turn.text


def test_at_the_hourly_rate_where_they_swap_both_cost_the_same():
    turn = found()["hourly rate", "cost"]
    assert turn.at is not None
    first, second = costs(pair().at_prices({"labour_per_h": turn.at}))
    assert first == pytest.approx(second, rel=0.02)


def test_at_the_crack_rate_where_they_swap_both_cost_the_same():
    turn = found()["crack rate", "cost"]
    assert turn.unit == "of the first"
    assert turn.at is not None
    first, second = costs(pair().first_cracking(turn.at))
    assert first == pytest.approx(second, rel=0.02)


def test_at_the_price_where_they_swap_both_cost_the_same():
    turn = found()["bar price", "cost"]
    assert turn.now == pytest.approx(
        bar_per_kg(pair().second.treatment, CATALOG.prices)
        / bar_per_kg(pair().first.treatment, CATALOG.prices),
        rel=1e-3,
    )
    assert turn.at is None
    assert "never" in turn.text


def test_a_failure_dear_enough_turns_the_cost_where_the_cheaper_fails_more():
    assert found()["failure cost", "cost"].at is None  # here the cheaper fails less
    heavy = near({"load.torque": "1150 N m", "part.feature": []})
    names = ("c45/cold-drawn/as-bought/none", "42crmo4/prehard/prehard-bar/none")
    two = Pair(side(names[0], heavy), side(names[1], heavy), heavy)
    turn = swaps(two)[-1]
    assert turn.ahead_now == "first"
    first, second = (
        cost + turn.at * option.judged.failing_all
        for cost, option in zip(costs(two), two.options(), strict=True)
    )
    assert first == pytest.approx(second, rel=0.02)


@pytest.mark.parametrize(("now", "at"), [(3.0, 2.0), (20.0, 30.0), (90.0, 30.0)])
def test_of_two_places_the_one_nearer_to_the_part_is_named(now, at):
    line = Line("hourly rate", "EUR/h", now, (1.0, 400.0), lambda _: pair())
    assert _crossing(lambda x: (x - 2.0) * (30.0 - x), line) == pytest.approx(at, rel=0.01)


def test_every_place_lies_where_it_was_looked_for():
    places = [swap for swap in found().values() if swap.at is not None]
    assert len(places) >= 3
    assert [swap for swap in places if not swap.low <= swap.at <= swap.high] == []
