"""Wear life of one hardness against another: a ratio, never a life in hours."""

from collections.abc import Mapping
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
# Card cut by an edge per volume percent of carbide, beside the same for hardness and angle.
_CARD = MappingProxyType({"M3C": 5.0, "M7C3": 11.2, "M6C": 9.5, "MC": 26.2})
_CARD_FROM_MM, _CARD_PER_HRC, _CARD_PER_DEG = -157.0, 15.8, -17.8
_PLAIN_HRC, _PLAIN_EDGE_DEG, _PLAIN_M3C_VOL_PCT = 60.0, 30.0, 4.0
_CARBIDE_LOG_SHARE = 0.5  # sd of the gain, as a share of its own logarithm (estimated)
_MILD_GAIN = 10.0  # wear falls by an order of magnitude or more once the abrasive is softer
_SEVERE_RATIO, _MILD_RATIO = 1.2, 0.9


@dataclass(frozen=True, slots=True, eq=False)
class RelativeLife:
    """Life over the life of the reference, median, and sd of its logarithm."""

    ratio: FloatArray
    log_sd: FloatArray

    def sampled(self, normal: FloatArray) -> FloatArray:
        """Return the ratio over a standard normal sample; a gain grows as a loss does."""
        off = self.log_sd * np.sign(np.log(self.ratio)) * np.clip(normal, -2.0, 2.0)
        return np.asarray(self.ratio * np.exp(off))


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
    exponents carry an estimated sd of 0.4 and 0.2. Range: 100 to 900 HV.

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
    still; `carbide_life` counts them.

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
    one, other = (
        np.log(np.clip(np.asarray(c, dtype=float), _CARBON_FROM_WT_PCT, top))
        for c in (carbon_wt_pct, reference_wt_pct)
    )
    return RelativeLife(
        np.asarray(np.exp(_CARBON_EXPONENT * (one - other))),
        np.asarray(_CARBON_SD * np.abs(one - other)),
    )


def card_cut_mm(
    hardness_hrc: ArrayLike, edge_deg: ArrayLike, carbide_vol_pct: Mapping[str, ArrayLike]
) -> FloatArray:
    """Return how much gritted card an edge cuts in the standard test of edge retention.

    Sixty strokes through card with 5 % silica. A regression over knives of many steels.

    Parameters
    ----------
    hardness_hrc : array_like
        Hardness of the edge. [HRC]
    edge_deg : array_like
        Whole angle of the edge. [°]
    carbide_vol_pct : mapping of str to array_like
        Carbide by type: M3C (cementite), M7C3, M6C, MC; parts of the volume. [%]

    Returns
    -------
    ndarray
        Total card cut. [mm]

    Notes
    -----
    ``-157 + 15.8 HRC - 17.8 deg + 5.0 M3C + 11.2 M7C3 + 9.5 M6C + 26.2 MC`` [1]_; the terms of
    other carbides and of nitrides are left out. Range: 55 to 66 HRC, edges of 20 to 50°.

    References
    ----------
    .. [1] L. Thomas, Can CATRA predict rope cutting performance?, knifesteelnerds.com, 2019,
       the equation of his Part 2 of 2018.

    Examples
    --------
    >>> round(float(card_cut_mm(56.0, 30.0, {"M7C3": 3.0})))
    227
    """
    hardness, angle = np.asarray(hardness_hrc, float), np.asarray(edge_deg, float)
    plain = _CARD_FROM_MM + _CARD_PER_HRC * hardness + _CARD_PER_DEG * angle
    return np.asarray(
        plain + sum(_CARD[kind] * np.asarray(v, float) for kind, v in carbide_vol_pct.items())
    )


def carbide_life(carbide_vol_pct: Mapping[str, ArrayLike]) -> RelativeLife:
    """Return the life under grit of a steel with hard carbides over plain steel as hard.

    Plain is a tool steel with 4 % of cementite left in it. Grit or edge only: in plain sliding
    hard carbides may help or harm.

    Parameters
    ----------
    carbide_vol_pct : mapping of str to array_like
        Carbide by type: M3C, M7C3, M6C, MC; parts of the volume. [%]

    Returns
    -------
    RelativeLife
        Ratio of lives and sd of its logarithm. [-]

    Notes
    -----
    The ratio of `card_cut_mm` at 60 HRC and 30 degrees [1]_. Dry sand gives about 2 for D2 over
    O1 of equal hardness, and slow plain sliding the reverse [2]_: the sd is half the logarithm
    of the gain (estimated).

    References
    ----------
    .. [1] As `card_cut_mm`.
    .. [2] L. Bourithis, G. D. Papadimitriou, J. Sideris, Comparison of wear properties of tool
       steels AISI D2 and O1 with the same hardness, Tribology International 39, 2006, 479-489.

    Examples
    --------
    >>> round(float(carbide_life({"M7C3": 15.0}).ratio), 2)
    1.53
    """
    plain = card_cut_mm(_PLAIN_HRC, _PLAIN_EDGE_DEG, {"M3C": _PLAIN_M3C_VOL_PCT})
    hard = card_cut_mm(_PLAIN_HRC, _PLAIN_EDGE_DEG, carbide_vol_pct)
    ratio = np.maximum(hard / plain, 1.0)
    return RelativeLife(np.asarray(ratio), _CARBIDE_LOG_SHARE * np.log(ratio))
