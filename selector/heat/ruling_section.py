"""The round bar that cools like another section: the ruling section of heat treatment."""

import math
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import demand, positive
from selector.heat.bar_equivalent import HALF_TIME, INCH_MM

FloatArray = NDArray[np.float64]
Shape = Literal["round", "square", "hexagon", "flat", "tube"]


# First eigenvalue × size² and first coefficient of the fast-surface limit, from the series
# solutions: strip and square by sines, the hexagon from its fundamental membrane mode.
_HEXAGON_FIRST = 1.61  # between the circle's 1.60 and the square's 1.62
_HEXAGON_EIGENVALUE = 7.1553 * 3.0  # by across-flats squared; side = flats / √3


def round_equivalent_mm(
    shape: Shape,
    size_mm: ArrayLike,
    severity: ArrayLike = 1.0,
    width_mm: ArrayLike | None = None,
    bore_mm: ArrayLike | None = None,
) -> FloatArray:
    """Return the round bar whose centre cools like the centre of another section.

    Equal half-temperature time at the given severity. A tube is wetted inside and out; plug the
    bore and it cools like a solid of twice the wall at best.

    Parameters
    ----------
    shape : {"round", "square", "hexagon", "flat", "tube"}
        Section. [-]
    size_mm : array_like
        Diameter, side, width across flats, thickness, or outside diameter. [mm]
    severity : array_like
        Quench severity on Grossmann's scale. [-]
    width_mm : array_like, optional
        Width of a flat; left out, it is wide. [mm]
    bore_mm : array_like, optional
        Bore of a tube. [mm]

    Returns
    -------
    ndarray
        Diameter of the equivalent round. [mm]

    Raises
    ------
    OutOfRangeError
        A size is not above 0, or a tube has no wall.

    Notes
    -----
    ``alpha t = ln2 (A/P) / (h/k) + ln(2 C₁) / λ₁²`` for each section, solved for the round. A
    square comes to 1.0 (slow quench) to 1.08 (severe) of its side, a wide plate to 2.0 to 1.4
    of its thickness, the flat of 40 × 60 mm to 49 mm where [1]_ gives 50 mm as its example.

    References
    ----------
    .. [1] EN 10083-1, annex on the equivalent diameter of rectangular sections (from memory).
    .. [2] H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, chapters 3
       and 7 (from memory).
    """
    size = positive("size_mm", size_mm)
    per_h = INCH_MM / (2 * positive("severity", severity))  # k/h in mm
    if shape == "round":
        return size * np.ones_like(per_h)
    if shape == "hexagon":
        area_by_edge, slow = (
            size / 4,
            math.log(2 * _HEXAGON_FIRST) * size**2 / _HEXAGON_EIGENVALUE,
        )
    else:
        thickness, width = _strip(shape, size, width_mm, bore_mm)
        inverse = 1 / thickness**2 + 1 / width**2
        # C₁ falls from (4/π)² of a square to 4/π of a wide plate.
        coefficient = 4 / math.pi * (1 + (4 / math.pi - 1) * thickness / width)
        slow = np.log(2 * coefficient) / (math.pi**2 * inverse)
        area_by_edge = 0.5 / (1 / thickness + 1 / width)
    half_time = math.log(2) * area_by_edge * per_h + slow
    b = math.log(2) * per_h / HALF_TIME / 2
    return np.asarray(np.sqrt(b**2 + 4 * half_time / HALF_TIME) - b)


def _strip(
    shape: Shape, size: FloatArray, width_mm: ArrayLike | None, bore_mm: ArrayLike | None
) -> tuple[FloatArray, FloatArray]:
    """Return thickness and width of the rectangle that stands for the section."""
    if shape == "tube":
        bore = np.asarray(np.nan if bore_mm is None else bore_mm, dtype=float)
        size, bore = np.broadcast_arrays(size, bore)
        demand(bore < size, "bore_mm", "given, and below the outside diameter", bore)
        return (size - bore) / 2, np.full_like(size, np.inf)
    if shape == "square":
        return size, size
    width = np.full_like(size, np.inf) if width_mm is None else positive("width_mm", width_mm)
    return np.minimum(size, width), np.maximum(size, width)
