import numpy as np
import pytest

from selector.metallurgy.cold_step import after_cold_step
from selector.metallurgy.martensite import hardness


def test_room_temperature_changes_nothing():
    assert float(after_cold_step(61.0, 0.7, 20.0)) == pytest.approx(61.0, abs=0.01)


def test_colder_is_harder_and_never_harder_than_martensite():
    ends = [float(after_cold_step(61.0, 0.7, cold)) for cold in (-20.0, -75.0, -190.0)]
    assert ends == sorted(ends)
    assert ends[0] > 61.0
    assert ends[-1] < float(hardness(0.7, 0.999))


def test_steel_that_kept_no_austenite_gains_nothing():
    full = hardness(0.4, 0.999)
    assert float(after_cold_step(full, 0.4, -75.0)) == pytest.approx(float(full), abs=0.01)


def test_what_is_soft_for_another_reason_is_not_made_hard():
    # A core of pearlite is no austenite: no more than a third of it is put down to that.
    gained = after_cold_step(np.array([30.0]), 0.8, -190.0)
    assert gained[0] < 55.0
