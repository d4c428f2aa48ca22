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

_GAS_J_PER_MOL_K = 8.314
# Share of the free diffusion depth (estimated): a flame reaches one side at a time and its
# oxidising edge works hardest; foil, pack or paste keeps nearly all of the carbon in.
_SHARE = MappingProxyType({"flame": 1.0, "open-furnace": 1.0, "pack": 0.15})
_SCALE_SHARE = MappingProxyType({"flame": 0.7, "open-furnace": 1.0, "pack": 0.05})
_LOG_SD = 0.5


@dataclass(frozen=True, slots=True, eq=False)
class SoftSkin:
    """Soft skin and scale, medians, with the standard deviation of the logarithm of each."""

    soft_mm: FloatArray
    scale_mm: FloatArray
    log_sd: float


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
    ``x = 2 √(D t)`` with D = 2.3e-5 exp(-148 000 / R T) m²/s for carbon in austenite [1]_: at
    that depth 0.84 of the carbon is left (error function of 1). Scale ``x² = k t`` with
    k = 6.1e-4 exp(-169 000 / R T) m²/s [2]_, recalled and of low confidence. Below about 700 °C
    there is no austenite and little of either. Workshops leave 0.25 mm a side to grind after a
    torch, which overheats corners.

    References
    ----------
    .. [1] W. D. Callister, Materials Science and Engineering, table of diffusion data
       (from memory).
    .. [2] J. Paidassi, oxidation of iron in air between 700 and 1250 °C, Acta Metallurgica 6,
       1958, 184-194 (from memory).
    """
    kelvin = np.asarray(peak_c, dtype=float) + 273.15
    time = np.asarray(time_s, dtype=float)
    diffusivity = 2.3e-5 * np.exp(-148e3 / (_GAS_J_PER_MOL_K * kelvin))
    scaling = 6.1e-4 * np.exp(-169e3 / (_GAS_J_PER_MOL_K * kelvin))
    return SoftSkin(
        soft_mm=np.asarray(_SHARE[atmosphere] * 2e3 * np.sqrt(diffusivity * time)),
        scale_mm=np.asarray(_SCALE_SHARE[atmosphere] * 1e3 * np.sqrt(scaling * time)),
        log_sd=_LOG_SD,
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
