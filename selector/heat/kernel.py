"""The compiled inner loop of conduction: a conserving implicit step with its own error check.

Enthalpy is the state. Its Kirchhoff integral theta makes the stencil linear, so one look-up
carries a steel's curves, and each step is a W-method of second order whose matrix is split by
direction. Importing this module loads the compiler; import it where it is needed.
"""

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from selector.heat.compiler import njit
from selector.heat.exchange import Boundary
from selector.heat.kept_loop import keep
from selector.heat.layout import (
    ACROSS,
    AFTER,
    ALONG,
    AREA,
    BEFORE,
    FIRST,
    FLUX,
    GIVEN,
    INFLOW,
    LINK,
    LOST,
    NEXT,
    NOW,
    PER_VOLUME,
    SECOND,
    SLOPE,
    SURFACE,
    SWEPT,
    THETA,
    TRIAL,
    WARMING,
    WRITTEN,
    Indices,
    Layout,
)
from selector.heat.steel_property import Table
from selector.heat.sweep import FAST, compiled, factor, joined, solve
from selector.heat.wall import balance_walls, mix_curves, place

Floats = NDArray[np.float64]

GAMMA = 1.0 - 1.0 / math.sqrt(2.0)  # second order and L-stable
SMALLEST_STEP_S = 1e-9


class Control(NamedTuple):
    """When to stop, how finely to step, and what to write down."""

    end_s: float
    tolerance_k: float
    longest_step_s: float
    stop_c: float
    stop_sign: float
    waits_for: int
    watch: Indices


@compiled
def _look_up(part: Layout, table: Table, stage: int) -> None:
    """Read theta at each cell's enthalpy; in the first stage what else goes with it."""
    cell, values, per = part.cell, table.theta, table.per_enthalpy
    celsius = table.temperature
    for i in range(cell.shape[1]):
        x = (cell[BEFORE + stage, i] - table.first_enthalpy) * per
        k = place(x, values.size)
        rise = values[k + np.uint32(1)] - values[k]
        cell[THETA, i] = values[k] + (x - k) * rise
        if stage == 0:
            cell[SLOPE, i] = rise * per
            cell[WARMING, i] = (celsius[k + np.uint32(1)] - celsius[k]) * per


@compiled
def _gain(part: Layout, step_s: float, stage: int) -> None:
    """Set the right side of a stage: the rise of enthalpy by all heat flowing in."""
    cell, across, along = part.cell, part.matrix[ACROSS, LINK], part.matrix[ALONG, LINK]
    columns, one = part.columns, np.uint64(1)
    for k in range(columns, columns + part.rows * columns):
        here = cell[THETA, k]
        flow = (
            across[k] * (cell[THETA, k + columns] - here)
            - across[k - columns] * (here - cell[THETA, k - columns])
            + along[k] * (cell[THETA, k + one] - here)
            - along[k - one] * (here - cell[THETA, k - one])
        )
        rise = step_s * (cell[INFLOW, k] + flow) * cell[PER_VOLUME, k]
        cell[FIRST + stage, k] = rise - 2.0 * cell[FIRST, k] if stage == 1 else rise


@joined
def _book(part: Layout, step_s: float, stage: int) -> None:
    """Add up the heat that walls gave off; after the first stage, set its enthalpy."""
    cell, wall = part.cell, part.wall
    for w in range(wall.shape[1]):
        heat = step_s * wall[AREA, w] * wall[FLUX, w] + wall[SWEPT, w]
        if stage == 1:
            heat = 1.5 * wall[LOST, w] + 0.5 * (heat - 2.0 * wall[LOST, w])
        wall[LOST, w] = heat
    if stage == 0:
        for i in range(cell.shape[1]):
            cell[AFTER, i] = cell[BEFORE, i] + cell[FIRST, i]


@compiled
def _finish(part: Layout) -> float:
    """Join the two stages and return the largest error in K."""
    cell = part.cell
    worst, total = 0.0, 0.0
    for i in range(cell.shape[1]):
        error = 0.5 * abs(cell[FIRST, i] + cell[SECOND, i]) * cell[WARMING, i]
        worst = error if error > worst else worst
        total += error
        cell[AFTER, i] = cell[BEFORE, i] + 1.5 * cell[FIRST, i] + 0.5 * cell[SECOND, i]
    return worst if math.isfinite(total) else math.inf


