"""The end-quench (Jominy) distance that cools like a point of a quenched bar.

First form: Grossmann's half-temperature rule carries a bar to the ideally quenched bar, ASTM
A255 carries that to a Jominy distance, and the published bar charts correct the result for the
position in the bar. A vapour blanket is invisible to all three.
"""

import math
from types import MappingProxyType

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import demand, positive

FloatArray = NDArray[np.float64]

CLAMP_MM = 1.5  # no end-quench bar is read nearer its end
# Spread between the charts of different books, as standard deviation of the logarithm.
LOG_SD_JOMINY = 0.15

# Half-temperature time of a bar's centre: alpha t = ln2 (V/S)/(h/k) + 0.203 (D/2)². The sum of
# the slow-surface and the fast-surface limits; within 2.5 % of the series solution at any Biot.
HALF_TIME = 0.203
INCH_MM = 25.4

# ASTM A255: Jominy distance of 50 % martensite and ideal diameter, mm (part of the rows).
_A255_MM = (
    (0.79, 6.9),
    (1.59, 12.7),
    (3.17, 24.1),
    (4.76, 34.8),
    (6.35, 44.4),
    (7.94, 53.8),
    (9.52, 62.2),
    (11.11, 69.1),
    (12.7, 75.4),
    (15.88, 87.1),
    (19.05, 97.3),
    (22.22, 107.2),
    (25.4, 116.1),
    (28.57, 123.7),
    (31.75, 130.8),
    (34.92, 136.9),
    (38.1, 143),
    (41.27, 148.8),
    (44.45, 153.9),
    (47.62, 158.8),
    (50.8, 163.1),
)
_A255_JOMINY_MM, _A255_IDEAL_MM = np.array(_A255_MM).T

# Bars of equal as-quenched hardness on the SAE J1268 band charts, inches, at J 2, 4, 6 ... 18
# sixteenths; by medium (its severity, the middle of the published band) and radius fraction.
_OIL, _WATER = 0.32, 1.05
_RADII = (0.0, 0.75, 1.0)
_CHART_IN = MappingProxyType(
    {
        (_WATER, 0.0): (0.7, 1.2, 1.6, 2.0, 2.4, 2.8, 3.2, 3.6, 3.9),
        (_WATER, 0.75): (1.1, 2.0, 2.9, 3.8, 4.8, 5.8, 6.7),
        (_OIL, 0.0): (0.2, 0.6, 1.0, 1.4, 1.7, 2.0, 2.4, 2.7, 3.1),
        (_OIL, 0.75): (0.5, 1.0, 1.6, 2.0, 2.4, 2.8, 3.2, 3.6, 4.0),
        (_OIL, 1.0): (0.8, 1.8, 2.5, 3.0, 3.4, 3.8),
    }
)
_WATER_SURFACE = ((50.0, 1.6), (96.5, 3.17))  # bar mm, Jominy mm: Callister, then SAE J1268

# SAE J406 end-quench chart: cooling rate at 1300 °F, °F/s, at 1, 2, 3 ... 16 sixteenths.
_RATE_F_PER_S = (
    (490.0, 305.0, 195.0, 125.0),
    (77.0, 56.0, 42.0, 33.0),
    (26.0, 21.4, 18.0, 16.3),
    (14.0, 12.4, 11.0, 10.0),
)
_RATE_C_PER_S = np.ravel(_RATE_F_PER_S) / 1.8
_RATE_JOMINY_MM = np.arange(1, 17) * INCH_MM / 16


def _log_interp(x: FloatArray, xs: FloatArray, ys: FloatArray) -> FloatArray:
    """Interpolate straight in logarithms; beyond the table go on with the slope of its ends."""
    lx, lxs, lys = np.log(x), np.log(xs), np.log(ys)
    head = (lys[1] - lys[0]) / (lxs[1] - lxs[0])
    tail = (lys[-1] - lys[-4]) / (lxs[-1] - lxs[-4])
    inside = np.interp(lx, lxs, lys)
    beyond = tail * np.maximum(lx - lxs[-1], 0) + head * np.minimum(lx - lxs[0], 0)
    return np.asarray(np.exp(inside + beyond))


