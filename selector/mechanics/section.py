"""What a section carries in torsion and bending.

Elastic and fully plastic moduli of round, tube, square, hexagon and rectangle, whole or bored
along the axis. What a notch adds is in `notch`, what a hole across takes away in `net_section`.
"""

import math
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import demand

FloatArray = NDArray[np.float64]
Shape = Literal["round", "square", "hexagon", "flat", "tube"]


@dataclass(frozen=True, slots=True, eq=False)
class SectionModulus:
    """Torsion constant in mm⁴ and moduli in mm³: torque or moment over stress."""

    torsion_constant_mm4: FloatArray
    torsion_mm3: FloatArray
    torsion_plastic_mm3: FloatArray
    bending_mm3: FloatArray
    bending_plastic_mm3: FloatArray


# Rectangle in torsion by b/t: J = a b t³ and T = c b t² τ (Timoshenko; Roark).
_ASPECT = np.array([1.0, 1.2, 1.5, 1.75, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0])
_STIFFNESS = np.array(
    [0.141, 0.166, 0.196, 0.214, 0.229, 0.249, 0.263, 0.281, 0.291, 0.299, 0.307, 0.312]
)
_STRENGTH = np.array(
    [0.208, 0.219, 0.231, 0.239, 0.246, 0.258, 0.267, 0.282, 0.291, 0.299, 0.307, 0.312]
)


# What a bore takes from the sand heap of a section, over its cube: exact by the Notes of
# `section_modulus`; for a flat that of a wide one, which is too much for a narrow one.
_HEAP_LOST = MappingProxyType({"square": 0.3221, "hexagon": 0.2870, "flat": 0.6272})


def _round(size: FloatArray, bore: FloatArray) -> SectionModulus:
    """Round bar, or tube with its bore."""
    polar = math.pi / 32 * (size**4 - bore**4)
    return SectionModulus(
        torsion_constant_mm4=polar,
        torsion_mm3=2 * polar / size,
        torsion_plastic_mm3=math.pi / 12 * (size**3 - bore**3),
        bending_mm3=polar / size,
        bending_plastic_mm3=(size**3 - bore**3) / 6,
    )


def _hexagon(flats: FloatArray) -> SectionModulus:
    """Regular hexagon, bent about its weaker axis."""
    side = flats / math.sqrt(3)
    area = 1.5 * math.sqrt(3) * side**2
    return SectionModulus(
        torsion_constant_mm4=0.115 * flats**4,
        torsion_mm3=0.188 * flats**3,
        torsion_plastic_mm3=area * flats / 3,  # sand heap: roof of slope 1, height flats / 2
        bending_mm3=5 * math.sqrt(3) / 16 * side**3,
        bending_plastic_mm3=side**3,
    )


def _square(side: FloatArray) -> SectionModulus:
    """Square bar, bent flat-wise."""
    return SectionModulus(
        torsion_constant_mm4=0.1406 * side**4,
        torsion_mm3=0.2082 * side**3,
        torsion_plastic_mm3=side**3 / 3,
        bending_mm3=side**3 / 6,
        bending_plastic_mm3=side**3 / 4,
    )


def _rectangle(thickness: FloatArray, width: FloatArray) -> SectionModulus:
    """Rectangle, bent about the axis along its width (flat-wise)."""
    aspect = width / thickness
    thin = (1 - 0.63 / aspect) / 3
    stiffness = np.where(aspect > 10, thin, np.interp(aspect, _ASPECT, _STIFFNESS))
    strength = np.where(aspect > 10, thin, np.interp(aspect, _ASPECT, _STRENGTH))
    return SectionModulus(
        torsion_constant_mm4=stiffness * width * thickness**3,
        torsion_mm3=strength * width * thickness**2,
        torsion_plastic_mm3=thickness**2 * (3 * width - thickness) / 6,
        bending_mm3=width * thickness**2 / 6,
        bending_plastic_mm3=width * thickness**2 / 4,
    )


def _bored(
    whole: SectionModulus, shape: Shape, size: FloatArray, bore: FloatArray
) -> SectionModulus:
    """Return the moduli of a square, hexagon or flat with a bore along its axis."""
    share = bore / size
    left = 1 - share ** (3 if shape == "flat" else 4)
    # The round tube within is all of it that is certain to twist together.
    tube = _round(size, bore).torsion_plastic_mm3
    heap = whole.torsion_plastic_mm3 - _HEAP_LOST[shape] * bore**3
    return replace(
        whole,
        torsion_constant_mm4=whole.torsion_constant_mm4 * left,
        torsion_mm3=whole.torsion_mm3 * left,
        torsion_plastic_mm3=np.maximum(heap, tube),
        bending_mm3=whole.bending_mm3 - math.pi / 64 * bore**4 / _outermost(shape, size),
        bending_plastic_mm3=whole.bending_plastic_mm3 - bore**3 / 6,
    )


def _outermost(shape: Shape, size: FloatArray) -> FloatArray:
    """Return the distance of the outer fibre in bending about the weaker axis."""
    return np.asarray(size / math.sqrt(3) if shape == "hexagon" else size / 2)


