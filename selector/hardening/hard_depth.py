"""How deep a zone is hard: to four fifths of the hardness asked for, and where it hardened."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.bounded import bounded
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.metallurgy.martensite import hardness
from selector.metallurgy.transformation import SPHEROIDISED_ABOVE_WT_PCT

Floats = NDArray[np.float64]
# Depth ends at this share of the hardness asked for, in HV (ISO 18203).
DEPTH_SHARE = 0.8
# At most this much of the carbon of a rich steel is dissolved at its hardening heat. [wt %]
DISSOLVED_WT_PCT = 0.75


@dataclass(frozen=True, slots=True)
class Limit:
    """Where a depth ends: hardness asked for, if any, and least hardness as quenched. [HRC].

    Fine pearlite of a steel rich in carbon may be harder than four fifths of what is asked; it
    has not hardened, and does not count.
    """

    asked_hrc: float | None
    least_fresh_hrc: float

    @staticmethod
    @lru_cache(maxsize=1024)
    def of(steel: Steel, asked_hrc: float | None) -> "Limit":
        """Return the limit of a steel for a hardness asked for."""
        carbon = steel.composition_wt_pct.get("C")
        if carbon is None or carbon.middle <= SPHEROIDISED_ABOVE_WT_PCT:
            return Limit(asked_hrc, -np.inf)
        return Limit(asked_hrc, half_martensite_hrc(carbon.middle))

    @staticmethod
    def half_martensite(steel: Steel) -> "Limit":
        """Return the limit of a steel to half martensite, where nothing is asked for."""
        carbon = steel.composition_wt_pct.get("C")
        half = half_martensite_hrc(carbon.middle if carbon else 0.0)
        return Limit(half, half)


def half_martensite_hrc(carbon_wt_pct: float) -> float:
    """Return the hardness of half martensite of what carbon a steel dissolves. [HRC]."""
    return float(hardness(min(carbon_wt_pct, DISSOLVED_WT_PCT), 0.5))


def hard_depth_mm(hrc: Floats, fresh_hrc: Floats, inwards_mm: Floats, limit: Limit) -> Floats:
    """Return how deep a section is hard. [mm]."""
    # Shape (samples,); 0 where the surface is too soft, the last of `inwards_mm` where it is
    # hard through.
    asked = hrc[:, :1] if limit.asked_hrc is None else np.full((1, 1), limit.asked_hrc)
    ends = hrc_from_hv(DEPTH_SHARE * hv_from_hrc(asked, outside="extend"), outside="extend")
    over = np.minimum(hrc - ends, fresh_hrc - limit.least_fresh_hrc)
    at = np.array(inwards_mm, dtype=float)
    at[0] = 0.0
    soft = over < 0.0
    first = np.where(soft.any(axis=1), np.argmax(soft, axis=1), at.size)
    inner, rows = bounded(first, 1, at.size - 1), np.arange(len(over))
    a, b = over[rows, inner - 1], over[rows, inner]
    part = bounded(a / np.where(a > b, a - b, 1.0), 0.0, 1.0)
    depth = at[inner - 1] + part * (at[inner] - at[inner - 1])
    depth = np.where(first == 0, 0.0, depth)
    return np.asarray(np.where(first >= at.size, at[-1], depth))
