"""The operator at the torch: how well he reads a heat, how late he is, what side he sees.

He is a controller with errors: he stops where he believes the heat to be, and a little late.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.conduction import History
from selector.heat.grid import Grid
from selector.heat.steel_property import heating_steel
from selector.heat.torch import AMBIENT_C, Torch, wrap_fraction

Floats = NDArray[np.float64]

# Standard deviation of a hardening heat by the best instrument at hand: what lasts (bias) and
# what changes from heat to heat. The eye by the spread between published colour tables; the
# magnet fixes 770 °C and the eye the rest; the others common practice, no source. A wire in a
# flame reads the flame as much as the part; pressed on the part out of the flame it reads low,
# and that of a kiln stays in the kiln: common practice. The best stands first. [°C]
READING_C: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "crayon": (6.0, 10.0),
        "thermocouple": (12.0, 12.0),
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


def reading(instruments: Iterable[str], light: str) -> Reading:
    """Return how well a heat is read with the best of some instruments in a light.

    Parameters
    ----------
    instruments : iterable of str
        Crayon, thermocouple, infrared, magnet, eye; others do not count. [-]
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
    then D = 2 q₁ R/k (1 - exp(-3.39 a t/R²)) from side to side [1]_. Mean q from the heat that
    is taken up. Of a part that does not turn the flame's side is stopped at its heat: a mean
    rise M makes that M + D/2, so that D / (1 + D/(2 M)) is left, the back no colder than air.

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
    if turns:
        return TURNED_SHARE * difference
    rise_k = float(heating.end_c.max()) - AMBIENT_C
    return min(difference / (1.0 + difference / (2.0 * rise_k)), rise_k)
