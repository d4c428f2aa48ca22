"""Contact pressure: Hertz line and point, what hardened steel bears, a drive's corners."""

import math
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
Surface = Literal["through-hardened", "flame-hardened", "case-hardened"]

_YOUNG_MPA, _POISSON = 206_000.0, 0.3
# Contact modulus of two steel bodies, 1/E* = 2 (1 - ν²) / E.
_STEEL_PAIR_MPA = _YOUNG_MPA / (2 * (1 - _POISSON**2))

# ISO 6336-5 quality MQ, allowable contact stress A x + B with x in HV and its range; pitting
# limit of gears at 5e7 cycles and 1 % failures (from memory).
_ALLOWABLE = MappingProxyType(
    {
        "through-hardened": (1.313, 373.0, 200.0, 360.0),
        "flame-hardened": (0.541, 882.0, 500.0, 615.0),
        "case-hardened": (0.0, 1500.0, 660.0, 800.0),
    }
)
_FULL_HV = 800.0
_STATIC_MPA = MappingProxyType({"ball": 4200.0, "roller": 4000.0})

# Estimated pattern of a clearance fit: contact ends 5 % of the flat from the corner, 10 % wide.
_ARM_SHARE, _WIDTH_SHARE = 0.45, 0.10


@dataclass(frozen=True, slots=True, eq=False)
class HertzContact:
    """Peak pressure, half width (or radius) of contact, and where the shear is largest."""

    pressure_mpa: FloatArray
    half_width_mm: FloatArray
    shear_mpa: FloatArray
    shear_depth_mm: FloatArray


def _curvature(radius_1_mm: ArrayLike, radius_2_mm: ArrayLike) -> FloatArray:
    """Return the sum of curvatures, 1/mm; a hollow radius is negative, a flat infinite."""
    return np.asarray(
        1 / np.asarray(radius_1_mm, dtype=float) + 1 / np.asarray(radius_2_mm, dtype=float)
    )


def hertz_line(
    load_n_per_mm: ArrayLike,
    radius_1_mm: ArrayLike,
    radius_2_mm: ArrayLike = math.inf,
    contact_modulus_mpa: float = _STEEL_PAIR_MPA,
) -> HertzContact:
    """Return pressure and sub-surface shear of two cylinders pressed together.

    Parameters
    ----------
    load_n_per_mm : array_like
        Load by length of contact. [N/mm]
    radius_1_mm : array_like
        Radius of the first cylinder. [mm]
    radius_2_mm : array_like, optional
        Radius of the second, infinite for a flat, negative for a hollow. [mm]
    contact_modulus_mpa : float, optional
        E* of the pair, steel on steel if left out. [MPa]

    Returns
    -------
    HertzContact
        Pressure and shear, width and depth. [MPa]

    Notes
    -----
    ``p0 = √(w E* / (π R))``, ``b = 2 w / (π p0)``; shear 0.300 p0 at 0.786 b, for Poisson 0.3.

    References
    ----------
    .. [1] K. L. Johnson, Contact Mechanics, 1985, chapter 4.
    """
    load = np.asarray(load_n_per_mm, dtype=float)
    pressure = np.sqrt(
        load * contact_modulus_mpa * _curvature(radius_1_mm, radius_2_mm) / math.pi
    )
    half = 2 * load / (math.pi * pressure)
    return HertzContact(pressure, half, np.asarray(0.300 * pressure), np.asarray(0.786 * half))


def line_shear_mpa(contact: HertzContact, depth_mm: ArrayLike) -> FloatArray:
    """Return the largest shear stress below the middle of a line contact.

    Parameters
    ----------
    contact : HertzContact
        A line contact. [-]
    depth_mm : array_like
        Depth below the surface. [mm]

    Returns
    -------
    ndarray
        Greatest shear stress at that depth. [MPa]

    Notes
    -----
    With x = z/b: ``τ = p0 (x - x² / √(1 + x²))``, half the difference of the principal
    stresses of Eq. 4.46 [1]_; 0.300 p0 at x = 0.786.

    References
    ----------
    .. [1] K. L. Johnson, Contact Mechanics, 1985, section 4.2 (from memory).
    """
    share = np.asarray(depth_mm, dtype=float) / contact.half_width_mm
    return np.asarray(contact.pressure_mpa * (share - share**2 / np.sqrt(1 + share**2)))


def hertz_point(
    load_n: ArrayLike,
    radius_1_mm: ArrayLike,
    radius_2_mm: ArrayLike = math.inf,
    contact_modulus_mpa: float = _STEEL_PAIR_MPA,
) -> HertzContact:
    """Return pressure and sub-surface shear of two spheres pressed together.

    Parameters
    ----------
    load_n : array_like
        Load. [N]
    radius_1_mm : array_like
        Radius of the first sphere. [mm]
    radius_2_mm : array_like, optional
        Radius of the second, infinite for a flat, negative for a hollow. [mm]
    contact_modulus_mpa : float, optional
        E* of the pair, steel on steel if left out. [MPa]

    Returns
    -------
    HertzContact
        Pressure and shear, radius of contact and depth. [MPa]

    Notes
    -----
    ``p0 = (6 F E*² / (π³ R²))^(1/3)``, ``a² = 3 F / (2 π p0)``; shear 0.310 p0 at 0.48 a.

    References
    ----------
    .. [1] K. L. Johnson, Contact Mechanics, 1985, chapter 3.
    """
    load = np.asarray(load_n, dtype=float)
    curvature = _curvature(radius_1_mm, radius_2_mm)
    pressure = np.cbrt(6 * load * contact_modulus_mpa**2 * curvature**2 / math.pi**3)
    radius = np.sqrt(1.5 * load / (math.pi * pressure))
    return HertzContact(
        pressure, radius, np.asarray(0.310 * pressure), np.asarray(0.48 * radius)
    )


