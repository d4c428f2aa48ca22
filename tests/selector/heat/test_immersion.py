"""Dips: delay, part immersion, out and back, the wetting front, the bath that warms."""

import math

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.boiling import Bath
from selector.heat.conduction import Plan
from selector.heat.end_quench import equivalent_distance_mm, time_between
from selector.heat.grid import Section, bar_grid, round_grid
from selector.heat.immersion import Immersion, quench_boundary, quench_history
from selector.heat.steel_property import cooling_steel

BAR = bar_grid([Section(12.0, 120.0)])


def dipped(bath, immersion=None, grid=BAR, **how):
    seconds = how.pop("seconds", 20.0)
    boundary = quench_boundary(grid, bath, immersion, **how)
    return quench_history(grid, cooling_steel(), 850.0, (bath, boundary), Plan(seconds))


def at(history, grid, radius_mm, along_mm):
    watched = list(grid.cells())
    return history.temperature_c[watched.index(grid.cell(radius_mm, along_mm))]


def jominy_mm(history, grid, radius_mm, along_mm):
    spent = time_between(history.time_s, at(history, grid, radius_mm, along_mm))
    return float(equivalent_distance_mm(spent))


def test_delay_is_spent_in_air():
    history = dipped(Bath("water"), Immersion((3.0,), (math.inf,)))
    surface = at(history, BAR, 6.0, 60.0)
    before = np.interp(2.9, history.time_s, surface)
    after = np.interp(4.5, history.time_s, surface)
    assert 780.0 < before < 850.0
    assert after < before - 200.0


def test_only_what_is_under_the_surface_is_quenched():
    history = dipped(Bath("water"), Immersion((0.0,), (30.0,)), seconds=10.0)
    core = [at(history, BAR, 0.0, z)[-1] for z in (10.0, 25.0, 40.0, 80.0)]
    assert core[0] < 100.0
    assert np.all(np.diff(core) > 0.0)
    assert core[-1] > 650.0


def test_water_line_that_moves_up_reaches_places_in_turn():
    history = dipped(Bath("water"), Immersion((0.0, 6.0), (0.0, 120.0)), seconds=8.0)
    passed = [
        history.time_s[np.argmax(at(history, BAR, 6.0, z) < 500.0)] for z in (10.0, 60.0, 110.0)
    ]
    assert passed[0] < passed[1] - 1.5 < passed[2] - 3.0


def test_dip_the_end_and_let_the_heat_run_back():
    """Residual-heat tempering: the quenched end warms again from the shank, then is stopped."""
    twice = Immersion((0.0, 8.0, 8.1, 40.0, 40.1), (30.0, 30.0, 0.0, 0.0, math.inf))
    history = dipped(Bath("water"), twice, seconds=60.0)
    tip = at(history, BAR, 0.0, 12.0)
    cold = np.interp(8.0, history.time_s, tip)
    drawn = np.interp(40.0, history.time_s, tip)
    assert cold < 150.0
    assert drawn > cold + 50.0
    assert np.interp(55.0, history.time_s, tip) < 60.0


def test_hot_still_water_leaves_soft_spots():
    """The same bar in the same bath: hard where the film broke early, soft where it held."""
    long_bar = round_grid(12.0)

    def reach(bath_c, motion, draw):
        history = dipped(
            Bath("water", bath_c, motion), grid=long_bar, collapse_normal=draw, seconds=60.0
        )
        return jominy_mm(history, long_bar, 6.0, 0.0)

    early, late = reach(40.0, "none", -1.0), reach(40.0, "none", 1.0)
    assert early < 3.0
    assert late > 2.0 * early
    assert reach(70.0, "none", -1.0) > 7.0
    assert reach(20.0, "strong", 1.0) < 1.5 * reach(20.0, "strong", -1.0)


def test_wetting_front_comes_from_the_working_end():
    history = dipped(Bath("water", 40.0, "none"), seconds=30.0)
    assert jominy_mm(history, BAR, 6.0, 3.0) < 0.6 * jominy_mm(history, BAR, 6.0, 60.0)


