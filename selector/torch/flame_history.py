"""The histories of a bar whose end is heated by an operator at a torch and dipped.

Heating and quench are two runs of one solver on one grid, and each cell's history is put as the
few numbers that metallurgy asks: peak, rate and hold, tempering on the way, pace of cooling.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from selector.hardening.heating_course import REFERENCE_C, heating_rate, held_s
from selector.hardening.quenched_bar import bar_cooling
from selector.heat.boiling import Bath, bath_temperature_c
from selector.heat.conduction import History, Plan, Stop
from selector.heat.end_quench import HIGH_C, equivalent_distance_mm, time_between
from selector.heat.exchange import Boundary
from selector.heat.grid import Grid, Section, bar_grid
from selector.heat.immersion import Immersion, quench_boundary, quench_history
from selector.heat.operator import Heated, Operator, heat_end, seen_cell
from selector.heat.quench import bath_end_c
from selector.heat.section_slice import Outline
from selector.heat.steel_property import SteelClass, cooling_steel
from selector.heat.torch import Torch
from selector.metallurgy.tempering import equivalent_time
from selector.torch.section import place_in_radius, section_factors, start_bin_c

Floats = NDArray[np.float64]

FOLLOWED_S = 1800.0
# The part goes under in this time, however long it is (estimated). [s], [mm]
UNDER_S, DEEP_MM = 0.3, 1e4
# Below this no steel changes in the seconds of a torch. [°C]
WARM_C = 350.0
# A bath warms no further than its boiling curve is described, and this far watery ones. [°C]
HOTTEST_BATH_C = {"oil": 200.0, "fast-oil": 200.0, "vegetable-oil": 200.0, "polymer": 60.0}
HOTTEST_WATER_C = 98.0
DENSITY_KG_PER_M3 = 7850.0
# The slowest place is followed past this, so that its time from 700 to 500 °C is known. [°C]
PASSED_C = 480.0


@dataclass(frozen=True, slots=True)
class FlameJob:
    """A stretch of a bar to be hardened by a torch, and the stretch that is heated for it.

    `outlines` are the true sections that the rounds stand for, none where it is round.
    `dip` is the whole schedule of the quench from the flame on, for a part that is not put
    right under after `delay_s`; a bath of known volume warms.
    """

    sections: tuple[Section, ...]
    zone_mm: tuple[float, float]
    heated_mm: tuple[float, float]
    flame: Torch
    operator: Operator
    bath: Bath
    delay_s: float = 1.0
    collapse_normal: float = 0.0
    steel_class: SteelClass = "low-alloy"
    bath_volume_l: float | None = None
    dip: Immersion | None = None
    outlines: tuple[Outline | None, ...] = ()

    @property
    def immersion(self) -> Immersion:
        """When the part is how far under the surface."""
        if self.dip is not None:
            return self.dip
        return Immersion((self.delay_s, self.delay_s + UNDER_S), (0.0, DEEP_MM))

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
    corner_share: Floats

    @property
    def at_corner(self) -> "Cooled":
        """The same with each place cooling as the corner of its section does."""
        spent = self.time_700_500_s * self.corner_share
        nearer = equivalent_distance_mm(spent) / equivalent_distance_mm(self.time_700_500_s)
        return replace(self, time_700_500_s=spent, distance_mm=self.distance_mm * nearer)


def heat_and_quench(task: FlameJob) -> Cooled:
    """Return the histories of a bar's end, heated by its operator and dipped whole.

    Parameters
    ----------
    task : FlameJob
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
    heated, grid = heat(task)
    return quench(task, heated, grid)


def heat(task: FlameJob) -> tuple[Heated, Grid]:
    """Return the heating of a job, which several quenches may follow.

    Parameters
    ----------
    task : FlameJob
        Part, flame, operator.

    Returns
    -------
    tuple of Heated and Grid
        All cells of steel are written down.
    """
    grid = bar_grid(task.sections)
    view = seen_cell(grid, task.middle_mm)
    return heat_end(
        grid,
        task.flame,
        task.operator,
        (view, task.heated_mm),
        task.steel_class,
    ), grid


