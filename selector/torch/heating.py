"""The library of heatings of a part at a torch: each stop, hold and strength of flame once.

One flat-out heating passes all stops, and from each the part is held; what the histories
amount to is written down cell by cell. So a part is heated a few times, whatever the steels,
baths and questions that follow.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from selector.hardening.heating_course import heating_rate, held_s, tempered_s
from selector.heat.conduction import History, Plan, Stop, conduct
from selector.heat.exchange import Boundary
from selector.heat.grid import Grid, bar_grid
from selector.heat.operator import FASTEST_C_PER_S, LATE_S, seen_cell, side_difference_k
from selector.heat.steel_property import heating_steel
from selector.heat.torch import AMBIENT_C, flame_boundary
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
# Below this no tempering counts. [°C]
COLD_C = 250.0
# Steel melts here; what gets hotter is not followed. Iron-carbon diagram, from memory. [°C]
MELTS_C = 1480.0
# The time to a heat falls at least so fast with the flame, in logarithms. [-]
FLATTEST = -0.1
# The edge of the zone is brought this near to the heat: room enough for a heat stopped early.
EDGE_C = 20.0
# A free end so far below the heat looks dull, and the flame goes over it. Estimate. [K]
DULL_K = 60.0
# So many libraries are kept, some five megabytes each: an answer makes up to six, and the part
# with a changed answer asks for most of them again.
KEPT = 16


@dataclass(frozen=True, slots=True, eq=False)
class Reached:
    """A flat-out heating as it passes one stop, and all that went before."""

    history: History
    reached: bool


@dataclass(frozen=True, eq=False)
class Heatings:
    """All heatings of a part for one reach past its zone, read place by place.

    Axes are flames, stops, holds and places; places are the steel cells of the grid, or what
    `at` makes of them. `over_c` is the peak above the stop, `held_s` the hold at the peak that
    dissolves as much, `log_tempered_s` the logarithm of the tempering as time at 600 °C, and
    `field_c` how hot the places are at the middle flame. `to_stop_s`, `uneven_k` and
    `hottest_c` go by flame and stop.
    """

    torching: Torching
    past_mm: float
    grid: Grid
    log_flame: Floats
    reached: NDArray[np.bool_]
    to_stop_s: Floats
    uneven_k: Floats
    hottest_c: Floats
    efficiency: float
    over_c: Floats
    log_rate: Floats
    held_s: Floats
    log_tempered_s: Floats
    field_c: Floats

    @cached_property
    def table(self) -> Floats:
        """Peak, rate, hold and tempering side by side; (flames × stops × holds, 4 × places)."""
        rate = np.broadcast_to(self.log_rate[:, :, None, :], self.over_c.shape)
        parts = (self.over_c, rate, self.held_s, self.log_tempered_s)
        joined = np.concatenate(parts, axis=-1)
        return joined.reshape(-1, joined.shape[-1])

    def at(self, weight: Floats) -> "Heatings":
        """Return the same at places that lie between cells; weight is (places, cells)."""
        return replace(
            self,
            over_c=self.over_c @ weight.T,
            log_rate=self.log_rate @ weight.T,
            held_s=self.held_s @ weight.T,
            log_tempered_s=self.log_tempered_s @ weight.T,
            field_c=self.field_c @ weight.T,
        )

    def in_time_log(self, stop_c: Floats) -> Floats:
        """Return the log share of the flame that leaves time to stop, by heat. [-]."""
        # Nobody stops in time above some 30 °C/s: the flame is turned down until he can.
        stops = np.array(self.torching.stops_c)
        shortest = np.log((stops - AMBIENT_C) / FASTEST_C_PER_S)
        log_time = np.log(self.to_stop_s)
        slope = (log_time[-1] - log_time[0]) / (self.log_flame[-1] - self.log_flame[0])
        # A heat that no flame reaches takes as long as patience lasts.
        slope = np.minimum(slope, FLATTEST)
        share = self.log_flame[MIDDLE_FLAME] + (shortest - log_time[MIDDLE_FLAME]) / slope
        return np.asarray(np.interp(stop_c, stops, share))

    def effective_log(self, log_strength: Floats, stop_c: Floats) -> Floats:
        """Return the log flame on the part: as it is, or turned down to stop in time. [-]."""
        return np.minimum(log_strength, self.in_time_log(stop_c))


@lru_cache(maxsize=16)
def part_grid(part: Stretch) -> Grid:
    """Return the cells of a part."""
    return bar_grid(part.sections, FINENESS)


@lru_cache(maxsize=KEPT)
def heatings(torching: Torching, past_mm: float) -> Heatings:
    """Return all heatings of a part for one reach past its zone."""
    grid = part_grid(torching.part)
    log_flame = _middle_log_flame(torching, past_mm) + np.array(FLAMES_LOG)
    runs = [_rises(torching, past_mm, float(np.exp(level))) for level in log_flame]
    courses = [
        _held(grid, torching, (past_mm, float(np.exp(level)), stop_c), run)
        for level, rises in zip(log_flame, runs, strict=True)
        for stop_c, run in zip(torching.stops_c, rises, strict=True)
    ]
    shape = (len(FLAMES_LOG), len(torching.stops_c))
    over, rate, hold, tempered, field = _read(courses, shape, np.array(torching.stops_c))
    middle = runs[MIDDLE_FLAME][MIDDLE_STOP].history
    power_w = torching.flame.power_w * float(np.exp(log_flame[MIDDLE_FLAME]))
    return Heatings(
        torching,
        past_mm,
        grid,
        log_flame,
        np.array([[r.reached for r in rises] for rises in runs]),
        np.array([[float(r.history.time_s[-1]) for r in rises] for rises in runs]),
        np.array([[_uneven_k(grid, torching, r) for r in rises] for rises in runs]),
        np.array([float(c.temperature_c.max()) for c in courses]).reshape(shape),
        middle.stored_j / (power_w * float(middle.time_s[-1])),
        over,
        rate,
        hold,
        tempered,
        field[MIDDLE_FLAME],
    )


@lru_cache(maxsize=256)
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
    share = float(np.exp(_middle_log_flame(torching, past_mm) + FLAMES_LOG[MIDDLE_FLAME]))
    rise = _rises(torching, past_mm, share)[stop]
    flame = (past_mm, share, torching.stops_c[stop])
    _, rows = _sampled(_held(part_grid(torching.part), torching, flame, rise))
    return rows[:, RISING + HOLDS_S.index(hold_s)]


@lru_cache(maxsize=64)
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
        share = float(np.exp(_middle_log_flame(torching, past_mm)))
        rise = _rises(torching, past_mm, share)[MIDDLE_STOP]
        if not rise.reached and not torching.in_fire:
            break
        served = past_mm
        if not rise.reached:
            continue
        course = _held(grid, torching, (past_mm, share, stop_c), rise, USUAL_HOLD_S)
        if np.all(course.temperature_c[cells].max(axis=1) >= stop_c - below_k):
            break
    return served


@dataclass(frozen=True, slots=True, eq=False)
class _Course:
    """One heating to one stop and its hold, all cells, and when the flame was taken away."""

    time_s: Floats
    temperature_c: Floats
    stopped_s: float


def _middle_log_flame(torching: Torching, past_mm: float) -> float:
    """Return the log share of the flame about which strengths are run."""
    rise = _rises(torching, past_mm, 1.0)[MIDDLE_STOP]
    shortest = (torching.stops_c[MIDDLE_STOP] - AMBIENT_C) / FASTEST_C_PER_S
    taken = float(rise.history.time_s[-1])
    # The time goes about inversely with the flame.
    return min(float(np.log(taken / shortest)), 0.0) if rise.reached else 0.0


@lru_cache(maxsize=4 * KEPT)
def _rises(torching: Torching, past_mm: float, share: float) -> tuple[Reached, ...]:
    """Return the flat-out heating as it passes each stop."""
    grid = part_grid(torching.part)
    swept_mm = torching.swept_mm(past_mm)
    seen = seen_cell(grid, 0.5 * sum(torching.part.zone_mm))
    steel = heating_steel(torching.steel_class)
    boundary = flame_boundary(grid, torching.flame, swept_mm, share, torching.hearth)
    rises: list[Reached] = []
    so_far: History | None = None
    for stop_c in torching.stops_c:
        if so_far is not None and not rises[-1].reached:
            rises.append(rises[-1])
            continue
        start = AMBIENT_C if so_far is None else so_far.end_c
        begun_s = 0.0 if so_far is None else float(so_far.time_s[-1])
        left_s = torching.patience_s - begun_s
        if left_s <= 0.0 or (so_far is not None and so_far.end_c.max() > MELTS_C):
            rises.append(Reached(rises[-1].history, reached=False))
            continue
        plan = Plan(left_s, start_s=begun_s, stop=Stop(seen, stop_c))
        more = conduct(grid, steel, boundary, start, plan)
        so_far = more if so_far is None else _joined(so_far, more)
        rises.append(Reached(so_far, more.stopped))
    return tuple(rises)


def _joined(before: History, after: History) -> History:
    """Return two stretches of one history as one."""
    return replace(
        after,
        time_s=np.concatenate([before.time_s, after.time_s[1:]]),
        temperature_c=np.hstack([before.temperature_c, after.temperature_c[:, 1:]]),
        stored_j=before.stored_j + after.stored_j,
    )


def _held(
    grid: Grid,
    torching: Torching,
    flame: tuple[float, float, float],
    rise: Reached,
    longest_s: float = HOLDS_S[-1],
) -> _Course:
    """Return a heating up to its stop and held there; as far as it came if it falls short."""
    past_mm, share, stop_c = flame
    swept_mm, steel = torching.swept_mm(past_mm), heating_steel(torching.steel_class)

    def around(hold_c: float | None) -> Boundary:
        return flame_boundary(
            grid,
            torching.flame,
            swept_mm,
            share,
            torching.hearth,
            hold_c,
        )

    run = rise.history
    if rise.reached:
        # The flame goes on until the colour is seen; then it plays over the part.
        plan = Plan(LATE_S, start_s=float(run.time_s[-1]))
        run = _joined(run, conduct(grid, steel, around(None), _solid(run.end_c), plan))
    stopped_s = float(run.time_s[-1])
    plan = Plan(longest_s, start_s=stopped_s)
    run = _joined(run, conduct(grid, steel, around(stop_c), _solid(run.end_c), plan))
    return _Course(run.time_s, run.temperature_c, stopped_s)


def _solid(field_c: Floats) -> Floats:
    """Return a field in which nothing is hotter than melting steel."""
    return np.minimum(field_c, MELTS_C)


def _uneven_k(grid: Grid, torching: Torching, rise: Reached) -> float:
    """Return the difference from side to side at a stop. [K]."""
    return side_difference_k(grid, rise.history, torching.flame, torching.turns)


def _read(courses: list[_Course], shape: tuple[int, int], stops_c: Floats) -> Iterator[Floats]:
    """Yield peak over the stop, log rate, hold, log tempering and field, by flame and stop."""
    sampled = [_sampled(course) for course in courses]
    time_s = np.stack([time for time, _ in sampled])[:, None, :]
    places = np.stack([rows for _, rows in sampled])
    at = RISING + np.arange(len(HOLDS_S))
    peak = np.maximum.accumulate(places, axis=-1)[..., at]
    rate = heating_rate(time_s, places)
    hold = held_s(time_s, places, rate)[..., at]
    tempered = tempered_s(time_s, np.maximum(places, COLD_C))[..., at]
    over = peak - np.tile(stops_c, shape[0])[:, None, None]
    yield _axes(over, shape)
    yield np.log(rate).reshape(*shape, -1)
    yield _axes(hold, shape)
    yield _axes(np.log(np.maximum(tempered, 1e-9)), shape)
    yield _axes(places[..., at], shape)


def _axes(part: Floats, shape: tuple[int, int]) -> Floats:
    """Return (courses, places, holds) as (flames, stops, holds, places)."""
    split = part.reshape(*shape, *part.shape[1:])
    return np.ascontiguousarray(np.swapaxes(split, -1, -2))


def _sampled(course: _Course) -> tuple[Floats, Floats]:
    """Return a course at its instants, and all cells there."""
    rows = course.temperature_c
    hottest = rows.max(axis=0)
    warm = course.time_s[int(np.argmax(hottest >= min(WARM_C, 0.9 * hottest.max())))]
    stopped = course.stopped_s
    up = np.linspace(min(warm, stopped - 1e-3), stopped, RISING, endpoint=False)
    instants = np.concatenate([up, stopped + np.array(HOLDS_S)])
    instants = np.minimum(instants, course.time_s[-1])
    k = np.clip(np.searchsorted(course.time_s, instants), 1, course.time_s.size - 1)
    low, high = course.time_s[k - 1], course.time_s[k]
    part = (instants - low) / np.maximum(high - low, 1e-9)
    return instants, rows[:, k - 1] + part * (rows[:, k] - rows[:, k - 1])
