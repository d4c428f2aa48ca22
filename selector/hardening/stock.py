"""The bar before a local heat, and what is left of it where it did not turn to austenite."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Condition, Steel
from selector.hardening.composition import middle
from selector.hardening.heating_course import REFERENCE_C
from selector.hardness_scale import hrc_from_hb, hrc_from_hv, hv_from_hrc
from selector.metallurgy.hardening_heat import structure_of
from selector.metallurgy.temper_curve import parameter_k
from selector.metallurgy.tempering import Structure as Tempered
from selector.metallurgy.tempering import prior_temper, tempered_hardness
from selector.metallurgy.transformation import Structure
from selector.sampling import Normals

Floats = NDArray[np.float64]

# Hardness in HV of a cold-drawn bar once soft, where the catalogue has no soft condition of the
# steel (estimated from carbon bar sold both ways). [-]
DRAWN_TO_SOFT = 0.85
# Cold drawing is gone by half at this parameter T (16 + log10 t), about 600 °C in an hour, and
# from a tenth to nine tenths over twice this span (from memory of cold-drawn bar). [K]
RECOVERED_K, RECOVERY_SPAN_K = 13970.0, 448.0
# Bar is sold hardened and tempered from 540 °C up (EN 10083-3, from memory), an hour or more.
# Bar of 30 HRC that was all martensite was tempered near 650 °C, but thick bar was not: 4140 of
# 50 to 100 mm comes out of its oil with 34 to 43 HRC at half radius (Bethlehem 3310, from
# memory), and needs little tempering to 30. Which of the two a bar is nobody knows: it softens
# half as much as either, in the logarithm. [°C], [s]
COLDEST_TEMPER_C, TEMPERED_S = 540.0, 3600.0
SOFT = frozenset({"annealed", "hot-rolled", "normalised"})


@dataclass(frozen=True, slots=True)
class Stock:
    """The bar before: hardness as bought, and what it falls to when annealed."""

    steel: Steel
    composition_wt_pct: Mapping[str, float]
    condition: str
    supply_hrc: float
    softest_hrc: float

    @property
    def structure(self) -> Structure:
        """The structure that the heat finds."""
        return structure_of(self.condition, self.composition_wt_pct["C"])


def supply_hrc(condition: Condition, normals: Normals) -> Floats:
    """Return the hardness of the bar as sold, over the samples. [HRC]."""
    # Shape (samples,); carried on below 20 HRC.
    spread = normals["supply_hardness"]
    if condition.hardness_hrc is not None:
        span = condition.hardness_hrc
        return np.asarray(span.middle + 0.25 * (span.high - span.low) * spread)
    if condition.hardness_hb is not None:
        span = condition.hardness_hb
        # A maximum alone: bar usually comes a good tenth softer than its limit.
        low = span.min if span.min is not None else 0.8 * span.high
        high = span.max if span.max is not None else 1.2 * low
        brinell = 0.5 * (low + high) + 0.25 * (high - low) * spread
        return np.asarray(hrc_from_hb(np.maximum(brinell, 80.0), outside="extend"))
    return np.full(spread.shape, np.nan)


def stock_of(steel: Steel, condition: Condition) -> Stock:
    """Return the bar as it is bought, and how soft the steel gets."""
    supply = bought_hrc(condition)
    soft = [bought_hrc(c) for c in steel.condition if c.name in SOFT]
    known = [hrc for hrc in soft if np.isfinite(hrc)]
    softest = min([*known, supply]) if known or condition.name != "cold-drawn" else np.nan
    if not np.isfinite(softest):
        hv = DRAWN_TO_SOFT * hv_from_hrc(supply, outside="extend")
        softest = float(hrc_from_hv(hv, outside="extend"))
    composition = {e: float(v[0, 0]) for e, v in middle(steel).items()}
    return Stock(steel, composition, condition.name, supply, softest)


def annealed_hrc(steel: Steel, condition: Condition, normals: Normals) -> Floats:
    """Return the hardness of a bar after a full anneal, over the samples. [HRC]."""
    # As the softest state it is sold in; where it is sold in none, as its bar recovers.
    soft = (c for name in ("annealed", "normalised", "hot-rolled") for c in steel.condition
            if c.name == name and (c.hardness_hb or c.hardness_hrc))  # fmt: skip
    known = next(soft, None)
    if known is not None:
        return supply_hrc(known, normals)
    return np.full(normals["supply_hardness"].shape, stock_of(steel, condition).softest_hrc)


def bought_hrc(condition: Condition) -> float:
    """Return the hardness of a condition as sold, at the middle. [HRC]."""
    # NaN where the catalogue has none.
    return float(supply_hrc(condition, {"supply_hardness": np.zeros(1)})[0])


def is_temper_known(stock: Stock) -> bool:
    """Return whether the temper that a bar had before goes with its hardness."""
    if stock.condition != "prehard":
        return True
    supply = float(hv_from_hrc(stock.supply_hrc, outside="extend"))
    hottest, coldest = _earlier_k(stock.composition_wt_pct, supply)
    return bool(hottest <= coldest)


def _earlier_k(
    composition_wt_pct: Mapping[str, float], supply_hv: float
) -> tuple[Floats, Floats]:
    """Return the parameters of the hottest and the coldest temper a bar may have had."""
    hottest = prior_temper(composition_wt_pct, supply_hv)
    return hottest, np.minimum(hottest, parameter_k(COLDEST_TEMPER_C, TEMPERED_S))


def rest_hv(drawn_s: Floats, stock: Stock) -> Floats:
    """Return the hardness of what never turned: as bought, but tempered on the way up. [HV]."""
    supply = float(hv_from_hrc(stock.supply_hrc, outside="extend"))
    spent = np.maximum(drawn_s, 1e-6)
    if stock.condition == "prehard":
        composition = stock.composition_wt_pct
        left = np.ones_like(spent)
        for earlier_k in _earlier_k(composition, supply):
            before = Tempered(prior_temper=earlier_k)
            found = tempered_hardness(composition, REFERENCE_C, spent, structure=before)
            fresh = tempered_hardness(composition, REFERENCE_C, 1e-6, structure=before)
            left = left * np.sqrt(found.hv / fresh.hv)
        return np.asarray(supply * left)
    if stock.condition == "cold-drawn":
        soft = float(hv_from_hrc(stock.softest_hrc, outside="extend"))
        beyond = (RECOVERED_K - parameter_k(REFERENCE_C, spent)) / RECOVERY_SPAN_K
        gone = 1.0 / (1.0 + np.exp(np.clip(2.2 * beyond, -50.0, 50.0)))
        return np.asarray(supply + gone * (soft - supply))
    return np.full_like(spent, supply)