def ideal_diameter_mm(diameter_mm: ArrayLike, severity: ArrayLike) -> FloatArray:
    """Return the ideally quenched bar whose centre cools as fast (Grossmann 1940).

    The centre of both bars reaches the middle temperature in the same time; surface heat
    transfer is constant during the quench.

    Parameters
    ----------
    diameter_mm : array_like
        Diameter of the bar. [mm]
    severity : array_like
        Quench severity on Grossmann's scale, still water about 1, infinity allowed. [-]

    Returns
    -------
    ndarray
        Diameter of the bar in an ideal quench. [mm]

    Raises
    ------
    OutOfRangeError
        A diameter or severity is not above 0.

    Notes
    -----
    ``D_I² = D² + ln2 / (2 × 0.203) × 25.4 D / H``, the sum of the two limits of the series
    solution for the half-temperature time (Biot number H D): within 2.5 % of it.

    References
    ----------
    .. [1] M. A. Grossmann, M. Asimow, S. F. Urban, Hardenability, its relation to quenching and
       some quantitative data, in: Hardenability of Alloy Steels, ASM, 1939, 124-190
       (from memory).
    """
    bar = positive("diameter_mm", diameter_mm)
    h = positive("severity", severity)
    return np.asarray(np.sqrt(bar**2 + 0.5 * math.log(2) / HALF_TIME * INCH_MM * bar / h))


def _chart(anchor: float, radius: float) -> tuple[FloatArray, FloatArray]:
    """Return ideal diameter and the chart's Jominy distance over A255's, for one chart line."""
    if (anchor, radius) == (_WATER, 1.0):
        bar, jominy = np.array(_WATER_SURFACE).T
    else:
        bar = np.array(_CHART_IN[anchor, radius]) * INCH_MM
        jominy = np.arange(1, len(bar) + 1) * INCH_MM / 8
    ideal = ideal_diameter_mm(bar, anchor)
    return ideal, jominy / _log_interp(ideal, _A255_IDEAL_MM, _A255_JOMINY_MM)


_CORRECTION = MappingProxyType(
    {(anchor, radius): _chart(anchor, radius) for anchor in (_OIL, _WATER) for radius in _RADII}
)


def _chart_factor(anchor: float, ideal: FloatArray, position: FloatArray) -> FloatArray:
    """Return chart over A255 at `position`: straight in the square of the radius fraction."""
    centre, three_quarter, surface = (
        np.interp(np.log(ideal), np.log(_CORRECTION[anchor, r][0]), _CORRECTION[anchor, r][1])
        for r in _RADII
    )
    square = position**2
    knee = _RADII[1] ** 2
    inner = centre + (three_quarter - centre) * square / knee
    outer = three_quarter + (surface - three_quarter) * (square - knee) / (1 - knee)
    return np.where(square <= knee, inner, outer)


def jominy_distance_mm(
    diameter_mm: ArrayLike, position_fraction: ArrayLike, severity: ArrayLike
) -> FloatArray:
    """Return the Jominy distance that hardens like a point of a quenched round bar.

    The bar charts hold for the mildly agitated oil and water they were plotted for; other
    severities are carried over by equal half-temperature time. Below oil the difference between
    surface and centre fades with the Biot number, so an air-cooled bar is even. Above water the
    distance goes from the water charts to the ideal quench as that of A255 goes, on logarithms,
    so that it never rises with severity.

    Parameters
    ----------
    diameter_mm : array_like
        Diameter of the bar. [mm]
    position_fraction : array_like
        Place in the bar as fraction of its radius: 0 centre, 1 surface. [-]
    severity : array_like
        Quench severity on Grossmann's scale, still water about 1. [-]

    Returns
    -------
    ndarray
        Distance from the quenched end of an end-quench bar, 1.5 mm or more. [mm]

    Raises
    ------
    OutOfRangeError
        The position is outside 0 to 1, or a diameter or severity is not above 0.

    Notes
    -----
    J = J_A255(D_I) × chart factor [1]_ [2]_, the factor held constant beyond each chart line.
    Above water ln J goes from charted water to J_A255(D) × (chart factor there over the
    centre's) in the proportion in which ln J_A255(D_I) goes; no source says otherwise.
    The surface line for water has one point of [1]_; a second is the 50 mm bar of [3]_. Charts
    of different books differ by 10 to 25 %; more than 50.8 mm is an extrapolation.
    Range: bars of 5.1 to 170 mm [1]_, severities of 0.02 to 5.

    References
    ----------
    .. [1] SAE J1268, Hardenability bands, diameters of rounds with the same as-quenched
       hardness (from memory).
    .. [2] ASTM A255, Jominy distance for 50 % martensite against ideal diameter (from memory).
    .. [3] W. D. Callister, Materials Science and Engineering, worked example on a 1040 bar
       (from memory).
    """
    position = np.asarray(position_fraction, dtype=float)
    inside = (position >= 0) & (position <= 1)
    demand(inside, "position_fraction", "between 0 and 1", position)
    bar, h, position = np.broadcast_arrays(
        positive("diameter_mm", diameter_mm), positive("severity", severity), position
    )
    charted = _charted_mm(bar, np.minimum(h, _WATER), position)
    keenest = _ideally_quenched_mm(bar, position)
    a255 = (_a255_mm(ideal_diameter_mm(bar, severity)) for severity in (_WATER, h, np.inf))
    water, here, ideal = (np.log(distance) for distance in a255)
    gone = (water - here) / (water - ideal)
    keener = np.exp(np.log(charted) + gone * np.log(keenest / charted))
    return np.maximum(np.where(h > _WATER, keener, charted), CLAMP_MM)


