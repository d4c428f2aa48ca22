"""Carbon carried into steel: how deep, after how long, from which medium."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.metallurgy.transformation import carbon_solubility

Floats = NDArray[np.float64]
Carburiser = Literal["charcoal", "energised", "compound", "liquid", "gas"]

_MM_PER_IN = 25.4
_CAL_PER_MOL_K = 1.987
# Collin, Gunnarson and Thulin's profile: numerator, and what is added to the share of carbon.
_COLLIN, _COLLIN_SHARE = 0.79, 0.24
# Depth lost to the slow way through the surface, in diffusivity over transfer. They give 0.7;
# with this the numerical solution is met for short times too. [-]
_LAG = 1.1
# Manganese of a mild case steel, at the middle. [wt %]
_MILD_MANGANESE_WT_PCT = 0.5


@dataclass(frozen=True, slots=True)
class Medium:
    """What a carburising medium does at the surface.

    `share` of the carbon that saturates the austenite, carbon taken up in mm/s for each share,
    and how far depths in it scatter, as sd of the logarithm.
    """

    share: float
    transfer_mm_per_s: float
    log_sd: float


# Potential of gas as run for most of the time, before the last diffusing. The transfer of
# endothermic gas is 1.3e-4 to 2.8e-4 mm/s (Wyss 1990, from memory); that of a cyanide bath is
# beyond what the steel takes (estimate). Charcoal alone takes 4 h for 0.5 mm at 900 °C (common
# practice); a compound gives 0.05 to 0.25 mm in some dips and 0.25 to 0.4 mm buried for 30 to
# 60 minutes (model engineering, from memory); an energised pack saturates the surface. Scatter:
# gas and bath as a firm controls them, packs as ±0.25 mm of 1 mm (ASM Handbook vol. 4, from
# memory).
MEDIA: Mapping[Carburiser, Medium] = MappingProxyType(
    {
        "charcoal": Medium(1.0, 0.33e-4, 0.30),
        "energised": Medium(1.0, 1.5e-4, 0.25),
        "compound": Medium(1.0, 2.0e-4, 0.35),
        "liquid": Medium(0.90, 3.0e-4, 0.18),
        "gas": Medium(0.90, 1.5e-4, 0.16),
    }
)


def total_case_harris(temperature_c: ArrayLike, time_h: ArrayLike) -> Floats:
    """Return the total depth of case of a steel whose surface is kept saturated, by Harris.

    Time at heat alone; the depth ends where carbon is about 0.07 % above that of the core.

    Parameters
    ----------
    temperature_c : array_like
        Carburising temperature. [°C]
    time_h : array_like
        Time at it. [h]

    Returns
    -------
    ndarray
        Total case. [mm]

    Notes
    -----
    31.6 √t / 10^(6700/T) inches with T in °R = °F + 460 [1]_. Printed for 760 to 1010 °C and 1
    to 36 h, plain and low-alloy steel. Our other functions rest on diffusion; this one stands
    beside them.

    References
    ----------
    .. [1] F. E. Harris, Case depth, an attempt at a practical definition, Metal Progress 44,
       August 1943, 265-272, as tabled in ASM Handbook vol. 4 and read in two reprints.

    Examples
    --------
    >>> round(float(total_case_harris(926.7, 4.0)) / 25.4, 3)
    0.05
    """
    rankine = 1.8 * np.asarray(temperature_c, dtype=float) + 32.0 + 460.0
    inches = 31.6 * np.sqrt(np.asarray(time_h, dtype=float)) / 10.0 ** (6700.0 / rankine)
    return np.asarray(_MM_PER_IN * inches)


def carbon_diffusivity(carbon_wt_pct: ArrayLike, temperature_c: ArrayLike) -> Floats:
    """Return the diffusivity of carbon in austenite by Tibbetts.

    Parameters
    ----------
    carbon_wt_pct : array_like
        Carbon dissolved. [wt %]
    temperature_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Diffusivity. [mm²/s]

    Notes
    -----
    0.47 exp(-1.6 C) exp(-(37 000 - 6600 C) / R T) cm²/s with R = 1.987 cal/(mol K) [1]_; fitted
    to measurements at 800 to 1100 °C and 0.1 to 1.3 % C. Alloying elements are left out.

    References
    ----------
    .. [1] G. G. Tibbetts, Diffusivity of carbon in iron and steels at high temperatures,
       Journal of Applied Physics 51, 1980, 4813-4816 (from memory).

    Examples
    --------
    >>> float(f"{float(carbon_diffusivity(0.2, 927.0)):.3g}")
    1.08e-05
    """
    carbon = np.asarray(carbon_wt_pct, dtype=float)
    kelvin = np.asarray(temperature_c, dtype=float) + 273.15
    energy = 37_000.0 - 6_600.0 * carbon
    per_cm2 = 0.47 * np.exp(-1.6 * carbon - energy / (_CAL_PER_MOL_K * kelvin))
    return np.asarray(100.0 * per_cm2)


def carbon_potential(temperature_c: ArrayLike, medium: Carburiser) -> Floats:
    """Return the carbon that a medium brings the surface of a steel to, given time.

    Parameters
    ----------
    temperature_c : array_like
        Carburising temperature. [°C]
    medium : {"charcoal", "energised", "compound", "liquid", "gas"}
        What it is carburised in. [-]

    Returns
    -------
    ndarray
        Carbon in austenite at the surface. [wt %]

    Notes
    -----
    The share of `MEDIA` of what austenite of plain iron can hold [1]_. Chromium lowers what the
    austenite of a steel holds and draws more carbon to it as carbide: neither is counted.

    References
    ----------
    .. [1] `transformation.carbon_solubility`.

    Examples
    --------
    >>> round(float(carbon_potential(925.0, "gas")), 2)
    1.18
    """
    return np.asarray(MEDIA[medium].share * carbon_solubility({}, temperature_c))


def _over_lag(
    core_wt_pct: ArrayLike,
    potential_wt_pct: ArrayLike,
    temperature_c: ArrayLike,
    medium: Carburiser,
) -> tuple[Floats, Floats]:
    """Return the diffusivity at the mean carbon of a case, and the depth lost on the way in."""
    # [mm²/s], [mm]
    mean = 0.5 * (np.asarray(core_wt_pct, dtype=float) + np.asarray(potential_wt_pct, float))
    diffusivity = carbon_diffusivity(mean, temperature_c)
    return diffusivity, np.asarray(_LAG * diffusivity / MEDIA[medium].transfer_mm_per_s)


def _share(
    carbon: ArrayLike, core: ArrayLike, potential: ArrayLike, temperature_c: ArrayLike
) -> Floats:
    """Return how far the carbon that ends a case lies from core to potential. [-]."""
    low = np.asarray(core, dtype=float)
    ends = np.maximum(np.asarray(carbon, dtype=float), _leanest_austenite(temperature_c))
    return np.asarray((ends - low) / (np.asarray(potential, dtype=float) - low))


def _leanest_austenite(temperature_c: ArrayLike) -> Floats:
    """Return the carbon of austenite beside ferrite, where a mild case ends. [wt %]."""
    # Ac3 = 910 - 203 √C - 30 Mn solved for carbon. Below Ac3 of the core the last carbon of the
    # profile is spent on turning the core's ferrite.
    pure_c = 910.0 - 30.0 * _MILD_MANGANESE_WT_PCT
    under = np.maximum(pure_c - np.asarray(temperature_c, dtype=float), 0.0)
    return np.asarray((under / 203.0) ** 2)


def depth_of_carbon(
    carbon_wt_pct: ArrayLike,
    core_wt_pct: ArrayLike,
    potential_wt_pct: ArrayLike,
    temperature_c: ArrayLike,
    time_h: ArrayLike,
    medium: Carburiser,
) -> Floats:
    """Return how deep a carbon reaches after carburising.

    A flat or slightly curved surface, and a section so thick that its middle keeps its carbon.

    Parameters
    ----------
    carbon_wt_pct : array_like
        Carbon looked for: 0.35 for the effective depth of alloy steel, core + 0.07 for the
        total depth. [wt %]
    core_wt_pct : array_like
        Carbon of the steel. [wt %]
    potential_wt_pct : array_like
        What the medium brings the surface to, given time. [wt %]
    temperature_c : array_like
        Carburising temperature. [°C]
    time_h : array_like
        Time at heat; the heating of a box is apart. [h]
    medium : {"charcoal", "energised", "compound", "liquid", "gas"}
        How fast it gives its carbon. [-]

    Returns
    -------
    ndarray
        Depth, 0 where the surface does not reach that carbon. [mm]

    Notes
    -----
    x = 0.79 √(D t) / (0.24 + (C - C0) / (Cp - C0)) [1]_ with D of `carbon_diffusivity` at the
    mean of core and potential, for a surface at its potential at once; C is not below
    that of austenite beside ferrite by [2]_. The authors take 0.7 D/β off for the transfer β;
    here the depth is √(x² + l²) - l with l = 1.1 D/β, which is theirs for long times and leaves
    a depth for short ones. A numerical solution of the same problem
    is met within 10 % (13 % for the total depth); published for 850 to 1000 °C.

    References
    ----------
    .. [1] R. Collin, S. Gunnarson, D. Thulin, A mathematical model for predicting carbon
       concentration profiles of gas-carburized steel, Journal of the Iron and Steel Institute
       210, 1972, 785-789, as given by U. Wyss, Härterei-Technische Mitteilungen 45, 1990, 44-56
       (from memory).
    .. [2] K. W. Andrews, JISI 203, 1965, 721-727.

    Examples
    --------
    >>> round(float(depth_of_carbon(0.35, 0.18, 1.1, 930.0, 4.0, "gas")), 2)
    0.84
    """
    diffusivity, lag = _over_lag(core_wt_pct, potential_wt_pct, temperature_c, medium)
    share = _share(carbon_wt_pct, core_wt_pct, potential_wt_pct, temperature_c)
    spread = _COLLIN * np.sqrt(diffusivity * 3600.0 * np.asarray(time_h, dtype=float))
    free = spread / (_COLLIN_SHARE + np.clip(share, 0.0, 1.0))
    depth = np.sqrt(free**2 + lag**2) - lag
    reached = share < _surface_share(diffusivity, time_h, medium)
    return np.asarray(np.where(reached, depth, 0.0))


def _surface_share(diffusivity: Floats, time_h: ArrayLike, medium: Carburiser) -> Floats:
    """Return how far the surface has come from core to potential. [-]."""
    # 1 - exp(h²) erfc(h) with h = β √(t/D), by a bound that holds within 3 %.
    seconds = 3600.0 * np.asarray(time_h, dtype=float)
    h = MEDIA[medium].transfer_mm_per_s * np.sqrt(seconds / diffusivity)
    return np.asarray(1.0 - 2.0 / np.sqrt(np.pi) / (h + np.sqrt(h**2 + 4.0 / np.pi)))


def carbon_at_depth(
    depth_mm: ArrayLike,
    core_wt_pct: ArrayLike,
    potential_wt_pct: ArrayLike,
    temperature_c: ArrayLike,
    time_h: ArrayLike,
    medium: Carburiser,
) -> Floats:
    """Return the carbon at a depth after carburising.

    The inverse of `depth_of_carbon`, not above what the surface has taken up by then.

    Parameters
    ----------
    depth_mm : array_like
        Depth under the surface. [mm]
    core_wt_pct : array_like
        Carbon of the steel. [wt %]
    potential_wt_pct : array_like
        What the medium brings the surface to, given time. [wt %]
    temperature_c : array_like
        Carburising temperature. [°C]
    time_h : array_like
        Time at heat. [h]
    medium : {"charcoal", "energised", "compound", "liquid", "gas"}
        How fast it gives its carbon. [-]

    Returns
    -------
    ndarray
        Carbon. [wt %]

    Notes
    -----
    The relation of [1]_ read backwards. The surface is a half space with a transfer: 1 -
    exp(h²) erfc(h) of the way to the potential, h = β √(t/D) [2]_.

    References
    ----------
    .. [1] R. Collin, S. Gunnarson, D. Thulin, JISI 210, 1972, 785-789 (from memory).
    .. [2] J. Crank, The Mathematics of Diffusion, 2nd ed., Oxford 1975, eq. 3.35.

    Examples
    --------
    >>> carbon_at_depth([0.0, 0.9, 3.0], 0.18, 1.1, 930.0, 4.0, "gas").round(2)
    array([0.98, 0.33, 0.18])
    """
    diffusivity, lag = _over_lag(core_wt_pct, potential_wt_pct, temperature_c, medium)
    depth = np.asarray(depth_mm, dtype=float)
    free = np.sqrt(np.maximum((depth + lag) ** 2 - lag**2, 1e-12))
    spread = _COLLIN * np.sqrt(diffusivity * 3600.0 * np.asarray(time_h, dtype=float))
    share = np.clip(
        spread / free - _COLLIN_SHARE, 0.0, _surface_share(diffusivity, time_h, medium)
    )
    core = np.asarray(core_wt_pct, dtype=float)
    return np.asarray(core + share * (np.asarray(potential_wt_pct, dtype=float) - core))


def time_to_depth_h(
    depth_mm: ArrayLike,
    carbon_wt_pct: ArrayLike,
    core_wt_pct: ArrayLike,
    potential_wt_pct: ArrayLike,
    temperature_c: ArrayLike,
    medium: Carburiser,
) -> Floats:
    """Return how long to carburise for a carbon at a depth.

    Parameters
    ----------
    depth_mm : array_like
        Depth wanted. [mm]
    carbon_wt_pct : array_like
        Carbon wanted there. [wt %]
    core_wt_pct : array_like
        Carbon of the steel. [wt %]
    potential_wt_pct : array_like
        What the medium brings the surface to, given time. [wt %]
    temperature_c : array_like
        Carburising temperature. [°C]
    medium : {"charcoal", "energised", "compound", "liquid", "gas"}
        How fast it gives its carbon. [-]

    Returns
    -------
    ndarray
        Time at heat. [h]

    Notes
    -----
    `depth_of_carbon` [1]_ solved for time.

    References
    ----------
    .. [1] R. Collin, S. Gunnarson, D. Thulin, JISI 210, 1972, 785-789 (from memory).

    Examples
    --------
    >>> round(float(time_to_depth_h(1.0, 0.35, 0.18, 1.1, 930.0, "gas")), 1)
    5.5
    """
    diffusivity, lag = _over_lag(core_wt_pct, potential_wt_pct, temperature_c, medium)
    share = _share(carbon_wt_pct, core_wt_pct, potential_wt_pct, temperature_c)
    share = np.clip(share, 0.0, 1.0)
    deep = np.maximum(np.asarray(depth_mm, dtype=float), 0.0)
    free = np.sqrt(deep * (deep + 2.0 * lag))
    spread = free * (_COLLIN_SHARE + share) / _COLLIN
    return np.asarray(spread**2 / diffusivity / 3600.0)