def quench(task: FlameJob, heated: Heated, grid: Grid) -> Cooled:
    """Return the histories of a heated bar in its quench.

    Parameters
    ----------
    task : FlameJob
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
    warmed = _warmed_c(task, heated, grid)
    boundary = _dipped(task.sections, task.bath, task.immersion, task.collapse_normal, warmed)
    cooling = _cooling(task, heated, grid, boundary)
    peak = np.maximum(heated.temperature_c.max(axis=1), cooling.temperature_c.max(axis=1))
    hot, warm = peak >= HIGH_C, peak >= WARM_C
    spent, tempered = np.full(peak.size, np.nan), np.zeros(peak.size)
    # Counted over the whole history: a place may leave 700 °C before the part leaves the flame.
    time_s = np.concatenate([heated.time_s, heated.time_s[-1] + cooling.time_s[1:]])
    both = np.hstack([heated.temperature_c[hot], cooling.temperature_c[hot][:, 1:]])
    spent[hot] = time_between(time_s, both)
    tempered[warm] = equivalent_time(heated.temperature_c[warm], heated.time_s, REFERENCE_C)
    rate = heating_rate(heated.time_s, heated.temperature_c)
    top_c = float(peak.max())
    of_section, corner_share = section_factors(
        grid,
        task.sections,
        task.outlines,
        (task.bath, start_bin_c(top_c), task.steel_class),
    )
    spent *= of_section
    return Cooled(
        grid,
        heated,
        peak,
        rate,
        held_s(heated.time_s, heated.temperature_c, rate)[:, -1],
        tempered,
        spent,
        equivalent_distance_mm(spent) * _chart_factor(task, grid, top_c),
        corner_share,
    )


def _cooling(task: FlameJob, heated: Heated, grid: Grid, boundary: Boundary) -> History:
    """Return the quench, followed until every place has gone through its range."""
    cells = tuple(int(c) for c in grid.cells())
    steel, start = cooling_steel(task.steel_class), heated.end_c
    stop = Stop(grid.cell(0.0, task.middle_mm), 350.0, "falling")
    plan = Plan(FOLLOWED_S, watch=cells, stop=stop)
    found = quench_history(grid, steel, start, (task.bath, boundary), plan)
    left = np.where(grid.active, found.end_c, -np.inf)
    if left.max() <= PASSED_C:
        return found
    # Another place is slower than the middle: behind vapour, or left out of a dip.
    slowest = Stop(int(np.argmax(left)), PASSED_C, "falling")
    return quench_history(
        grid, steel, start, (task.bath, boundary), replace(plan, stop=slowest)
    )


def _warmed_c(task: FlameJob, heated: Heated, grid: Grid) -> float | None:
    """Return where part and bath end together; None of a bath of unknown size."""
    if task.bath_volume_l is None or task.bath.medium == "air":
        return None
    volume = np.where(grid.active, grid.mesh.volume, 0.0)
    mass_kg = DENSITY_KG_PER_M3 * float(volume.sum())
    mean_c = float((volume * heated.end_c).sum() / volume.sum())
    start_c = bath_temperature_c(task.bath)
    end_c = float(bath_end_c(mass_kg, mean_c, task.bath_volume_l, start_c, task.bath.medium))
    return min(
        max(5.0 * round(end_c / 5.0), start_c),
        HOTTEST_BATH_C.get(task.bath.medium, HOTTEST_WATER_C),
    )


@lru_cache(maxsize=64)
def _dipped(
    sections: tuple[Section, ...],
    bath: Bath,
    immersion: Immersion,
    collapse_normal: float,
    warmed_c: float | None,
) -> Boundary:
    """Return the surroundings of a bar in its dip; the same for every heat of it."""
    return quench_boundary(bar_grid(sections), bath, immersion, collapse_normal, warmed_c)


def _chart_factor(task: FlameJob, grid: Grid, start_c: float) -> Floats:
    """Return what the bar charts put right on the distance of each cell, by its place."""
    widest = max(section.outer_mm for section in task.sections)
    bar_place, factor = _charted(
        round(widest, 2), task.bath, start_bin_c(start_c), task.steel_class
    )
    return np.asarray(np.interp(place_in_radius(grid), bar_place, factor))


@lru_cache(maxsize=256)
def _charted(
    diameter_mm: float, bath: Bath, start_c: float, steel_class: SteelClass
) -> tuple[Floats, Floats]:
    """Return place in the radius, and the charts' factor on the distance there."""
    bar = bar_cooling(diameter_mm, bath, start_c, steel_class)
    factor = bar.jominy_mm / equivalent_distance_mm(bar.time_700_500_s)
    return bar.radius_mm / bar.radius_mm[-1], np.asarray(factor)
