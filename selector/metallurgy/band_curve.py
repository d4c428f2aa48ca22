"""The end-quench curve as fitted to hardenability bands: a product of powers and a shape."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from selector.metallurgy import martensite

Floats = NDArray[np.float64]

# The logarithm of a middling factor product in mm, from which l is counted.
MIDDLE_LOG = 4.2
# Carbon hardens fully quenched steel no more from here on, within the bands. [wt %]
RICH_CARBON_WT_PCT = 0.62
# Below this l the knee goes on as a straight line, so that it never turns back.
STRAIGHT_BELOW = -1.5


@dataclass(frozen=True, slots=True, eq=False)
class Coefficients:
    """The powers of the factors and the shape of the curve, as hardenability.toml has them."""

    power: Mapping[str, float]
    shape: Mapping[str, float]

    def log_product(self, factors: Mapping[str, Floats]) -> Floats:
        """Return l, the logarithm of the product of powers, "C" in mm, less 4.2."""
        logs = [self.power.get(e, 1.0) * np.log(factor) for e, factor in factors.items()]
        return np.asarray(sum(logs[1:], logs[0]) - MIDDLE_LOG)

    def hrc(self, carbon_wt_pct: Floats, log_product: Floats, distance_mm: Floats) -> Floats:
        """Return the hardness at a distance: initial hardness, a knee, a tail."""
        s, carbon = self.shape, np.minimum(carbon_wt_pct, RICH_CARBON_WT_PCT)
        full = martensite.hardness(np.maximum(carbon, 0.05), 1.0)
        initial = full + s["initial"] + s["initial_per_c"] * (carbon - 0.35)
        lean = np.maximum(log_product, STRAIGHT_BELOW)
        bend = s.get("knee_per_l_squared", 0.0) * lean * (2.0 * log_product - lean)
        w = np.log(distance_mm) - s["knee"] - s["knee_per_l"] * log_product - bend
        tail = s["tail"] + s["tail_per_l"] * log_product - s["tail_fall"] * w
        left = 1.0 / (1.0 + np.exp(-tail))
        fall = (1.0 + np.exp(s["steepness"] * w)) ** -s["bluntness"]
        return np.asarray(initial * (left + (1.0 - left) * fall))


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
def heat_coefficients() -> Coefficients:
    """Return the shipped coefficients of the curve of a single heat.

    Returns
    -------
    Coefficients
        The powers of `coefficients`, the shape of a heat. [-]

    References
    ----------
    .. [1] SAE J1268 and EN 10083: the two edges of the hardenability bands fitted to.
    """
    data = _table()
    return Coefficients(data["power"], data["heat"])


@cache
def _table() -> Mapping[str, Mapping[str, float]]:
    """Return hardenability.toml as shipped."""
    path = Path(__file__).with_name("hardenability.toml")
    return tomllib.loads(path.read_text(encoding="utf-8"))