def allowable_contact_mpa(hardness_hv: ArrayLike, surface: Surface) -> FloatArray:
    """Return the contact pressure that rolling steel stands without pitting.

    Parameters
    ----------
    hardness_hv : array_like
        Hardness of the surface, taken into the range of the standard. [HV]
    surface : {"through-hardened", "flame-hardened", "case-hardened"}
        How it was hardened. [-]

    Returns
    -------
    ndarray
        Allowable contact stress number of gears. [MPa]

    Notes
    -----
    ``A x + B`` for alloy steel, quality MQ [1]_; below the range in proportion to hardness,
    above it held. Range: 200 to 800 HV.

    References
    ----------
    .. [1] ISO 6336-5, strength and quality of materials (from memory).

    Examples
    --------
    >>> round(float(allowable_contact_mpa(360.0, "through-hardened")))
    846
    """
    slope, level, low, high = _ALLOWABLE[surface]
    hardness = np.asarray(hardness_hv, dtype=float)
    inside = slope * np.clip(hardness, low, high) + level
    return np.asarray(inside * np.minimum(hardness / low, 1))


def rolling_contact_limit_mpa(hardness_hv: ArrayLike) -> FloatArray:
    """Return the contact pressure that a rolling surface stands, however it was hardened.

    Parameters
    ----------
    hardness_hv : array_like
        Hardness of the surface. [HV]

    Returns
    -------
    ndarray
        Contact pressure. [MPa]

    Notes
    -----
    `allowable_contact_mpa` of through-hardened steel to 360 HV, of flame-hardened steel from
    500 to 615 HV, of case-hardened steel from 660 HV, straight between.

    References
    ----------
    .. [1] As `allowable_contact_mpa`; the joining is ours.

    Examples
    --------
    >>> round(float(rolling_contact_limit_mpa(700.0)))
    1500
    """
    hardness = np.asarray(hardness_hv, dtype=float)
    knots = np.array([200.0, 360.0, 500.0, 615.0, 660.0])
    kinds: tuple[Surface, ...] = (
        "through-hardened", "through-hardened", "flame-hardened", "flame-hardened",
        "case-hardened",
    )  # fmt: skip
    bears = [
        float(allowable_contact_mpa(hv, kind)) for hv, kind in zip(knots, kinds, strict=True)
    ]
    joined = np.interp(hardness, knots, bears)
    return np.asarray(joined * np.minimum(hardness / knots[0], 1))


def static_contact_limit_mpa(
    hardness_hv: ArrayLike, body: Literal["ball", "roller"] = "roller"
) -> FloatArray:
    """Return the pressure at which a rolling contact at rest keeps a mark.

    Parameters
    ----------
    hardness_hv : array_like
        Hardness of the softer surface. [HV]
    body : {"ball", "roller"}, optional
        Rolling body. [-]

    Returns
    -------
    ndarray
        Permissible peak pressure. [MPa]

    Notes
    -----
    4200 MPa for balls, 4000 MPa for rollers at 58 HRC or more [1]_. The static *load* falls by
    ``(HV/800)²`` below that [2]_, so the pressure falls by that to the third (ball) or half
    (roller) power. Range: 350 to 940 HV.

    References
    ----------
    .. [1] ISO 76, static load ratings (from memory).
    .. [2] Rolling bearing makers' general catalogues (from memory).
    """
    load_share = np.minimum((np.asarray(hardness_hv, dtype=float) / _FULL_HV) ** 2, 1)
    return np.asarray(_STATIC_MPA[body] * load_share ** (1 / 3 if body == "ball" else 1 / 2))


def corner_bearing_mpa(
    torque_nm: ArrayLike, flats_mm: ArrayLike, engaged_mm: ArrayLike, sides: int = 4
) -> FloatArray:
    """Return a first estimate of the bearing pressure at the corners of a drive.

    A square or hexagon with clearance touches near its corners; every flat is taken to bear.
    The contact lies 5 % of the flat off the corner and is 10 % of it wide: an estimate to be
    judged against tool-standard test torques and the hardness of both parts.

    Parameters
    ----------
    torque_nm : array_like
        Torque. [N m]
    flats_mm : array_like
        Width across flats. [mm]
    engaged_mm : array_like
        Length of engagement. [mm]
    sides : int, optional
        4 for a square, 6 for a hexagon. [-]

    Returns
    -------
    ndarray
        Mean pressure on the bearing strip. [MPa]

    Notes
    -----
    ``p = T / (n · 0.45 c · 0.10 c · l)`` with the flat ``c = s tan(π/n)``. Rounding starts near
    1.5 of yield strength, in hand tools' test torques.

    References
    ----------
    .. [1] Common practice, no source; estimated.
    """
    flat = np.asarray(flats_mm, dtype=float) * math.tan(math.pi / sides)
    arm, width = _ARM_SHARE * flat, _WIDTH_SHARE * flat
    force = 1e3 * np.asarray(torque_nm, dtype=float) / (sides * arm)
    return np.asarray(force / (width * np.asarray(engaged_mm, dtype=float)))
