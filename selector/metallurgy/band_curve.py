"""The end-quench curves fitted to hardenability bands: a product of powers and two shapes.

One is the middle of many heats of a grade, the other a single heat.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
import tomli
from numpy.typing import NDArray

from selector.bounded import bounded
from selector.metallurgy import martensite

Floats = NDArray[np.float64]

# The logarithm of a middling factor product in mm, from which l is counted.
MIDDLE_LOG = 4.2
# Carbon hardens fully quenched steel no more from here on, within the bands. [wt %]
RICH_CARBON_WT_PCT = 0.62
# Below this l a heat's knee goes on as a straight line, so that it never turns back.
STRAIGHT_BELOW = -1.5
# Beyond this l to each side the order of a heat's law changes no more.
ORDER_HELD_BEYOND = 1.0
# ASTM A255 gives no harder quenched end, from 0.62 % C on (from memory).
HARDEST_HRC = 65.0


@dataclass(frozen=True, slots=True, eq=False)
class Coefficients:
    """The powers of the factors and the shape of a band's midline, as hardenability.toml."""

    power: Mapping[str, float]
    shape: Mapping[str, float]

    def log_product(self, factors: Mapping[str, Floats]) -> Floats:
        """Return l, the logarithm of the product of powers, "C" in mm, less 4.2."""
        return _log_product(self.power, factors)

    def initial_hrc(self, carbon_wt_pct: Floats) -> Floats:
        """Return the hardness at the quenched end."""
        return _initial_hrc(self.shape, carbon_wt_pct)

    def kept(self, log_product: Floats, distance_mm: Floats) -> Floats:
        """Return the share of it that a distance keeps: a knee, a tail."""
        s = self.shape
        w = np.log(distance_mm) - s["knee"] - s["knee_per_l"] * log_product
        left = _share(s["tail"] + s["tail_per_l"] * log_product - s["tail_fall"] * w)
        fall = (1.0 + np.exp(s["steepness"] * w)) ** -s["bluntness"]
        return np.asarray(left + (1.0 - left) * fall)


@dataclass(frozen=True, slots=True, eq=False)
class HeatCoefficients:
    """The powers of the factors and the shape of one heat's curve, as hardenability.toml.

    Martensite is replaced by Avrami's law in the distance, the more abruptly the shallower the
    steel hardens: pearlite alone comes all at once, after bainite it comes by degrees.
    """

    power: Mapping[str, float]
    shape: Mapping[str, float]

    def log_product(self, factors: Mapping[str, Floats]) -> Floats:
        """Return l, the logarithm of the product of powers, "C" in mm, less 4.2."""
        return _log_product(self.power, factors)

    def initial_hrc(self, carbon_wt_pct: Floats) -> Floats:
        """Return the hardness at the quenched end."""
        return np.minimum(_initial_hrc(self.shape, carbon_wt_pct), HARDEST_HRC)

    def kept(self, log_product: Floats, distance_mm: Floats) -> Floats:
        """Return the share of it that a distance keeps: Avrami's law, a tail."""
        s, x = self.shape, np.log(distance_mm)
        lean = np.maximum(log_product, STRAIGHT_BELOW)
        bend = s["knee_per_l_squared"] * lean * (2.0 * log_product - lean)
        w = x - s["knee"] - s["knee_per_l"] * log_product - bend
        held = bounded(log_product, -ORDER_HELD_BEYOND, ORDER_HELD_BEYOND)
        order = s["order"] * np.exp(s["order_per_l"] * held)
        martensite_left = np.exp(-np.exp(np.minimum(order * w, 6.0)))
        left = _share(s["tail"] + s["tail_per_l"] * log_product - s["tail_fall"] * x)
        return np.asarray(left + (1.0 - left) * martensite_left)


Curve = Coefficients | HeatCoefficients


def _log_product(power: Mapping[str, float], factors: Mapping[str, Floats]) -> Floats:
    """Return the logarithm of a product of powers, counted from the middle."""
    # One logarithm of all that stand as they are: it takes most of the time.
    plain, logs = np.ones(()), np.full((), -MIDDLE_LOG)
    for element, factor in factors.items():
        if element in power:
            logs = logs + power[element] * np.log(factor)
        else:
            plain = plain * factor
    return np.asarray(logs + np.log(plain))


def _initial_hrc(shape: Mapping[str, float], carbon_wt_pct: Floats) -> Floats:
    """Return the hardness at the quenched end."""
    carbon = np.minimum(carbon_wt_pct, RICH_CARBON_WT_PCT)
    full = martensite.hardness(np.maximum(carbon, 0.05), 1.0)
    return np.asarray(full + shape["initial"] + shape["initial_per_c"] * (carbon - 0.35))


def _share(logit: Floats) -> Floats:
    """Return the share whose logit is given."""
    return np.asarray(1.0 / (1.0 + np.exp(-logit)))


@cache
def coefficients() -> Coefficients:
    """Return the shipped coefficients.

    Returns
    -------
    Coefficients
        As hardenability.toml holds them. [-]

    References
    ----------
    .. [1] SAE J1268 and EN 10083: the hardenability bands fitted to.
    """
    data = _table()
    return Coefficients(data["power"], data["shape"])


@cache
def heat_coefficients() -> HeatCoefficients:
    """Return the shipped coefficients of the curve of a single heat.

    Returns
    -------
    HeatCoefficients
        Powers and shape of a heat, as hardenability.toml holds them. [-]

    References
    ----------
    .. [1] SAE J1268 and EN 10083: the two edges of the hardenability bands fitted to.
    .. [2] M. Avrami, Kinetics of phase change II, J. Chemical Physics 8, 1940, 212-224.
    """
    data = _table()
    return HeatCoefficients(data["heat_power"], data["heat"])


@cache
def _table() -> Mapping[str, Mapping[str, float]]:
    """Return hardenability.toml as shipped."""
    path = Path(__file__).with_name("hardenability.toml")
    return tomli.loads(path.read_text(encoding="utf-8"))
