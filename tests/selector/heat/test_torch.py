import math
from typing import get_args

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.heat.torch import TorchName, ceiling_c, heating, max_diameter_mm

SOURCES = get_args(TorchName)


@given(st.sampled_from(SOURCES), st.floats(3.0, 50.0), st.floats(700.0, 900.0))
def test_thicker_bars_and_higher_heats_take_longer(source, diameter, target):
    time = float(heating(source, diameter, 25.0, target).time_s)
    assert float(heating(source, diameter * 1.2, 25.0, target).time_s) >= time
    assert float(heating(source, diameter, 25.0, target + 50).time_s) >= time


@pytest.mark.parametrize("source", SOURCES)
def test_firebricks_never_hurt(source):
    sizes = np.array([4.0, 8.0, 12.0, 20.0, 40.0])
    in_hearth = heating(source, sizes, 25.0, 800.0, hearth=True)
    assert np.all(in_hearth.time_s <= heating(source, sizes, 25.0, 800.0).time_s)


def test_a_hand_torch_heats_silver_steel_rod_but_not_a_thick_bar():
    answer = heating("hand-propane", [6.0, 10.0, 40.0], 25.0, 800.0)
    assert answer.reachable.tolist() == [True, True, False]
    assert math.isinf(answer.time_s[2])
    assert answer.hardened_depth_mm.tolist() == pytest.approx([3.0, 5.0, 0.0])


def test_no_operator_heats_faster_than_he_can_stop():
    answer = heating("oxy-acetylene", [3.0, 6.0, 10.0], 20.0, 850.0)
    assert np.all(answer.rate_c_per_s <= 30.0 + 1e-9)


def test_a_strong_flame_on_a_thick_bar_hardens_a_skin():
    answer = heating("oxy-acetylene", [10.0, 30.0], 25.0, 850.0)
    assert answer.hardened_depth_mm[0] == pytest.approx(5.0)
    assert answer.hardened_depth_mm[1] < 5.0


def test_more_gas_helps_until_the_flux_limits():
    starved, usual, rich = heating("oxy-acetylene", 30.0, 15.0, 850.0, [1.0, 5.0, 50.0]).time_s
    assert starved > usual >= rich


def test_slow_heating_carries_heat_into_the_shank():
    slow, quick = (
        float(heating(source, 12.0, 20.0, 800.0).heat_affected_mm)
        for source in ("hand-propane", "oxy-acetylene")
    )
    assert slow > quick


def test_the_ceiling_bounds_what_is_reachable():
    ceiling = ceiling_c("hand-propane", 12.0, 25.0)
    below, above = heating("hand-propane", 12.0, 25.0, [ceiling - 10, ceiling + 10]).reachable
    assert below
    assert not above


def test_the_largest_diameter_is_reachable_and_the_next_is_not():
    largest = max_diameter_mm("hand-propane", 25.0, 800.0)
    inside, outside = heating("hand-propane", [largest, largest * 1.03], 25.0, 800.0).time_s
    assert inside <= 300.0 < outside


def test_no_diameter_is_reachable_beyond_the_flame():
    assert max_diameter_mm("hand-propane", 25.0, 1300.0) == 0.0
