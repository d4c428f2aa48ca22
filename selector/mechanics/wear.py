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
# Life ∝ carbon^n at equal hardness, n with its standard deviation (estimated). A grit finds the
# carbides of a tool steel; a struck edge also chips, so what it gains ends at 0.9 % C.
_CARBON_EXPONENT, _CARBON_SD = 0.5, 0.2
_CARBON_FROM_WT_PCT, _CARBON_TO_WT_PCT, _STRUCK_TO_WT_PCT = 0.2, 2.0, 0.9
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


def carbon_life(
    carbon_wt_pct: ArrayLike, reference_wt_pct: ArrayLike, *, struck: bool = False
) -> RelativeLife:
    """Return the life of an edge or of an abraded face over another's of equal hardness.

    At equal hardness the steel richer in carbon wears less: more carbide left in the
    martensite, or more carbon in it. Carbides of chromium, molybdenum and vanadium are harder
    still and are not counted apart.

    Parameters
    ----------
    carbon_wt_pct : array_like
        Carbon where it wears; of a carburised part that of the case. [wt %]
    reference_wt_pct : array_like
        Carbon of the steel compared with. [wt %]
    struck : bool, optional
        Whether the edge is struck: carbide beyond 0.9 % carbon then no longer helps. [-]

    Returns
    -------
    RelativeLife
        Ratio of lives and sd of its logarithm. [-]

    Notes
    -----
    ``(C / C_ref)^0.5``, 0.2 to 2 % C; the exponent is an estimate, its sd 0.2. That abrasion
    resistance rises with carbon at equal hardness is published for hardened and tempered carbon
    steels [1]_; 0.45 to 1.0 % C comes to a gain of half.

    References
    ----------
    .. [1] J. Larsen-Badse, The abrasion resistance of some hardened and tempered carbon steels,
       Trans. AIME 236, 1966, 1461-1466 (from memory); the exponent is estimated.

    Examples
    --------
    >>> float(carbon_life(1.0, 0.25).ratio)
    2.0
    """
    top = _STRUCK_TO_WT_PCT if struck else _CARBON_TO_WT_PCT
    found, other = (
        np.log(np.clip(np.asarray(c, dtype=float), _CARBON_FROM_WT_PCT, top))
        for c in (carbon_wt_pct, reference_wt_pct)
    )
    return RelativeLife(
        np.asarray(np.exp(_CARBON_EXPONENT * (found - other))),
        np.asarray(_CARBON_SD * np.abs(found - other)),
    )
