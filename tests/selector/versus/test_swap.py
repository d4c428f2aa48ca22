import pytest

from selector.figure import median
from selector.option.cost import bar_per_kg
from selector.versus.side import Pair
from selector.versus.swap import swaps
from tests.selector.versus.test_side import CATALOG, PAIR, near, side

SWAPS = {(swap.axis, swap.by): swap for swap in swaps(PAIR)}
PLACES = [key for key, swap in SWAPS.items() if swap.at is not None]


def costs(pair):
    return [median(bill.cost) for bill in pair.bills()]


def test_cheap_with_care_loses_to_better_with_simple_at_a_stated_quantity():
    turn = SWAPS["quantity", "cost"]
    assert turn.ahead_now == "first"
    assert turn.at is not None
    before = costs(PAIR.of_quantity(turn.at - 1))
    after = costs(PAIR.of_quantity(turn.at))
    assert before[0] <= before[1]
    assert after[0] > after[1]
    assert f"from {turn.at:.0f} (pieces)" in turn.text


def test_at_the_hourly_rate_where_they_swap_both_cost_the_same():
    turn = SWAPS["hourly rate", "cost"]
    assert turn.at is not None
    first, second = costs(PAIR.at_prices({"labour_per_h": turn.at}))
    assert first == pytest.approx(second, rel=0.02)


def test_at_the_crack_rate_where_they_swap_both_cost_the_same():
    turn = SWAPS["crack rate", "cost"]
    assert turn.unit == "of the first"
    assert turn.at is not None
    first, second = costs(PAIR.first_cracking(turn.at))
    assert first == pytest.approx(second, rel=0.02)


def test_at_the_price_where_they_swap_both_cost_the_same():
    turn = SWAPS["bar price", "cost"]
    assert turn.now == pytest.approx(
        bar_per_kg(PAIR.second.treatment, CATALOG.prices)
        / bar_per_kg(PAIR.first.treatment, CATALOG.prices),
        rel=1e-3,
    )
    assert turn.at is None
    assert "never" in turn.text


def test_a_failure_dear_enough_turns_the_cost_where_the_cheaper_fails_more():
    assert SWAPS["failure cost", "cost"].at is None  # here the cheaper fails less
    heavy = near({"load.torque": "1150 N m", "part.feature": []})
    names = ("c45/cold-drawn/as-bought/none", "42crmo4/prehard/prehard-bar/none")
    pair = Pair(side(names[0], heavy), side(names[1], heavy), heavy)
    turn = swaps(pair)[-1]
    assert turn.ahead_now == "first"
    first, second = (
        cost + turn.at * option.judged.failing_all
        for cost, option in zip(costs(pair), pair.options(), strict=True)
    )
    assert first == pytest.approx(second, rel=0.02)


@pytest.mark.parametrize("key", PLACES, ids=" by ".join)
def test_every_place_lies_where_it_was_looked_for(key):
    swap = SWAPS[key]
    assert swap.low <= swap.at <= swap.high
