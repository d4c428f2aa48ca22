"""What a hole, slot or keyway leaves of a section that yields throughout.

Shares of the whole section, for a steel soft enough to yield. The concentration factors of
`notch` are on the whole section too and hold the lost one already: use one or the other.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.errors import demand
from selector.mechanics.section import Shape, section_modulus

FloatArray = NDArray[np.float64]
# Points from the hole to the rim; half-heights are smooth but for a corner or two.
_POINTS, _WEIGHTS = np.polynomial.legendre.leggauss(48)
# A keyway is cut half as deep as wide, the half of a square key. Common practice, no source.
_DEPTH_OF_WIDTH = 0.5
# A fully cut section is left this much, so that factors stay finite. [-]
_LEAST = 0.001


@dataclass(frozen=True, slots=True)
class NetShare:
    """What is left of a section: of its plastic torque and moment, and of its area. [-]."""

    torsion: float
    bending: float
    axial: float


def across_mm(shape: Shape, size_mm: float, width_mm: float | None = None) -> float:
    """Return how wide a hole drilled across a section may be before it cuts it in two.

    Parameters
    ----------
    shape : {"round", "square", "hexagon", "flat", "tube"}
        Section. [-]
    size_mm : float
        Diameter, side, width across flats, or thickness. [mm]
    width_mm : float, optional
        Width of a flat, which is drilled through its thickness. [mm]

    Returns
    -------
    float
        Width of the section athwart the hole; of a hexagon across flats. [mm]

    References
    ----------
    .. [1] Geometry; that flats are drilled through their thickness is common practice.

    Examples
    --------
    >>> across_mm("flat", 8.0, 40.0)
    40.0
    """
    return max(size_mm, width_mm or size_mm) if shape == "flat" else size_mm


def hole_share(
    hole_mm: float,
    shape: Shape,
    size_mm: float,
    width_mm: float | None = None,
    bore_mm: float | None = None,
) -> NetShare:
    """Return what a hole drilled across a section leaves of it.

    The hole opens on the outer fibres in bending, its worst orientation; a flat is drilled
    through its thickness.

    Parameters
    ----------
    hole_mm : float
        Diameter of the hole. [mm]
    shape : {"round", "square", "hexagon", "flat", "tube"}
        Section. [-]
    size_mm : float
        Diameter, side, width across flats, or thickness. [mm]
    width_mm : float, optional
        Width of a flat. [mm]
    bore_mm : float, optional
        Bore along the axis. [mm]

    Returns
    -------
    NetShare
        Shares of the whole, bored section. [-]

    Raises
    ------
    OutOfRangeError
        The hole is as wide as the section.

    Notes
    -----
    Bending and pull by integration over what is left. Torsion: no published plastic torque of
    a bar with a cross-hole is known to us; it is taken to lose as large a share as bending
    does. That is an estimate on the safe side: turning the two ends against each other in the
    plane of the hole is a mechanism, so that ``∫ r dA`` of the net section bounds the torque
    from above [1]_, and the share here stays below it; of holes beyond 0.7 of the width it
    also stays below the couple ``∫ |x| dA`` of the two limbs in shear.

    References
    ----------
    .. [1] D. C. Drucker, W. Prager, H. J. Greenberg, Extended limit design theorems for
       continuous media, Quart. Appl. Math. 9, 1952, 381-389 (from memory).

    Examples
    --------
    >>> round(hole_share(5.0, "round", 10.0).bending, 4)
    0.3125
    """
    wide = across_mm(shape, size_mm, width_mm)
    demand(0 <= hole_mm < wide, "hole_mm", "below the width of the section", hole_mm, "mm")
    moment, area = _net(hole_mm / 2, shape, size_mm, width_mm, bore_mm or 0.0)
    whole, all_area = _net(0.0, shape, size_mm, width_mm, bore_mm or 0.0)
    bent = _kept(moment / whole)
    return NetShare(bent, bent, _kept(area / all_area))


def slot_share(
    slot_mm: float,
    shape: Shape,
    size_mm: float,
    width_mm: float | None = None,
    bore_mm: float | None = None,
) -> NetShare:
    """Return what a slot cut through a section along the axis leaves of it.

    Its length is not known, so that in torsion the two limbs twist each for itself: the least
    they bear.

    Parameters
    ----------
    slot_mm : float
        Width of the slot. [mm]
    shape : {"round", "square", "hexagon", "flat", "tube"}
        Section. [-]
    size_mm : float
        Diameter, side, width across flats, or thickness. [mm]
    width_mm : float, optional
        Width of a flat. [mm]
    bore_mm : float, optional
        Bore along the axis. [mm]

    Returns
    -------
    NetShare
        Shares of the whole, bored section. [-]

    Raises
    ------
    OutOfRangeError
        The slot is as wide as the section.

    Notes
    -----
    Bending and pull as `hole_share`. Torsion: each limb as a rectangle of its area and depth,
    by the sand heap ``t² (3 b - t) / 6`` [1]_.

    References
    ----------
    .. [1] As `section_modulus`.

    Examples
    --------
    >>> round(slot_share(4.0, "square", 10.0).torsion, 3)
    0.243
    """
    share = hole_share(slot_mm, shape, size_mm, width_mm, bore_mm)
    wide = across_mm(shape, size_mm, width_mm)
    bore = bore_mm or 0.0
    deep = (wide - max(slot_mm, bore)) / 2
    _, area = _net(slot_mm / 2, shape, size_mm, width_mm, bore)
    other = area / 2 / deep
    thin, long = min(deep, other), max(deep, other)
    limbs = thin**2 * (3 * long - thin) / 3
    whole = float(section_modulus(shape, size_mm, width_mm, bore_mm).torsion_plastic_mm3)
    return NetShare(min(_kept(limbs / whole), share.torsion), share.bending, share.axial)


def keyway_share(keyway_mm: float, size_mm: float, bore_mm: float | None = None) -> NetShare:
    """Return what a keyway leaves of a shaft.

    Cut half as deep as wide. What it takes it takes from the wall where the shaft is bored.

    Parameters
    ----------
    keyway_mm : float
        Width of the keyway. [mm]
    size_mm : float
        Diameter of the shaft. [mm]
    bore_mm : float, optional
        Bore along the axis. [mm]

    Returns
    -------
    NetShare
        Shares of the whole, bored shaft. [-]

    Raises
    ------
    OutOfRangeError
        The keyway is as wide as the shaft.

    Notes
    -----
    ``1 - 0.2 w/D - 1.1 h/D`` of the elastic limit in torsion, and in torsion with bending
    [1]_; taken for bending alone too, where a keyway takes less.

    References
    ----------
    .. [1] H. F. Moore, The effect of keyways on the strength of shafts, University of Illinois
       Engineering Experiment Station Bulletin 42, 1909 (from memory).

    Examples
    --------
    >>> round(keyway_share(5.0, 20.0).torsion, 4)
    0.8125
    """
    demand(0 <= keyway_mm < size_mm, "keyway_mm", "below the diameter", keyway_mm, "mm")
    deep = _DEPTH_OF_WIDTH * keyway_mm
    lost = (0.2 * keyway_mm + 1.1 * deep) / size_mm
    whole = section_modulus("round", size_mm)
    shaft = section_modulus("round", size_mm, bore_mm=bore_mm)
    area = math.pi / 4 * (size_mm**2 - (bore_mm or 0.0) ** 2)

    def left(kind: str) -> float:
        name = f"{kind}_plastic_mm3"
        return _kept(1.0 - lost * float(getattr(whole, name) / getattr(shaft, name)))

    return NetShare(left("torsion"), left("bending"), _kept(1.0 - keyway_mm * deep / area))


def _kept(share: float) -> float:
    """Return a share of the section that is at least next to nothing and at most all."""
    return min(max(share, _LEAST), 1.0)


def _net(
    from_mm: float, shape: Shape, size: float, width: float | None, bore: float
) -> tuple[float, float]:
    """Return plastic moment over yield stress, and area, of what lies beyond the hole."""
    end = across_mm(shape, size, width) / 2
    knots = sorted({from_mm, end, *(k for k in (bore / 2,) if from_mm < k < end)})
    moment = area = 0.0
    for low, high in pairwise(knots):
        x = low + (high - low) * (_POINTS + 1) / 2
        dx = (high - low) / 2 * _WEIGHTS
        inner = np.sqrt(np.maximum((bore / 2) ** 2 - x**2, 0.0))
        outer = _half_height(x, shape, size, width)
        # Both limbs: twice the integral of the height, and of its first moment.
        moment += 2 * float(np.sum((outer**2 - inner**2) * dx))
        area += 4 * float(np.sum((outer - inner) * dx))
    return moment, area


def _half_height(x: FloatArray, shape: Shape, size: float, width: float | None) -> FloatArray:
    """Return half the height of a section along the hole, by distance from its axis."""
    if shape in {"round", "tube"}:
        return np.asarray(np.sqrt(np.maximum((size / 2) ** 2 - x**2, 0.0)))
    if shape == "hexagon":
        # Standing on a corner: across flats lies athwart the hole.
        return np.asarray(size / math.sqrt(3) - x / math.sqrt(3))
    return np.full_like(x, min(size, width or size) / 2)
