"""What a notch adds to the nominal stress of a round bar.

Factors of holes and keyways are on the stress of the *whole* section and hold what the section
lost. Who deducts the hole from the section as well (`net_section`) counts it twice.
"""

from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import demand

FloatArray = NDArray[np.float64]
Load = Literal["torsion", "bending"]


# Stepped round bar, K = a (r/d)^b by D/d: curve fits to Peterson's charts printed by Norton.
_FILLET = MappingProxyType(
    {
        "torsion": (
            (1.09, 0.90337, -0.12692),
            (1.20, 0.83425, -0.21649),
            (1.33, 0.84897, -0.23161),
            (2.00, 0.86331, -0.23865),
        ),
        "bending": (
            (1.01, 0.91938, -0.17032),
            (1.02, 0.96048, -0.17711),
            (1.03, 0.98061, -0.18381),
            (1.05, 0.98137, -0.19653),
            (1.07, 0.97527, -0.20958),
            (1.10, 0.95120, -0.23757),
            (1.20, 0.97098, -0.21796),
            (1.50, 0.93836, -0.25759),
            (2.00, 0.90879, -0.28598),
            (3.00, 0.89334, -0.30860),
            (6.00, 0.87868, -0.33243),
        ),
    }
)
# Round bar with a cross-hole: hole/bar, section left A and K on it, in bending and in torsion.
_CROSS_HOLE = np.array(
    [
        (0.05, 0.92, 2.63, 0.95, 1.77),
        (0.10, 0.86, 2.49, 0.92, 1.68),
        (0.15, 0.79, 2.39, 0.87, 1.62),
        (0.20, 0.73, 2.39, 0.83, 1.58),
        (0.25, 0.67, 2.42, 0.79, 1.53),
    ]
)
_COLUMNS = MappingProxyType({"bending": (1, 2), "torsion": (3, 4)})
_KEYWAY = MappingProxyType({"bending": 2.14, "torsion": 3.0})


def fillet_factor(
    load: Load, small_mm: ArrayLike, large_mm: ArrayLike, radius_mm: ArrayLike
) -> FloatArray:
    """Return the stress concentration of a shoulder fillet on a round bar.

    On the nominal stress of the smaller diameter. A corner shown sharp has the tool's nose
    radius, about 0.2 mm; zero is refused because it has no answer.

    Parameters
    ----------
    load : {"torsion", "bending"}
        Load. [-]
    small_mm : array_like
        Smaller diameter. [mm]
    large_mm : array_like
        Larger diameter. [mm]
    radius_mm : array_like
        Fillet radius. [mm]

    Returns
    -------
    ndarray
        Stress concentration factor, 1 or more. [-]

    Raises
    ------
    OutOfRangeError
        The radius is not above 0, or the larger diameter is below the smaller.

    Notes
    -----
    ``K = a (r/d)^b`` [1]_ [2]_, straight between the printed D/d, to 1 at no step, and held
    beyond the largest step printed.

    References
    ----------
    .. [1] R. L. Norton, Machine Design, stress concentration fits for stepped round shafts
       (from memory).
    .. [2] R. E. Peterson, Stress Concentration Factors, 1974, shoulder fillets.
    """
    small, large, radius = np.broadcast_arrays(
        *(np.asarray(value, dtype=float) for value in (small_mm, large_mm, radius_mm))
    )
    demand(radius > 0, "radius_mm", "above 0", radius)
    demand(large >= small, "large_mm", "at least small_mm", large)
    step, a, b = np.array(_FILLET[load]).T
    by_step = a * (radius / small)[..., None] ** b
    by_step = np.maximum(np.concatenate((np.ones((*small.shape, 1)), by_step), axis=-1), 1)
    steps = np.concatenate(([1.0], step))
    ratio = np.minimum(large / small, steps[-1])
    upper = np.clip(np.searchsorted(steps, ratio), 1, len(step))
    weight = (ratio - steps[upper - 1]) / (steps[upper] - steps[upper - 1])
    low = np.take_along_axis(by_step, (upper - 1)[..., None], axis=-1)[..., 0]
    high = np.take_along_axis(by_step, upper[..., None], axis=-1)[..., 0]
    return np.asarray(low + weight * (high - low))


