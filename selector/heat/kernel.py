"""The compiled inner loop of conduction: a conserving implicit step with its own error check.

Enthalpy is the state. Its Kirchhoff integral theta makes the stencil linear, so one look-up
carries a steel's curves, and each step is a W-method of second order whose matrix is split by
direction. Importing this module loads the compiler; import it where it is needed.
"""

import math
import sys
from pathlib import Path
from typing import NamedTuple

import numpy as np
from numba import njit
from numpy.typing import NDArray

from selector.heat.exchange import Boundary
from selector.heat.grid import Mesh
from selector.heat.steel_property import Table
from selector.heat.sweep import FAST, Work, compiled, factor, solve

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]

GAMMA = 1.0 - 1.0 / math.sqrt(2.0)  # second order and L-stable
SMALLEST_STEP_S = 1e-9


class Control(NamedTuple):
    """When to stop, how finely to step, and what to write down."""

    end_s: float
    tolerance_k: float
    longest_step_s: float
    stop_c: float
    stop_sign: float
    watch: Integers


class State(NamedTuple):
    """What a step changes: enthalpy, surface temperature and heat given off by each wall."""

    enthalpy: Floats
    surface_c: Floats
    heat: Floats


@compiled
def _copy(source: Floats, target: Floats) -> None:
    """Copy a row; slice assignment takes seconds to compile."""
    for w in range(source.size):
        target[w] = source[w]


@compiled
def _look_up(table: Table, enthalpy: Floats, theta: Floats, slope: Floats) -> None:
    """Read theta and its slope (the diffusivity) at each cell's enthalpy."""
    last = float(table.theta.size - 2)
    for i in range(enthalpy.shape[0]):
        for j in range(enthalpy.shape[1]):
            x = (enthalpy[i, j] - table.first_enthalpy) * table.per_enthalpy
            k = np.uint32(min(max(x, 0.0), last))
            rise = table.theta[k + np.uint32(1)] - table.theta[k]
            theta[i, j] = table.theta[k] + (x - k) * rise
            slope[i, j] = rise * table.per_enthalpy


@compiled
def _straight(x: float, first: float, per: float, values: Floats) -> tuple[float, float]:
    """Read a value and its slope on an even grid, going on straight beyond it."""
    place = (x - first) * per
    k = np.uint32(min(max(place, 0.0), float(values.size - 2)))
    rise = values[k + np.uint32(1)] - values[k]
    return values[k] + (place - k) * rise, rise * per


@compiled
def _mix(boundary: Boundary, time_s: float, mix: Floats) -> None:
    """Set the share of each curve at each wall at a time."""
    for w in range(mix.shape[0]):
        knot = boundary.knot_s[w]
        k = 0
        while k < knot.size - 2 and time_s >= knot[k + 1]:
            k += 1
        width = knot[k + 1] - knot[k]
        part = min(max((time_s - knot[k]) / width, 0.0), 1.0) if width > 0.0 else 1.0
        for c in range(mix.shape[1]):
            low, high = boundary.share[w, k, c], boundary.share[w, k + 1, c]
            mix[w, c] = low + part * (high - low)


@compiled
def _loss(boundary: Boundary, mix: Floats, surface_c: float) -> tuple[float, float]:
    """Return the heat flux out of a wall and its slope with surface temperature."""
    flux, slope = 0.0, 0.0
    for c in range(mix.size):
        if mix[c] != 0.0:
            q, dq = _straight(surface_c, boundary.first_c, boundary.per_c, boundary.curve[c])
            flux += mix[c] * q
            slope += mix[c] * dq
    return flux, slope


@compiled
def _walls(
    mesh: Mesh, table: Table, boundary: Boundary, theta: Floats, surface_c: Floats, work: Work
) -> None:
    """Find each surface temperature by Newton; leave flux and d flux / d theta in `work`."""
    flux, stiff = work.wall[0], work.wall[1]
    for w in range(mesh.wall_row.size):
        inside = theta[mesh.wall_row[w], mesh.wall_column[w]]
        gap = mesh.wall_gap[w]
        for _ in range(20):
            at = surface_c[w]
            outer, k = _straight(at, table.first_c, table.per_c, table.theta_by_c)
            q, dq = _loss(boundary, work.mix[w], at)
            # A falling boiling curve must not turn the step round.
            steep = max(k / gap + dq, 0.3 * k / gap)
            move = min(max(((inside - outer) / gap - q) / steep, -150.0), 150.0)
            surface_c[w] = at + move
            flux[w] = q + dq * move
            stiff[w] = max(dq, 0.0) / (k + gap * max(dq, 0.0))
            if abs(move) < 0.01:
                break