def _a255_mm(ideal: FloatArray) -> FloatArray:
    """Return the Jominy distance of ASTM A255 for an ideal diameter. [mm]."""
    return _log_interp(ideal, _A255_IDEAL_MM, _A255_JOMINY_MM)


def _charted_mm(bar: FloatArray, h: FloatArray, position: FloatArray) -> FloatArray:
    """Return the Jominy distance of a point by the bar charts, up to the severity of water."""
    ideal = ideal_diameter_mm(bar, h)
    toward_water = np.clip(np.log(h / _OIL) / math.log(_WATER / _OIL), 0, 1)

    def factor(place: FloatArray) -> FloatArray:
        oil, water = (_chart_factor(anchor, ideal, place) for anchor in (_OIL, _WATER))
        return oil + toward_water * (water - oil)

    at_centre = factor(np.zeros_like(position))
    # Surface and centre differ by about Bi / (2 + Bi); the charts carry it for their own bars.
    spread = 1 / (1 + 2 * INCH_MM / (h * bar))
    charted = 1 / (1 + 2 * INCH_MM / (_OIL * _oil_bar(ideal)))
    fade = np.where(h < _OIL, spread / charted, 1)
    shape = 1 + fade * (factor(position) / at_centre - 1)
    return _a255_mm(ideal) * at_centre * shape


def _ideally_quenched_mm(bar: FloatArray, position: FloatArray) -> FloatArray:
    """Return the Jominy distance in an ideal quench: A255's centre, the water charts' shape."""
    centre, place = (_chart_factor(_WATER, bar, at) for at in (0.0 * position, position))
    return _a255_mm(bar) * place / centre


def _oil_bar(ideal: FloatArray) -> FloatArray:
    """Return the oil-quenched bar of the same ideal diameter."""
    half = 0.25 * math.log(2) / HALF_TIME * INCH_MM / _OIL
    return np.asarray(np.sqrt(ideal**2 + half**2) - half)


def cooling_time_700_500_s(jominy_mm: ArrayLike) -> FloatArray:
    """Return the time from 700 to 500 °C at a distance along the end-quench bar.

    The published figure is the cooling rate at 704 °C. The time follows from cooling towards
    20 °C in proportion to the difference that is left, without heat of transformation.

    Parameters
    ----------
    jominy_mm : array_like
        Distance from the quenched end. [mm]

    Returns
    -------
    ndarray
        Time from 700 to 500 °C. [s]

    Raises
    ------
    OutOfRangeError
        A distance is not above 0.

    Notes
    -----
    ``t = (704 - 20) ln(680/480) / rate``. Beyond 25.4 mm the last slope is continued. The rule
    adds about 15 % to the error of the chart.

    References
    ----------
    .. [1] SAE J406, end-quench chart, cooling rate at 1300 °F by position (from memory).
    """
    rate = _log_interp(positive("jominy_mm", jominy_mm), _RATE_JOMINY_MM, _RATE_C_PER_S)
    return np.asarray(684.0 * math.log(680 / 480) / rate)
