"""One part in one flame: up to a stop, a little past it, and held there.

One flat-out heating passes all stops, and from each the part is held.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from selector.heat.conduction import History, Plan, Stop, conduct
from selector.heat.exchange import Boundary
from selector.heat.grid import Grid, bar_grid
from selector.heat.operator import FASTEST_C_PER_S, LATE_S, seen_cell
from selector.heat.steel_property import heating_steel
from selector.heat.torch import AMBIENT_C, flame_boundary
from selector.kept import kept_on_disk, kept_within
from selector.torch.part import Stretch, Torching

Floats = NDArray[np.float64]

# Coarser than the full grid: cooling times of a zone move by less than 1.5 %, those of its end
# by 6 %, on 8 to 28 mm.
FINENESS = 0.8
MIDDLE_STOP = 2
# Strengths of the flame about the one that leaves time to stop; logarithms. [-]
FLAMES_LOG = (-0.5, 0.0, 0.5)
MIDDLE_FLAME = 1
# Holds at which the part is looked at. [s]
HOLDS_S = (0.0, 1.0, 2.5, 5.0, 7.0, 10.0, 14.0, 20.0, 28.0, 40.0, 56.0, 80.0, 110.0, 160.0)
USUAL_HOLD_S = 20.0
# Instants between which a history is straight on its way up, counted from here. [-], [°C]
RISING, WARM_C = 25, 450.0
# Steel melts here; what gets hotter is not followed. Iron-carbon diagram, from memory. [°C]
MELTS_C = 1480.0
# The edge of the zone is brought this near to the heat: room enough for a heat stopped early.
EDGE_C = 20.0
# A free end so far below the heat looks dull, and the flame goes over it. Estimate. [K]
DULL_K = 60.0
# What is kept of the ways up, and of the courses of the middle flame: those of one part, for
# its library is made of them and they are asked for no more. [MB]
RISES_MB, COURSES_MB = 24.0, 16.0


@dataclass(frozen=True, slots=True, eq=False)
class Reached:
    """A flat-out heating as it passes one stop, and all that went before."""

    history: History
    reached: bool


@dataclass(frozen=True, slots=True, eq=False)
class Course:
    """One heating to one stop and its hold, all cells, at some instants.

    The instants are `RISING` on the way up and `HOLDS_S` after the flame was taken away;
    `hottest_c` is the hottest place at any time.
    """

    time_s: Floats
    temperature_c: Floats
    hottest_c: float


@lru_cache(maxsize=16)
def part_grid(part: Stretch) -> Grid:
    """Return the cells of a part."""
    return bar_grid(part.sections, FINENESS)


@lru_cache(maxsize=64)
@kept_on_disk
def least_past_mm(torching: Torching) -> float:
    """Return how far past the zone the flame goes for the edge of the zone to come to heat.

    The farther a flame goes, the thinner it is spread: it goes no farther than the zone comes
    to heat, free ends too, and where that never does, as near as may be. A fire is not spread:
    a zone that a thick body beside it keeps cold is laid in with some of that body.

    Parameters
    ----------
    torching : Torching
        Part, flame, operator.

    Returns
    -------
    float
        The least of the reaches that serve. [mm]
    """
    part = torching.part
    edges = [z for z in part.judged_mm if not torching.in_fire or 0.0 < z < part.length_mm]
    reaches = torching.reaches_mm
    if not edges:
        return 0.0
    grid = part_grid(part)
    rows = grid.cells().tolist()
    cells = [rows.index(seen_cell(grid, z)) for z in edges]
    below_k = np.array([EDGE_C if 0.0 < z < part.length_mm else DULL_K for z in edges])
    stop_c = torching.stops_c[MIDDLE_STOP]
    served = reaches[0]
    for past_mm in reaches:
        share = float(np.exp(middle_log_flame(torching, past_mm)))
        run = rise(torching, past_mm, share, MIDDLE_STOP)
        if not run.reached and not torching.in_fire:
            break
        served = past_mm
        if not run.reached:
            continue
        held, _ = _held(torching, (past_mm, share, stop_c), run, USUAL_HOLD_S)
        if np.all(held.temperature_c[cells].max(axis=1) >= stop_c - below_k):
            break
    return served


@lru_cache(maxsize=256)
@kept_on_disk
def middle_log_flame(torching: Torching, past_mm: float) -> float:
    """Return the log share of the flame about which strengths are run."""
    run = rise(torching, past_mm, 1.0, MIDDLE_STOP)
    shortest = (torching.stops_c[MIDDLE_STOP] - AMBIENT_C) / FASTEST_C_PER_S
    taken = float(run.history.time_s[-1])
    # The time goes about inversely with the flame.
    return min(float(np.log(taken / shortest)), 0.0) if run.reached else 0.0


@kept_within(RISES_MB)
def rise(torching: Torching, past_mm: float, share: float, stop: int) -> Reached:
    """Return the flat-out heating as it passes one stop, by way of all stops before it.

    Parameters
    ----------
    torching : Torching
        Part, flame, operator.
    past_mm : float
        How far past the zone the flame goes. [mm]
    share : float
        Share of the flame that is on the part. [-]
    stop : int
        Which of the stops. [-]

    Returns
    -------
    Reached
        As far as it came, where it falls short.
    """
    before = rise(torching, past_mm, share, stop - 1) if stop else None
    if before is not None and not before.reached:
        return before
    so_far = before.history if before else None
    start = AMBIENT_C if so_far is None else so_far.end_c
    begun_s = 0.0 if so_far is None else float(so_far.time_s[-1])
    left_s = torching.patience_s - begun_s
    if so_far is not None and (left_s <= 0.0 or so_far.end_c.max() > MELTS_C):
        return Reached(so_far, reached=False)
    grid = part_grid(torching.part)
    seen = seen_cell(grid, 0.5 * sum(torching.part.zone_mm))
    plan = Plan(left_s, start_s=begun_s, stop=Stop(seen, torching.stops_c[stop]))
    steel = heating_steel(torching.steel_class)
    more = conduct(grid, steel, _around(torching, past_mm, share), start, plan)
    return Reached(more if so_far is None else _joined(so_far, more), more.stopped)


def course(torching: Torching, past_mm: float, share: float, stop: int) -> Course:
    """Return a heating to one stop, held there; as far as it came where it falls short.

    Parameters
    ----------
    torching : Torching
        Part, flame, operator.
    past_mm : float
        How far past the zone the flame goes. [mm]
    share : float
        Share of the flame that is on the part. [-]
    stop : int
        Which of the stops. [-]

    Returns
    -------
    Course
        At its instants.
    """
    run = rise(torching, past_mm, share, stop)
    held = _held(torching, (past_mm, share, torching.stops_c[stop]), run)
    return _sampled(*held)


@kept_within(COURSES_MB)
def middle_course(torching: Torching, past_mm: float, stop: int) -> Course:
    """Return the course of the middle flame; it is kept, for dips ask for single ones first.

    Parameters
    ----------
    torching : Torching
        Part, flame, operator.
    past_mm : float
        How far past the zone the flame goes. [mm]
    stop : int
        Which of the stops. [-]

    Returns
    -------
    Course
        At its instants.
    """
    level = middle_log_flame(torching, past_mm) + FLAMES_LOG[MIDDLE_FLAME]
    return course(torching, past_mm, float(np.exp(level)), stop)


def field_after(torching: Torching, past_mm: float, stop: int, hold_s: float) -> Floats:
    """Return how hot each cell is after one stop and hold, without all other heatings.

    Parameters
    ----------
    torching : Torching
        Part, flame, operator.
    past_mm : float
        How far past the zone the flame goes. [mm]
    stop : int
        Which of the stops. [-]
    hold_s : float
        One of `HOLDS_S`. [s]

    Returns
    -------
    ndarray
        As `Heatings.field_c` has it. [°C]
    """
    run = middle_course(torching, past_mm, stop)
    return run.temperature_c[:, RISING + HOLDS_S.index(hold_s)]


def _joined(before: History, after: History) -> History:
    """Return two stretches of one history as one."""
    return replace(
        after,
        time_s=np.concatenate([before.time_s, after.time_s[1:]]),
        temperature_c=np.hstack([before.temperature_c, after.temperature_c[:, 1:]]),
        stored_j=before.stored_j + after.stored_j,
    )


@lru_cache(maxsize=8)
def _around(
    torching: Torching, past_mm: float, share: float, hold_c: float | None = None
) -> Boundary:
    """Return what is around a part in its flame, or in the one that holds it at a heat."""
    grid, swept_mm = part_grid(torching.part), torching.swept_mm(past_mm)
    return flame_boundary(grid, torching.flame, swept_mm, share, torching.hearth, hold_c)


def _held(
    torching: Torching,
    flame: tuple[float, float, float],
    reached: Reached,
    longest_s: float = HOLDS_S[-1],
) -> tuple[History, float]:
    """Return a heating up to its stop and its hold, and when the flame was taken away."""
    past_mm, share, stop_c = flame
    grid, steel = part_grid(torching.part), heating_steel(torching.steel_class)
    run = reached.history
    if reached.reached:
        # The flame goes on until the colour is seen; then it plays over the part.
        plan = Plan(LATE_S, start_s=float(run.time_s[-1]))
        around = _around(torching, past_mm, share)
        run = _joined(run, conduct(grid, steel, around, _solid(run.end_c), plan))
    stopped_s = float(run.time_s[-1])
    plan = Plan(longest_s, start_s=stopped_s)
    around = _around(torching, past_mm, share, stop_c)
    return _joined(run, conduct(grid, steel, around, _solid(run.end_c), plan)), stopped_s


def _solid(field_c: Floats) -> Floats:
    """Return a field in which nothing is hotter than melting steel."""
    return np.minimum(field_c, MELTS_C)


def _sampled(held: History, stopped_s: float) -> Course:
    """Return a heating and its hold at the instants of a course."""
    time_s, rows = held.time_s, held.temperature_c
    hottest = rows.max(axis=0)
    hottest_c = float(hottest.max())
    warm = time_s[int(np.argmax(hottest >= min(WARM_C, 0.9 * hottest_c)))]
    up = np.linspace(min(warm, stopped_s - 1e-3), stopped_s, RISING, endpoint=False)
    instants = np.concatenate([up, stopped_s + np.array(HOLDS_S)])
    instants = np.minimum(instants, time_s[-1])
    k = np.clip(np.searchsorted(time_s, instants), 1, time_s.size - 1)
    low, high = time_s[k - 1], time_s[k]
    part = (instants - low) / np.maximum(high - low, 1e-9)
    between = rows[:, k - 1] + part * (rows[:, k] - rows[:, k - 1])
    return Course(instants, between, hottest_c)