@joined
def _step(
    part: Layout, table: Table, boundary: Boundary, clock: Floats, step_s: float
) -> float:
    """Take a trial step for its error in K; what it changes is left in `part`."""
    scale = GAMMA * step_s
    for stage in range(2):
        mix_curves(boundary, clock[NOW] + stage * step_s, part.mix, clock)
        _look_up(part, table, stage)
        balance_walls(part, table, boundary, stage)
        _gain(part, step_s, stage)
        for direction in range(2):
            if stage == 0:  # the matrix stays that of the first stage
                factor(part, direction, scale)
            solve(part, direction, scale, stage)
        _book(part, step_s, stage)
    return _finish(part)


@joined
def _write(part: Layout, table: Table, watch: Indices, record: Floats, row: int) -> None:
    """Write the temperatures of the watched cells after a step."""
    values = table.temperature
    for n in range(watch.size):
        x = (part.cell[AFTER, watch[n]] - table.first_enthalpy) * table.per_enthalpy
        k = place(x, values.size)
        record[row, n] = values[k] + (x - k) * (values[k + np.uint32(1)] - values[k])


@joined
def _next_step(step_s: float, error: float) -> float:
    """Return the step that the error of the last one allows."""
    if not math.isfinite(error):
        return 0.1 * step_s
    ratio = 0.85 / math.sqrt(error if error > 1e-6 else 1e-6)
    ratio = ratio if ratio > 0.15 else 0.15
    return step_s * (ratio if ratio < 2.5 else 2.5)


@joined
def _accept(part: Layout) -> None:
    """Make the trial step the state."""
    cell, wall = part.cell, part.wall
    for i in range(cell.shape[1]):
        cell[BEFORE, i] = cell[AFTER, i]
    for w in range(wall.shape[1]):
        wall[SURFACE, w] = wall[TRIAL, w]
        wall[GIVEN, w] += wall[LOST, w]


@joined
def _past(control: Control, record: Floats, row: int) -> float:
    """Return how far the last of the cells that are waited for is past the stop."""
    past: float = control.stop_sign * (record[row, 0] - control.stop_c)
    for i in range(1, control.waits_for):
        if past < 0.0:  # any one that is not there yet will do
            break
        past = min(past, control.stop_sign * (record[row, i] - control.stop_c))
    return past


@njit(nogil=True, error_model="numpy", fastmath=FAST)
def advance(
    part: Layout,
    table: Table,
    boundary: Boundary,
    control: Control,
    clock: Floats,
    record: Floats,
) -> int:
    """Step until the end, the stop temperature or a full record; return the records written.

    Parameters
    ----------
    part : Layout
        What conducts, and its state, which is changed in place. [-]
    table : Table
        The steel. [-]
    boundary : Boundary
        What is around the part. [-]
    control : Control
        When to stop and how finely to step. [-]
    clock : ndarray
        As `NOW`, `NEXT`, `MIXED` and `WRITTEN` say; changed in place. [-]
    record : ndarray
        Temperatures of the watched cells, shape (records, watched); changed in place. [-]

    Returns
    -------
    int
        Records written, negative if no step was small enough. [-]

    Notes
    -----
    ROS2 of [1]_ with the matrix factored by direction and frozen over both stages, a W-method,
    so of second order whatever the matrix; step by the embedded first-order result.

    References
    ----------
    .. [1] J. G. Verwer, E. J. Spee, J. G. Blom, W. Hundsdorfer, A second-order Rosenbrock
       method applied to photochemical dispersion problems, SIAM Journal on Scientific
       Computing 20, 1999, 1456-1480 (from memory).
    """
    written = 0
    while written < record.shape[0] and clock[NOW] < control.end_s:
        left = control.end_s - clock[NOW]
        step_s = clock[NEXT] if clock[NEXT] < control.longest_step_s else control.longest_step_s
        if step_s > 0.6 * left:
            step_s = left if step_s >= left else 0.5 * left
        error = _step(part, table, boundary, clock, step_s) / control.tolerance_k
        clock[NEXT] = _next_step(step_s, error)
        if not error <= 1.0:
            if step_s < SMALLEST_STEP_S:
                return -1 - written
            continue
        _write(part, table, control.watch, record, written)
        reached = _past(control, record, written)
        if reached > 0.5 and step_s > 1e-4:
            clock[NEXT] = 0.5 * step_s  # come closer before stopping
            continue
        _accept(part)
        clock[NOW] = control.end_s if step_s == left else clock[NOW] + step_s
        clock[WRITTEN + written] = clock[NOW]
        written += 1
        if reached >= 0.0:
            break
    return written


KEPT = keep(advance)


def is_compiled() -> bool:
    """Return whether the loop is in this machine's cache, so that its first call is quick.

    Returns
    -------
    bool
        Whether code is there that was compiled from these sources; true as well where compiling
        is switched off. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    if not hasattr(advance, "py_func"):
        return True
    return KEPT is not None and KEPT.holds()
