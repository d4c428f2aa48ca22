import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from selector.decision.comparison import (
    other_methods,
    places,
    set_apart,
    topsis,
    weighted_sum,
)
from selector.requirement.priority import CRITERIA
from tests.criteria_library import matrix_of, method
from tests.examples import few

COUNT = len(CRITERIA)
POINTS = arrays(float, COUNT, elements=st.floats(0.01, 1)).map(lambda w: w / w.sum())
EVEN = np.full(COUNT, 1 / COUNT)


def merits(options):
    return arrays(float, (options, COUNT), elements=st.floats(0, 1))


def random_table(seed):
    rng = np.random.default_rng(seed)
    merit = rng.beta(0.7, 0.7, (rng.integers(2, 30), COUNT))
    weights = rng.dirichlet(np.ones(COUNT))
    return merit, weights, matrix_of(merit, weights)


@pytest.mark.parametrize("seed", range(20))
def test_they_are_those_of_scikit_criteria(seed):
    merit, weights, matrix = random_table(seed)
    for ours, theirs in (
        (weighted_sum(merit, weights), method("simple.WeightedSumModel").evaluate(matrix)),
        (topsis(merit, weights), method("topsis.TOPSIS").evaluate(matrix)),
    ):
        score = theirs.e_.score if "score" in theirs.e_ else theirs.e_.similarity
        np.testing.assert_allclose(ours, score, rtol=0, atol=1e-12)
        assert places(ours) == tuple(theirs.rank_)


@pytest.mark.parametrize("seed", range(20))
def test_spotis_is_one_minus_the_weighted_sum_and_left_out(seed):
    merit, weights, matrix = random_table(seed)
    theirs = method("spotis.SPOTIS").evaluate(matrix, bounds=np.array([(0.0, 1.0)] * COUNT))
    shortfall = 1.0 - weighted_sum(merit, weights)
    np.testing.assert_allclose(theirs.e_.score, shortfall, rtol=0, atol=1e-12)


@given(merits(5), POINTS)
@settings(max_examples=few(10))
def test_other_methods_place_every_option_and_agree_on_one_that_dominates(merit, weights):
    merit = 0.1 + 0.6 * merit
    merit[2] = 0.95
    weighed = other_methods(merit, weights)
    assert len({heard.method for heard in weighed}) == len(weighed) == 3
    for heard in weighed:
        assert len(heard.places) == 5
        assert heard.places[2] == 1


def test_a_single_option_has_nothing_to_compare():
    assert other_methods(np.ones((1, COUNT)), EVEN) == ()
    assert other_methods(np.empty((0, COUNT)), EVEN) == ()


def test_options_alike_in_all_that_carries_weight_have_no_order():
    merit = np.full((3, COUNT), 0.5)
    assert not set_apart(merit, EVEN)
    assert np.isnan(topsis(merit, EVEN)).all()
    merit[1, 0] = 0.9
    assert set_apart(merit, EVEN)
    without = EVEN.copy()
    without[0] = 0.0
    assert other_methods(merit, without) == ()


def test_an_also_ran_can_turn_topsis_but_not_the_weighted_sum():
    weights = np.array([0.5, 0.5])
    two = np.array([[0.9, 0.45], [0.5, 0.8]])
    three = np.vstack([two, [0.9, 0.0]])
    assert places(weighted_sum(two, weights)) == places(weighted_sum(three, weights)[:2])
    assert places(topsis(two, weights)) != places(topsis(three, weights)[:2])