@compiled
def _rate(mesh: Mesh, theta: Floats, flux: Floats, out: Floats) -> None:
    """Set the heat flowing into each cell: linear stencil on theta, less the wall fluxes."""
    rows, columns = theta.shape
    for i in range(rows):
        for j in range(columns):
            out[i, j] = 0.0
    for i in range(rows - 1):
        for j in range(columns):
            flow = mesh.across[i, j] * (theta[i + 1, j] - theta[i, j])
            out[i, j] += flow
            out[i + 1, j] -= flow
    for i in range(rows):
        for j in range(columns - 1):
            flow = mesh.along[i, j] * (theta[i, j + 1] - theta[i, j])
            out[i, j] += flow
            out[i, j + 1] -= flow
    for w in range(flux.size):
        out[mesh.wall_row[w], mesh.wall_column[w]] -= mesh.wall_area[w] * flux[w]


@compiled
def _stage(
    parts: tuple[Mesh, Table, Boundary],
    time_s: float,
    enthalpy: Floats,
    slope: Floats,
    work: Work,
) -> None:
    """Leave heat into each cell in work.field[5] and wall fluxes in work.wall[0] and [1]."""
    mesh, table, boundary = parts
    theta, surface = work.field[1], work.wall[4]
    _mix(boundary, time_s, work.mix)
    _look_up(table, enthalpy, theta, slope)
    _walls(mesh, table, boundary, theta, surface, work)
    _rate(mesh, theta, work.wall[0], work.field[5])


@compiled
def _gain(
    mesh: Mesh, inflow: Floats, step_s: float, less: tuple[float, Floats], out: Floats
) -> None:
    """Set the rise of enthalpy by an inflow over a step, less a multiple of another field."""
    for i in range(out.shape[0]):
        for j in range(out.shape[1]):
            rise = step_s * inflow[i, j] / mesh.volume[i, j]
            out[i, j] = rise - less[0] * less[1][i, j]


@compiled
def _step(
    parts: tuple[Mesh, Table, Boundary], state: State, work: Work, time_s: float, step_s: float
) -> float:
    """Take a trial step for its error in K; what it changes is left in `work`."""
    # New enthalpy in field[0], heat given off in wall[2], surface temperatures in wall[4].
    mesh, table = parts[0], parts[1]
    new, slope, rate = work.field[0], work.field[2], work.field[5]
    first, second = work.field[3], work.field[4]
    scale = GAMMA * step_s
    flux, heat, give = work.wall[0], work.wall[2], work.wall[3]

    _copy(state.surface_c, work.wall[4])
    _stage(parts, time_s, state.enthalpy, slope, work)
    factor(mesh, slope, scale, work)
    _gain(mesh, rate, step_s, (0.0, rate), first)
    solve(mesh, work, slope, scale, first)
    for w in range(heat.size):
        heat[w] = step_s * mesh.wall_area[w] * flux[w] + give[w]
    for i in range(new.shape[0]):
        for j in range(new.shape[1]):
            new[i, j] = state.enthalpy[i, j] + first[i, j]

    _copy(work.wall[1], work.wall[5])  # the matrix stays that of the first stage
    _stage(parts, time_s + step_s, new, work.field[6], work)
    _copy(work.wall[5], work.wall[1])
    _gain(mesh, rate, step_s, (2.0, first), second)
    solve(mesh, work, slope, scale, second)
    for w in range(heat.size):
        twice = step_s * mesh.wall_area[w] * flux[w] - 2.0 * heat[w] + give[w]
        heat[w] = 1.5 * heat[w] + 0.5 * twice
    return _finish(table, state, work)