def test_small_bath_quenches_worse_for_warming():
    cool, warm = (
        dipped(Bath("water", 25.0, "none"), bath_end_c=end, seconds=60.0)
        for end in (25.0, 70.0)
    )
    assert at(warm, BAR, 0.0, 60.0)[-1] > at(cool, BAR, 0.0, 60.0)[-1] + 30.0


@pytest.mark.parametrize("medium", ["brine", "water", "polymer", "fast-oil", "oil", "air"])
def test_every_medium_cools_and_never_below_its_bath(medium):
    grid = round_grid(20.0)
    history = dipped(Bath(medium), grid=grid, seconds=200.0)
    assert np.all(np.isfinite(history.temperature_c))
    assert history.end_c.min() >= (50.0 if "oil" in medium else 20.0) - 0.5
    assert -history.wall_heat_j.sum() == pytest.approx(history.stored_j, rel=1e-6)


def test_heat_given_off_in_the_dip_is_counted():
    history = dipped(Bath("oil"), seconds=120.0)
    kilograms = 7.65e3 * float(BAR.mesh.volume[BAR.active].sum())
    assert history.wall_heat_j.sum() / kilograms == pytest.approx(0.42e6, rel=0.15)


def test_bath_hotter_than_the_part_is_refused():
    grid, bath = round_grid(10.0), Bath("oil", 150.0)
    boundary = quench_boundary(grid, bath)
    with pytest.raises(OutOfRangeError, match=r"bath_temperature_c must be below .*got 150 °C"):
        quench_history(grid, cooling_steel(), 120.0, (bath, boundary), Plan(5.0))


def test_holder_cools_the_far_end():
    shank = [
        at(dipped(Bath("water"), Immersion((0.0,), (20.0,)), holder=h), BAR, 0.0, 118.0)[-1]
        for h in ("chuck", "tongs", "insulated")
    ]
    assert np.all(np.diff(shank) > 5.0)


@pytest.mark.parametrize(
    "immersion",
    [
        Immersion((1.0, 0.5), (10.0, 20.0)),
        Immersion((-1.0,), (10.0,)),
        Immersion((0.0,), (-3.0,)),
        Immersion((math.nan,), (10.0,)),
        Immersion((), ()),
        Immersion((0.0, 1.0), (10.0,)),
    ],
)
def test_schedule_that_is_none_is_refused(immersion):
    with pytest.raises(OutOfRangeError, match=r"immersion must be times from 0 upward.*; got "):
        quench_boundary(BAR, Bath("water"), immersion)


@pytest.mark.parametrize(
    "dip",
    [
        None,
        Immersion((3.0,), (math.inf,)),
        Immersion((0.0, 8.0, 8.1, 40.0, 40.1), (30.0, 30.0, 0.0, 0.0, math.inf)),
        Immersion((0.0, 2.0, 2.5, 3.0, 3.2, 9.0), (50.0, 50.0, 10.0, 10.0, 80.0, 0.0)),
    ],
    ids=["at once", "late", "out and back", "bobbing"],
)
def test_shares_of_every_wall_add_up_and_its_times_run_forward(dip):
    found = quench_boundary(BAR, Bath("water"), dip, bath_end_c=40.0, holder="tongs")
    np.testing.assert_allclose(found.share.sum(axis=2), 1.0, atol=1e-12)
    assert (found.share >= -1e-12).all()
    assert (np.diff(found.knot_s, axis=1) >= 0.0).all()


def test_a_wall_that_is_never_under_stays_in_air_and_one_that_leaves_returns_to_it():
    dip = Immersion((1.0, 20.0, 20.1), (60.0, 60.0, 0.0))
    found = quench_boundary(BAR, Bath("water"), dip)
    along, side = BAR.wall_along_mm(), BAR.wall_face == "side"
    dry, dipped_side = side & (along > 60.0), side & (along < 60.0)
    assert dry.any()
    assert (found.share[dry, :, 0] == 1.0).all()
    assert (found.share[dipped_side, :, 0].min(axis=1) == 0.0).all()
    late = found.knot_s[dipped_side] > 21.0
    assert late.any()
    assert (found.share[dipped_side, :, 0][late] == 1.0).all()
