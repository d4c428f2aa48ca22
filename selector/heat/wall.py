"""Walls of the compiled step: each surface where conduction to it balances what leaves it."""

import math

import numpy as np
from numpy.typing import NDArray

from selector.heat.exchange import Boundary
from selector.heat.layout import (
    AREA,
    CELL,
    FLUX,
    GAP,
    INFLOW,
    KEEPS,
    MIXED,
    STIFF,
    SURFACE,
    THETA,
    TRIAL,
    WAITING,
    Layout,
)
from selector.heat.steel_property import Table
from selector.heat.sweep import compiled, joined

Floats = NDArray[np.float64]


@compiled
def place(x: float, size: int) -> np.uint32:
    """Return the interval of an even table that holds a place; beyond it the last one.

    Parameters
    ----------
    x : float
        Place in steps of the table. [-]
    size : int
        Number of entries. [-]

    Returns
    -------
    uint32
        First entry of the interval. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    last = float(size - 2)
    inside = x if x > 0.0 else 0.0
    return np.uint32(inside if inside < last else last)


@compiled
def mix_curves(boundary: Boundary, time_s: float, mix: Floats, clock: Floats) -> None:
    """Set the share of each curve at each wall at a time, unless it is set already.

    Parameters
    ----------
    boundary : Boundary
        What is around the part. [-]
    time_s : float
        The time. [s]
    mix : ndarray
        Shares, shape (walls, curves); changed in place. [-]
    clock : ndarray
        Holds at MIXED the time for which they are set, at KEEPS until when they stay as they
        are; changed in place. [-]

    Returns
    -------
    None
        Nothing. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    if clock[MIXED] == time_s or clock[MIXED] < time_s < clock[KEEPS]:
        return
    knot, share, keeps_s = boundary.knot_s, boundary.share, math.inf
    for w in range(mix.shape[0]):
        k = 0
        while k < knot.shape[1] - 2 and time_s >= knot[w, k + 1]:
            k += 1
        width = knot[w, k + 1] - knot[w, k]
        part = (time_s - knot[w, k]) / width if width > 0.0 else 1.0
        part = part if part > 0.0 else 0.0
        part = part if part < 1.0 else 1.0
        changes = False
        for c in range(mix.shape[1]):
            low, high = share[w, k, c], share[w, k + 1, c]
            mix[w, c] = low + part * (high - low)
            changes = changes or low != high
        if time_s < knot[w, k + 1]:
            keeps_s = min(keeps_s, time_s if changes else knot[w, k + 1])
    clock[MIXED], clock[KEEPS] = time_s, keeps_s


@joined
def _loss(
    boundary: Boundary, mix: Floats, w: np.uint64, surface_c: float
) -> tuple[float, float]:
    """Return the heat flux out of a wall and its slope with surface temperature."""
    curve, per = boundary.curve, boundary.per_c
    x = (surface_c - boundary.first_c) * per
    k = place(x, curve.shape[1])
    flux, slope = 0.0, 0.0
    for c in range(mix.shape[1]):
        if mix[w, c] != 0.0:
            rise = curve[c, k + np.uint32(1)] - curve[c, k]
            flux += mix[w, c] * (curve[c, k] + (x - k) * rise)
            slope += mix[w, c] * rise * per
    return flux, slope


@joined
def _settle(part: Layout, table: Table, boundary: Boundary, w: np.uint64, stage: int) -> bool:
    """Take a wall's surface one step of Newton nearer to its balance; say if it is there."""
    wall, values, per = part.wall, table.theta_by_c, table.per_c
    gap, at = wall[GAP, w], wall[TRIAL, w]
    x = (at - table.first_c) * per
    n = place(x, values.size)
    rise = values[n + np.uint32(1)] - values[n]
    k = rise * per
    q, dq = _loss(boundary, part.mix, w, at)
    # A falling boiling curve must not turn the step round.
    steep, least = k / gap + dq, 0.3 * k / gap
    excess = (part.cell[THETA, part.place[CELL, w]] - values[n] - (x - n) * rise) / gap - q
    move = excess / (steep if steep > least else least)
    move = move if move < 150.0 else 150.0
    move = move if move > -150.0 else -150.0
    wall[TRIAL, w] = at + move
    wall[FLUX, w] = q + dq * move
    dq = dq if dq > 0.0 else 0.0
    wall[STIFF + stage, w] = dq / (k + gap * dq)
    return bool(abs(move) < 0.01)


@compiled
def balance_walls(part: Layout, table: Table, boundary: Boundary, stage: int) -> None:
    """Find each surface temperature by Newton, and heat into cells through walls.

    Parameters
    ----------
    part : Layout
        The part after its theta is read; its walls and INFLOW are set in place. [-]
    table : Table
        The steel. [-]
    boundary : Boundary
        What is around the part, its curves mixed in `part`. [-]
    stage : int
        0 starts from the surface before the step, 1 from that of stage 0. [-]

    Returns
    -------
    None
        Nothing. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    cell, wall, place = part.cell, part.wall, part.place
    waiting = place[WAITING]
    for i in range(cell.shape[1]):
        cell[INFLOW, i] = 0.0
    for w in range(wall.shape[1]):
        waiting[w] = w
        if stage == 0:
            wall[TRIAL, w] = wall[SURFACE, w]
    count = wall.shape[1]
    for _ in range(20):
        # All walls side by side: one after the other each would wait for its own steps.
        left = 0
        for n in range(count):
            w = waiting[n]
            there = _settle(part, table, boundary, w, stage)
            waiting[left] = w
            left += 0 if there else 1
        count = left
        if count == 0:
            break
    for w in range(wall.shape[1]):
        cell[INFLOW, place[CELL, w]] -= wall[AREA, w] * wall[FLUX, w]
