"""Each wall settles where what conducts to it leaves it, and its curves are mixed by time."""

import numpy as np
import pytest
from numba import njit

from selector.heat.boiling import Bath
from selector.heat.exchange import SURFACE_C, convection, mixed, steady
from selector.heat.grid import Section, bar_grid
from selector.heat.immersion import quench_boundary
from selector.heat.layout import (
    AREA,
    CELL,
    FLUX,
    GAP,
    INFLOW,
    KEEPS,
    MIXED,
    SURFACE,
    THETA,
    TRIAL,
    WRITTEN,
    lay_out,
)
from selector.heat.steel_property import cooling_steel
from selector.heat.wall import balance_walls, mix_curves, place

GRID = bar_grid([Section(10.0, 8.0), Section(14.0, 6.0, 4.0)], fineness=0.3)
WALLS = GRID.wall_face.size
TABLE = cooling_steel().table()


@njit
def balanced(part, table, boundary):
    balance_walls(part, table, boundary, 0)


@njit
def mixed_at(boundary, time_s, mix, clock):
    mix_curves(boundary, time_s, mix, clock)


@njit
def placed(x, size):
    return place(x, size)


def fresh_clock():
    clock = np.zeros(WRITTEN)
    clock[MIXED] = np.nan
    return clock


def test_a_place_beyond_the_table_lies_in_its_last_interval():
    assert [placed(x, 5) for x in (-2.0, 0.0, 0.9, 1.0, 3.0, 9.0)] == [0, 0, 0, 1, 3, 3]


def test_surface_balances_what_conducts_to_it():
    bath = steady(GRID, {face: convection(4000.0, 20.0) for face in ("end", "side", "bore")})
    part = lay_out(GRID.mesh, np.zeros(GRID.active.shape), np.full(WALLS, 400.0), 3)
    rng = np.random.default_rng(3)
    inside_c = rng.uniform(300.0, 900.0, part.cell.shape[1])
    surface_c = TABLE.first_c + np.arange(TABLE.theta_by_c.size) / TABLE.per_c
    part.cell[THETA] = np.interp(inside_c, surface_c, TABLE.theta_by_c)
    mixed_at(bath, 0.0, part.mix, fresh_clock())
    balanced(part, TABLE, bath)
    found_c = part.wall[TRIAL]
    inner = part.cell[THETA][part.place[CELL]]
    conducted = (inner - np.interp(found_c, surface_c, TABLE.theta_by_c)) / part.wall[GAP]
    leaving = np.zeros(WALLS)
    for curve, share in zip(bath.curve, part.mix.T, strict=True):
        leaving += share * np.interp(found_c, SURFACE_C, curve)
    assert np.abs(part.wall[FLUX] - leaving).max() <= 1e-6 * np.abs(leaving).max()
    assert np.abs(conducted - leaving).max() <= 1e-4 * np.abs(leaving).max()
    assert np.array_equal(part.wall[SURFACE], np.full(WALLS, 400.0))
    lost = np.bincount(
        part.place[CELL].astype(int), part.wall[AREA] * part.wall[FLUX], part.cell.shape[1]
    )
    assert np.allclose(part.cell[INFLOW], -lost, rtol=1e-12)


def shares_at(boundary, time_s):
    return np.array(
        [
            [np.interp(time_s, knots, curve) for curve in shares.T]
            for knots, shares in zip(boundary.knot_s, boundary.share, strict=True)
        ]
    )


def test_curves_are_mixed_by_time_whatever_was_mixed_before():
    """The last of the walls is wetted after some seconds; from then on the shares stay."""
    dip = quench_boundary(GRID, Bath("oil"), bath_end_c=90.0)
    mix, clock = np.zeros((WALLS, dip.curve.shape[0])), fresh_clock()
    for time_s in (-1.0, 0.0, 0.5, 0.5, 2.0, 5.0, 9.0, 40.0, 300.0, 0.3, 40.0, 1.0, 2e7):
        mixed_at(dip, time_s, mix, clock)
        assert mix == pytest.approx(shares_at(dip, time_s), abs=1e-12)


def test_curves_stay_mixed_until_a_share_changes():
    air, flame = convection(10.0, 20.0), convection(200.0, 1500.0)
    share = np.zeros((WALLS, 4, 2))
    share[:, :, 0] = 1.0
    share[3, 2:] = 0.0, 1.0
    bath = mixed([air, flame], share, np.array([0.0, 2.0, 5.0, 9.0]))
    mix, clock = np.zeros((WALLS, 2)), fresh_clock()
    keeps = []
    for time_s in (0.5, 3.0, 6.0, 10.0):
        mixed_at(bath, time_s, mix, clock)
        keeps.append(clock[KEEPS])
    assert keeps == [2.0, 3.0, 9.0, np.inf]
