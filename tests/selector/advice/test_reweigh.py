import time

import pytest

from selector.advice.reweigh import reweighed
from selector.decision.standing import standing_of
from selector.requirement.priority import Priorities


@pytest.fixture(scope="module")
def standing(advice):
    return standing_of(advice.options, advice.asked, advice.ranges)


def test_the_weights_of_the_advice_give_its_order_and_scores(advice, standing):
    again = reweighed(standing, advice.asked.priorities)
    assert again.order == tuple(option.id for option in advice.options)
    for option in advice.options:
        assert again.scores[option.id] == pytest.approx(option.score, abs=1e-4)


def test_other_weights_give_another_order_and_shares_that_add_up(standing):
    orders = set()
    for preset in ("balanced", "wear", "toughness", "cheap", "quick", "safe hands"):
        again = reweighed(standing, Priorities(preset=preset))
        orders.add(again.order)
        assert set(again.order) == set(standing.ids)
        assert sum(again.first.values()) == pytest.approx(1.0, abs=0.01)
        assert sum(again.weights.values()) == pytest.approx(1.0, abs=0.01)
    assert len(orders) > 1


def test_it_takes_a_tenth_of_a_second_at_most(standing):
    reweighed(standing, Priorities())
    took = []
    for _ in range(3):
        begun = time.process_time()
        reweighed(standing, Priorities(preset="cheap"))
        took.append(time.process_time() - begun)
    assert min(took) < 0.1
