"""The operator at the torch: heats to a colour, is a little late, holds, sees unevenness.

He is a controller with errors. He stops where he believes the heat to be; a strong flame on a
small part he turns back, because nobody stops in time above some 30 °C/s; then he plays the
flame over the place to hold it.
"""

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.conduction import History, Plan, Stop, conduct
from selector.heat.grid import Grid
from selector.heat.steel_property import SteelClass, heating_steel
from selector.heat.torch import AMBIENT_C, Torch, flame_boundary, wrap_fraction

Floats = NDArray[np.float64]

# Standard deviation of a hardening heat by the best instrument at hand: what lasts (bias) and
# what changes from heat to heat. The eye by the spread between published colour tables; the
# magnet fixes 770 °C and the eye the rest; the others common practice, no source. [°C]
READING_C: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "thermocouple": (6.0, 6.0),
        "crayon": (6.0, 10.0),
        "infrared": (20.0, 12.0),
        "magnet": (14.0, 12.0),
        "eye": (22.0, 14.0),
    }
)
# The brighter the place, the hotter a colour looks dull: factor on the error, and a mean shift.
LIGHT: Mapping[str, tuple[float, float]] = MappingProxyType(
    {"dim": (0.8, 0.0), "shade": (1.0, 0.0), "daylight": (1.4, 15.0), "sun": (2.0, 50.0)}
)

FASTEST_C_PER_S = 30.0  # faster, nobody can stop in time (common practice)
TRIES = 5  # at the right share of the flame
LATE_S = 0.7  # from seeing the colour to taking the flame away (estimated)
# Differences from side to side beyond this are seen as a change of colour: "turn it". [°C]
SEEN_C = 60.0
# Slowest decay of a difference from side to side: root 1.8412 of J1', squared.
SIDE_ROOT = 3.39
# What turning by hand, once in a second or two, leaves of it (estimated). [-]
TURNED_SHARE = 0.05


@dataclass(frozen=True, slots=True)
class Reading:
    """How a heat is read: lasting error, error from heat to heat (both sd), mean shift."""

    bias_c: float
    scatter_c: float
    shift_c: float = 0.0

    def truly_c(self, wanted_c: float, bias_normal: float, scatter_normal: float) -> float:
        """Return the heat that is there when this operator reads the wanted one."""
        return (
            wanted_c
            + self.shift_c
            + bias_normal * self.bias_c
            + scatter_normal * self.scatter_c
        )


@dataclass(frozen=True, slots=True)
class Operator:
    """What the operator does: stops at a (true) heat, holds it, turns the part or not."""

    stop_c: float
    hold_s: float = 20.0
    turns: bool = True
    hearth: bool = False
    patience_s: float = 600.0


@dataclass(frozen=True, slots=True, eq=False)
class Heated:
    """A part heated by an operator: joined history, field at the end, what he did.

    `uneven_k` is the difference from side to side as he stops; `hottest_c` the hottest place (a
    corner, mostly); `level` the share of the flame he used; `ceiling_c` where it stuck if the
    heat was not reached.
    """

    reached: bool
    time_s: Floats
    temperature_c: Floats
    end_c: Floats
    heat_s: float
    level: float
    hottest_c: float
    uneven_k: float
    efficiency_fraction: float
    gas_l: float
    ceiling_c: float


def reading(instruments: Iterable[str], light: str) -> Reading:
    """Return how well a heat is read with the best of some instruments in a light.

    Parameters
    ----------
    instruments : iterable of str
        Thermocouple, crayon, infrared, magnet, eye; others do not count. [-]
    light : {"dim", "shade", "daylight", "sun"}
        Light at the bench; it counts for the eye and the magnet. [-]

    Returns
    -------
    Reading
        Errors and shift. [°C]

    Raises
    ------
    OutOfRangeError
        The light is unknown.

    References
    ----------
    .. [1] Spread of printed colour tables, as in `colour`; the rest common practice, no source.

    Examples
    --------
    >>> reading(["eye"], "sun")
    Reading(bias_c=44.0, scatter_c=28.0, shift_c=50.0)
    """
    if light not in LIGHT:
        rule, step = f"one of {', '.join(LIGHT)}", "Choose the nearest."
        raise OutOfRangeError(Problem("light", rule, repr(light), step))
    has = set(instruments)
    best = next((name for name in READING_C if name in has), "eye")
    bias, scatter = READING_C[best]
    factor, shift = LIGHT[light] if best in {"eye", "magnet"} else (1.0, 0.0)
    return Reading(bias * factor, scatter * factor, shift)


