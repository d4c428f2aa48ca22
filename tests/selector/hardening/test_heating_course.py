import numpy as np
import pytest

from selector.hardening.heating_course import (
    ARRIVING_C,
    first_s,
    heating_rate,
    held_s,
    tempered_s,
)
from selector.metallurgy.tempering import equivalent_time

TIME_S = np.linspace(0.0, 60.0, 121)
UP = np.minimum(20.0 + 20.0 * TIME_S, 820.0)


def test_the_rate_is_that_through_the_critical_range():
    assert heating_rate(TIME_S, UP) == pytest.approx(20.0)


def test_what_never_passes_a_level_has_the_last_instant():
    assert first_s(TIME_S, UP, 420.0) == pytest.approx(20.0)
    assert first_s(TIME_S, UP, 900.0) == 60.0


def test_arriving_is_no_hold_and_a_hold_counts_in_full():
    held = held_s(TIME_S, UP, np.asarray(20.0))
    assert held[80] == pytest.approx(0.0, abs=1.0)
    assert held[-1] - held[80] == pytest.approx(20.0)
    assert ARRIVING_C / 20.0 > 1.0


def test_many_histories_are_read_as_each_alone():
    both = np.stack([UP, np.minimum(UP, 700.0)])
    rates = heating_rate(TIME_S, both)
    held = held_s(TIME_S, both, rates)
    np.testing.assert_allclose(held[0], held_s(TIME_S, UP, rates[0]))


def test_tempering_so_far_ends_as_the_whole_is_counted():
    found = tempered_s(TIME_S, UP)
    assert found[-1] == pytest.approx(float(equivalent_time(UP, TIME_S, 600.0)))
    assert (np.diff(found) >= 0.0).all()
