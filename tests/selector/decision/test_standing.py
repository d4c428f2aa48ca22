import numpy as np
import pytest

from selector.decision.near_tie import leaders
from selector.decision.option import Scorer
from selector.decision.preference import in_order
from selector.decision.standing import COST, expected, outcomes, standing_of
from selector.requirement.priority import CRITERIA


@pytest.fixture(scope="module")
def standing(advice):
    return standing_of(advice.options, advice.asked, advice.ranges)


def weights_of(seed: int) -> np.ndarray:
    return np.random.default_rng(seed).dirichlet(np.ones(len(CRITERIA)))


@pytest.mark.parametrize("seed", range(8))
def test_the_order_by_any_weights_is_that_of_the_options_scored_anew(advice, standing, seed):
    weights = weights_of(seed)
    scorer = Scorer(advice.ranges, weights)
    anew = [scorer.option(option.judged, option.choice) for option in advice.options]
    mean = outcomes(standing, weights).mean(axis=1)
    order = leaders(standing.claims, mean[:, None], len(mean))[:, 0]
    assert [standing.ids[k] for k in order] == [o.id for o in in_order(anew, advice.asked)]


def test_by_the_weights_given_it_is_the_order_of_the_advice(advice, standing):
    weights = np.array([advice.weights[name] for name in CRITERIA])
    scores = outcomes(standing, weights)
    np.testing.assert_array_equal(scores, [option.scores for option in advice.options])
    order = leaders(standing.claims, scores.mean(axis=1)[:, None], len(scores))[:, 0]
    assert order.tolist() == list(range(len(scores)))


def test_expected_scores_are_the_means_of_the_outcomes(standing):
    sets = np.array([weights_of(seed) for seed in range(5)])
    means = np.array([outcomes(standing, weights).mean(axis=1) for weights in sets]).T
    np.testing.assert_allclose(expected(standing, sets), means, atol=1e-6)


def test_weights_of_their_own_for_each_sample_are_those_of_all_where_they_are_alike(standing):
    weights = weights_of(1)
    many = np.tile(weights, (standing.merit.shape[1], 1))
    np.testing.assert_allclose(outcomes(standing, many), outcomes(standing, weights))


def test_leaders_are_different_options_in_every_case(standing):
    scores = np.random.default_rng(2).uniform(size=(len(standing.ids), 40))
    lead = leaders(standing.claims, scores, 3)
    assert all(len(set(column)) == 3 for column in lead.T)


def test_a_few_of_a_standing_keep_what_is_theirs(standing):
    some = standing.of((1, 0))
    assert some.ids == (standing.ids[1], standing.ids[0])
    np.testing.assert_array_equal(some.cost[0], standing.cost[1])


def test_another_price_moves_cost_merit_and_what_is_inside_the_budget(standing):
    dear = standing.priced(0, 3.0)
    np.testing.assert_allclose(dear.cost[0], 3.0 * standing.cost[0])
    assert (dear.merit[0, :, COST] <= standing.merit[0, :, COST]).all()
    np.testing.assert_array_equal(dear.merit[1:], standing.merit[1:])
    assert dear.passing[0].sum() <= standing.passing[0].sum()
    np.testing.assert_allclose(standing.priced(0, 1.0).merit, standing.merit)
