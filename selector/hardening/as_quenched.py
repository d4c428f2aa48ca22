"""As-quenched hardness at points of a part, and how much of each turned to austenite.

What the heat dissolved decides twice. Up to 0.65 % C the end-quench curve of the dissolved
composition gives the hardness at the equivalent distance. From 0.75 % C, and for tool and
stainless steels with a published hardness, the time from 700 to 500 °C stands against a
critical one, set so that the steel hardens up to its published section limit. Between the two
contents both count.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from catalog.steel import Steel
from selector.hardening.bar_cooling import rim_as_simulated, time_on_bar_s
from selector.hardening.bath_response import TIME_POWER, Points
from selector.hardening.composition import Composition
from selector.hardening.critical_time import critical_s, soaked
from selector.hardening.kind import is_high_alloy, richness
from selector.hardening.model_range import ranges_left
from selector.hardening.quenched_bar import (
    BAR_LOG_SD,
    FERRITE_HV,
    LEVEL_SD_HRC,
    mixed_hrc,
    pearlite_hrc,
    softer_core,
    steepness,
)
from selector.hardness_scale import hv_from_hrc
from selector.heat.bar_equivalent import LOG_SD_JOMINY
from selector.metallurgy.austenite import Austenite, austenite
from selector.metallurgy.cold_step import after_cold_step
from selector.metallurgy.hardenability import (
    PRODUCT_SD,
    heat_hardness,
    range_widening,
)
from selector.metallurgy.hardening_heat import Heat
from selector.metallurgy.martensite import as_quenched as quenched_structure
from selector.sampling import Normals

Floats = NDArray[np.float64]

# How far heat and bath lie along the end-quench bar, beside what charts differ: together what
# bars measured as quenched scatter by. As a logarithm. [-]
HEAT_AND_BATH_LOG_SD = float(np.sqrt(BAR_LOG_SD**2 - LOG_SD_JOMINY**2))
# What a high-alloy steel falls to where it does not harden: fine pearlite and bainite. [HRC]
UNHARDENED_HRC = 38.0
# Beyond its hardening range a high-alloy steel loses this much for each degree, below and
# above, as less carbide dissolves: M2 of a sheet 4 HRC over 138 °C, below. Above, an estimate.
UNDER_HRC_PER_C, OVER_HRC_PER_C = 0.03, 0.03
# Its austenite forms just above Ac1, which lies 145 °C (A2) to 350 °C (M2) below the range; so
# all of it has turned to 100 °C below, none from 150 °C, the least of them. From memory.
FORMED_FULL_C, FORMED_NONE_C = 100.0, 150.0
# How far under its range a heat is let pass, whatever the steel: estimate. [°C]
RANGE_BEARS_C = 30.0
# Scatter of full hardness, unless the published range of lots and makers says more. [HRC]
AS_QUENCHED_SD_HRC, NINE_IN_TEN_SD = 0.8, 1.645
HARDEST_HRC = 68.0
# Grain of a steel for case hardening, killed fine as usual. [ASTM]
CASED_GRAIN_ASTM = 7.0


@dataclass(frozen=True, eq=False)
class AsQuenched:
    """What a heat and a quench leave at the points; shape (samples, points).

    `turned_hrc` is the hardness of what was austenite, `share` how much of the place was.
    """

    turned_hrc: Floats
    share: Floats
    relation: str
    source: str
    validity: tuple[str, ...]

    def only(self, columns: Sequence[int] | slice) -> "AsQuenched":
        """Return some of the points, in this order."""
        keep = columns if isinstance(columns, slice) else list(columns)
        turned, share = self.turned_hrc[:, keep], self.share[:, keep]
        return AsQuenched(turned, share, self.relation, self.source, self.validity)

    @cached_property
    def turned_hv(self) -> Floats:
        """Hardness of what was austenite. [HV]."""
        return hv_from_hrc(self.turned_hrc, outside="extend")

    def mixed(self, rest_hv: Floats) -> Floats:
        """Return the hardness of what turned together with what did not. [HRC]."""
        return mixed_hrc(self.share, np.maximum(self.turned_hv, rest_hv), rest_hv)

    @cached_property
    def hrc(self) -> Floats:
        """Hardness where what did not turn is soft ferrite."""
        if (self.share == 1.0).all():
            return self.turned_hrc
        return mixed_hrc(self.share, self.turned_hv, np.minimum(FERRITE_HV, self.turned_hv))


def as_quenched(
    steel: Steel,
    composition: Composition,
    heat: Heat,
    points: Points,
    normals: Normals,
) -> AsQuenched:
    """Return the as-quenched hardness at points that cool like end-quench distances. [HRC]."""
    state = austenite(composition, heat.peak_c, heat.hold_s, heat.rate_c_per_s, heat.structure)
    rich = richness(steel)
    hrc = np.zeros(points.distance_mm.shape)
    if rich < 1.0:
        hrc = hrc + (1.0 - rich) * _by_curve(state, points, normals)
    if rich > 0.0:
        hrc = hrc + rich * _by_critical_time(steel, (state, heat), points, normals)
    if not is_high_alloy(steel):
        carbon = state.dissolved_wt_pct["C"]
        hrc = hrc + softer_core(carbon, hrc, points.place, points.uneven)
    share = _formed(steel, heat) if rich > 0.0 and is_high_alloy(steel) else state.fraction
    share = np.broadcast_to(share, hrc.shape)
    if rich > 0.5:
        return AsQuenched(hrc, share, *_of_limit(steel))
    return AsQuenched(
        hrc,
        share,
        "end-quench curve at the equivalent distance, of what the heat dissolved",
        "hardenability.heat_curve",
        ranges_left("hardenability.heat_curve", steel),
    )


def cased_core(
    steel: Steel,
    composition: Composition,
    points: Points,
    normals: Normals,
    sold_hrc: Floats,
) -> AsQuenched:
    """Return the core of a case-hardened part as quenched, no softer than the bar as sold."""
    # All of it turns, of its own carbon.
    hrc = _along_curve((composition, CASED_GRAIN_ASTM), points, normals, normals["core"])
    hrc = hrc + softer_core(composition["C"], hrc, points.place, points.uneven)
    hrc = np.maximum(hrc, sold_hrc[:, None])
    return AsQuenched(
        hrc,
        np.ones(hrc.shape),
        "end-quench curve at the equivalent distance, of the core's own composition",
        "hardenability.heat_curve",
        ranges_left("hardenability.heat_curve", steel),
    )


def _of_limit(steel: Steel) -> tuple[str, str, tuple[str, ...]]:
    """Return relation, source and validity of the hardness by critical time."""
    hardened = steel.hardened
    published = hardened.as_quenched_hrc if hardened else None
    return (
        "hardness of what the heat dissolved, by time from 700 to 500 °C over the critical one",
        published.source if published else "martensite.as_quenched",
        () if hardened and hardened.section_limit_mm else ("no published section limit",),
    )


def _by_curve(state: Austenite, points: Points, normals: Normals) -> Floats:
    """Return the hardness by the end-quench curve of what is dissolved. [HRC]."""
    held = state.dissolved_wt_pct, state.grain_size_astm
    return _along_curve(held, points, normals, normals["as_quenched"])


def _along_curve(
    held: tuple[Composition, ArrayLike], points: Points, normals: Normals, level: Floats
) -> Floats:
    """Return the hardness by the end-quench curve of contents and grain size. [HRC]."""
    # The equivalence has an error of its own, and so have the response of the quench and the
    # product of the heat: all three along the end-quench bar, where its curve is steep or flat.
    composition, grain_size_astm = held
    own = np.hypot(LOG_SD_JOMINY, points.log_sd) * normals["section_limit"][:, None]
    heat_sd = range_widening(composition) * _heat_log_sd(points)
    distance = points.distance_mm * np.exp(own + heat_sd * normals["hardenability"][:, None])
    # Each sample is one heat, as a bar of known analysis is.
    hrc = heat_hardness(composition, distance, grain_size_astm)
    return np.asarray(np.minimum(hrc + LEVEL_SD_HRC * level[:, None], HARDEST_HRC))


def _heat_log_sd(points: Points) -> Floats:
    """Return how far a heat lies along the end-quench bar, as a logarithm, by point. [-]."""
    # What its bath and its delay are off is in the points already: up to 0.16 at a skin. The
    # factor product of the analysis is off by no less than is stated of it.
    sampled = np.var(np.log(points.distance_mm), axis=0)
    return np.asarray(np.sqrt(np.maximum(HEAT_AND_BATH_LOG_SD**2 - sampled, PRODUCT_SD**2)))


def _by_critical_time(
    steel: Steel, heated: tuple[Austenite, Heat], points: Points, normals: Normals
) -> Floats:
    """Return the hardness by each point's time over the critical time. [HRC]."""
    state, heat = heated
    critical, log_sd = critical_s(steel, state, heat.medium_class)
    spread = np.hypot(log_sd, TIME_POWER * points.log_sd)
    farther = rim_as_simulated(points.distance_mm, points.time_s, points.place)
    spent = time_on_bar_s(farther, points.time_s)
    beyond = spent / critical * np.exp(-spread * normals["section_limit"][:, None])
    level = normals["as_quenched"][:, None]
    full = _full_hrc(steel, state, heat) + _full_sd_hrc(steel) * level
    if heat.cold_c is not None:
        full = after_cold_step(full, state.dissolved_wt_pct["C"], heat.cold_c)
    high = is_high_alloy(steel)
    soft = UNHARDENED_HRC if high else pearlite_hrc(spent, critical)
    soft = np.minimum(soft + LEVEL_SD_HRC * level, full - 1.0)
    martensite = 1.0 / (1.0 + beyond ** steepness(critical))
    full_hv, soft_hv = (hv_from_hrc(part, outside="extend") for part in (full, soft))
    hv = martensite * full_hv + (1.0 - martensite) * soft_hv
    return np.asarray(mixed_hrc(np.ones(1), hv, hv))


