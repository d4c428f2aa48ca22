"""Transient conduction: the temperature of every place in a part, from heat to cold.

One solver serves stepped bars (radius and length), long bars (radius), thin ones (one cell) and
cross-sections. Enthalpy is what is stepped, so that heat in equals heat stored to rounding; the
step adapts to the process, so that a quench of seconds and a soak of minutes cost alike.
"""

import logging
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.exchange import Boundary
from selector.heat.grid import Grid
from selector.heat.layout import BEFORE, GIVEN, NOW, WRITTEN, Layout, lay_out
from selector.heat.steel_property import COLDEST_C, HOTTEST_C, SteelProperty, Table

if TYPE_CHECKING:
    from selector.heat.kernel import Control

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]

TOLERANCE_K = 2.0  # error of one step; what a history sums up to is a few of these
FIRST_STEP_S = 1e-4
LONGEST_S = 86400.0
RECORDS = 512  # written per call of the compiled loop
# Temperatures that one history may hold; a part of a workshop has a fifth of it at most. Foil
# on a thick part takes steps without end.
MOST_WRITTEN = 20_000_000


@dataclass(frozen=True, slots=True)
class Stop:
    """End a history early, when a cell rises above or falls below a temperature.

    Without a cell it ends when the last of those that are watched does.
    """

    cell: int | None
    temperature_c: float
    on: Literal["rising", "falling"] = "rising"


@dataclass(frozen=True, slots=True)
class Plan:
    """How long to follow a part, from when, how finely, and what may end it early.

    Without `watch` every cell of steel is written down.
    """

    seconds_s: float
    start_s: float = 0.0
    watch: tuple[int, ...] | None = None
    stop: Stop | None = None
    tolerance_k: float = TOLERANCE_K


@dataclass(frozen=True, slots=True, eq=False)
class History:
    """What became of a part.

    `temperature_c` has shape (watched cells, times), the start included; `end_c` is the field
    at the end (across, along), which another history may start from; `wall_heat_j` is what
    each wall gave off.
    """

    time_s: Floats
    temperature_c: Floats
    end_c: Floats
    wall_heat_j: Floats
    stored_j: float
    stopped: bool

    def at(self, time_s: float) -> Floats:
        """Return the watched temperatures at a time."""
        return np.array([np.interp(time_s, self.time_s, row) for row in self.temperature_c])


def conduct(
    grid: Grid,
    steel: SteelProperty,
    boundary: Boundary,
    start: float | Floats,
    plan: Plan,
) -> History:
    """Return the temperature history of a part.

    To go on with another boundary or other properties (heated, then quenched), start the next
    history from `end_c` of the last.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    steel : SteelProperty
        Its heating or cooling properties. [-]
    boundary : Boundary
        What surrounds it. [-]
    start : float or ndarray
        Temperature at the start, one or of each cell, °C. [-]
    plan : Plan
        How long, and what to write down. [-]

    Returns
    -------
    History
        Temperatures, heat given off by each wall, field at the end. [-]

    Raises
    ------
    OutOfRangeError
        The start lies outside the property tables, the time is not above 0, the boundary
        belong to another grid, no step is small enough, or the steps take no end.

    Notes
    -----
    Second order in step and grid. Steps are chosen so that the error of each is below
    `plan.tolerance_k` in every cell; heat stored equals heat in to rounding.

    References
    ----------
    .. [1] J. G. Verwer, E. J. Spee, J. G. Blom, W. Hundsdorfer, A second-order Rosenbrock
       method applied to photochemical dispersion problems, SIAM Journal on Scientific
       Computing 20, 1999, 1456-1480 (from memory).

    Examples
    --------
    >>> from selector.heat.exchange import convection, steady
    >>> from selector.heat.grid import round_grid
    >>> from selector.heat.steel_property import cooling_steel
    >>> bar = round_grid(10.0)
    >>> air = steady(bar, {"side": convection(50.0, 20.0)})
    >>> after = conduct(bar, cooling_steel(), air, 850.0, Plan(60.0))
    >>> bool(600.0 < after.end_c.min() < after.end_c.max() < 750.0)
    True
    """
    _check(grid, boundary, start, plan)
    from selector.heat import kernel  # noqa: PLC0415 - the compiler takes long to load

    _announce_compiling()

    table = steel.table()
    field = np.ascontiguousarray(np.broadcast_to(start, grid.active.shape), dtype=float)
    surface = field[grid.mesh.wall_row, grid.mesh.wall_column]
    enthalpy = steel.enthalpy_j_per_m3(field)
    part = lay_out(grid.mesh, enthalpy, surface, boundary.share.shape[2])
    stop = plan.stop
    watch = grid.cells() if plan.watch is None else np.array(plan.watch, dtype=np.int64)
    waits_for_all = stop is not None and stop.cell is None
    seen = watch if stop is None or stop.cell is None else np.concatenate([[stop.cell], watch])
    control = kernel.Control(
        float(plan.start_s + plan.seconds_s),
        float(plan.tolerance_k),
        max(plan.seconds_s / 20.0, 1e-3),
        np.nan if stop is None else float(stop.temperature_c),
        -1.0 if stop is not None and stop.on == "falling" else 1.0,
        len(watch) if waits_for_all else 1,
        part.number(seen),
    )
    times, records = _run(part, table, boundary, (control, plan.start_s))
    stopped = times[-1] < control.end_s
    begun = field.ravel()[seen][None]
    rows = np.concatenate([begun, *records])[:, len(seen) - len(watch) :]
    after = part.inside(BEFORE)
    end = np.interp(
        after,
        table.first_enthalpy + np.arange(table.theta.size) / table.per_enthalpy,
        table.temperature,
    )
    stored = _stored_j(grid, after) - _stored_j(grid, enthalpy)
    return History(
        times, np.ascontiguousarray(rows.T), end, part.wall[GIVEN].copy(), stored, bool(stopped)
    )


