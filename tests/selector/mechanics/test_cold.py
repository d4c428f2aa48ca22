import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.mechanics.cold import pearlitic_transition_c

CARBON = st.floats(0.0, 0.8)


@given(CARBON, CARBON)
def test_more_carbon_is_never_tougher_in_the_cold(first, second):
    few, much = sorted((first, second))
    assert pearlitic_transition_c(few) <= pearlitic_transition_c(much)


@given(st.floats(0.005, 0.1), st.floats(1.0, 5.0))
def test_a_finer_grain_is_never_more_brittle(grain, times):
    fine, coarse = (pearlitic_transition_c(0.2, grain_mm=g) for g in (grain, grain * times))
    assert fine <= coarse


def test_beyond_full_pearlite_carbon_adds_nothing():
    assert pearlitic_transition_c(1.2) == pytest.approx(pearlitic_transition_c(0.8))