def seen_cell(grid: Grid, along_mm: float) -> int:
    """Return the cell at the surface that an operator looks at.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    along_mm : float
        Distance from the working end. [mm]

    Returns
    -------
    int
        Flat index of the outermost steel cell there. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    column = int(np.argmin(np.abs(grid.along_mm - along_mm)))
    row = int(np.flatnonzero(grid.active[:, column])[-1])
    return row * grid.along_mm.size + column


def heat_end(
    grid: Grid,
    flame: Torch,
    operator: Operator,
    view: tuple[int, tuple[float, float]],
    steel_class: SteelClass = "low-alloy",
    watch: tuple[int, ...] | None = None,
) -> Heated:
    """Return what becomes of a bar's end in the flame of an operator.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    flame : Torch
        The flame as it is set. [-]
    operator : Operator
        What he does. [-]
    view : tuple of int and tuple of float
        The cell he watches, and the stretch he heats, from and to, mm. [-]
    steel_class : {"low-alloy", "high-alloy"}, optional
        Property set. [-]
    watch : tuple of int, optional
        Cells to write down; left out, all. [-]

    Returns
    -------
    Heated
        The history. [-]

    Raises
    ------
    OutOfRangeError
        The heat to stop at, the hold or the length is not a sensible number.

    Notes
    -----
    Flat out to the heat and `LATE_S` beyond it; above 30 °C/s the flame is turned down in that
    measure. In the hold the flame goes wherever the part is still dull.

    References
    ----------
    .. [1] Common practice, no source.
    """
    cell, heated_mm = view
    _check(operator, heated_mm)
    steel = heating_steel(steel_class)
    plan = Plan(operator.patience_s, watch=watch, stop=Stop(cell, operator.stop_c))

    def flat_out(level: float) -> History:
        around = flame_boundary(grid, flame, heated_mm, level, operator.hearth)
        return conduct(grid, steel, around, AMBIENT_C, plan)

    level, first = _drawn_back(flat_out, (operator.stop_c - AMBIENT_C) / FASTEST_C_PER_S)
    parts = [first]
    if first.stopped:
        boundary = flame_boundary(grid, flame, heated_mm, level, operator.hearth)
        late = conduct(grid, steel, boundary, parts[0].end_c, _then(parts, watch, LATE_S))
        parts.append(late)
        if operator.hold_s > 0.0:
            hold = flame_boundary(
                grid, flame, heated_mm, level, operator.hearth, operator.stop_c
            )
            plan = _then(parts, watch, operator.hold_s)
            parts.append(conduct(grid, steel, hold, late.end_c, plan))
    return _joined(grid, parts, flame, operator, (cell, level))


def _drawn_back(
    flat_out: Callable[[float], History], shortest_s: float
) -> tuple[float, History]:
    """Return the share of the flame that gives time enough to stop, and its heating."""
    level, found = 1.0, flat_out(1.0)
    best, too_weak = (level, found), 0.0
    for _ in range(TRIES):
        if found.stopped and found.time_s[-1] > 0.95 * shortest_s:
            return level, found
        if found.stopped:
            best = (level, found)
            wanted = level * float(found.time_s[-1]) / shortest_s
        else:
            too_weak = level
            wanted = 0.0
        if best[0] <= 1.05 * too_weak or not best[1].stopped:
            break
        level = max(
            wanted, float(np.sqrt(max(too_weak, 0.2 * best[0]) * best[0])) * (too_weak > 0)
        )
        found = flat_out(level)
    return (level, found) if found.stopped else best


def _then(parts: list[History], watch: tuple[int, ...] | None, seconds_s: float) -> Plan:
    """Return the plan of the next stretch."""
    return Plan(seconds_s, start_s=float(parts[-1].time_s[-1]), watch=watch)


def _joined(
    grid: Grid, parts: list[History], flame: Torch, operator: Operator, how: tuple[int, float]
) -> Heated:
    """Join the stretches of one heat."""
    cell, level = how
    time_s = np.concatenate([parts[0].time_s, *(p.time_s[1:] for p in parts[1:])])
    rows = [parts[0].temperature_c, *(p.temperature_c[:, 1:] for p in parts[1:])]
    heat_s = float(parts[0].time_s[-1])
    gas_l = level * flame.gas_flow_l_per_min * float(time_s[-1]) / 60.0
    first_gas_j = level * flame.power_w * heat_s
    hottest = max(float(p.end_c[grid.active].max()) for p in parts)
    return Heated(
        parts[0].stopped,
        time_s,
        np.concatenate(rows, axis=1),
        parts[-1].end_c,
        heat_s,
        level,
        hottest,
        side_difference_k(grid, parts[0], flame, operator.turns),
        parts[0].stored_j / first_gas_j,
        gas_l,
        float(parts[0].end_c.ravel()[cell]),
    )


def side_difference_k(grid: Grid, heating: History, flame: Torch, turns: bool = True) -> float:
    """Return the difference between the flame's side of a bar and its back, as it is stopped.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    heating : History
        Its heating, as if turned. [-]
    flame : Torch
        The flame. [-]
    turns : bool, optional
        Whether the part turns. [-]

    Returns
    -------
    float
        Difference; what turning leaves of it if the part turns. [K]

    Notes
    -----
    First harmonic of the flux round the girth, q₁ = 2 q sin(πω)/(πω) for a flame on a share ω;
    then 2 q₁ R/k (1 - exp(-3.39 a t/R²)) from side to side [1]_. Mean q from the heat taken up.

    References
    ----------
    .. [1] H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., Oxford, 1959,
       chapter 7.
    """
    washed = np.isin(grid.wall_face, ("end", "side", "shoulder"))
    hot = heating.end_c[grid.mesh.wall_row, grid.mesh.wall_column] > 0.6 * heating.end_c.max()
    area = float(grid.mesh.wall_area[washed & hot].sum())
    # The thickness that counts is that of what is hot.
    outer = float(grid.across_mm[grid.mesh.wall_row[washed & hot]].max())
    time_s = float(heating.time_s[-1])
    flux = heating.stored_j / max(time_s, 1e-9) / max(area, 1e-12)
    share = float(wrap_fraction(flame.width_mm, 2.0 * outer))
    first = 2.0 * flux * math.sin(math.pi * share) / (math.pi * share)
    hot_steel = heating_steel()
    conductivity = hot_steel.conductivity_at(600.0)
    diffusivity = 8.0e-6  # mean from cold to hardening heat
    radius_m = outer * 1e-3
    built = 1.0 - math.exp(-SIDE_ROOT * diffusivity * time_s / radius_m**2)
    difference = 2.0 * first * radius_m / conductivity * built
    return difference * (TURNED_SHARE if turns else 1.0)


def _check(operator: Operator, heated_mm: tuple[float, float]) -> None:
    """Refuse what cannot be done."""
    found = []
    if not 100.0 <= operator.stop_c <= 1400.0:
        rule, step = "between 100 and 1400 °C", "Give the hardening heat of the steel."
        found.append(Problem("stop_c", rule, f"{operator.stop_c:g} °C", step))
    if not 0.0 <= operator.hold_s <= 3600.0:
        rule, step = "between 0 and 3600 s", "An open flame holds for minutes only."
        found.append(Problem("hold_s", rule, f"{operator.hold_s:g} s", step))
    if not 0.0 < operator.patience_s <= 3600.0:
        rule, step = "above 0 and at most 3600 s", "An open flame heats for minutes only."
        found.append(Problem("patience_s", rule, f"{operator.patience_s:g} s", step))
    if not 0.0 <= heated_mm[0] < heated_mm[1] < math.inf:
        rule, got = "from 0 or more to beyond it", f"{heated_mm[0]:g} to {heated_mm[1]:g} mm"
        found.append(Problem("heated_mm", rule, got, "Give the stretch to heat."))
    if found:
        raise OutOfRangeError(*found)
