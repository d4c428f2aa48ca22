"""The soft skin and the scale that hot steel gets in air or flame."""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
Atmosphere = Literal["flame", "open-furnace", "pack"]

# Hot-rolled tool steel bar: thickness up to, and what to take off each side, printed in inches.
_BAR_IN = np.array(
    [(0.5, 0.025), (1.0, 0.045), (2.0, 0.065), (3.0, 0.085), (4.0, 0.115), (5.0, 0.150)]
)
_MM_PER_IN = 25.4

_CAL_PER_MOL_K = 1.986
# Share of the depth of free diffusion (estimated): scale holds the gas back that carbon leaves
# as, and knife makers find 0.05 to 0.08 mm after ten minutes at 815 °C (from memory); a flame
# reaches one side at a time, but its oxidising edge works hardest; foil, pack or paste keeps
# nearly all of the carbon in.
_SHARE = MappingProxyType({"flame": 0.8, "open-furnace": 0.8, "pack": 0.12})
_SCALE_SHARE = MappingProxyType({"flame": 0.7, "open-furnace": 1.0, "pack": 0.05})
# Thickness of wüstite over that of the iron in it. [-]
_SCALE_PER_METAL = 1.8
# A skin ends where so much of the carbon is left: what the microscope and a file still find.
SKIN_LEFT_FRACTION = 0.85
LOG_SD = 0.35
# Of the error function, its complement at these arguments, for both directions.
_U = np.linspace(0.0, 4.0, 2001)


def _erfc(argument: ArrayLike) -> FloatArray:
    """Return the complementary error function of what is not negative, within 2e-7."""
    # Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26.
    u = np.asarray(argument, dtype=float)
    t = 1.0 / (1.0 + 0.3275911 * u)
    poly = -1.453152027 + 1.061405429 * t
    poly = 0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * poly))
    return np.asarray(t * poly * np.exp(-(u**2)))


_ERFC = _erfc(_U)


@dataclass(frozen=True, slots=True, eq=False)
class SoftSkin:
    """Soft skin and scale, medians, with the standard deviation of the logarithm of each."""

    soft_mm: FloatArray
    scale_mm: FloatArray
    log_sd: float


def carbon_loss_diffusivity(peak_c: ArrayLike) -> FloatArray:
    """Return the diffusivity of carbon on its way out of austenite, by Birks and Jackson.

    Parameters
    ----------
    peak_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Diffusivity, one for all contents. [mm²/s]

    Notes
    -----
    0.1 exp(-32 400 / R T) cm²/s with R = 1.986 cal/(mol K) [1]_.

    References
    ----------
    .. [1] N. Birks, W. Jackson, A quantitative treatment of simultaneous scaling and
       decarburization of steels, Journal of the Iron and Steel Institute 208, 1970, 81-85, as
       given in N. Birks, G. H. Meier, Introduction to High Temperature Oxidation of Metals,
       1983 (from memory).

    Examples
    --------
    >>> float(f"{float(carbon_loss_diffusivity(1000.0)):.2g}")
    2.7e-05
    """
    kelvin = np.asarray(peak_c, dtype=float) + 273.15
    return np.asarray(10.0 * np.exp(-32_400.0 / (_CAL_PER_MOL_K * kelvin)))


def metal_lost(peak_c: ArrayLike, time_s: ArrayLike) -> FloatArray:
    """Return the metal that scaling in air takes off a bare surface.

    Parameters
    ----------
    peak_c : array_like
        Temperature of the surface. [°C]
    time_s : array_like
        Time at it. [s]

    Returns
    -------
    ndarray
        Metal lost a side. [mm]

    Notes
    -----
    √(2 k t) with k = 0.571 exp(-43 240 / R T) cm²/s [1]_, for carbon steel in air at 800 to
    1200 °C; alloy steel scales less.

    References
    ----------
    .. [1] N. Birks, W. Jackson, JISI 208, 1970, 81-85 (from memory).

    Examples
    --------
    >>> round(float(metal_lost(1000.0, 3600.0)), 2)
    0.12
    """
    kelvin = np.asarray(peak_c, dtype=float) + 273.15
    rate = 57.1 * np.exp(-43_240.0 / (_CAL_PER_MOL_K * kelvin))
    return np.asarray(np.sqrt(2.0 * rate * np.asarray(time_s, dtype=float)))


