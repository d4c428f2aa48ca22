"""What corners and flats add to the round that stands for a section in the quench."""

from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.heat.boiling import Bath, boiling_curve
from selector.heat.conduction import Plan, Stop, conduct
from selector.heat.exchange import convection, steady
from selector.heat.grid import Grid
from selector.heat.section_slice import Hole, Outline, SectionEffect, section_effect, slice_grid
from selector.heat.steel_property import SteelClass, cooling_steel, heating_steel
from selector.heat.torch import AMBIENT_C
from selector.kept import kept_on_disk

Floats = NDArray[np.float64]
# Cells of the cut across a hole, and the longest that a flame is kept on it. [-], [s]
HOLE_FINENESS, PATIENCE_S = 1.5, 600.0


def start_bin_c(start_c: float) -> float:
    """Return the start of a quench in steps that heats share. [°C]."""
    # From 760 to 1000 °C by 40.
    return 40.0 * round(min(max(start_c, 760.0), 1000.0) / 40.0)


def place_in_radius(grid: Grid) -> Floats:
    """Return where in its section each steel cell lies, 0 at the axis and towards 1 at the rim.

    Parameters
    ----------
    grid : Grid
        The part.

    Returns
    -------
    ndarray
        Share of the outermost cell's radius. [-]
    """
    outer = np.max(np.where(grid.active, grid.across_mm[:, None], 0.0), axis=0)
    share = np.where(grid.active, grid.across_mm[:, None] / outer, 0.0)
    return np.asarray(share.ravel()[grid.cells()])


def section_factors(
    grid: Grid,
    edges_mm: tuple[float, ...],
    outlines: tuple[Outline | None, ...],
    quench: tuple[Bath, float, SteelClass],
) -> tuple[Floats, Floats]:
    """Return by how much each cell of the round cools slower for its true section."""
    # Factor on the time from 700 to 500 °C, of the middle of a side at the rim and of the
    # centre inside; and what a corner's time is of the side's. 1 for rounds.
    cells = grid.cells()
    slower, corner = np.ones(cells.size), np.ones(cells.size)
    if not any(outlines):
        return slower, corner
    along, place = grid.along_mm[cells % grid.along_mm.size], place_in_radius(grid)
    for outline, (low, high) in zip(outlines, pairwise(edges_mm), strict=True):
        if outline is None:
            continue
        effect = _effect(outline, *quench)
        here = (along >= low) & (along < high)
        rim, centre = effect.side_fraction, effect.centre_fraction
        slower[here] = centre + (rim - centre) * place[here]
        corner[here] = effect.corner_fraction / effect.side_fraction
    return slower, corner


@lru_cache(maxsize=256)
@kept_on_disk
def _effect(
    outline: Outline, bath: Bath, start_c: float, steel_class: SteelClass
) -> SectionEffect:
    """Return the effect of a section in a wetted bath; of a hot start the heat is one level."""
    wetted = boiling_curve(bath).wet
    return section_effect(outline, wetted, cooling_steel(steel_class), start_c)


def hole_lead_k(
    size_mm: float, at_mm: float, hole_mm: float, flame: tuple[float, float], target_c: float
) -> float:
    """Return how far the web between a cross-hole and the end runs ahead, for the hole. [K]."""
    # Against the same place without the hole; 0 where the hole breaks through the end or is as
    # wide as the bar.
    if at_mm <= 0.5 * hole_mm or hole_mm >= size_mm:
        return 0.0
    rounded = (float(f"{flame[0]:.1e}"), float(f"{flame[1]:.2e}"))
    return _hole_lead_k(size_mm, at_mm, hole_mm, rounded, target_c)


@lru_cache(maxsize=256)
@kept_on_disk
def _hole_lead_k(
    size_mm: float, at_mm: float, hole_mm: float, flame: tuple[float, float], target_c: float
) -> float:
    """Return the lead on a lengthwise cut across the hole, in a flame on end and sides."""
    long_mm = 2.0 * at_mm + 2.0 * size_mm
    end_mm = -0.5 * long_mm
    holes = ((Hole(end_mm + at_mm, 0.0, hole_mm),), ())
    web_mm = end_mm + 0.5 * (at_mm - 0.5 * hole_mm)
    washed = convection(*flame)
    ends_c = []
    for drilled in holes:
        grid = slice_grid("flat", size_mm, long_mm, drilled, HOLE_FINENESS)
        job = steady(grid, dict.fromkeys(("left", "top", "bottom"), washed))
        seen = grid.cell(end_mm + at_mm + size_mm, 0.5 * size_mm)
        plan = Plan(PATIENCE_S, watch=(grid.cell(web_mm, 0.0),), stop=Stop(seen, target_c))
        history = conduct(grid, heating_steel(), job, AMBIENT_C, plan)
        ends_c.append(float(history.temperature_c[0, -1]))
    return max(ends_c[0] - ends_c[1], 0.0)
