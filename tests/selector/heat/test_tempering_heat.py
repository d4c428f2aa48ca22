import math

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.boiling import Bath
from selector.heat.conduction import Plan, Stop, conduct
from selector.heat.grid import Section, bar_grid
from selector.heat.operator import seen_cell
from selector.heat.steel_property import heating_steel
from selector.heat.tempering_heat import EXCHANGE, run_back, soaked
from selector.heat.torch import AMBIENT_C, flame_boundary, torch
from selector.metallurgy.tempering import equivalent_time

CHISEL = bar_grid([Section(12.0, 150.0)])
WATER = Bath("water")


@pytest.fixture(scope="module")
def hot():
    """The chisel's end as it leaves the fire, red well behind the edge."""
    flame, stretch = torch("oxy-propane"), (0.0, 50.0)
    plan = Plan(600.0, stop=Stop(seen_cell(CHISEL, 20.0), 800.0))
    flat_out = flame_boundary(CHISEL, flame, stretch)
    red = conduct(CHISEL, heating_steel(), flat_out, AMBIENT_C, plan).end_c
    held = flame_boundary(CHISEL, flame, stretch, hold_c=800.0)
    return conduct(CHISEL, heating_steel(), held, red, Plan(20.0)).end_c


@pytest.mark.parametrize("means", EXCHANGE)
def test_a_part_comes_to_the_heat_around_it_and_not_beyond(means):
    found = soaked(bar_grid([Section(8.0, 50.0)]), means, 250.0, 3600.0)
    assert 245.0 <= found.peak_c.min() <= found.peak_c.max() <= 250.5
    assert 60.0 < found.arrived_s < 1800.0


def test_a_thick_part_takes_longer_than_its_draw():
    thin, thick = (
        soaked(bar_grid([Section(d, 50.0)]), "oven", 200.0, 1200.0) for d in (5.0, 40.0)
    )
    assert thin.arrived_s < 1200.0
    assert math.isinf(thick.arrived_s)


def test_an_hour_in_the_oven_draws_a_small_part_for_most_of_it():
    found = soaked(bar_grid([Section(8.0, 50.0)]), "furnace", 300.0, 3600.0)
    spent = equivalent_time(found.temperature_c, found.time_s, 300.0)
    assert 0.7 * 3600.0 < spent.min() < 3600.0


def test_the_heat_behind_a_dipped_end_runs_back_to_it(hot):
    found = run_back(CHISEL, hot, WATER, (20.0, 15.0), (250.0, 3.0))
    assert found.temperature_c[0, 0] < 100.0
    assert found.arrived_s < 120.0
    assert np.interp(3.0, found.along_mm, found.peak_c) == pytest.approx(250.0, abs=3.0)
    assert np.interp(15.0, found.along_mm, found.peak_c) > 255.0


def test_a_longer_dip_leaves_a_slower_and_flatter_colour(hot):
    quick, slow = (
        run_back(CHISEL, hot, WATER, (20.0, seconds), (250.0, 3.0)) for seconds in (4.0, 15.0)
    )
    assert slow.arrived_s > 2.0 * quick.arrived_s
    spread = [
        np.interp(10.0, run.along_mm, run.peak_c) - np.interp(3.0, run.along_mm, run.peak_c)
        for run in (quick, slow)
    ]
    assert spread[1] < spread[0]


def test_a_part_cooled_out_never_comes_back(hot):
    found = run_back(CHISEL, hot, WATER, (200.0, 60.0), (250.0, 3.0))
    assert math.isinf(found.arrived_s)
    assert found.peak_c.max() < 100.0


def test_an_unknown_means_is_refused():
    with pytest.raises(OutOfRangeError, match=r"means must be one of oven.*'sun'"):
        soaked(CHISEL, "sun", 200.0, 60.0)
