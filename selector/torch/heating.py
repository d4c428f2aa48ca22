"""Design histories of a part at a torch: a few heatings of the whole part, cold shank and all.

One heating towards the hottest bin passes the cooler ones; from each it is held, and what every
hold leaves is written down at a few places. So a part is heated once for each level of the
flame, whatever the steels and baths that follow.
"""

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import accumulate, pairwise

import numpy as np
from numpy.typing import NDArray

from selector.hardening.heating_course import drawn_s, first_s, heating_rate, held_s
from selector.heat.conduction import Plan, conduct
from selector.heat.grid import Grid, bar_grid
from selector.heat.operator import LATE_S, Heated, Operator, heat_end, seen_cell
from selector.heat.steel_property import SteelClass, heating_steel
from selector.heat.torch import Torch, flame_boundary
from selector.job.geometry import POSITIONS
from selector.torch.part import EDGE_C, Stretch

Floats = NDArray[np.float64]

# Cells of the design histories: the cooling times of a zone move by less than 1.5 % against
# the full grid, those of its end by 6 %, on 8 to 28 mm.
FINENESS = 0.6
# The flame on the part, tip, gas and distance together: sd of its logarithm (published bands of
# flux span a factor of two to three either side, one torch in one hand less; estimated).
LEVEL_LOG_SD = 0.3
# Once the surface is at heat the operator lingers, and the heat soaks in: time at heat with its
# log sd (common practice).
LINGER_S, LINGER_LOG_SD = 20.0, 0.5
# The design: levels of the flame in sd, heats at which the operator stops, holds.
LEVELS = (-1.5, 0.0, 1.5)
STOPS_C = (750.0, 830.0, 910.0)
HOLDS_S = (5.0, 10.0, 20.0, 40.0, 80.0, 160.0)
MIDDLE = (1, 1, 2)
# Instants between which a history is straight: on the way up, and after it stopped. [s]
RISING = 25
HELD_S = (1.0, 2.5, 5.0, 7.0, 10.0, 14.0, 20.0, 28.0, 40.0, 56.0, 80.0, 110.0, 160.0)
WARM_C = 450.0
# Below this no tempering counts.
COLD_C = 250.0
# The ring is looked for where the peak was at one of these. [°C]
RING_C = (660.0, 700.0, 740.0, 780.0, 820.0)
# Where a shank is looked at, and the end of a zone, as share of the wall.
OUTER, RIM = 0.85, POSITIONS[0]


@dataclass(frozen=True, slots=True)
class Torching:
    """A part at a torch: what is heated, by what flame, by whom, and where it is looked at.

    `places` are those of the thickest leading section, as shares of its wall, rim first.
    """

    part: Stretch
    flame: Torch
    hand: Operator
    steel_class: SteelClass
    lead: int
    places: tuple[float, ...] = POSITIONS


@dataclass(frozen=True, eq=False)
class Probes:
    """Where a part is looked at; sections count along the stretch, from 0.

    `weight` gives the temperature of each probe from those of the steel cells; the probes are
    the `hard` sections' places, the ends of the zone, the `soft` sections, then the ring.
    """

    grid: Grid
    hard: tuple[int, ...]
    soft: tuple[int, ...]
    ends: int
    weight: Floats

    @property
    def in_zone(self) -> int:
        """How many probes lie in the zone, its ends included."""
        return len(self.hard) * len(POSITIONS) + self.ends

    @property
    def told(self) -> int:
        """How many probes there are without the ring's."""
        return self.in_zone + len(self.soft)


@dataclass(frozen=True, eq=False)
class Course:
    """One heating to one stop and its hold: all cells, and when it was stopped."""

    time_s: Floats
    temperature_c: Floats
    stopped_s: float

    def at(self, time_s: float) -> Floats:
        """Return all cells at an instant."""
        k = int(np.clip(np.searchsorted(self.time_s, time_s), 1, self.time_s.size - 1))
        low, high = self.time_s[k - 1], self.time_s[k]
        part = float(np.clip((time_s - low) / max(high - low, 1e-9), 0.0, 1.0))
        cells = self.temperature_c
        return np.asarray(cells[:, k - 1] + part * (cells[:, k] - cells[:, k - 1]))


@dataclass(frozen=True, eq=False)
class Heating:
    """The design heatings, read; axes are levels, stops, holds and probes.

    `over_c` is the peak above the heat at which the operator stopped, `ring_log_s` the log time
    of tempering where the peak was at each of `RING_C`.
    """

    probes: Probes
    over_c: Floats
    log_rate: Floats
    hold_s: Floats
    drawn_log_s: Floats
    ring_log_s: Floats
    courses: tuple[Course, ...]

    def start(self, stop: int, hold: int) -> Floats:
        """Return the part as it goes into the bath, a field over the grid."""
        course, grid = self.courses[stop], self.probes.grid
        return grid.field(course.at(course.stopped_s + HOLDS_S[hold]), 20.0)

    @cached_property
    def table(self) -> Floats:
        """All that is read at the probes, side by side in one axis."""
        told = (self.over_c, self.log_rate, self.hold_s, self.drawn_log_s)
        return np.concatenate([*told, self.ring_log_s], axis=-1)


