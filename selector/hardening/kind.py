"""Which kind of steel one is: which models speak for it, and how it enters a quench."""

from functools import lru_cache

import numpy as np

from catalog.steel import Steel
from selector.hardening.bath_response import Start, start_of
from selector.hardening.quenched_bar import BLEND_WT_PCT, HIGH_ALLOY_WT_PCT
from selector.heat.steel_property import SteelClass


@lru_cache(maxsize=1024)
def by_composition(steel: Steel) -> bool:
    """Return whether the composition models speak for a steel, not its catalogue curve."""
    # They do not above the fitted carbon, nor for tool and stainless steels with a published
    # hardness and tempering curve.
    carbon = steel.composition_wt_pct.get("C")
    lean = carbon is not None and carbon.middle <= 0.5 * sum(BLEND_WT_PCT)
    published = steel.hardened is not None and steel.hardened.as_quenched_hrc is not None
    return lean and not (published and steel.tempered is not None)


@lru_cache(maxsize=1024)
def richness(steel: Steel) -> float:
    """Return how far a steel goes by its critical time, rather than by its end-quench curve."""
    # 0 for lean steel, 1 for rich steel and for tool steel with a published hardness; between
    # 0.65 and 0.75 % C something of both.
    carbon = steel.composition_wt_pct.get("C")
    low, high = BLEND_WT_PCT
    lean = carbon is not None and carbon.middle <= high
    if lean and not by_composition(steel) and _is_published(steel):
        return 1.0
    return float(np.clip(((carbon.middle if carbon else 0.0) - low) / (high - low), 0.0, 1.0))


def _is_published(steel: Steel) -> bool:
    """Return whether a steel has a published hardness and a tempering curve of its own."""
    hardened = steel.hardened
    return bool(hardened and hardened.as_quenched_hrc and steel.tempered)


@lru_cache(maxsize=1024)
def is_high_alloy(steel: Steel) -> bool:
    """Return whether a steel holds more than 5 % of alloying elements."""
    return _alloy_wt_pct(steel) > HIGH_ALLOY_WT_PCT


def _alloy_wt_pct(steel: Steel) -> float:
    """Return the sum of alloying elements. [wt %]."""
    return sum(v.middle for e, v in steel.composition_wt_pct.items() if e not in ("C", "Fe"))


def start(steel: Steel) -> Start:
    """Return how a steel enters its quench."""
    kind: SteelClass = "high-alloy" if is_high_alloy(steel) else "low-alloy"
    heat_c = steel.hardened.temperature_c.middle if steel.hardened else 850.0
    return start_of(heat_c, kind)
