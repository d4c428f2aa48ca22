import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.requirement.pairwise import consistency_ratio, matrix_of, oddest, principal

WEIGHTS = st.lists(st.floats(0.05, 1.0), min_size=2, max_size=9)


@given(WEIGHTS)
def test_comparisons_made_from_weights_give_them_back_without_contradiction(parts):
    weights = np.array(parts) / sum(parts)
    matrix = weights[:, None] / weights[None, :]
    computed, largest = principal(matrix)
    np.testing.assert_allclose(computed, weights, rtol=1e-9)
    assert largest == pytest.approx(len(parts))
    assert consistency_ratio(matrix) == pytest.approx(0.0, abs=1e-9)


@given(st.lists(st.sampled_from([1 / 9, 1 / 3, 1.0, 3.0, 9.0]), min_size=6, max_size=6))
def test_the_largest_eigenvalue_is_never_below_the_size(entries):
    matrix = np.ones((4, 4))
    matrix[np.triu_indices(4, 1)] = entries
    matrix = np.triu(matrix) + np.tril(1.0 / matrix.T, -1)
    weights, largest = principal(matrix)
    assert largest >= 4.0 - 1e-9
    assert weights.sum() == pytest.approx(1.0)
    assert consistency_ratio(matrix) >= 0.0


def test_two_criteria_cannot_contradict_each_other():
    assert consistency_ratio(matrix_of({("a", "b"): 9.0}, ("a", "b"))) == 0.0


def test_a_circle_is_found_and_named():
    circle = {("a", "b"): 2.0, ("b", "c"): 2.0, ("a", "c"): 1 / 9}
    matrix = matrix_of(circle, ("a", "b", "c"))
    assert consistency_ratio(matrix) > 0.1
    assert oddest(matrix) in {(0, 1), (0, 2), (1, 2)}