def cross_hole_factor(load: Load, hole_mm: ArrayLike, bar_mm: ArrayLike) -> FloatArray:
    """Return the stress concentration of a hole drilled across a round bar.

    On the nominal stress of the *undrilled* bar, the lost section included: the net section of
    `net_section.hole_share` is not to be applied on top of it.

    Parameters
    ----------
    load : {"torsion", "bending"}
        Load. [-]
    hole_mm : array_like
        Hole diameter. [mm]
    bar_mm : array_like
        Bar diameter. [mm]

    Returns
    -------
    ndarray
        Stress concentration factor on the full section. [-]

    Raises
    ------
    OutOfRangeError
        The hole is as wide as the bar.

    Notes
    -----
    K / A of [1]_, straight between rows and held below 0.05. Above 0.25, where no row is
    known to us, K is held and A falls as the plastic moment of the net section does,
    ``1 - 1.5 d/D + 0.5 (d/D)³``: an estimate on the safe side in torsion.

    References
    ----------
    .. [1] R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., 2011,
       Table A-16 (from memory).
    """
    ratio = np.asarray(hole_mm, dtype=float) / np.asarray(bar_mm, dtype=float)
    demand((ratio >= 0) & (ratio < 1), "hole_mm / bar_mm", "at least 0 and below 1", ratio)
    printed, area, factor = _CROSS_HOLE[:, [0, *_COLUMNS[load]]].T
    whole = factor / area
    wide = np.maximum(ratio, printed[-1])
    beyond = _moment_left(printed[-1]) / _moment_left(wide)
    return np.asarray(np.interp(ratio, printed, whole) * beyond)


def plate_hole_factor(
    hole_mm: ArrayLike, width_mm: ArrayLike, thick_mm: ArrayLike
) -> FloatArray:
    """Return the stress concentration of a hole through a flat that bends over its thin side.

    On the nominal stress of the *undrilled* flat, the lost section included: the net section of
    `net_section.hole_share` is not to be applied on top of it.

    Parameters
    ----------
    hole_mm : array_like
        Hole diameter. [mm]
    width_mm : array_like
        Width of the flat. [mm]
    thick_mm : array_like
        Its thickness, through which the hole is drilled. [mm]

    Returns
    -------
    ndarray
        Stress concentration factor on the full section. [-]

    Raises
    ------
    OutOfRangeError
        The hole is as wide as the flat.

    Notes
    -----
    ``K = (1.79 + 0.25/(0.39 + d/t) + 0.81/(1 + (d/t)²) - 0.26/(1 + (d/t)³)) (1 - 1.04 d/D +
    1.22 (d/D)²)`` on the net section [1]_, brought to the whole one by ``D/(D - d)``. The first
    bracket, of a wide plate, was read; the second, printed for d/D below 0.3, is from memory
    and is used beyond too.

    References
    ----------
    .. [1] W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed., 2002,
       Table 17.1, circular hole, out-of-plane bending.

    Examples
    --------
    >>> round(float(plate_hole_factor(4.0, 14.0, 1.2)), 2)
    2.15
    """
    hole, wide, thick = (np.asarray(v, dtype=float) for v in (hole_mm, width_mm, thick_mm))
    ratio, deep = hole / wide, hole / thick
    demand((ratio >= 0) & (ratio < 1), "hole_mm / width_mm", "at least 0 and below 1", ratio)
    endless = 1.79 + 0.25 / (0.39 + deep) + 0.81 / (1 + deep**2) - 0.26 / (1 + deep**3)
    return np.asarray(endless * (1 - 1.04 * ratio + 1.22 * ratio**2) / (1 - ratio))


def _moment_left(ratio: FloatArray) -> FloatArray:
    """Return the share of its plastic moment that a round keeps beside a hole."""
    return np.asarray(1 - 1.5 * ratio + 0.5 * ratio**3)


def keyway_factor(load: Load) -> float:
    """Return the stress concentration of an end-milled keyway in a round shaft.

    Parameters
    ----------
    load : {"torsion", "bending"}
        Load; torsion with the key in place. [-]

    Returns
    -------
    float
        Stress concentration factor on the full section, lost section included, for r/d = 0.02.
        [-]

    References
    ----------
    .. [1] R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., 2011,
       Table 7-1, after Peterson (from memory).
    """
    return _KEYWAY[load]