def _full_hrc(steel: Steel, state: Austenite, heat: Heat) -> Floats:
    """Return the hardness of martensite with what austenite it keeps. [HRC]."""
    hardened = steel.hardened
    published = hardened.as_quenched_hrc if hardened else None
    if is_high_alloy(steel) and hardened and published:
        window = hardened.temperature_c
        under = np.maximum(window.low - heat.peak_c, 0.0)
        over = np.maximum(heat.peak_c - window.high, 0.0)
        return np.asarray(published.middle - UNDER_HRC_PER_C * under - OVER_HRC_PER_C * over)
    now = quenched_structure(state.dissolved_wt_pct).hrc
    if published is None:
        return now
    # Published hardness is that after a furnace soak: another heat dissolves more or less.
    return np.asarray(published.middle + now - soaked(steel)[1])


def _full_sd_hrc(steel: Steel) -> float:
    """Return the scatter of full hardness: nine in ten lie in the published range. [HRC]."""
    published = steel.hardened.as_quenched_hrc if steel.hardened else None
    reach = (published.high - published.low) / (2.0 * NINE_IN_TEN_SD) if published else 0.0
    return max(AS_QUENCHED_SD_HRC, reach)


def _formed(steel: Steel, heat: Heat) -> Floats:
    """Return the share that turned to austenite, by how far the peak missed the range."""
    low = steel.hardened.temperature_c.low if steel.hardened else 800.0
    missed = low - heat.peak_c
    return np.clip((FORMED_NONE_C - missed) / (FORMED_NONE_C - FORMED_FULL_C), 0.0, 1.0)
