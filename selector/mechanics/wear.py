"""Wear life of one hardness against another: a ratio, never a life in hours."""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
Wear = Literal["sliding", "abrasive"]

# Life ∝ hardness^n, with the standard deviation of n (estimated). Sliding: Archard, n = 1.
# Abrasive: heat-treated steels lie on flatter lines than pure metals, for which n = 1.
_EXPONENT = MappingProxyType({"sliding": (1.0, 0.4), "abrasive": (0.6, 0.2)})
_MILD_GAIN = 10.0  # wear falls by an order of magnitude or more once the abrasive is softer
_SEVERE_RATIO, _MILD_RATIO = 1.2, 0.9


@dataclass(frozen=True, slots=True, eq=False)
class RelativeLife:
    """Life over the life of the reference, median, and sd of its logarithm."""

    ratio: FloatArray
    log_sd: FloatArray


def _abrasive_gain(hardness: FloatArray, abrasive: FloatArray) -> FloatArray:
    """Return the gain in life as the surface overtakes the abrasive in hardness."""
    ratio = abrasive / hardness
    share = np.clip((_SEVERE_RATIO - ratio) / (_SEVERE_RATIO - _MILD_RATIO), 0, 1)
    return np.asarray(_MILD_GAIN**share)


def relative_life(
    hardness_hv: ArrayLike,
    reference_hv: ArrayLike,
    wear: Wear = "sliding",
    abrasive_hv: ArrayLike | None = None,
) -> RelativeLife:
    """Return the wear life at a hardness over the life at a reference hardness.

    Same steel, load, mating part and grit on both sides; carbides, lubrication and a change
    from mild to severe wear can outweigh hardness.

    Parameters
    ----------
    hardness_hv : array_like
        Hardness of the wearing surface. [HV]
    reference_hv : array_like
        Hardness of the part compared with. [HV]
    wear : {"sliding", "abrasive"}, optional
        Kind of wear. [-]
    abrasive_hv : array_like, optional
        Hardness of the grit, quartz 800 to 1200. [HV]

    Returns
    -------
    RelativeLife
        Ratio of lives and sd of its logarithm. [-]

    Notes
    -----
    Sliding: V = K P L / (3 H) [1]_, life in proportion to hardness. Abrasive: proportional for
    pure annealed metals, less for heat-treated steel [2]_: exponent 0.6 (estimated). With the
    grit's hardness given, life rises tenfold between 1.2 and 0.9 of grit over surface [2]_. The
    exponents carry an estimated sd of 0.4 and 0.2.

    References
    ----------
    .. [1] J. F. Archard, Contact and rubbing of flat surfaces, J. Appl. Phys. 24, 1953,
       981-988.
    .. [2] M. M. Khruschov, Principles of abrasive wear, Wear 28, 1974, 69-88 (from memory).

    Examples
    --------
    >>> float(relative_life(600.0, 300.0).ratio)
    2.0
    """
    hardness = np.asarray(hardness_hv, dtype=float)
    reference = np.asarray(reference_hv, dtype=float)
    exponent, sd = _EXPONENT[wear]
    log_ratio = np.log(hardness / reference)
    ratio = np.exp(exponent * log_ratio)
    log_sd = sd * np.abs(log_ratio)
    if wear == "abrasive" and abrasive_hv is not None:
        grit = np.asarray(abrasive_hv, dtype=float)
        gain = _abrasive_gain(hardness, grit) / _abrasive_gain(reference, grit)
        ratio, log_sd = ratio * gain, np.hypot(log_sd, 0.5 * np.abs(np.log(gain)))
    return RelativeLife(np.asarray(ratio), np.asarray(log_sd))
