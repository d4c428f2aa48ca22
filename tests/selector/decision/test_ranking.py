import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from selector.decision.criteria import range_table
from selector.decision.ranking import pairwise_share, reference_ideal
from selector.requirement.priority import CRITERIA
from tests.criteria_library import matrix_of, method
from tests.examples import few

COUNT = len(CRITERIA)
UNIT = st.floats(0, 1)
POINTS = arrays(float, COUNT, elements=st.floats(0.01, 1)).map(lambda w: w / w.sum())


def merits(options, samples=None):
    shape = (options, COUNT) if samples is None else (samples, options, COUNT)
    return arrays(float, shape, elements=UNIT)


def expected(scores):
    """Return the mean of each option by itself: over columns it may round by their number."""
    return np.array([column.copy().mean() for column in scores.T])


@given(merits(5), POINTS)
@settings(max_examples=few(40))
def test_it_is_the_method_of_scikit_criteria_row_by_row(merit, weights):
    matrix = matrix_of(merit, np.sqrt(weights))
    theirs = method("rim.RIM").evaluate(
        matrix, ref_ideals=[(1.0, 1.0)] * COUNT, ranges=[(0.0, 1.0)] * COUNT
    )
    np.testing.assert_allclose(
        reference_ideal(merit, weights), theirs.e_.score, rtol=1e-9, atol=1e-12
    )


@given(merits(4), POINTS)
def test_ideal_is_one_worst_is_nil_the_rest_between(merit, weights):
    assert reference_ideal(np.ones(COUNT), weights) == pytest.approx(1)
    assert reference_ideal(np.zeros(COUNT), weights) == pytest.approx(0)
    weighed = reference_ideal(merit, weights)
    assert weighed.shape == (4,)
    assert ((weighed >= 0) & (weighed <= 1)).all()


@given(merits(1), POINTS, st.integers(0, COUNT - 1), UNIT)
def test_more_merit_never_lowers_the_index(merit, weights, place, more):
    better = merit.copy()
    better[0, place] = max(merit[0, place], more)
    low, high = reference_ideal(merit, weights), reference_ideal(better, weights)
    assert (high >= low - 1e-12).all()


@given(merits(3), st.integers(0, COUNT - 1))
def test_a_criterion_without_weight_is_not_looked_at(merit, place):
    weights = np.ones(COUNT)
    weights[place] = 0.0
    weights /= weights.sum()
    other = merit.copy()
    other[:, place] = 1 - merit[:, place]
    np.testing.assert_allclose(reference_ideal(merit, weights), reference_ideal(other, weights))


@given(merits(6, 8), POINTS, st.sets(st.integers(0, 5), min_size=2, max_size=5))
def test_options_that_come_or_go_change_neither_order_nor_shares(merit, weights, kept):
    kept = sorted(kept)
    every = reference_ideal(merit, weights)
    few = reference_ideal(merit[:, kept], weights)
    np.testing.assert_array_equal(every[:, kept], few)
    order = [k for k in np.argsort(-expected(every), kind="stable") if k in kept]
    assert [kept[k] for k in np.argsort(-expected(few), kind="stable")] == order
    for a, i in enumerate(kept):
        for b, j in enumerate(kept):
            assert pairwise_share(few[:, a], few[:, b]) == pairwise_share(
                every[:, i], every[:, j]
            )


@given(st.floats(0, 1e6), st.floats(0, 1e6), POINTS)
def test_values_beyond_the_range_count_as_its_end(cost, worse, weights):
    table = range_table(100.0, 100.0, None)
    place = CRITERIA.index("cost")
    row = table[place]

    def index(value):
        values = [r.ideal for r in table]
        values[place] = value
        merit = np.array([float(r.merit(v)) for r, v in zip(table, values, strict=True)])
        return float(reference_ideal(merit, weights))

    dear, cheap = row.worst + worse, row.ideal / (1 + cost)
    assert index(dear) == pytest.approx(index(row.worst), abs=1e-12)
    assert index(cheap) == pytest.approx(index(row.ideal), abs=1e-12)


@given(arrays(float, 16, elements=UNIT), arrays(float, 16, elements=UNIT))
def test_shares_of_a_pair_add_up_to_one(first, second):
    assert pairwise_share(first, second) + pairwise_share(second, first) == pytest.approx(1)
    assert pairwise_share(first, first) == 0.5
    assert pairwise_share(first + 2, second) == 1
