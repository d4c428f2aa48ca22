"""What a trial is expected to narrow: laws, and the closed form of two normals."""

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp
from scipy.special import ndtri

from selector.trial.narrowing import (
    Trial,
    after_go,
    counted,
    expected_sd,
    narrowing,
    outcomes,
)
from tests.examples import few

COUNT = 64
VALUES = hnp.arrays(float, COUNT, elements=st.floats(-30, 70, allow_subnormal=False))
ERRORS = st.floats(0.05, 30)
EDGES = st.sampled_from([(), (55.0,), (38.0, 48.0, 55.0, 60.0)])


def normal(count: int = 4000) -> np.ndarray:
    """Return a standard normal by its quantiles."""
    return ndtri((np.arange(count) + 0.5) / count)


@settings(max_examples=few(60))
@given(VALUES, VALUES, ERRORS, ERRORS, EDGES)
def test_no_trial_widens_and_more_coupons_narrow_as_much(value, centre, scatter, bias, edges):
    trials = [Trial(centre, scatter, bias, n, edges) for n in (1, 2, 3)]
    shares = [narrowing(value, outcomes(trial)) for trial in trials]
    assert min(shares) >= 0.0
    assert all(more >= less - 1e-6 for less, more in itertools.pairwise(shares))


@settings(max_examples=few(30))
@given(VALUES, EDGES)
def test_a_useless_test_narrows_nothing(value, edges):
    # Its reading has nothing to do with what differs between the samples.
    same = np.full(COUNT, 50.0)
    assert narrowing(value, outcomes(Trial(same, 2.0, 1.0, 3, edges))) == pytest.approx(
        0, abs=1e-6
    )
    wild = Trial(value, 1e6, 0.0, 3, edges)
    assert narrowing(value, outcomes(wild)) == pytest.approx(0, abs=1e-3)


@settings(max_examples=few(30))
@given(VALUES, ERRORS, ERRORS, st.integers(1, 3), EDGES)
def test_the_outcomes_of_a_sample_have_chance_one(centre, scatter, bias, count, edges):
    seen = outcomes(Trial(centre, scatter, bias, count, edges))
    np.testing.assert_allclose(seen.likelihood.sum(axis=0), 1.0, rtol=1e-9)


@pytest.mark.parametrize("error", [0.5, 1.0, 2.0, 5.0])
@pytest.mark.parametrize("count", [1, 4])
def test_two_normals_give_the_closed_posterior(error, count):
    # Prior N(50, 2²), mean of n readings N(x, error²/n): 1/sd² = 1/2² + n/error².
    value = 50.0 + 2.0 * normal()
    closed = (1 / 2.0**2 + count / error**2) ** -0.5
    seen = outcomes(Trial(value, error, 0.0, count))
    assert expected_sd(value, seen) == pytest.approx(closed, rel=0.01)


def test_a_lasting_error_of_the_test_does_not_average_out():
    value = 50.0 + 2.0 * normal()
    closed = (1 / 2.0**2 + 1 / (1.5**2 + 1.0**2 / 100)) ** -0.5
    seen = outcomes(Trial(value, 1.0, 1.5, 100))
    assert expected_sd(value, seen) == pytest.approx(closed, rel=0.01)


def test_what_changes_from_heat_to_heat_stays():
    lasting, again = 2.0 * normal(400), 1.5 * np.random.default_rng(1).permutation(normal(400))
    seen = outcomes(Trial(lasting, 2.0, 0.0, 4))
    closed = np.hypot(1.5, (1 / 2.0**2 + 4 / 2.0**2) ** -0.5)
    assert expected_sd(lasting + again, seen) == pytest.approx(closed, rel=0.03)


def test_a_sorting_test_with_many_edges_is_one_that_measures():
    value = 50.0 + 2.0 * normal(1000)
    fine = tuple(np.arange(30.0, 70.0, 0.2))
    sorted_by = narrowing(value, outcomes(Trial(value, 1.0, 0.0, 1, fine)))
    measured = narrowing(value, outcomes(Trial(value, 1.0, 0.0, 1)))
    assert sorted_by == pytest.approx(measured, abs=0.005)


def test_one_edge_at_the_middle_without_error_halves_a_normal():
    # Half a normal has the variance 1 − 2/π.
    value = normal()
    seen = outcomes(Trial(value, 1e-6, 0.0, 1, (0.0,)))
    assert expected_sd(value, seen) == pytest.approx((1 - 2 / np.pi) ** 0.5, rel=0.02)


def test_a_go_makes_a_good_part_likelier():
    value = 50.0 + 3.0 * normal(500)
    seen = outcomes(Trial(value, 1.0, 0.0, 1))
    good = value >= 48.0
    chance, right = after_go(good, seen, seen.within(48.0, np.inf))
    assert chance == pytest.approx(good.mean(), abs=0.03)
    assert right > good.mean()
    none, unknown = after_go(good, seen, seen.within(500.0, np.inf))
    assert none == 0.0
    assert np.isnan(unknown)


def test_cracks_are_counted_by_the_binomial_law():
    # Two equally likely rates, 0 and ½: one coupon whole leaves ½ ÷ (1 + ½) for the second.
    rate = np.array([0.0, 0.5])
    seen = counted(rate, 1)
    np.testing.assert_allclose(seen.likelihood, [[1.0, 0.5], [0.0, 0.5]])
    left = 0.75 * (1 / 3 * 2 / 3) * 0.25
    assert expected_sd(rate, seen) == pytest.approx(left**0.5)
    shares = [narrowing(rate, counted(rate, n)) for n in range(1, 6)]
    assert shares == sorted(shares)


def test_nothing_uncertain_cannot_narrow():
    same = np.full(16, 54.0)
    assert narrowing(same, outcomes(Trial(same, 1.0, 0.0, 1))) == 0.0
