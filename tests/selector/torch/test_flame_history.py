from dataclasses import replace

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.boiling import Bath
from selector.heat.grid import Section
from selector.heat.immersion import Immersion
from selector.heat.operator import Operator
from selector.heat.section_slice import Outline
from selector.heat.torch import torch
from selector.torch.flame_history import FlameJob, heat, heat_and_quench, quench

JOB = FlameJob(
    (Section(16.0, 25.0), Section(16.0, 100.0)),
    (0.0, 25.0),
    (0.0, 33.0),
    torch("oxy-propane"),
    Operator(850.0, hearth=True),
    Bath("water"),
)


@pytest.fixture(scope="module")
def cooled():
    return heat_and_quench(JOB)


def at(cooled, values, across, along):
    field = np.full(cooled.grid.active.size, np.nan)
    field[cooled.grid.cells()] = values
    return float(field[cooled.grid.cell(across, along)])


def test_every_cell_of_steel_has_its_history(cooled):
    count = cooled.grid.cells().size
    for values in (cooled.peak_c, cooled.rate_c_per_s, cooled.hold_s, cooled.drawn_s):
        assert values.shape == (count,)
        assert np.isfinite(values).all()


def test_only_what_was_hot_enough_has_a_time_of_cooling(cooled):
    hot = cooled.peak_c >= 700.0
    assert np.isfinite(cooled.distance_mm[hot]).all()
    assert np.isnan(cooled.time_700_500_s[~hot]).all()
    assert hot.any()
    assert not hot.all()


def test_the_rim_cools_before_the_core(cooled):
    rim, core = (at(cooled, cooled.time_700_500_s, r, 12.0) for r in (8.0, 0.0))
    assert rim < core


def test_oil_is_slower_than_water():
    heated, grid = heat(JOB)
    times = [
        at(c, c.time_700_500_s, 0.0, 12.0)
        for c in (quench(replace(JOB, bath=Bath(m)), heated, grid) for m in ("water", "oil"))
    ]
    assert times[1] > 1.5 * times[0]


def test_a_longer_hold_counts_longer(cooled):
    long = heat_and_quench(replace(JOB, operator=replace(JOB.operator, hold_s=80.0)))
    short, longer = (at(c, c.hold_s, 8.0, 12.0) for c in (cooled, long))
    assert short == pytest.approx(JOB.operator.hold_s, abs=8.0)
    assert longer == pytest.approx(80.0, abs=15.0)


def test_a_place_that_overshot_and_fell_back_has_held_less_than_the_clock():
    """A corner at its peak for a moment only dissolves little of what it would in the hold."""
    hot = replace(JOB, operator=replace(JOB.operator, hold_s=80.0))
    found = heat_and_quench(hot)
    corner = at(found, found.hold_s, 8.0, 0.0)
    assert corner < 0.9 * at(found, found.hold_s, 8.0, 12.0)


def test_a_bath_hotter_than_the_part_is_refused():
    heated, grid = heat(JOB)
    cold = replace(heated, end_c=np.full_like(heated.end_c, 30.0))
    with pytest.raises(OutOfRangeError, match=r"bath_temperature_c must be below .* 60 °C"):
        quench(replace(JOB, bath=Bath("oil", 60.0)), cold, grid)


def test_a_bore_that_leaves_no_wall_is_refused():
    thin = replace(JOB, sections=(Section(16.0, 25.0, 16.0), Section(16.0, 100.0)))
    with pytest.raises(OutOfRangeError, match=r"sections\[0\].bore_mm must be .*; got 16 mm"):
        heat_and_quench(thin)


def test_a_small_bath_warms_and_quenches_slower():
    """The bath must be large enough for the heat."""
    torching = replace(JOB, bath=Bath("oil"))
    heated, grid = heat(torching)
    large, small = (
        quench(replace(torching, bath_volume_l=litres), heated, grid) for litres in (50.0, 0.2)
    )
    core = [at(c, c.time_700_500_s, 0.0, 12.0) for c in (large, small)]
    assert core[1] > 1.05 * core[0]
    unsaid = quench(torching, heated, grid)
    assert at(unsaid, unsaid.time_700_500_s, 0.0, 12.0) == pytest.approx(core[0], rel=0.02)


def test_a_partial_dip_leaves_the_body_behind_it_slower():
    dip = Immersion((1.0, 1.3), (0.0, 15.0))
    heated, grid = heat(JOB)
    whole, part = (quench(replace(JOB, dip=d), heated, grid) for d in (None, dip))
    front = [at(c, c.time_700_500_s, 8.0, 5.0) for c in (whole, part)]
    behind = [at(c, c.time_700_500_s, 8.0, 25.0) for c in (whole, part)]
    assert front[1] == pytest.approx(front[0], rel=0.1)
    assert behind[1] > 3.0 * behind[0]
    hot = part.peak_c >= 700.0
    assert np.isfinite(part.distance_mm[hot]).all()


def test_a_place_that_left_its_range_in_the_flame_has_a_time_all_the_same(cooled):
    """The hold lets a place at the edge fall below 700 °C before the part leaves the flame."""
    assert np.isfinite(cooled.time_700_500_s[cooled.peak_c >= 700.0]).all()


def test_a_square_corner_cools_quicker_than_its_side():
    square = replace(JOB, outlines=(Outline("square", 16.0, round_mm=16.0), None))
    found = heat_and_quench(square)
    corner = at(found, found.at_corner.time_700_500_s, 8.0, 12.0)
    assert corner < 0.7 * at(found, found.time_700_500_s, 8.0, 12.0)
    assert at(found, found.corner_share, 8.0, 60.0) == 1.0
