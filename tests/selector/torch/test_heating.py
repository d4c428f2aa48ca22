"""The library of heatings against heatings run one by one, on the same grid."""

from dataclasses import replace

import numpy as np
import pytest

from selector.heat.conduction import Plan, Stop, conduct
from selector.heat.operator import FASTEST_C_PER_S, LATE_S, SEEN_C, seen_cell
from selector.heat.steel_property import heating_steel
from selector.heat.torch import AMBIENT_C, flame_boundary
from selector.torch.course import (
    DULL_K,
    HOLDS_S,
    MELTS_C,
    MIDDLE_FLAME,
    MIDDLE_STOP,
    USUAL_HOLD_S,
    least_past_mm,
)
from selector.torch.heating import heatings
from selector.torch.history import field_at
from tests.tasks import is_reached, size, task


@pytest.fixture(scope="module")
def dog():
    part = task()
    return heatings(part, least_past_mm(part))


def test_axes_are_flames_stops_holds_and_cells(dog):
    cells = dog.grid.cells().size
    assert dog.over_c.shape == (3, len(dog.torching.stops_c), len(HOLDS_S), cells)
    assert dog.figures.shape == (*dog.over_c.shape[:3], 4, cells)
    assert np.isfinite(dog.over_c).all()
    assert np.isfinite(dog.log_tempered_s).all()


@pytest.mark.parametrize("stop", [0, 2, 4])
def test_one_heating_read_on_its_way_is_each_heating_of_its_own(dog, stop):
    grid, part = dog.grid, dog.torching
    steel, heated = heating_steel(), part.heated_mm(dog.past_mm)
    share = float(np.exp(dog.log_flame[MIDDLE_FLAME]))
    seen = seen_cell(grid, 0.5 * sum(part.part.zone_mm))
    full = flame_boundary(grid, part.flame, heated, share, part.hearth)
    held = flame_boundary(grid, part.flame, heated, share, part.hearth, part.stops_c[stop])
    up = conduct(grid, steel, full, AMBIENT_C, Plan(600.0, stop=Stop(seen, part.stops_c[stop])))
    late = conduct(grid, steel, full, up.end_c, Plan(LATE_S))
    hold = conduct(grid, steel, held, late.end_c, Plan(20.0))
    direct = np.maximum(late.temperature_c.max(axis=1), hold.temperature_c.max(axis=1))
    at = HOLDS_S.index(20.0)
    hot = direct > 700.0
    read = dog.over_c[MIDDLE_FLAME, stop, at] + part.stops_c[stop]
    assert np.abs(read - direct)[hot].max() < 6.0
    assert dog.to_stop_s[MIDDLE_FLAME, stop] == pytest.approx(up.time_s[-1], rel=0.02)


def test_a_place_is_hotter_the_later_and_the_longer_the_part_is_stopped(dog):
    peak = dog.over_c[MIDDLE_FLAME] + np.array(dog.torching.stops_c)[:, None, None]
    assert (np.diff(peak, axis=0) > -2.0).all()
    assert (np.diff(peak, axis=1) >= -1e-9).all()
    assert (np.diff(dog.log_tempered_s, axis=2) >= -1e-9).all()


@pytest.mark.parametrize("mm", [8, 14, 20, 28, 40])
def test_a_stronger_torch_never_heats_slower(mm):
    """The flame on the part rises with the strength, up to what leaves time to stop."""
    found = heatings(task(changes=size(mm)), 5.0)
    strengths = np.linspace(-1.0, 1.0, 41)
    stop_c = np.full(strengths.size, 830.0)
    used = found.effective_log(strengths, stop_c)
    assert (np.diff(used) >= 0.0).all()
    shortest = (830.0 - AMBIENT_C) / FASTEST_C_PER_S
    log_time = np.interp(used[-1], found.log_flame, np.log(found.to_stop_s[:, MIDDLE_STOP]))
    assert np.exp(log_time) > 0.8 * shortest


def test_a_hand_torch_on_a_hearth_heats_12_mm_and_40_mm_never():
    small, big = (task("hand-torch", size(mm)) for mm in (12, 40))
    assert is_reached(heatings(small, least_past_mm(small)), 800.0)
    assert not is_reached(heatings(big, least_past_mm(big)), 800.0)


def test_the_flame_goes_as_little_past_the_zone_as_brings_its_edge_to_heat():
    part = task(changes=size(12))
    assert 0.0 < least_past_mm(part) <= 18.0
    whole = task(changes={"zone.0.section": [1, 2]})
    assert whole.part.is_whole
    assert whole.heated_mm(least_past_mm(whole)) == (0.0, whole.part.length_mm)