@compiled
def _finish(table: Table, state: State, work: Work) -> float:
    """Join the two stages in work.field[0] and return the largest error in K."""
    new, first, second = work.field[0], work.field[3], work.field[4]
    worst, total = 0.0, 0.0
    last = float(table.theta.size - 2)
    for i in range(new.shape[0]):
        for j in range(new.shape[1]):
            old = state.enthalpy[i, j]
            x = (old - table.first_enthalpy) * table.per_enthalpy
            k = np.uint32(min(max(x, 0.0), last))
            per = (table.temperature[k + np.uint32(1)] - table.temperature[k]) * (
                table.per_enthalpy
            )
            error = 0.5 * abs(first[i, j] + second[i, j]) * per
            worst = max(worst, error)
            total += error
            new[i, j] = old + 1.5 * first[i, j] + 0.5 * second[i, j]
    return worst if math.isfinite(total) else math.inf


@compiled
def _write(table: Table, enthalpy: Floats, watch: Integers, out: Floats) -> None:
    """Write the temperatures of the watched cells."""
    flat = enthalpy.ravel()
    for n in range(watch.size):
        x = flat[watch[n]]
        out[n], _ = _straight(x, table.first_enthalpy, table.per_enthalpy, table.temperature)


@compiled
def _next_step(step_s: float, error: float) -> float:
    """Return the step that the error of the last one allows."""
    if not math.isfinite(error):
        return 0.1 * step_s
    return step_s * min(max(0.85 / math.sqrt(max(error, 1e-6)), 0.15), 2.5)


@compiled
def _accept(state: State, work: Work) -> None:
    """Make the trial step the state."""
    for i in range(state.enthalpy.shape[0]):
        _copy(work.field[0, i], state.enthalpy[i])
    _copy(work.wall[4], state.surface_c)
    for w in range(state.heat.size):
        state.heat[w] += work.wall[2, w]


@njit(cache=True, nogil=True, error_model="numpy", fastmath=FAST)
def advance(
    parts: tuple[Mesh, Table, Boundary],
    state: State,
    control: Control,
    work: Work,
    clock: Floats,
    record: Floats,
) -> int:
    """Step until the end, the stop temperature or a full record; return the records written.

    Parameters
    ----------
    parts : tuple of Mesh, Table and Boundary
        What conducts, of what, and what is around it. [-]
    state : State
        Start, changed in place. [-]
    control : Control
        When to stop and how finely to step. [-]
    work : Work
        Scratch arrays. [-]
    clock : ndarray
        Time, next step, then the time of each record; changed in place. [-]
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
    while written < record.shape[0] and clock[0] < control.end_s:
        left = control.end_s - clock[0]
        step_s = min(clock[1], left, control.longest_step_s)
        if step_s > 0.6 * left:
            step_s = left if step_s >= left else 0.5 * left
        error = _step(parts, state, work, clock[0], step_s) / control.tolerance_k
        clock[1] = _next_step(step_s, error)
        if not error <= 1.0:
            if step_s < SMALLEST_STEP_S:
                return -1 - written
            continue
        _write(parts[1], work.field[0], control.watch, record[written])
        reached = control.stop_sign * (record[written, 0] - control.stop_c)
        if reached > 0.5 and step_s > 1e-4:
            clock[1] = 0.5 * step_s  # come closer before stopping
            continue
        _accept(state, work)
        clock[0] = control.end_s if step_s == left else clock[0] + step_s
        clock[written + 2] = clock[0]
        written += 1
        if reached >= 0.0:
            break
    return written


def is_compiled() -> bool:
    """Return whether the loop is in this machine's cache, so that its first call is quick.

    Returns
    -------
    bool
        Whether an index is there for this Python, no older than this file. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    stats = getattr(advance, "stats", None)
    if stats is None:  # compiling is switched off
        return True
    source = Path(__file__)
    python = f"py{sys.version_info.major}{sys.version_info.minor}"
    kept = Path(stats.cache_path).glob(f"{source.stem}.advance-*.{python}.nbi")
    return any(index.stat().st_mtime >= source.stat().st_mtime for index in kept)
