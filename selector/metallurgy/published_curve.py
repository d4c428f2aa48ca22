"""Hardness on a published tempering curve: steels whose maker's curve is the model.

Tool, high-speed and other steels that harden again are read on their curve, moved to another
time, and to another hardening temperature where curves of several are published.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from selector.metallurgy.temper_curve import HOUR_S, KELVIN, Floats

# Constant of the parameter for these steels, which owe their resistance to alloy carbides: the
# one usual for tool steel in the form of Hollomon and Jaffe (from memory).
CONSTANT = 20.0
# How far a published curve is carried on past its last point, for tempers longer than its own:
# a day at its end tempers as far as two hours some 40 K past it. [K]
REACH_K = 75.0
# A table is rounded to whole or half HRC: what rises by less does not rise. [HRC]
RISES_HRC = 0.5
# Carbon begins to leave martensite here: before that it is as hard as quenched (from memory of
# the stages of tempering). [°C]
FRESH_C = 100.0
# Error for a new producer: of the curve, wider in high-alloy steel, whose makers harden from
# many heats and whose standards leave carbon wide; and of a place on it, as furnaces differ.
# Each curve beside the tables of other producers; see tests/benchmarks/calibration_curves.py.
SD_HRC, SD_HIGH_ALLOY_HRC = 0.8, 1.3
SD_PLACE_K = 6.0
# Of the way past the last point, where no table says how steep it is; estimate. [-]
SD_BEYOND = 0.3


def _same_c(curve_time_s: float, temperature_c: ArrayLike, time_s: ArrayLike) -> Floats:
    """Return the temperature that in the time of the curve tempers as far."""
    hours = np.maximum(np.asarray(time_s, dtype=float), 1e-9) / HOUR_S
    kelvin = np.asarray(temperature_c, dtype=float) + KELVIN
    ratio = (CONSTANT + np.log10(hours)) / (CONSTANT + np.log10(curve_time_s / HOUR_S))
    return np.asarray(kelvin * ratio - KELVIN)


def from_as_quenched(curve: Sequence[tuple[float, float]], fresh_hrc: float | None) -> Floats:
    """Return a published curve begun at the hardness as quenched, where it begins later.

    Parameters
    ----------
    curve : sequence of pair of float
        Tempering temperature and hardness, °C and HRC. [-]
    fresh_hrc : float or None
        Hardness as quenched; None where it is not published. [HRC]

    Returns
    -------
    ndarray
        Temperatures in °C and hardness in HRC, shape (points, 2): with a first point at 100 °C
        more, unless the curve has one so cold or begins as hard as quenched. [-]

    References
    ----------
    .. [1] G. Roberts, G. Krauss, R. Kennedy, Tool Steels, 5th ed., ASM International, 1998:
       the first stage of tempering begins at some 100 °C.

    Examples
    --------
    >>> from_as_quenched([(205.0, 60.0), (400.0, 58.0)], 63.0).tolist()
    [[100.0, 63.0], [205.0, 60.0], [400.0, 58.0]]
    """
    points = np.asarray(curve, dtype=float)
    if fresh_hrc is None or points[0, 0] <= FRESH_C or points[0, 1] >= fresh_hrc:
        return points
    return np.vstack([[FRESH_C, fresh_hrc], points])


def hardens_again_c(curve: ArrayLike) -> float:
    """Return from which temper on a steel may be harder than the quench left it.

    Parameters
    ----------
    curve : array_like
        Tempering temperature and hardness, shape (points, 2), °C and HRC. [-]

    Returns
    -------
    float
        Where the curve is softest before its greatest rise; infinite where it rises by no more
        than 0.5 HRC, the rounding of a table. [°C]

    References
    ----------
    .. [1] Estimate of the project: alloy carbides and what austenite the quench left harden a
       steel again, past the temper where it has softened most.

    Examples
    --------
    >>> hardens_again_c([(100.0, 64.0), (300.0, 58.0), (520.0, 61.0), (600.0, 50.0)])
    300.0
    """
    at_c, hrc = np.asarray(curve, dtype=float).T
    least = np.minimum.accumulate(hrc)
    most = int(np.argmax(hrc - least))
    if hrc[most] - least[most] <= RISES_HRC:
        return float("inf")
    return float(at_c[np.flatnonzero(hrc[: most + 1] == least[most])[-1]])


def tempered_from_curve(
    curve_temperature_c: ArrayLike,
    curve_hrc: ArrayLike,
    curve_time_s: float,
    temperature_c: ArrayLike,
    time_s: ArrayLike,
) -> Floats:
    """Return the hardness on a catalogued tempering curve, moved to another time.

    For tool, high-speed and other steels that harden again: the maker's curve is the model.

    Parameters
    ----------
    curve_temperature_c : array_like
        Rising temperatures of the curve, one axis. [°C]
    curve_hrc : array_like
        Hardness at them. [HRC]
    curve_time_s : float
        Time for which the curve holds. [s]
    temperature_c : array_like
        Tempering temperature. [°C]
    time_s : array_like
        Time at temperature. [s]

    Returns
    -------
    ndarray
        Hardness: the first value below the first point, the last slope (never upward) for 75 K
        past the last, then held. [HRC]

    Notes
    -----
    The curve is read at the temperature that in its own time gives the same T (20 + log10 t)
    [1]_.

    References
    ----------
    .. [1] J. H. Hollomon and L. D. Jaffe, Trans. AIME 162, 1945, 223-249.

    Examples
    --------
    >>> float(tempered_from_curve([200.0, 400.0], [60.0, 50.0], 3600.0, 300.0, 3600.0))
    55.0
    """
    given_c, given_hrc = np.asarray(curve_temperature_c, float), np.asarray(curve_hrc, float)
    same_c = _same_c(curve_time_s, temperature_c, time_s)
    slope = min(0.0, float(np.diff(given_hrc)[-1] / np.diff(given_c)[-1]))
    beyond_c = np.append(given_c, given_c[-1] + REACH_K)
    beyond_hrc = np.append(given_hrc, given_hrc[-1] + slope * REACH_K)
    return np.asarray(np.interp(same_c, beyond_c, beyond_hrc))


def curve_sd_hrc(
    curve_temperature_c: ArrayLike,
    curve_hrc: ArrayLike,
    curve_time_s: float,
    temperature_c: ArrayLike,
    time_s: ArrayLike,
    level_hrc: float = SD_HRC,
) -> Floats:
    """Return the error of a published curve for the steel of another producer.

    Parameters
    ----------
    curve_temperature_c : array_like
        Rising temperatures of the curve, one axis. [°C]
    curve_hrc : array_like
        Hardness at them. [HRC]
    curve_time_s : float
        Time for which the curve holds. [s]
    temperature_c : array_like
        Tempering temperature. [°C]
    time_s : array_like
        Time at temperature. [s]
    level_hrc : float, optional
        Error where the curve is flat. [HRC]

    Returns
    -------
    ndarray
        Standard error, wider where the curve is steep and past its end. [HRC]

    References
    ----------
    .. [1] Common practice: the error of a place times the slope there.

    Examples
    --------
    >>> flat = curve_sd_hrc([200.0, 400.0], [60.0, 60.0], 3600.0, 300.0, 3600.0)
    >>> round(float(flat), 2)
    0.8
    """
    given_c, given_hrc = np.asarray(curve_temperature_c, float), np.asarray(curve_hrc, float)
    same_c = _same_c(curve_time_s, temperature_c, time_s)
    slopes = np.abs(np.diff(given_hrc) / np.diff(given_c))
    middles = 0.5 * (given_c[1:] + given_c[:-1])
    place_k = np.hypot(SD_PLACE_K, SD_BEYOND * np.maximum(same_c - given_c[-1], 0.0))
    return np.asarray(np.hypot(level_hrc, place_k * np.interp(same_c, middles, slopes)))


def for_heat(
    curve: Sequence[tuple[float, float]],
    heats: Sequence[tuple[float, Sequence[tuple[float, float]]]],
    curve_heat_c: float,
    heat_c: float,
) -> Floats:
    """Return a published curve as it is after hardening from another temperature.

    Parameters
    ----------
    curve : sequence of pair of float
        Tempering temperature and hardness of the main curve, °C and HRC. [-]
    heats : sequence of pair
        Hardening temperature and curve of each other one; a short curve is carried on as far
        from the main one as at its ends. [-]
    curve_heat_c : float
        Hardening temperature of the main curve. [°C]
    heat_c : float
        Hardening temperature asked for, held within those published. [°C]

    Returns
    -------
    ndarray
        Temperatures in °C and hardness in HRC, shape (points, 2). [-]

    Notes
    -----
    Straight in the hardening temperature between two published ones: more carbide dissolved
    gives more to precipitate again, and more retained austenite below that [1]_.

    References
    ----------
    .. [1] G. Roberts, G. Krauss, R. Kennedy, Tool Steels, 5th ed., ASM International, 1998.

    Examples
    --------
    >>> hotter = [(1070.0, [(200.0, 58.0), (520.0, 61.0)])]
    >>> for_heat([(200.0, 60.0), (520.0, 57.0)], hotter, 1010.0, 1040.0)[:, 1].tolist()
    [59.0, 59.0]
    """
    main = np.asarray(curve, dtype=float)
    places = np.unique(np.concatenate([main[:, 0], *(np.array(c)[:, 0] for _, c in heats)]))
    # Points of the others beyond the reach of the main curve say nothing of their distance.
    places = places[places <= main[-1, 0]]
    base = np.interp(places, main[:, 0], main[:, 1])
    away = {curve_heat_c: np.zeros(places.size)}
    for other_c, points in heats:
        other = np.asarray(points, dtype=float)
        apart = other[:, 1] - np.interp(other[:, 0], main[:, 0], main[:, 1])
        away[other_c] = np.interp(places, other[:, 0], apart)
    known = np.array(sorted(away))
    table = np.stack([away[c] for c in known])
    moved = [np.interp(heat_c, known, column) for column in table.T]
    return np.stack([places, base + np.array(moved)], axis=-1)
