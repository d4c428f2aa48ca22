"""What metallurgy asks of a heating: rate, hold at the peak, tempering on the way up.

Time runs along the last axis, so that many histories are read at once.
"""

import numpy as np
from numpy.typing import NDArray

from selector.metallurgy.austenite import DISSOLUTION_ENERGY, GAS_CONSTANT
from selector.metallurgy.temper_curve import CONSTANT, HOUR_S, KELVIN, accumulated_k

Floats = NDArray[np.float64]

# Through the critical range the heating rate is read between these. [°C]
RATE_BETWEEN_C = (600.0, 720.0)
# Heating evenly up to a peak near 830 °C dissolves as much as this span's time at the peak:
# (1 - 1/e) of R T² / Q, with the energy of dissolution. [°C]
ARRIVING_C = 32.0
# Temperings on the way are put as time at this. [°C]
REFERENCE_C = 600.0


def first_s(time_s: Floats, temperature_c: Floats, level_c: float) -> Floats:
    """Return when each history first passes a temperature. [s]."""
    # The last instant where it never does.
    above = temperature_c >= level_c
    k = np.argmax(above, axis=-1)[..., None]
    before = np.maximum(k - 1, 0)
    times = np.broadcast_to(time_s, temperature_c.shape)

    def at(values: Floats, place: NDArray[np.intp]) -> Floats:
        return np.take_along_axis(values, place, axis=-1)[..., 0]

    cold, hot = at(temperature_c, before), at(temperature_c, k)
    start, end = at(times, before), at(times, k)
    part = np.clip((level_c - cold) / np.maximum(hot - cold, 1e-9), 0.0, 1.0)
    return np.where(above.any(axis=-1), start + part * (end - start), times[..., -1])


def heating_rate(time_s: Floats, temperature_c: Floats) -> Floats:
    """Return the heating rate through the critical range, or up to the peak. [°C/s]."""
    low, high = RATE_BETWEEN_C
    taken = first_s(time_s, temperature_c, high) - first_s(time_s, temperature_c, low)
    return np.asarray((high - low) / np.maximum(taken, 0.05))


def held_s(time_s: Floats, temperature_c: Floats, rate_c_per_s: Floats) -> Floats:
    """Return the hold at the peak so far that dissolves as much as all of the history so far.

    Parameters
    ----------
    time_s : ndarray
        Instants. [s]
    temperature_c : ndarray
        Histories. [°C]
    rate_c_per_s : ndarray
        Their heating rates; arriving at the peak is not hold. [°C/s]

    Returns
    -------
    ndarray
        At each instant. [s]
    """
    per_kelvin = DISSOLUTION_ENERGY / GAS_CONSTANT
    colder = 1.0 / (temperature_c + KELVIN) - 1.0 / 1100.0
    pace = np.exp(-per_kelvin * colder)
    spent = np.zeros(np.broadcast_shapes(np.shape(time_s), temperature_c.shape))
    steps = 0.5 * (pace[..., 1:] + pace[..., :-1]) * np.diff(time_s)
    np.cumsum(steps, axis=-1, out=spent[..., 1:])
    # The hottest so far has the quickest pace so far.
    at_peak = spent / np.maximum.accumulate(pace, axis=-1)
    return np.asarray(np.maximum(at_peak - (ARRIVING_C / rate_c_per_s)[..., None], 0.0))


def tempered_s(time_s: Floats, temperature_c: Floats) -> Floats:
    """Return the tempering so far as time at `REFERENCE_C`. [s]."""
    *places, count = np.broadcast_shapes(np.shape(time_s), temperature_c.shape)
    at_k = np.zeros((count, *places))
    for k, so_far in enumerate(accumulated_k(temperature_c, time_s), start=1):
        at_k[k] = so_far
    hours = 10.0 ** (np.moveaxis(at_k, 0, -1) / (REFERENCE_C + KELVIN) - CONSTANT)
    return np.asarray(HOUR_S * hours)
