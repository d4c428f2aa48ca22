"""The histories of a bar whose end is heated by an operator at a torch and dipped.

Heating and quench are two runs of one solver on one grid, and each cell's history is put as the
few numbers that metallurgy asks: peak, rate and hold, tempering on the way, pace of cooling.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from selector.heat.boiling import Bath
from selector.heat.conduction import Plan, Stop
from selector.heat.end_quench import HIGH_C, equivalent_distance_mm, time_between
from selector.heat.exchange import Boundary
from selector.heat.grid import Grid, Section, bar_grid
from selector.heat.immersion import Immersion, quench_boundary, quench_history
from selector.heat.operator import Heated, Operator, heat_end, seen_cell
from selector.heat.steel_property import SteelClass, cooling_steel
from selector.heat.torch import Torch
from selector.metallurgy.austenite import DISSOLUTION_ENERGY, GAS_CONSTANT
from selector.metallurgy.tempering import equivalent_time
from selector.quenched_bar import bar_cooling

Floats = NDArray[np.float64]

# Through the critical range the heating rate is read between these. [°C]
RATE_BETWEEN_C = (600.0, 720.0)
# Heating evenly up to a peak near 830 °C dissolves as much as this span's time at the peak:
# (1 - 1/e) of R T² / Q, with the energy of dissolution. [°C]
ARRIVING_C = 32.0
# Temperings on the way are put as time at this. [°C]
REFERENCE_C = 600.0
FOLLOWED_S = 1800.0
# The part goes under in this time, however long it is (estimated). [s], [mm]
UNDER_S, DEEP_MM = 0.3, 1e4
# Below this no steel changes in the seconds of a torch. [°C]
WARM_C = 350.0


@dataclass(frozen=True, slots=True)
class Job:
    """A stretch of a bar to be hardened by a torch, and the stretch that is heated for it."""

    sections: tuple[Section, ...]
    zone_mm: tuple[float, float]
    heated_mm: tuple[float, float]
    flame: Torch
    operator: Operator
    bath: Bath
    delay_s: float = 1.0
    collapse_normal: float = 0.0
    steel_class: SteelClass = "low-alloy"

    @property
    def middle_mm(self) -> float:
        """Where the operator looks: the middle of the zone."""
        return 0.5 * (self.zone_mm[0] + self.zone_mm[1])


@dataclass(frozen=True, slots=True, eq=False)
class Cooled:
    """Histories of all steel cells, put as what metallurgy asks; shape (cells,)."""

    grid: Grid
    heated: Heated
    peak_c: Floats
    rate_c_per_s: Floats
    hold_s: Floats
    drawn_s: Floats
    time_700_500_s: Floats
    distance_mm: Floats


def heat_and_quench(job: Job) -> Cooled:
    """Return the histories of a bar's end, heated by its operator and dipped whole.

    Parameters
    ----------
    job : Job
        Part, flame, operator, bath.

    Returns
    -------
    Cooled
        Peak, rate, hold and cooling of every cell.

    Raises
    ------
    OutOfRangeError
        The part, operator or bath is none that can be computed.
    """
    heated, grid = heat(job)
    return quench(job, heated, grid)


def heat(job: Job) -> tuple[Heated, Grid]:
    """Return the heating of a job, which several quenches may follow.

    Parameters
    ----------
    job : Job
        Part, flame, operator.

    Returns
    -------
    tuple of Heated and Grid
        All cells of steel are written down.
    """
    grid = bar_grid(job.sections)
    view = seen_cell(grid, job.middle_mm)
    return heat_end(grid, job.flame, job.operator, (view, job.heated_mm), job.steel_class), grid


def quench(job: Job, heated: Heated, grid: Grid) -> Cooled:
    """Return the histories of a heated bar in its quench.

    Parameters
    ----------
    job : Job
        Bath and delay.
    heated : Heated
        Its heating.
    grid : Grid
        Its cells.

    Returns
    -------
    Cooled
        Peak, rate, hold and cooling of every cell.
    """
    boundary = _dipped(job.sections, job.bath, job.delay_s, job.collapse_normal)
    core = grid.cell(0.0, job.middle_mm)
    cells = tuple(int(c) for c in grid.cells())
    plan = Plan(FOLLOWED_S, watch=cells, stop=Stop(core, 350.0, "falling"))
    steel = cooling_steel(job.steel_class)
    cooling = quench_history(grid, steel, heated.end_c, (job.bath, boundary), plan)
    peak = np.maximum(heated.temperature_c.max(axis=1), cooling.temperature_c.max(axis=1))
    hot, warm = peak >= HIGH_C, peak >= WARM_C
    spent, tempered = np.full(peak.size, np.nan), np.zeros(peak.size)
    spent[hot] = time_between(cooling.time_s, cooling.temperature_c[hot])
    tempered[warm] = equivalent_time(heated.temperature_c[warm], heated.time_s, REFERENCE_C)
    rate = _rate_c_per_s(heated)
    return Cooled(
        grid,
        heated,
        peak,
        rate,
        _hold_s(heated, rate),
        tempered,
        spent,
        equivalent_distance_mm(spent) * _chart_factor(job, grid, float(peak.max())),
    )


@lru_cache(maxsize=64)
def _dipped(
    sections: tuple[Section, ...], bath: Bath, delay_s: float, collapse_normal: float
) -> Boundary:
    """Return the surroundings of a bar that goes under whole; the same for every heat of it."""
    dip = Immersion((delay_s, delay_s + UNDER_S), (0.0, DEEP_MM))
    return quench_boundary(bar_grid(sections), bath, dip, collapse_normal)


def _rate_c_per_s(heated: Heated) -> Floats:
    """Return the heating rate of each cell through the critical range, or up to its peak."""
    low, high = RATE_BETWEEN_C
    times = [_first_s(heated, level) for level in (low, high)]
    return np.asarray((high - low) / np.maximum(times[1] - times[0], 0.05))


def _first_s(heated: Heated, level_c: float) -> Floats:
    """Return when each cell first passes a temperature; the end where it does not."""
    above = heated.temperature_c >= level_c
    k = np.argmax(above, axis=1)
    rows, before = np.arange(k.size), np.maximum(k - 1, 0)
    cold, hot = heated.temperature_c[rows, before], heated.temperature_c[rows, k]
    part = np.clip((level_c - cold) / np.maximum(hot - cold, 1e-9), 0.0, 1.0)
    at = heated.time_s[before] + part * (heated.time_s[k] - heated.time_s[before])
    return np.asarray(np.where(above.any(axis=1), at, heated.time_s[-1]))


def _hold_s(heated: Heated, rate_c_per_s: Floats) -> Floats:
    """Return the hold at its peak that dissolves as much as all of each cell's history."""
    kelvin = heated.temperature_c + 273.15
    colder = 1.0 / kelvin - 1.0 / kelvin.max(axis=1)[:, None]
    pace = np.exp(-DISSOLUTION_ENERGY / GAS_CONSTANT * colder)
    spent = np.sum(0.5 * (pace[:, 1:] + pace[:, :-1]) * np.diff(heated.time_s), axis=1)
    return np.asarray(np.maximum(spent - ARRIVING_C / rate_c_per_s, 0.0))


def _chart_factor(job: Job, grid: Grid, start_c: float) -> Floats:
    """Return what the bar charts put right on the distance of each cell, by its place."""
    widest = max(section.outer_mm for section in job.sections)
    start = 40.0 * round(min(max(start_c, 760.0), 1000.0) / 40.0)
    bar_place, factor = _charted(round(widest, 2), job.bath, start, job.steel_class)
    outer = np.max(np.where(grid.active, grid.across_mm[:, None], 0.0), axis=0)
    place = np.where(grid.active, grid.across_mm[:, None] / outer, 0.0).ravel()[grid.cells()]
    return np.asarray(np.interp(place, bar_place, factor))


@lru_cache(maxsize=256)
def _charted(
    diameter_mm: float, bath: Bath, start_c: float, steel_class: SteelClass
) -> tuple[Floats, Floats]:
    """Return place in the radius, and the charts' factor on the distance there."""
    bar = bar_cooling(diameter_mm, bath, start_c, steel_class)
    factor = bar.jominy_mm / equivalent_distance_mm(bar.time_700_500_s)
    return bar.radius_mm / bar.radius_mm[-1], np.asarray(factor)
