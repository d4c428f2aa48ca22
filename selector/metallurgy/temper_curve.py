"""Hardness of tempered martensite over the additive parameter: one falling curve a composition.

One number stands for every temper, T (16 + log10 t). Tempers add in it, and each composition
has one curve of Vickers hardness over it, straight between a few nodes and never rising.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from pathlib import Path
from types import MappingProxyType

import numpy as np
import tomli
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.kept import per_record
from selector.validity import LIMITS

Floats = NDArray[np.float64]
Composition = Mapping[str, ArrayLike]

KELVIN = 273.15
HOUR_S = 3600.0
# The mean of what three laboratories found alone is 14.5: 15 to 23 by steel in [Grange and
# Baughman 1956], 13 to 16 in [Hollomon and Jaffe 1945], 9 and 10 in [Penha 2010]. All readings
# together, each laboratory with an error a decade of its own, are likeliest at 17 to 18, which
# leaves long tempers of the last two too hard: between the two.
CONSTANT = 16.0
ELEMENTS = ("Mn", "Si", "Ni", "Cr", "Mo", "V")
# An element counts up to the most of the fitted steels. The increments are straight in content;
# carried on, they leave steel of 3 % Cr as hard at 600 °C as quenched.
MOST_WT_PCT = {limit.name: limit.high for limit in LIMITS["tempering.tempered_hardness"]}


@dataclass(frozen=True, slots=True, eq=False)
class Coefficients:
    """The curve of tempered martensite over the parameter, node by node."""

    node_k: Floats
    carbon_limit_wt_pct: float
    published_hv_per_wt_pct: Mapping[str, Floats]
    base_hv: Floats
    carbon_hv_per_wt_pct: Floats
    multiplier: Mapping[str, float]

    def curve_hv(self, composition_wt_pct: Composition) -> Floats:
        """Return the Vickers hardness at the nodes, last axis, never rising."""
        carbon = np.asarray(composition_wt_pct.get("C", 0.0), dtype=float)
        curve = self.base_hv + self.carbon_hv_per_wt_pct * np.minimum(
            carbon[..., None], self.carbon_limit_wt_pct
        )
        for element in ELEMENTS:
            given = np.asarray(composition_wt_pct.get(element, 0.0), dtype=float)
            content = np.minimum(given, MOST_WT_PCT[element])
            per_wt_pct = self.multiplier[element] * self.published_hv_per_wt_pct[element]
            curve = curve + content[..., None] * per_wt_pct
        return np.asarray(np.minimum.accumulate(curve, axis=-1))


@per_record(512, MappingProxyType)
def node_hv(composition_wt_pct: Composition) -> Floats:
    """Return the Vickers hardness of a composition at the nodes of the shipped coefficients.

    That of a composition that nobody can change is worked out once.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]

    Returns
    -------
    ndarray
        Hardness, nodes last, never rising. [HV]

    References
    ----------
    .. [1] R. A. Grange and R. W. Baughman, Trans. ASM 48, 1956, 165-197, for the curves.
    """
    curve = coefficients().curve_hv(composition_wt_pct)
    curve.setflags(write=False)
    return curve


@cache
def coefficients() -> Coefficients:
    """Return the shipped coefficients.

    Returns
    -------
    Coefficients
        As tempering.toml holds them. [-]

    References
    ----------
    .. [1] R. A. Grange and R. W. Baughman, Trans. ASM 48, 1956, 165-197.
    .. [2] J. H. Hollomon and L. D. Jaffe, Trans. AIME 162, 1945, 223-249.
    """
    data = tomli.loads(Path(__file__).with_name("tempering.toml").read_text(encoding="utf-8"))
    form, martensite = data["form"], data["martensite"]
    return Coefficients(
        node_k=np.array(form["node_k"], dtype=float),
        carbon_limit_wt_pct=form["carbon_limit_wt_pct"],
        published_hv_per_wt_pct={
            element: np.array(row, dtype=float)
            for element, row in data["published_hv_per_wt_pct"].items()
        },
        base_hv=np.array(martensite["base_hv"]),
        carbon_hv_per_wt_pct=np.array(martensite["carbon_hv_per_wt_pct"]),
        multiplier=data["multiplier"],
    )


def parameter_k(temperature_c: ArrayLike, time_s: ArrayLike) -> Floats:
    """Return the additive parameter of a temper at one temperature.

    Parameters
    ----------
    temperature_c : array_like
        Temperature of the steel. [°C]
    time_s : array_like
        Time at temperature. [s]

    Returns
    -------
    ndarray
        Parameter. [K]

    Notes
    -----
    T (16 + log10 t), T in K and t in h: the form of [1]_. The constant of [2]_ is 18; 16 lies
    between their laboratory and two others, who found long tempers softer.

    References
    ----------
    .. [1] J. H. Hollomon and L. D. Jaffe, Time-temperature relations in tempering steel, Trans.
       AIME 162, 1945, 223-249.
    .. [2] R. A. Grange and R. W. Baughman, Hardness of tempered martensite in carbon and
       low-alloy steels, Trans. ASM 48, 1956, 165-197.

    Examples
    --------
    >>> round(float(parameter_k(400.0, 3600.0)))
    10770
    """
    hours = np.maximum(np.asarray(time_s, dtype=float), 1e-9) / HOUR_S
    kelvin = np.asarray(temperature_c, dtype=float) + KELVIN
    return np.asarray(kelvin * (CONSTANT + np.log10(hours)))


def after(prior_k: ArrayLike, temperature_c: ArrayLike, time_s: ArrayLike) -> Floats:
    """Return the parameter after one more temper: the times add at its temperature.

    Parameters
    ----------
    prior_k : array_like
        Parameter so far. [K]
    temperature_c : array_like
        Temperature of the further temper. [°C]
    time_s : array_like
        Its time. [s]

    Returns
    -------
    ndarray
        Parameter. [K]

    References
    ----------
    .. [1] J. H. Hollomon and L. D. Jaffe, Trans. AIME 162, 1945, 223-249.

    Examples
    --------
    >>> twice = after(parameter_k(400.0, 1800.0), 400.0, 1800.0)
    >>> bool(abs(twice - parameter_k(400.0, 3600.0)) < 1e-6)
    True
    """
    kelvin = np.asarray(temperature_c, dtype=float) + KELVIN
    earlier = np.asarray(prior_k, dtype=float) / kelvin
    this = parameter_k(temperature_c, time_s) / kelvin
    # log10(10**a + 10**b) that cannot overflow.
    most = np.maximum(earlier, this)
    return np.asarray(kelvin * (most + np.log10(1.0 + 10.0 ** -np.abs(earlier - this))))


def accumulated_k(temperature_history_c: ArrayLike, time_s: ArrayLike) -> Iterator[Floats]:
    """Yield the parameter of a history after each of its steps.

    Parameters
    ----------
    temperature_history_c : array_like
        Temperature at each instant, time last; straight between instants. [°C]
    time_s : array_like
        The instants, rising, time last. [s]

    Yields
    ------
    ndarray
        Parameter so far; shape without the time axis. [K]

    Notes
    -----
    Step by step: the temper so far is put as a time at the mean temperature of the step, the
    step is added [1]_. Exact for a constant temperature.

    References
    ----------
    .. [1] J. H. Hollomon and L. D. Jaffe, Trans. AIME 162, 1945, 223-249.

    Examples
    --------
    >>> first, second = accumulated_k([400.0, 400.0, 400.0], [0.0, 900.0, 3600.0])
    >>> round(float(second))
    10770
    """
    history = np.asarray(temperature_history_c, dtype=float)
    step_s = np.diff(np.asarray(time_s, dtype=float), axis=-1)
    middle = 0.5 * (history[..., 1:] + history[..., :-1])
    middle, step_s = np.broadcast_arrays(middle, step_s)
    tempered_k = parameter_k(middle[..., 0], step_s[..., 0])
    yield tempered_k
    for k in range(1, middle.shape[-1]):
        tempered_k = after(tempered_k, middle[..., k], step_s[..., k])
        yield tempered_k


def along(curve_hv: Floats, node_k: Floats, at_k: ArrayLike) -> Floats:
    """Return the hardness on piecewise straight curves, flat beyond both ends.

    Parameters
    ----------
    curve_hv : ndarray
        Hardness at the nodes, nodes last. [HV]
    node_k : ndarray
        Parameter at the nodes. [K]
    at_k : array_like
        Where to read; broadcasts with the leading axes of `curve_hv`. [K]

    Returns
    -------
    ndarray
        Hardness. [HV]

    References
    ----------
    .. [1] R. A. Grange and R. W. Baughman, Trans. ASM 48, 1956, 165-197, for the curves.
    """
    # All nodes at once: one after another they cost as many calls each.
    place, wide = np.asarray(at_k, dtype=float)[..., None], np.diff(node_k)
    fall_per_k = (curve_hv[..., :-1] - curve_hv[..., 1:]) / wide
    gone = fall_per_k * bounded(place - node_k[:-1], 0.0, wide)
    return np.asarray(curve_hv[..., 0] - gone.sum(axis=-1))


def place_of(curve_hv: Floats, node_k: Floats, hv: ArrayLike) -> Floats:
    """Return the parameter at which falling curves reach a hardness, within their ends.

    Parameters
    ----------
    curve_hv : ndarray
        Hardness at the nodes, nodes last, never rising. [HV]
    node_k : ndarray
        Parameter at the nodes. [K]
    hv : array_like
        Hardness wanted; broadcasts with the leading axes of `curve_hv`. [HV]

    Returns
    -------
    ndarray
        Least parameter at that hardness; an end of the curve where it is out of reach. [K]

    References
    ----------
    .. [1] R. A. Grange and R. W. Baughman, Trans. ASM 48, 1956, 165-197, for the curves.
    """
    wanted = np.asarray(hv, dtype=float)
    place = node_k[0]
    for k, (low, high) in enumerate(pairwise(node_k)):
        fall = np.maximum(curve_hv[..., k] - curve_hv[..., k + 1], 1e-9)
        place = place + (high - low) * bounded((curve_hv[..., k] - wanted) / fall, 0.0, 1.0)
    return np.asarray(place)