def heated(task: Torching) -> Heating:
    """Return the design heatings of a part, far enough past its zone for the edge to harden.

    Parameters
    ----------
    task : Torching
        Part, flame, operator.

    Returns
    -------
    Heating
        Read at the probes.
    """
    grid = bar_grid(task.part.sections, FINENESS)
    probes = _probes(grid, task)
    start, end = task.part.zone_mm
    middle: tuple[Course, ...] = ()
    share, view = 1.0, (0, (0.0, 0.0))
    for past in task.part.pasts:
        reach = past * task.part.thickest_mm
        low = max(start - reach, 0.0)
        stretch_mm = (low, min(end + reach, task.part.length_mm))
        view = (seen_cell(grid, 0.5 * (start + end)), stretch_mm)
        middle, share = _courses(grid, task, task.flame, view)
        seen = grid.cells().tolist().index(view[0])
        if middle[0].temperature_c[seen].max() < STOPS_C[0]:
            break  # Spread farther, the same flame heats less.
        if _edge_over_c(probes, middle[MIDDLE[1]]) >= -EDGE_C:
            break
    levels = []
    for sds in LEVELS:
        times = float(np.exp(LEVEL_LOG_SD * sds))
        # A flame that is drawn back is drawn back to the same, whether strong or weak.
        if sds == 0.0 or (share < 1.0 and share <= times):
            levels.append(middle)
        else:
            # How much a level counts hardly goes by the heat: one stop tells for all.
            stops = STOPS_C[MIDDLE[1] : MIDDLE[1] + 1]
            levels.append(_courses(grid, task, task.flame.stronger(times), view, stops)[0])
    return _read(probes, tuple(levels))


def _courses(
    grid: Grid,
    task: Torching,
    flame: Torch,
    view: tuple[int, tuple[float, float]],
    stops_c: tuple[float, ...] = STOPS_C,
) -> tuple[tuple[Course, ...], float]:
    """Return a heating branched at each stop into its hold, and the share of the flame used."""
    flat_out = replace(task.hand, stop_c=stops_c[-1], hold_s=0.0)
    found = heat_end(grid, flame, flat_out, view, task.steel_class)
    row = grid.cells().tolist().index(view[0])
    seen = found.temperature_c[row]
    return tuple(
        _branch(grid, task, flame, view, (found, seen, stop_c)) for stop_c in stops_c
    ), found.level


def _branch(
    grid: Grid,
    task: Torching,
    flame: Torch,
    view: tuple[int, tuple[float, float]],
    way: tuple[Heated, Floats, float],
) -> Course:
    """Return a heating up to its stop, and held there; as far as it came if it falls short."""
    found, seen, stop_c = way
    if seen.max() < stop_c:
        return Course(found.time_s, found.temperature_c, float(found.time_s[-1]))
    passed = float(first_s(found.time_s, seen, stop_c)) + LATE_S
    up = Course(found.time_s, found.temperature_c, passed)
    keep = found.time_s < passed
    now = up.at(passed)
    held = flame_boundary(grid, flame, view[1], found.level, task.hand.hearth, stop_c)
    plan = Plan(HOLDS_S[-1], start_s=passed)
    after = conduct(grid, heating_steel(task.steel_class), held, grid.field(now, 20.0), plan)
    return Course(
        np.concatenate([found.time_s[keep], after.time_s]),
        np.hstack([found.temperature_c[:, keep], after.temperature_c]),
        passed,
    )


def _edge_over_c(probes: Probes, course: Course) -> float:
    """Return by how much the coldest end of the zone came past the middle stop. [°C]."""
    if not probes.ends:
        return np.inf
    first = probes.in_zone - probes.ends
    upto = course.time_s <= course.stopped_s + HOLDS_S[MIDDLE[2]]
    rows = probes.weight[first : probes.in_zone] @ course.temperature_c[:, upto]
    return float(rows.max(axis=1).min()) - STOPS_C[MIDDLE[1]]


def _read(probes: Probes, levels: tuple[tuple[Course, ...], ...]) -> Heating:
    """Return what the courses do at the probes."""
    middle = levels[MIDDLE[0]]
    others = [courses[0] for courses in levels if courses is not middle]
    found = _read_apart(probes, [*middle, *others], [*STOPS_C, *[STOPS_C[1]] * len(others)])
    over, rate, hold, drawn, ring = (_spread(part, levels) for part in found)
    return Heating(probes, over, rate, np.maximum(hold, 0.0), drawn, ring, middle)


def _spread(part: Floats, levels: tuple[tuple[Course, ...], ...]) -> Floats:
    """Return a reading by level and stop, what a level changes being alike at every stop."""
    count, middle = len(STOPS_C), levels[MIDDLE[0]]
    changes, other = [], count
    for courses in levels:
        alike = courses is middle
        changes.append(0.0 if alike else part[other] - part[MIDDLE[1]])
        other += not alike
    return np.stack([part[:count] + change for change in changes])


