"""What grinding takes off a flame-hardened end, and the soft skin that the flame leaves.

The hardness that is told is that of the finished face, under what is ground off it.
"""

from dataclasses import replace
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from selector.hazards.decarburisation import soft_skin
from selector.heat.grid import Grid
from selector.heat.operator import Heated, seen_cell
from selector.torch.hardness_map import FlameMap
from selector.torch.part import Stretch

Floats = NDArray[np.float64]
# Below this no austenite gives up its carbon. [°C]
AUSTENITE_C = 730.0


def ground(found: FlameMap, part: Stretch, removed_mm: float) -> FlameMap:
    """Return a map whose surface is that of the finished face.

    Parameters
    ----------
    found : FlameMap
        As drawn, before it is ground.
    part : Stretch
        Its sections.
    removed_mm : float
        Ground off a side. [mm]

    Returns
    -------
    FlameMap
        The hardness under what is taken off stands in the outermost cell; as it is where
        nothing is. Outside a bore alone.
    """
    if removed_mm <= 0.0:
        return found
    ends = list(accumulate(section.length_mm for section in part.sections))
    face = found.hrc.copy()
    for column, place in enumerate(found.along_mm):
        section = part.sections[min(int(np.searchsorted(ends, place)), len(ends) - 1)]
        rows = np.flatnonzero(np.isfinite(found.hrc[:, column]))
        at_mm = 0.5 * section.outer_mm - removed_mm
        face[rows[-1], column] = np.interp(at_mm, found.across_mm[rows], face[rows, column])
    return replace(found, hrc=face)


def flame_skin_mm(heated: Heated, grid: Grid, along_mm: float) -> float:
    """Return the soft skin that the flame leaves on a place, before anything is ground off.

    Parameters
    ----------
    heated : Heated
        Its heating.
    grid : Grid
        Its cells.
    along_mm : float
        Where. [mm]

    Returns
    -------
    float
        Of the surface's own history, whose steps add as the squares of their depths. [mm]
    """
    row = grid.cells().tolist().index(seen_cell(grid, along_mm))
    history = heated.temperature_c[row]
    middle = 0.5 * (history[1:] + history[:-1])
    hot = middle > AUSTENITE_C
    if not hot.any():
        return 0.0
    steps = soft_skin(middle[hot], np.diff(heated.time_s)[hot], "flame").soft_mm
    return float(np.sqrt(np.sum(np.square(steps))))
