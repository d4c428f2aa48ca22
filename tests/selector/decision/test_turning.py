import numpy as np
import pytest

from selector.decision.near_tie import leaders
from selector.decision.standing import expected, standing_of
from selector.decision.turning import cheapest, dearest, moved, turns
from selector.requirement.priority import CRITERIA


@pytest.fixture(scope="module")
def weights(advice):
    return np.array([advice.weights[name] for name in CRITERIA])


@pytest.fixture(scope="module")
def rivals(advice):
    """Two options of which the dearer is the better: each weight and price has its say."""
    standing = standing_of(advice.options, advice.asked, advice.ranges).of((0, 0))
    standing.right[:], standing.claims.ease[:], standing.claims.back[:] = True, 0, False
    standing.merit[0, :, CRITERIA.index("strength")] = 1.0
    standing.merit[1, :, CRITERIA.index("strength")] = 0.4
    # In the midst of the cost scale, which goes by the reference part.
    dear, cheap = 2.2 * advice.reference_cost, 1.8 * advice.reference_cost
    standing = standing.priced(0, dear / float(np.median(standing.cost[0])))
    return standing.priced(1, cheap / float(np.median(standing.cost[1])))


def first(standing, weights) -> int:
    return int(leaders(standing.claims, expected(standing, weights[None]))[0, 0])


def test_one_weight_moves_and_the_others_keep_their_proportions():
    after = moved(np.array([0.5, 0.3, 0.2]), 0, 0.75)
    np.testing.assert_allclose(after, [0.75, 0.15, 0.10])
    np.testing.assert_allclose(moved(np.array([1.0, 0.0, 0.0]), 0, 0.5), [0.5, 0.25, 0.25])


def test_the_first_stays_first_up_to_the_weight_named_and_no_further(rivals, weights):
    found = {turn.criterion: turn for turn in turns(rivals, weights)}
    assert list(found) == list(CRITERIA)
    cost, at = found["cost"], CRITERIA.index("cost")
    assert cost.above is not None
    assert cost.over == 1
    assert cost.below is None
    assert first(rivals, moved(weights, at, cost.above - 0.005)) == 0
    assert first(rivals, moved(weights, at, cost.above + 0.005)) == 1
    assert found["strength"].above is None


def test_every_turn_of_an_advice_is_one(advice, weights):
    standing = standing_of(advice.options, advice.asked, advice.ranges)
    for at, turn in enumerate(turns(standing, weights)):
        assert turn.now == pytest.approx(weights[at])
        for value, place, way in ((turn.below, turn.under, -1), (turn.above, turn.over, 1)):
            assert (value is None) == (place is None)
            if value is not None:
                beyond = moved(weights, at, min(max(value + 0.002 * way, 0.0), 1.0))
                assert first(standing, beyond) == place != 0


def test_the_first_stays_first_up_to_the_price_named_and_no_further(rivals, weights):
    factor, place = dearest(rivals, weights)
    assert place == 1
    assert first(rivals.priced(0, 0.99 * factor), weights) == 0
    assert first(rivals.priced(0, 1.01 * factor), weights) == 1


def test_the_second_is_first_once_it_is_cheap_enough(rivals, weights):
    factor = cheapest(rivals, weights)
    assert factor < 1.0
    assert first(rivals.priced(1, 1.03 * factor), weights) == 0
    assert first(rivals.priced(1, 0.97 * factor), weights) == 1
    # What is worse in all but a cost nobody weighs stays second at any price.
    uncosted = moved(weights, CRITERIA.index("cost"), 0.0)
    assert cheapest(rivals, uncosted) is None
    assert dearest(rivals, uncosted) is None