def _read_apart(
    probes: Probes, courses: list[Course], stops_c: list[float]
) -> tuple[Floats, ...]:
    """Return peak over the stop, log rate, hold, log tempering and ring, by course and hold."""
    sampled = [_sampled(probes, course) for course in courses]
    time_s = np.stack([time for time, _ in sampled])[:, None, :]
    places = np.stack([rows for _, rows in sampled])
    told = probes.told
    at = [RISING + HELD_S.index(hold) for hold in HOLDS_S]
    peak = np.maximum.accumulate(places, axis=-1)[..., at]
    rate = heating_rate(time_s, places[:, :told])
    hold = held_s(time_s, places[:, :told], rate)[..., at]
    drawn = drawn_s(time_s, np.maximum(places, COLD_C))[..., at]
    log_drawn = np.log(np.maximum(drawn, 1e-9))
    ring = _ring(peak[:, told:], log_drawn[:, told:])
    over = peak[:, :told] - np.array(stops_c)[:, None, None]
    rates = np.repeat(np.log(rate)[:, :, None], len(at), axis=2)
    found = (over, rates, hold, log_drawn[:, :told], ring)
    return tuple(np.moveaxis(part, 1, 2) for part in found)


def _sampled(probes: Probes, course: Course) -> tuple[Floats, Floats]:
    """Return a course at its instants, and the probes there."""
    rows = probes.weight @ course.temperature_c
    hottest = rows.max(axis=0)
    warm = course.time_s[int(np.argmax(hottest >= min(WARM_C, 0.9 * hottest.max())))]
    stopped = course.stopped_s
    up = np.linspace(min(warm, stopped - 1e-3), stopped, RISING)
    instants = np.concatenate([up, stopped + np.array(HELD_S)])
    instants = np.minimum(instants, course.time_s[-1])
    k = np.clip(np.searchsorted(course.time_s, instants), 1, course.time_s.size - 1)
    low, high = course.time_s[k - 1], course.time_s[k]
    part = (instants - low) / np.maximum(high - low, 1e-9)
    return instants, rows[:, k - 1] + part * (rows[:, k] - rows[:, k - 1])


def _ring(peak_c: Floats, log_s: Floats) -> Floats:
    """Return the tempering where the peak was at each of `RING_C`; (courses, -, holds)."""
    count, columns, holds = peak_c.shape
    found = np.empty((count, len(RING_C), holds))
    if columns == 0:
        found[:] = np.log(1e-9)
        return found
    for i in range(count):
        for j in range(holds):
            order = np.argsort(peak_c[i, :, j])
            found[i, :, j] = np.interp(RING_C, peak_c[i, order, j], log_s[i, order, j])
    return found


def _probes(grid: Grid, task: Torching) -> Probes:
    """Return where a part is looked at."""
    start, end = task.part.zone_mm
    edges = [0.0, *accumulate(section.length_mm for section in task.part.sections)]
    spans = list(enumerate(pairwise(edges)))
    hard = tuple(i for i, (low, high) in spans if low < end and high > start)
    soft = tuple(i for i, _ in spans if i not in hard)
    middles = [0.5 * (low + high) for _, (low, high) in spans]
    rows = [
        _row(grid, middles[i], place)
        for i in hard
        for place in (task.places if i == task.lead else POSITIONS)
    ]
    inside = np.flatnonzero((grid.along_mm > start) & (grid.along_mm < end))
    rims = [(inside[0], start > 0.0), (inside[-1], end < task.part.length_mm - 1e-6)]
    ends = [_row(grid, grid.along_mm[column], RIM) for column, is_end in rims if is_end]
    shanks = [_row(grid, middles[i], OUTER) for i in soft]
    behind = grid.along_mm[grid.along_mm > end]
    before = grid.along_mm[grid.along_mm < start]
    ring = [_row(grid, z, RIM) for z in (behind if behind.size >= before.size else before)]
    weight = np.array([*rows, *ends, *shanks, *ring])
    return Probes(grid, hard, soft, len(ends), weight)


def _row(grid: Grid, along_mm: float, place: float) -> Floats:
    """Return the weight of each steel cell at a share of the wall, at a distance along."""
    column = int(np.argmin(np.abs(grid.along_mm - along_mm)))
    rows = np.flatnonzero(grid.active[:, column])
    radii = grid.across_mm[rows]
    weight = np.zeros(grid.active.shape)
    if rows.size == 1:
        weight[rows[0], column] = 1.0
    else:
        half = 0.5 * (radii[-1] - radii[-2])
        inner = radii[0] - half if rows[0] > 0 else 0.0
        at = np.clip(inner + place * (radii[-1] + half - inner), radii[0], radii[-1])
        k = int(np.clip(np.searchsorted(radii, at) - 1, 0, rows.size - 2))
        part = (at - radii[k]) / (radii[k + 1] - radii[k])
        weight[rows[k], column], weight[rows[k + 1], column] = 1.0 - part, part
    return weight.ravel()[grid.cells()]
