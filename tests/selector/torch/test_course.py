"""One part in one flame: up to a stop by way of those before it, and held there."""

from dataclasses import replace

import numpy as np
import pytest

from selector.heat.operator import LATE_S
from selector.torch.course import (
    HOLDS_S,
    MIDDLE_STOP,
    RISING,
    course,
    middle_course,
    middle_log_flame,
    rise,
)
from tests.tasks import size, task

PAST_MM = 5.0


@pytest.mark.parametrize("stop", range(5))
def test_a_rise_ends_at_its_stop_and_goes_on_from_the_one_before(stop):
    part = task()
    found = rise(part, PAST_MM, 1.0, stop)
    assert found.reached
    assert found.history.temperature_c.max() >= part.stops_c[stop] - 1.0
    assert np.all(np.diff(found.history.time_s) > 0.0)
    if stop:
        before = rise(part, PAST_MM, 1.0, stop - 1).history
        count = before.time_s.size
        assert np.array_equal(found.history.time_s[:count], before.time_s)
        assert np.array_equal(found.history.temperature_c[:, :count], before.temperature_c)
        assert found.history.stored_j > before.stored_j


def test_a_rise_that_falls_short_ends_with_patience_and_is_the_same_for_hotter_stops():
    short = replace(task(changes=size(30)), patience_s=20.0)
    first = rise(short, PAST_MM, 0.1, 0)
    assert not first.reached
    assert first.history.time_s[-1] == 20.0
    assert rise(short, PAST_MM, 0.1, 4) is first


def test_a_course_is_seen_on_its_way_up_and_at_each_hold():
    part = task(changes=size(12))
    found = course(part, PAST_MM, 0.5, MIDDLE_STOP)
    up = rise(part, PAST_MM, 0.5, MIDDLE_STOP).history
    stopped_s = up.time_s[-1] + LATE_S
    assert found.time_s[RISING:] == pytest.approx(stopped_s + np.array(HOLDS_S))
    assert np.all(found.time_s[:RISING] < stopped_s)
    assert found.temperature_c.max() <= found.hottest_c


def test_the_middle_course_is_that_of_the_flame_that_leaves_time_to_stop():
    part = task(changes=size(12))
    share = float(np.exp(middle_log_flame(part, PAST_MM)))
    assert share < 1.0
    kept, anew = middle_course(part, PAST_MM, 1), course(part, PAST_MM, share, 1)
    assert np.array_equal(kept.temperature_c, anew.temperature_c)
