"""The simulated end-quench bar: monotone, steady under step and grid, read both ways."""

import math

import numpy as np
import pytest

from selector.heat.end_quench import (
    FARTHEST_MM,
    NEAREST_MM,
    end_quench_rate_c_per_s,
    end_quench_time_s,
    equivalent_distance_mm,
    rate_at,
    simulate,
    standard_bar,
    time_between,
)


def test_time_grows_and_rate_falls_along_the_bar():
    bar = standard_bar()
    assert np.all(np.diff(bar.time_700_500_s) > 0.0)
    assert np.all(np.diff(bar.rate_704_c_per_s) < 0.0)
    assert bar.distance_mm[0] < NEAREST_MM
    assert bar.distance_mm[-1] > FARTHEST_MM


def test_distance_and_time_are_inverse():
    distance = np.array([1.5, 4.76, 12.7, 38.1, 80.0])
    assert equivalent_distance_mm(end_quench_time_s(distance)) == pytest.approx(distance)


def test_ends_are_held_and_the_never_hot_stays_unknown():
    computed = equivalent_distance_mm([0.01, 1e6, math.inf, math.nan])
    assert computed[:3].tolist() == pytest.approx([NEAREST_MM, FARTHEST_MM, FARTHEST_MM])
    assert math.isnan(computed[3])


def test_step_and_grid_move_the_distance_by_a_hundredth_at_most():
    usual = standard_bar()
    fine = simulate(fineness=2.0, tolerance_k=0.1)
    place = np.geomspace(2.0, 80.0, 12)

    def log_time(bar):
        return np.interp(np.log(place), np.log(bar.distance_mm), np.log(bar.time_700_500_s))

    assert np.abs(log_time(usual) - log_time(fine)).max() < 0.015


def test_spray_matters_near_the_end_only():
    weak, strong = (simulate(h) for h in (10e3, 40e3))
    ratio = np.interp(
        [2.0, 25.4], weak.distance_mm, weak.time_700_500_s / strong.time_700_500_s
    )
    assert ratio[0] > 1.8
    assert ratio[1] < 1.1


def test_time_sees_a_vapour_stage_that_the_rate_does_not():
    """Falls fast through 704 °C, then lingers: one rate, two times."""
    quick = time_between([0.0, 1.0, 2.0], [800.0, 650.0, 450.0])
    lingers = time_between([0.0, 1.0, 9.0], [800.0, 650.0, 450.0])
    rates = [rate_at([0.0, 1.0, t], [800.0, 650.0, 450.0]) for t in (2.0, 9.0)]
    assert rates[0] == pytest.approx(rates[1])
    assert lingers > 5.0 * quick


def test_time_counts_from_the_last_fall():
    """Reheated: only the second cooling counts."""
    history = [800.0, 400.0, 800.0, 400.0]
    assert float(time_between([0.0, 1.0, 2.0, 12.0], history)) == pytest.approx(5.0)


def test_histories_that_do_not_cross():
    times = time_between([0.0, 1.0], [[650.0, 400.0], [900.0, 600.0], [900.0, 800.0]])
    assert math.isnan(times[0])
    assert math.isinf(times[1])
    assert not np.isfinite(times[2])


def test_rate_is_read_from_the_bar():
    assert end_quench_rate_c_per_s(25.4) == pytest.approx(6.0, rel=0.05)
    assert end_quench_rate_c_per_s([1.0, 1.5])[0] == end_quench_rate_c_per_s(1.5)
