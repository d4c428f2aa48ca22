"""Bow that comes of one side being hotter than the other, in the flame or in the bath."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]

# Mean expansion of steel from cold to hardening heat (EN 1993-1-2, 1.4 % at 1000 °C). [1/K]
EXPANSION = 1.4e-5
# Of a strain that one side is forced to, what stays (estimated; half of it comes back).
STAYING = 0.5
# First harmonic of the flux round a bar in a bath, over its mean: sd of a sample (estimated, so
# that water leaves the strain of 1.0e-3 that practice allows for slender bars).
BATH_SD = 0.15
# Heat of austenite between 700 and 500 °C and its conductivity (from memory).
_HEAT_J_PER_M3, _CONDUCTIVITY = 7650.0 * 600.0 * 200.0, 23.0
_DIFFUSIVITY = 5.6e-6  # of austenite (from memory) [m²/s]
# No side is farther ahead of the other than this, however one-sided the bath. Estimate. [K]
MOST_SIDE_K = 400.0
# Slowest decay of a difference from side to side: root 1.8412 of J1', squared.
SIDE_ROOT = 3.39


def bath_side_k(time_700_500_s: ArrayLike, diameter_mm: ArrayLike, normal: ArrayLike) -> Floats:
    """Return the difference from side to side of a bar in its bath.

    Parameters
    ----------
    time_700_500_s : array_like
        Mean time of the section from 700 to 500 °C. [s]
    diameter_mm : array_like
        Diameter. [mm]
    normal : array_like
        Standard normal sample of how one-sided the bath grips. [-]

    Returns
    -------
    ndarray
        Difference, signed as the sample, held to 400 K either way. [K]

    Notes
    -----
    Mean flux q by the heat given off, its first harmonic e q, and
    2 e q R / k (1 - exp(-3.39 a t / R²)) from side to side [1]_, with 3.39 the square of the
    first root of J1' and t the time from 700 to 500 °C; e has an sd of 0.15 (estimated).

    References
    ----------
    .. [1] H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., Oxford, 1959,
       chapter 7.

    Examples
    --------
    >>> float(bath_side_k(1.3, 10.0, 1.0).round())
    72.0
    """
    radius_m = 0.5e-3 * np.asarray(diameter_mm, dtype=float)
    flux = _HEAT_J_PER_M3 * 0.5 * radius_m / np.asarray(time_700_500_s, dtype=float)
    side = 2.0 * BATH_SD * np.asarray(normal, dtype=float) * flux * radius_m / _CONDUCTIVITY
    spent = SIDE_ROOT * _DIFFUSIVITY * np.asarray(time_700_500_s, dtype=float)
    side = side * -np.expm1(-spent / radius_m**2)
    return np.asarray(np.clip(side, -MOST_SIDE_K, MOST_SIDE_K))


def bow_mm(
    side_k: ArrayLike, diameter_mm: ArrayLike, hot_mm: ArrayLike, length_mm: ArrayLike
) -> Floats:
    """Return the bow that a difference from side to side leaves in a bar.

    Parameters
    ----------
    side_k : array_like
        Difference from side to side in the hot stretch. [K]
    diameter_mm : array_like
        Diameter. [mm]
    hot_mm : array_like
        Length of the hot stretch. [mm]
    length_mm : array_like
        Length of the bar. [mm]

    Returns
    -------
    ndarray
        Offset of the end from the axis of the rest, or of the middle from the line of the ends
        where the whole bar was hot. [mm]

    Notes
    -----
    Curvature 0.5 α ΔT / D over the hot stretch: κ h² / 2 for an end, κ L² / 8 for the whole.
    The share of the strain that stays is estimated.

    References
    ----------
    .. [1] S. Timoshenko, Strength of Materials, part 1, deflection by unequal heating (from
       memory).

    Examples
    --------
    >>> float(bow_mm(100.0, 10.0, 150.0, 150.0).round(2))
    0.2
    """
    hot, length = np.asarray(hot_mm, dtype=float), np.asarray(length_mm, dtype=float)
    curve = STAYING * EXPANSION * np.abs(np.asarray(side_k, dtype=float))
    curve = curve / np.asarray(diameter_mm, dtype=float)
    whole = hot >= 0.999 * length
    return np.asarray(
        curve * np.where(whole, length**2 / 8.0, np.minimum(hot, length) ** 2 / 2.0)
    )
