"""Tempering as heat: what each place of a part goes through in an oven, on sand, out of a dip.

A furnace gives every place the same, sand or a plate nearly so; the heat left behind a dipped
end runs along the part, so that each place gets its own temper.
"""

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.boiling import Bath
from selector.heat.conduction import History, Plan, Stop, conduct
from selector.heat.exchange import convection, steady
from selector.heat.grid import Grid
from selector.heat.immersion import Immersion, quench_boundary, quench_history
from selector.heat.operator import seen_cell
from selector.heat.steel_property import cooling_steel, heating_steel
from selector.heat.torch import AMBIENT_C, BARE_W_PER_M2_K, EMISSIVITY

Floats = NDArray[np.float64]
Means = Literal["oven", "furnace", "sand", "plate"]

# Exchange with still hot air and walls, with hot sand heaped round, and through the air film of
# a hot plate with a lid or brass chips. Estimated from times of practice. [W/(m² K)]
EXCHANGE = {"oven": 15.0, "furnace": 20.0, "sand": 60.0, "plate": 45.0}
# A part has come to heat when this near to it. [°C]
NEAR_C = 5.0
# Longest that anybody waits for a colour to arrive. [s]
PATIENCE_S = 900.0


@dataclass(frozen=True, slots=True, eq=False)
class TemperCourse:
    """What the surface along a part went through, and the field it ended with.

    `temperature_c` has shape (places, times); `arrived_s` is when the watched place came to its
    heat, infinite where it never did.
    """

    along_mm: Floats
    time_s: Floats
    temperature_c: Floats
    arrived_s: float
    end_c: Floats

    @property
    def peak_c(self) -> Floats:
        """Highest temperature of each place."""
        return np.asarray(self.temperature_c.max(axis=1))


def soaked(grid: Grid, means: Means, oven_c: float, time_s: float) -> TemperCourse:
    """Return the history of a part laid cold into an oven, or on hot sand or a hot plate.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    means : {"oven", "furnace", "sand", "plate"}
        What heats it. [-]
    oven_c : float
        Its temperature, held. [°C]
    time_s : float
        From laying in to taking out. [s]

    Returns
    -------
    TemperCourse
        Histories along the part; the place that is watched is the coldest. [-]

    Raises
    ------
    OutOfRangeError
        The means is unknown, or as `conduct`.

    Notes
    -----
    Convection and radiation all round. The exchanges are estimated.

    References
    ----------
    .. [1] Common practice, no source.
    """
    if means not in EXCHANGE:
        rule, step = f"one of {', '.join(EXCHANGE)}", "Choose the nearest."
        raise OutOfRangeError(Problem("means", rule, repr(means), step))
    radiates = EMISSIVITY if means in {"oven", "furnace"} else 0.0
    around = convection(EXCHANGE[means], oven_c, radiates)
    faces = {str(face): around for face in np.unique(grid.wall_face)}
    watch = _surface(grid)
    plan = Plan(time_s, watch=watch)
    history = conduct(grid, heating_steel(), steady(grid, faces), AMBIENT_C, plan)
    coldest = history.temperature_c.min(axis=0)
    there = np.flatnonzero(coldest >= oven_c - NEAR_C)
    arrived = float(history.time_s[there[0]]) if there.size else math.inf
    return TemperCourse(
        grid.along_mm, history.time_s, history.temperature_c, arrived, history.end_c
    )


def run_back(
    grid: Grid,
    hot_c: Floats,
    bath: Bath,
    dip: tuple[float, float],
    colour: tuple[float, float],
) -> TemperCourse:
    """Return the history of an end dipped, taken out, and tempered by the heat behind it.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    hot_c : ndarray
        Temperature of each cell as it leaves the fire. [°C]
    bath : Bath
        What the end is dipped in. [-]
    dip : tuple of float
        Length under the surface, mm, and time there, s. [-]
    colour : tuple of float
        Temperature that is waited for, °C, and the place where, mm. [-]

    Returns
    -------
    TemperCourse
        Histories from the moment it is taken out; the watched place never comes to its heat
        where too little is left behind. [-]

    Raises
    ------
    OutOfRangeError
        As `quench_history`.

    Notes
    -----
    Austenite's properties in the dip, the heating set afterwards; still air and radiation.

    References
    ----------
    .. [1] Common practice, no source.
    """
    length_mm, dip_s = dip
    wanted_c, at_mm = colour
    watch = _surface(grid)
    under = Immersion((0.0,), (length_mm,))
    around = quench_boundary(grid, bath, under)
    dipped = quench_history(
        grid, cooling_steel(), hot_c, (bath, around), Plan(dip_s, watch=watch)
    )
    air = convection(BARE_W_PER_M2_K, AMBIENT_C, EMISSIVITY)
    faces = {str(face): air for face in np.unique(grid.wall_face) if face != "held"}
    stop = Stop(seen_cell(grid, at_mm), wanted_c)
    plan = Plan(PATIENCE_S, watch=watch, stop=stop)
    after = conduct(grid, heating_steel(), steady(grid, faces), dipped.end_c, plan)
    return _until(grid, after)


def _surface(grid: Grid) -> tuple[int, ...]:
    """Return the surface cell of each column."""
    return tuple(seen_cell(grid, float(z)) for z in grid.along_mm)


def _until(grid: Grid, last: History) -> TemperCourse:
    """Return a history that ends as the colour arrives."""
    arrived = float(last.time_s[-1]) if last.stopped else math.inf
    return TemperCourse(grid.along_mm, last.time_s, last.temperature_c, arrived, last.end_c)
