"""Nitrogen carried into steel below its tempering heat: how deep, after how long."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.metallurgy.ideal_diameter import Composition

Floats = NDArray[np.float64]

_J_PER_MOL_K = 8.314
# Nitrogen that one mass of each element binds, by the nitride it forms; about half of the
# molybdenum stays carbide. Chromium in primary carbide, five times the carbon above 0.5 %,
# binds none.
_NITROGEN_PER_MASS = {
    "Cr": 14.0 / 52.0,
    "Al": 14.0 / 27.0,
    "V": 14.0 / 50.9,
    "Ti": 14.0 / 47.9,
    "Mo": 0.5 * 14.0 / 95.9,
}
_CARBIDE_CR_PER_C, _CARBIDE_FROM_WT_PCT = 5.0, 0.5
# What manganese, silicon and strained ferrite take up besides, and how much deeper the hardness
# reaches than the front: fitted to nine steels of data sheets and handbooks (see the Notes).
_BESIDES_WT_PCT, _REACH = 0.20, 1.15
# Of the logarithm of a depth, on a new steel in another firm's furnace: 0.205 with twelve
# steels counting alike, more by the two figures that nine of them were fitted with.
DEPTH_LOG_SD = 0.23
COMPOUND_LOG_SD = 0.25


def nitrogen_diffusivity(temperature_c: ArrayLike) -> Floats:
    """Return the diffusivity of nitrogen in ferrite by Fast and Verrijp.

    Parameters
    ----------
    temperature_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Diffusivity. [mm²/s]

    Notes
    -----
    6.6e-3 exp(-77 900 / R T) cm²/s [1]_, up to 590 °C, where austenite begins to form.

    References
    ----------
    .. [1] J. D. Fast, M. B. Verrijp, Diffusion of nitrogen in iron, Journal of the Iron and
       Steel Institute 176, 1954, 24-27 (from memory).

    Examples
    --------
    >>> float(f"{float(nitrogen_diffusivity(520.0)):.2g}")
    4.9e-06
    """
    kelvin = np.asarray(temperature_c, dtype=float) + 273.15
    return np.asarray(0.66 * np.exp(-77_900.0 / (_J_PER_MOL_K * kelvin)))


def nitrogen_solubility(temperature_c: ArrayLike) -> Floats:
    """Return the nitrogen that ferrite holds beside the nitride Fe4N.

    Parameters
    ----------
    temperature_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Nitrogen in ferrite under a compound layer. [wt %]

    Notes
    -----
    12.3 exp(-34 700 / R T) [1]_: 0.1 % at 590 °C.

    References
    ----------
    .. [1] H. A. Wriedt, N. A. Gokcen, R. H. Nafziger, The Fe-N system, Bulletin of Alloy Phase
       Diagrams 8, 1987, 355-377 (from memory).

    Examples
    --------
    >>> round(float(nitrogen_solubility(590.0)), 2)
    0.1
    """
    kelvin = np.asarray(temperature_c, dtype=float) + 273.15
    return np.asarray(12.3 * np.exp(-34_700.0 / (_J_PER_MOL_K * kelvin)))


def bound_nitrogen(composition_wt_pct: Composition) -> Floats:
    """Return the nitrogen that the nitride formers of a steel bind where the layer has passed.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]

    Returns
    -------
    ndarray
        Nitrogen in nitrides of Cr, Al, V, Ti and half of the Mo. [wt %]

    Notes
    -----
    One atom of nitrogen for each of the metal [1]_. Chromium of primary carbide is left out:
    five times the carbon above 0.5 % (estimate).

    References
    ----------
    .. [1] B. J. Lightfoot, D. H. Jack, Kinetics of nitriding with and without white-layer
       formation, Heat Treatment '73, The Metals Society, London 1975, 59-65 (from memory).

    Examples
    --------
    >>> round(float(bound_nitrogen({"C": 0.41, "Cr": 1.6, "Al": 1.0, "Mo": 0.35})), 2)
    0.97
    """
    content = {name: np.asarray(v, dtype=float) for name, v in composition_wt_pct.items()}
    carbon = content.get("C", np.zeros(()))
    carbide = _CARBIDE_CR_PER_C * np.maximum(carbon - _CARBIDE_FROM_WT_PCT, 0.0)
    total = np.zeros(())
    for element, share in _NITROGEN_PER_MASS.items():
        metal = content.get(element, np.zeros(()))
        free = np.maximum(metal - carbide, 0.0) if element == "Cr" else metal
        total = total + share * free
    return np.asarray(total)


def nitrided_depth(
    composition_wt_pct: Composition, temperature_c: ArrayLike, time_h: ArrayLike
) -> Floats:
    """Return how deep a steel is hard after nitriding under a compound layer.

    The front of the nitrides moves on as nitrogen comes through the layer behind it: rich steel
    is nitrided thin and hard, lean steel deep and softer.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]
    temperature_c : array_like
        Nitriding temperature. [°C]
    time_h : array_like
        Time at it. [h]

    Returns
    -------
    ndarray
        Depth to the hardness of the core + 50 HV. [mm]

    Notes
    -----
    x² = 2 N_s D t / (N_b + N_s/2), the front of [1]_ with N_s of `nitrogen_solubility`, N_b of
    `bound_nitrogen` and half of N_s for the nitrogen that stays dissolved. Two figures
    are fitted: N_b is greater by 0.20 % and the depth by 15 %. Fitted to 28 depths of 42CrMo4,
    4140, 34CrAlMo5, 135M, 31CrMoV9, P20, H13, A2 and D2 at 510 to 580 °C and 1 to 96 h (data
    sheets of Uddeholm and Latrobe, German and ASM handbooks; from memory). Without them the
    same figures are met within 18 % on average, with a steel left out within 14 %.

    References
    ----------
    .. [1] B. J. Lightfoot, D. H. Jack, Heat Treatment '73, The Metals Society, London 1975,
       59-65 (from memory).

    Examples
    --------
    >>> float(nitrided_depth({"C": 0.42, "Cr": 1.05, "Mo": 0.22}, 520.0, 36.0).round(2))
    0.45
    """
    dissolved = nitrogen_solubility(temperature_c)
    taken = bound_nitrogen(composition_wt_pct) + _BESIDES_WT_PCT + 0.5 * dissolved
    spread = nitrogen_diffusivity(temperature_c) * 3600.0 * np.asarray(time_h, dtype=float)
    return np.asarray(_REACH * np.sqrt(2.0 * dissolved / taken * spread))


def time_to_nitride_h(
    composition_wt_pct: Composition, temperature_c: ArrayLike, depth_mm: ArrayLike
) -> Floats:
    """Return how long to nitride for a depth.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]
    temperature_c : array_like
        Nitriding temperature. [°C]
    depth_mm : array_like
        Depth wanted, to the hardness of the core + 50 HV. [mm]

    Returns
    -------
    ndarray
        Time at heat. [h]

    Notes
    -----
    `nitrided_depth` [1]_ solved for time: four times as long for twice the depth.

    References
    ----------
    .. [1] B. J. Lightfoot, D. H. Jack, Heat Treatment '73, 1975, 59-65 (from memory).

    Examples
    --------
    >>> float(time_to_nitride_h({"C": 0.42, "Cr": 1.05, "Mo": 0.22}, 520.0, 0.3).round())
    16.0
    """
    of_one_hour = nitrided_depth(composition_wt_pct, temperature_c, 1.0)
    return np.asarray((np.asarray(depth_mm, dtype=float) / of_one_hour) ** 2)


def compound_layer(temperature_c: ArrayLike, time_h: ArrayLike) -> Floats:
    """Return the thickness of the compound layer of nitrocarburising.

    Parameters
    ----------
    temperature_c : array_like
        Temperature. [°C]
    time_h : array_like
        Time at it. [h]

    Returns
    -------
    ndarray
        Layer of iron carbonitride on the surface. [mm]

    Notes
    -----
    0.0110 mm in the first hour at 570 °C, growing with the root of time: 10 to 15 µm after 90
    minutes and some 20 µm after 3 to 4 hours of salt bath or gas [1]_. Growth by temperature is
    that of `nitrogen_diffusivity`; alloy steel, which grows less, is not told apart.

    References
    ----------
    .. [1] ASM Handbook vol. 4, Heat Treating, 1991: gaseous and salt bath nitrocarburising
       (from memory).

    Examples
    --------
    >>> round(float(compound_layer(570.0, 2.0)), 3)
    0.016
    """
    hotter = nitrogen_diffusivity(temperature_c) / nitrogen_diffusivity(570.0)
    return np.asarray(0.0110 * np.sqrt(hotter * np.asarray(time_h, dtype=float)))