@pytest.mark.parametrize("mm", [12, 25])
def test_a_flame_that_sweeps_a_long_part_goes_over_its_ends(mm):
    """A hand sees the ends dull and stays with them: they come as hot as the middle."""
    whole = task(changes={**size(mm), "zone.0.section": [1, 2]})
    found = heatings(whole, least_past_mm(whole))
    rows = found.grid.cells().tolist()
    ends, middle = (
        [rows.index(seen_cell(found.grid, z)) for z in at] for at in ([0, 180], [90])
    )
    peak = found.over_c[MIDDLE_FLAME, MIDDLE_STOP, HOLDS_S.index(USUAL_HOLD_S)]
    assert peak[middle].min() - peak[ends].min() < DULL_K
    # Swept between its ends alone it leaves them far below.
    short = heatings(whole, 0.0).over_c[MIDDLE_FLAME, MIDDLE_STOP, HOLDS_S.index(USUAL_HOLD_S)]
    assert short[middle].min() - short[ends].min() > 2.0 * DULL_K


def test_a_thin_neck_in_a_strong_flame_melts_and_no_model_stops_the_work():
    neck = {"part.section.0.size": 30, "part.section.1.size": 4}
    found = heatings(task("oxy-acetylene", neck), 30.0)
    assert np.isfinite(found.field_c).all()
    assert found.hottest_c.max() > 0.9 * MELTS_C


def test_a_part_heated_whole_is_as_hot_at_its_far_end():
    whole = task(changes={**size(12), "part.section.1.length": 30, "zone.0.section": [1, 2]})
    found = heatings(whole, 0.0)
    peak = found.field_c[MIDDLE_STOP, HOLDS_S.index(40.0)]
    assert peak.min() > 700.0


def test_the_field_lies_between_its_nodes(dog):
    low, between, high = (field_at(dog, 830.0, hold) for hold in (20.0, 24.0, 28.0))
    assert np.allclose(between, 0.5 * (low + high))


def at_middle(field):
    """A figure of the middle flame and stop."""
    return float(field[MIDDLE_FLAME, MIDDLE_STOP])


def test_bricks_help_a_small_torch():
    """The same bar that stays below the heat in the open gets there on a hearth."""
    bricked = task("hand-torch", size(22))
    bare = replace(bricked, hearth=False)
    reached = [is_reached(heatings(part, 4.0), 830.0) for part in (bare, bricked)]
    assert reached == [False, True]


def test_the_thin_end_of_a_thick_body_is_as_even_as_a_thin_bar():
    """What stays cold behind the end takes no part in its side to side."""
    stepped = {"part.section.0.size": 10, "part.section.1.size": 40}
    one, other = (
        heatings(replace(task(changes=changes), turns=False), 0.0)
        for changes in (stepped, size(10))
    )
    assert at_middle(one.uneven_k) < 2.0 * at_middle(other.uneven_k)


def test_a_still_part_is_uneven_and_a_turned_one_is_not():
    part = task(changes=size(25))
    turned, still = (heatings(replace(part, turns=turns), 5.0) for turns in (True, False))
    assert at_middle(turned.uneven_k) < SEEN_C < at_middle(still.uneven_k)


def test_a_thin_part_in_a_wide_flame_needs_no_turning():
    found = heatings(replace(task("hand-torch", size(6)), turns=False), 5.0)
    assert at_middle(found.uneven_k) < 1.0


@pytest.mark.parametrize("mm", [3, 6, 10])
def test_a_strong_flame_on_a_thin_bar_is_turned_down_and_a_thick_one_takes_it_all(mm):
    thin = heatings(task("oxy-acetylene", size(mm)), 5.0)
    thick = heatings(task(changes=size(30)), 5.0)
    at_c = np.array([850.0])
    assert thin.effective_log(np.zeros(1), at_c)[0] < 0.0
    assert thick.effective_log(np.zeros(1), at_c)[0] == 0.0


def test_who_lingers_heats_the_middle():
    found = heatings(task(changes=size(25)), 5.0)
    core = found.grid.cells().tolist().index(found.grid.cell(0.0, 15.0))
    peak = [field_at(found, 850.0, hold)[core] for hold in (0.0, 20.0, 80.0)]
    assert peak == sorted(peak)
    assert peak[0] < 800.0 < 830.0 < peak[-1]


@pytest.mark.parametrize("source", ["hand-torch", "oxy-propane", "oxy-acetylene", "forge"])
def test_the_efficiency_is_a_share(source):
    assert 0.0 < heatings(task(source, size(16)), 5.0).efficiency < 1.0