def carbon_left_fraction(
    depth_mm: ArrayLike,
    peak_c: ArrayLike,
    time_s: ArrayLike,
    atmosphere: Atmosphere = "open-furnace",
) -> FloatArray:
    """Return the share of its carbon that steel keeps at a depth under the scale.

    Carbon diffuses through austenite to a surface that has none, while scale eats into the
    metal. A thin edge loses from both its sides: multiply what is left from each.

    Parameters
    ----------
    depth_mm : array_like
        Depth under the metal's surface as it is after the heat. [mm]
    peak_c : array_like
        Temperature of the surface. [°C]
    time_s : array_like
        Time at it. [s]
    atmosphere : {"flame", "open-furnace", "pack"}, optional
        What the surface is in; pack also stands for foil and anti-scale paste. [-]

    Returns
    -------
    ndarray
        Carbon left over carbon of the bar. [-]

    Notes
    -----
    1 - erfc((x + X) / 2√(D t)) / erfc(X / 2√(D t)) [1]_, X from `metal_lost`, D from
    `carbon_loss_diffusivity`. Published for 0.85 % C at 900 to 1200 °C. Below 910 °C a film of
    ferrite forms on lean and silicon steel, which is not told apart. All depths are a share of
    it: 0.8 in air or flame, 0.12 in pack, foil or paste (estimates).

    References
    ----------
    .. [1] N. Birks, W. Jackson, JISI 208, 1970, 81-85 (from memory).

    Examples
    --------
    >>> carbon_left_fraction([0.0, 0.1, 0.25], 850.0, 3600.0).round(2)
    array([0.  , 0.54, 0.93])
    """
    reach, lost = _reach(peak_c, time_s, atmosphere)
    depth = np.asarray(depth_mm, dtype=float) / _SHARE[atmosphere]
    return np.asarray(1.0 - _erfc((depth + lost) / reach) / _erfc(lost / reach))


def _reach(
    peak_c: ArrayLike, time_s: ArrayLike, atmosphere: Atmosphere
) -> tuple[FloatArray, FloatArray]:
    """Return twice the diffusion length, and the metal lost in the atmosphere. [mm]."""
    time = np.asarray(time_s, dtype=float)
    reach = 2.0 * np.sqrt(carbon_loss_diffusivity(peak_c) * time)
    return np.maximum(reach, 1e-9), _SCALE_SHARE[atmosphere] * metal_lost(peak_c, time)


def soft_skin(
    peak_c: ArrayLike, time_s: ArrayLike, atmosphere: Atmosphere = "open-furnace"
) -> SoftSkin:
    """Return the soft skin and the scale after a time at hardening heat.

    Carbon leaves by diffusion through austenite to a bare surface; the scale grows with the
    root of time. Skin that the bar brought along is not in it.

    Parameters
    ----------
    peak_c : array_like
        Temperature of the surface. [°C]
    time_s : array_like
        Time at it. [s]
    atmosphere : {"flame", "open-furnace", "pack"}, optional
        What the surface is in; pack also stands for foil and anti-scale paste. [-]

    Returns
    -------
    SoftSkin
        Depth of skin below 0.85 of the carbon, and thickness of scale. [mm]

    Notes
    -----
    The depth at which `carbon_left_fraction` is 0.85 [1]_: what metallographs call the total
    depth is some tenths deeper at 0.92. Scale is 1.8 times the metal lost. Below about 700 °C
    there is no austenite and little of either. Workshops leave 0.25 mm a side to grind after a
    torch, which overheats corners.

    References
    ----------
    .. [1] N. Birks, W. Jackson, JISI 208, 1970, 81-85 (from memory).

    Examples
    --------
    >>> round(float(soft_skin(850.0, 3600.0).soft_mm), 2)
    0.2
    """
    reach, lost = _reach(peak_c, time_s, atmosphere)
    missing = (1.0 - SKIN_LEFT_FRACTION) * _erfc(lost / reach)
    deep = reach * np.interp(-missing, -_ERFC, _U) - lost
    return SoftSkin(
        soft_mm=np.asarray(_SHARE[atmosphere] * deep),
        scale_mm=np.asarray(_SCALE_PER_METAL * lost),
        log_sd=LOG_SD,
    )


def bar_allowance_mm(thickness_mm: ArrayLike) -> FloatArray:
    """Return what to take off each side of hot-rolled bar before it is hardened.

    Bark and the skin that rolling has robbed of its carbon; the skin itself is at most 80 % of
    it.

    Parameters
    ----------
    thickness_mm : array_like
        Thickness or diameter of the bar. [mm]

    Returns
    -------
    ndarray
        Allowance a side; the last printed value beyond the table. [mm]

    Notes
    -----
    0.025, 0.045, 0.065, 0.085, 0.115 and 0.150 in for thicknesses to 0.5, 1, 2, 3, 4 and
    5 in [1]_, the first value of each block.

    References
    ----------
    .. [1] Diehl Steel, minimum allowances for machining, hot-rolled squares and flats; the
       positions of the rows are inferred.

    Examples
    --------
    >>> round(float(bar_allowance_mm(20.0)), 2)
    1.14
    """
    inches = np.asarray(thickness_mm, dtype=float) / _MM_PER_IN
    place = np.searchsorted(_BAR_IN[:, 0], inches)
    return np.asarray(_BAR_IN[np.minimum(place, len(_BAR_IN) - 1), 1] * _MM_PER_IN)