def section_modulus(
    shape: Shape,
    size_mm: ArrayLike,
    width_mm: ArrayLike | None = None,
    bore_mm: ArrayLike | None = None,
) -> SectionModulus:
    """Return torsion and bending moduli of a section.

    Elastic moduli for the largest stress (mid-side for square, hexagon and rectangle), plastic
    moduli for a section that yields throughout. A bored round is a tube.

    Parameters
    ----------
    shape : {"round", "square", "hexagon", "flat", "tube"}
        Section. [-]
    size_mm : array_like
        Diameter, side, width across flats, thickness, or outside diameter. [mm]
    width_mm : array_like, optional
        Width of a flat. [mm]
    bore_mm : array_like, optional
        Bore along the axis; a tube needs one. [mm]

    Returns
    -------
    SectionModulus
        Torsion constant and the four moduli, in powers of the millimetre. [mm]

    Raises
    ------
    OutOfRangeError
        A size is not above 0, a flat has no width, a tube no bore, or a bore leaves no wall.

    Notes
    -----
    Square J = 0.1406 a⁴, T = 0.2082 a³ τ; hexagon 0.115 s⁴ and 0.188 s³ across flats;
    rectangle by table over b/t, above 10 by ``(1 - 0.63 t/b)/3`` [1]_ [2]_. Plastic torsion by
    the sand heap: round π d³/12, square a³/3. A square is bent flat-wise, a hexagon and a flat
    about the weaker axis.

    A bore is deducted exactly in bending and in the sand heap, which has a plateau over the
    hole as high as its nearest wall [3]_: with ``m`` the cosine from the nearest mid-side it
    loses ``4π mean(1/(6 (1 + m)²) - 1/48) d³``. In elastic torsion the moduli of a square or
    hexagon keep ``1 - (d/a)⁴`` and those of a flat ``1 - (d/t)³``: an estimate on the safe
    side, by up to 9 % of what finite elements give a square or hexagon and up to 15 % for a
    flat, down to walls of 0.025 of the size.

    References
    ----------
    .. [1] W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed., 2002,
       Table 10.1 (from memory).
    .. [2] S. Timoshenko, Strength of Materials, torsion of a rectangular bar (from memory).
    .. [3] A. Nadai, Theory of Flow and Fracture of Solids, 1950, sand heap with a roof over a
       hole (from memory).

    Examples
    --------
    >>> float(section_modulus("square", 10.0).torsion_mm3)
    208.2
    """
    size = np.asarray(size_mm, dtype=float)
    demand(size > 0, "size_mm", "above 0", size, "mm")
    bore = np.asarray(0.0 if bore_mm is None else bore_mm, dtype=float)
    thin = width = size
    if shape == "flat":
        width = np.asarray(np.nan if width_mm is None else width_mm, dtype=float)
        demand(width > 0, "width_mm", "given, and above 0", width, "mm")
        thin = np.minimum(size, width)
    demand(shape != "tube" or bore_mm is not None, "bore_mm", "given", np.nan, "mm")
    holds = (bore >= 0) & (bore < thin)
    demand(holds, "bore_mm", "below the size of the section", bore + 0 * size, "mm")
    if shape in {"round", "tube"}:
        return _round(size, bore)
    if shape == "flat":
        whole = _rectangle(thin, np.maximum(size, width))
    else:
        whole = {"hexagon": _hexagon, "square": _square}[shape](size)
    return whole if bore_mm is None else _bored(whole, shape, thin, bore)


def torsion_stress_mpa(
    torque_nm: ArrayLike,
    shape: Shape,
    size_mm: ArrayLike,
    width_mm: ArrayLike | None = None,
    bore_mm: ArrayLike | None = None,
) -> FloatArray:
    """Return the largest elastic shear stress of a section in torsion, without notch.

    Parameters
    ----------
    torque_nm : array_like
        Torque. [N m]
    shape : {"round", "square", "hexagon", "flat", "tube"}
        Section. [-]
    size_mm : array_like
        Diameter, side, width across flats, thickness, or outside diameter. [mm]
    width_mm : array_like, optional
        Width of a flat. [mm]
    bore_mm : array_like, optional
        Bore along the axis; a tube needs one. [mm]

    Returns
    -------
    ndarray
        Shear stress, mid-side for square, hexagon and flat. [MPa]

    References
    ----------
    .. [1] As `section_modulus`.

    Examples
    --------
    >>> round(float(torsion_stress_mpa(100.0, "round", 16.0)), 1)
    124.3
    """
    modulus = section_modulus(shape, size_mm, width_mm, bore_mm)
    return np.asarray(1e3 * np.asarray(torque_nm, dtype=float) / modulus.torsion_mm3)


def bending_stress_mpa(
    moment_nm: ArrayLike,
    shape: Shape,
    size_mm: ArrayLike,
    width_mm: ArrayLike | None = None,
    bore_mm: ArrayLike | None = None,
) -> FloatArray:
    """Return the largest elastic bending stress of a section, without notch.

    Parameters
    ----------
    moment_nm : array_like
        Bending moment. [N m]
    shape : {"round", "square", "hexagon", "flat", "tube"}
        Section, bent about its weaker axis. [-]
    size_mm : array_like
        Diameter, side, width across flats, thickness, or outside diameter. [mm]
    width_mm : array_like, optional
        Width of a flat. [mm]
    bore_mm : array_like, optional
        Bore along the axis; a tube needs one. [mm]

    Returns
    -------
    ndarray
        Bending stress at the outer fibre. [MPa]

    References
    ----------
    .. [1] As `section_modulus`.
    """
    modulus = section_modulus(shape, size_mm, width_mm, bore_mm)
    return np.asarray(1e3 * np.asarray(moment_nm, dtype=float) / modulus.bending_mm3)