@cache
def _announce_compiling() -> None:
    """Say once that the loop is compiled first."""
    from selector.heat import kernel  # noqa: PLC0415

    if not kernel.is_compiled():
        often = "once" if kernel.KEPT else "each time: no folder lets it be kept"
        logging.getLogger(__name__).warning(
            "Preparing the heat calculation; this takes about five seconds, %s.", often
        )


def _check(grid: Grid, boundary: Boundary, start: float | Floats, plan: Plan) -> None:
    """Refuse what cannot be stepped."""
    field = np.asarray(start, dtype=float)
    if not np.all((field >= COLDEST_C) & (field <= HOTTEST_C)):
        worst = field[~((field >= COLDEST_C) & (field <= HOTTEST_C))].flat[0]
        rule = f"between {COLDEST_C:g} and {HOTTEST_C:g} °C"
        step = "Give the temperature the part has."
        raise OutOfRangeError(Problem("start", rule, f"{worst:g} °C", step))
    if not 0.0 < plan.seconds_s <= LONGEST_S:
        rule, step = "above 0 and at most a day", "Give the time to follow the part."
        raise OutOfRangeError(Problem("seconds_s", rule, f"{plan.seconds_s:g} s", step))
    if not plan.tolerance_k > 0.0:
        rule, step = "above 0 K", "Take 2 K."
        raise OutOfRangeError(Problem("tolerance_k", rule, f"{plan.tolerance_k:g} K", step))
    walls, given = grid.wall_face.size, boundary.share.shape[0]
    if given != walls:
        rule, step = f"made for this grid of {walls} walls", "Build it from the same grid."
        raise OutOfRangeError(Problem("boundary", rule, f"{given} walls", step))


def _stored_j(grid: Grid, enthalpy: Floats) -> float:
    """Return the heat in all steel cells, above an arbitrary zero."""
    return float(np.sum(np.where(grid.active, grid.mesh.volume * enthalpy, 0.0)))


def _run(
    part: Layout,
    table: Table,
    boundary: Boundary,
    how: tuple["Control", float],
) -> tuple[Floats, list[Floats]]:
    """Step through breaks and full records; return all times and temperatures."""
    from selector.heat import kernel  # noqa: PLC0415

    control, start_s = how
    clock = np.zeros(RECORDS + WRITTEN)
    clock[:WRITTEN] = start_s, FIRST_STEP_S, np.nan, np.nan
    times, records = [np.array([start_s])], []
    while True:
        record = np.empty((RECORDS, control.watch.size))
        written = kernel.advance(part, table, boundary, control, clock, record)
        if written < 0:
            rule, step = "smooth enough to step through", "Check curves and properties."
            got = f"no step small enough at {clock[NOW]:g} s"
            raise OutOfRangeError(Problem("boundary", rule, got, step))
        times.append(clock[WRITTEN:][:written].copy())
        records.append(record[:written])
        if len(records) * record.size > MOST_WRITTEN:
            rule, step = "near enough to one another to be followed together", "Check them."
            got = f"no end in {len(records) * RECORDS} steps"
            raise OutOfRangeError(Problem("sizes of the part", rule, got, step))
        if written < RECORDS:
            return np.concatenate(times), records
