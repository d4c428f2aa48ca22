"""The project's own end-quench bar, and the place on it that cools like any other history.

Hardness by composition is known along the end-quench bar. A point of a part is carried there by
its time from 700 to 500 °C, which sees a vapour stage and a delay in it; the rate at 704 °C, by
which the trade labels the bar, does not, and is reported only.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.heat.conduction import Plan, conduct
from selector.heat.exchange import convection, steady
from selector.heat.grid import Section, bar_grid
from selector.heat.steel_property import cooling_steel
from selector.kept import kept_on_disk

Floats = NDArray[np.float64]

# ASTM A255: bar 1 in by 4 in, water column on one end, the side in still air (from memory).
DIAMETER_MM, LENGTH_MM = 25.4, 101.6
SPRAY_C = 24.0
# The one free number: exchange under the spray, set on the published rates at 704 °C.
SPRAY_W_PER_M2_K = 20000.0
AIR_W_PER_M2_K, EMISSIVITY = 10.0, 0.8
START_C, FOLLOWED_S = 870.0, 1500.0
HIGH_C, LOW_C, RATE_C = 700.0, 500.0, 704.4
# Hardness is read no nearer to the end, and the bar ends here. [mm]
NEAREST_MM, FARTHEST_MM = 1.5, 80.0


@dataclass(frozen=True, slots=True, eq=False)
class EndQuench:
    """The simulated bar: distance from the quenched end, its time and its rate, at the side."""

    distance_mm: Floats
    time_700_500_s: Floats
    rate_704_c_per_s: Floats


def time_between(
    time_s: ArrayLike,
    temperature_c: ArrayLike,
    high_c: float = HIGH_C,
    low_c: float = LOW_C,
) -> Floats:
    """Return the time a cooling history takes between two temperatures.

    It counts from the last time the history leaves the upper temperature downward.

    Parameters
    ----------
    time_s : array_like
        Times, ascending. [s]
    temperature_c : array_like
        Temperatures, time last. [°C]
    high_c, low_c : float, optional
        Upper and lower temperature. [°C]

    Returns
    -------
    ndarray
        Time; NaN if the history never was above the upper temperature, infinite if it does not
        reach the lower. [s]

    References
    ----------
    .. [1] Straight lines between the points of the history, no model.

    Examples
    --------
    >>> float(time_between([0.0, 10.0], [800.0, 400.0]))
    5.0
    """
    t = np.asarray(time_s, dtype=float)
    rows = np.atleast_2d(np.asarray(temperature_c, dtype=float))
    shape = np.shape(temperature_c)[:-1]
    flat = rows.reshape(-1, t.size)
    with np.errstate(invalid="ignore"):  # a history that ends above both has neither time
        time_s = _passing(t, flat, low_c) - _passing(t, flat, high_c)
    time_s = np.where(flat.max(axis=1) < high_c, np.nan, time_s)
    return time_s.reshape(shape)


def _passing(time_s: Floats, temperature_c: Floats, level_c: float) -> Floats:
    """Return when each history last falls through a level; infinite if it ends above it."""
    above = temperature_c >= level_c
    count, rows = time_s.size, np.arange(len(above))
    last = count - 1 - np.argmax(above[:, ::-1], axis=1)
    after = np.minimum(last + 1, count - 1)
    left, right = temperature_c[rows, last], temperature_c[rows, after]
    fall = np.where(left > right, left - right, 1.0)
    passed_s = time_s[last] + (left - level_c) / fall * (time_s[after] - time_s[last])
    passed_s = np.where(last == count - 1, np.inf, passed_s)
    return np.where(above.any(axis=1), passed_s, time_s[0])


def rate_at(time_s: ArrayLike, temperature_c: ArrayLike, level_c: float = RATE_C) -> Floats:
    """Return the cooling rate of a history at a temperature, over 20 °C to each side.

    Parameters
    ----------
    time_s : array_like
        Times, ascending. [s]
    temperature_c : array_like
        Temperatures, time last. [°C]
    level_c : float, optional
        Where the rate is taken, 1300 °F unless given. [°C]

    Returns
    -------
    ndarray
        Cooling rate. [°C/s]

    References
    ----------
    .. [1] Straight lines between the points of the history, no model.

    Examples
    --------
    >>> float(rate_at([0.0, 10.0], [800.0, 400.0]))
    40.0
    """
    span = time_between(time_s, temperature_c, level_c + 20.0, level_c - 20.0)
    return np.asarray(40.0 / span)


def simulate(
    spray_w_per_m2_k: float = SPRAY_W_PER_M2_K, fineness: float = 1.0, tolerance_k: float = 1.0
) -> EndQuench:
    """Return the simulated end-quench bar.

    Austenite's properties throughout, as for a place that hardens; the spray's exchange is one
    number, the side loses heat to still air.

    Parameters
    ----------
    spray_w_per_m2_k : float, optional
        Exchange of the quenched end. [W/(m² K)]
    fineness : float, optional
        2 halves every cell. [-]
    tolerance_k : float, optional
        Error of a step. [K]

    Returns
    -------
    EndQuench
        Time and rate by distance. [-]

    Notes
    -----
    The exchange fits the published rates [2]_ best in the logarithm. From 870 °C; the time does
    not depend on the start.

    References
    ----------
    .. [1] ASTM A255, Standard Test Methods for Determining Hardenability of Steel
       (from memory).
    .. [2] SAE J406, end-quench chart, cooling rate at 1300 °F by position (from memory).
    """
    bar = bar_grid([Section(DIAMETER_MM, LENGTH_MM)], fineness)
    air = convection(AIR_W_PER_M2_K, SPRAY_C, EMISSIVITY)
    boundary = steady(
        bar, {"end": convection(spray_w_per_m2_k, SPRAY_C), "side": air, "held": air}
    )
    row = bar.active.shape[0] - 1
    kept = np.flatnonzero(bar.along_mm <= FARTHEST_MM + 3.0)
    watch = tuple(int(row * bar.along_mm.size + j) for j in kept)
    plan = Plan(FOLLOWED_S, watch=watch, tolerance_k=tolerance_k)
    history = conduct(bar, cooling_steel(), boundary, START_C, plan)
    return EndQuench(
        bar.along_mm[kept],
        time_between(history.time_s, history.temperature_c),
        rate_at(history.time_s, history.temperature_c),
    )


@cache
@kept_on_disk
def standard_bar() -> EndQuench:
    """Return the simulated end-quench bar with the calibrated spray.

    Returns
    -------
    EndQuench
        Time and rate by distance. [-]

    References
    ----------
    .. [1] As `simulate`.
    """
    return simulate()


def end_quench_time_s(distance_mm: ArrayLike) -> Floats:
    """Return the time from 700 to 500 °C at a distance along the end-quench bar.

    Parameters
    ----------
    distance_mm : array_like
        Distance from the quenched end; held at 1.5 and 80 mm. [mm]

    Returns
    -------
    ndarray
        Time from 700 to 500 °C. [s]

    References
    ----------
    .. [1] As `simulate`.
    """
    bar = standard_bar()
    place = bounded(np.asarray(distance_mm, dtype=float), NEAREST_MM, FARTHEST_MM)
    return np.asarray(
        np.exp(np.interp(np.log(place), np.log(bar.distance_mm), np.log(bar.time_700_500_s)))
    )


def end_quench_rate_c_per_s(distance_mm: ArrayLike) -> Floats:
    """Return the cooling rate at 704 °C at a distance along the end-quench bar.

    Parameters
    ----------
    distance_mm : array_like
        Distance from the quenched end; held at 1.5 and 80 mm. [mm]

    Returns
    -------
    ndarray
        Cooling rate. [°C/s]

    References
    ----------
    .. [1] As `simulate`.
    """
    bar = standard_bar()
    place = bounded(np.asarray(distance_mm, dtype=float), NEAREST_MM, FARTHEST_MM)
    log_rate = np.log(bar.rate_704_c_per_s)
    return np.asarray(np.exp(np.interp(np.log(place), np.log(bar.distance_mm), log_rate)))


def equivalent_distance_mm(time_700_500_s: ArrayLike) -> Floats:
    """Return the distance on the end-quench bar with the same time from 700 to 500 °C.

    Parameters
    ----------
    time_700_500_s : array_like
        Time of the point; NaN (never hot) is kept. [s]

    Returns
    -------
    ndarray
        Distance from the quenched end, held at 1.5 and 80 mm. [mm]

    References
    ----------
    .. [1] As `simulate`.
    """
    bar = standard_bar()
    spent = np.asarray(time_700_500_s, dtype=float)
    low, high = bar.time_700_500_s[0], bar.time_700_500_s[-1]
    log_time = np.log(bounded(spent, low, high))
    place = np.exp(np.interp(log_time, np.log(bar.time_700_500_s), np.log(bar.distance_mm)))
    return np.asarray(bounded(place, NEAREST_MM, FARTHEST_MM))
