from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.figure import median
from selector.job.job import resolved
from selector.option.prediction import predict
from selector.option.preparation import prepare
from selector.option.temper_choice import Choice
from selector.versus.axis import bar_per_kg, of_quantity
from selector.versus.option_id import option_of
from selector.versus.side import Side, both
from selector.versus.swap import swaps
from tests.dog import asked

CATALOG = load_catalog()
CAREFUL = "c45/cold-drawn/through-torch.oil/oven-200c-60min"
SIMPLE = "42crmo4/annealed/subcontract-vacuum.oil/furnace-200c-60min"
SENT_OUT = {"workshop.subcontract": True}


def near(changes=None):
    return resolved(asked({**SENT_OUT, **(changes or {})}), CATALOG)


def side(name, job):
    treatment, temper = option_of(name, job)
    ready = prepare(treatment, job)
    return Side(ready, predict(ready, temper, job), Choice(temper, None, 50.0, 2.0))


JOB = near()
PAIR = (side(CAREFUL, JOB), side(SIMPLE, JOB))
SWAPS = {(swap.axis, swap.by): swap for swap in swaps(PAIR, JOB)}
PLACES = [key for key, swap in SWAPS.items() if swap.at is not None]


def costs(pair, job):
    return [median(one.cost(job)) for one in pair]


def test_cheap_with_care_loses_to_better_with_simple_at_a_stated_quantity():
    turn = SWAPS["quantity", "cost"]
    assert turn.ahead_now == "first"
    assert turn.at is not None
    before = costs(PAIR, of_quantity(JOB, turn.at - 1))
    after = costs(PAIR, of_quantity(JOB, turn.at))
    assert before[0] <= before[1]
    assert after[0] > after[1]
    assert f"from {turn.at:.0f} (pieces)" in turn.text


def test_at_the_hourly_rate_where_they_swap_both_cost_the_same():
    turn = SWAPS["hourly rate", "cost"]
    assert turn.at is not None
    prices = CATALOG.prices.model_copy(update={"labour_per_h": turn.at})
    there = replace(JOB, catalog=replace(CATALOG, prices=prices))
    first, second = costs(PAIR, there)
    assert first == pytest.approx(second, rel=0.02)


def test_at_the_crack_rate_where_they_swap_both_cost_the_same():
    turn = SWAPS["crack rate", "cost"]
    assert turn.unit == "of the first"
    assert turn.at is not None
    first, second = costs((PAIR[0].cracking(turn.at), PAIR[1]), JOB)
    assert first == pytest.approx(second, rel=0.02)


def test_at_the_price_where_they_swap_both_cost_the_same():
    turn = SWAPS["bar price", "cost"]
    assert turn.now == pytest.approx(
        bar_per_kg(PAIR[1].treatment, CATALOG.prices)
        / bar_per_kg(PAIR[0].treatment, CATALOG.prices),
        rel=1e-3,
    )
    assert turn.at is None
    assert "never" in turn.text


def test_a_failure_dear_enough_turns_the_cost_round_where_the_cheaper_fails_more():
    assert SWAPS["failure cost", "cost"].at is None  # here the cheaper fails less
    heavy = near({"load.torque": "1150 N m", "part.feature": []})
    names = ("c45/cold-drawn/as-bought/none", "42crmo4/prehard/prehard-bar/none")
    pair = (side(names[0], heavy), side(names[1], heavy))
    turn = swaps(pair, heavy)[-1]
    assert turn.ahead_now == "first"
    first, second = (
        cost + turn.at * option.judged.failing_all
        for cost, option in zip(costs(pair, heavy), both(pair, heavy), strict=True)
    )
    assert first == pytest.approx(second, rel=0.02)


@pytest.mark.parametrize("key", PLACES, ids=" by ".join)
def test_every_place_lies_where_it_was_looked_for(key):
    swap = SWAPS[key]
    assert swap.low <= swap.at <= swap.high
