import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from selector.hazards.one_sided import bath_side_k, bow_mm
from selector.sampling import shared


@given(st.floats(0.5, 200.0), st.floats(4.0, 60.0))
def test_a_slower_bath_pulls_less(time_s, diameter):
    quick, slow = bath_side_k([time_s, 2.0 * time_s], diameter, 1.0)
    assert 0.0 < slow <= quick <= 400.0


def test_a_side_is_never_farther_ahead_than_four_hundred_kelvin():
    assert bath_side_k(0.01, 60.0, [-4.0, 4.0]).tolist() == [-400.0, 400.0]


def test_the_sign_is_that_of_the_sample():
    assert bath_side_k(5.0, 10.0, -1.0) == -bath_side_k(5.0, 10.0, 1.0)


def test_an_even_bath_bends_nothing():
    assert bow_mm(0.0, 10.0, 50.0, 150.0) == 0.0


@given(st.floats(5.0, 100.0))
def test_a_longer_hot_end_bends_more(hot):
    short, long = bow_mm(50.0, 10.0, [hot, 1.2 * hot], 150.0)
    assert short < long


def test_a_turned_end_dipped_at_once_stays_straight_and_a_through_quench_does_not():
    """Common practice, out of the sample of one-sidedness alone: slender part, same bath."""
    sample = shared()["bath_bias"]
    side = bath_side_k(1.4, 10.0, sample)
    end, whole = bow_mm(side, 10.0, 25.0, 200.0), bow_mm(side, 10.0, 200.0, 200.0)
    assert np.quantile(end, 0.9) < 0.1
    # The difference from side to side has no time to build up to its steady value in water.
    assert np.median(whole) > 0.15
    assert np.median(whole) > 6.0 * np.median(end)


def test_water_leaves_the_strain_that_practice_allows():
    """About 1.0e-3 across a slender bar in water, within the factor of two of that estimate."""
    strain = 1.4e-5 * float(bath_side_k(1.4, 10.0, 1.0))
    assert 0.5e-3 < strain < 2.0e-3
