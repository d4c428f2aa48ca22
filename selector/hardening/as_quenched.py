"""As-quenched hardness at points of a part, and how much of each turned to austenite.

What the heat dissolved decides twice. Up to 0.65 % C the end-quench curve of the dissolved
composition gives the hardness at the equivalent distance. From 0.75 % C, and for tool and
stainless steels with a published hardness, the time from 700 to 500 °C stands against a
critical one, set so that the steel hardens up to its published section limit. Between the two
contents both count.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.hardening.bar_cooling import rim_as_simulated, time_on_bar_s
from selector.hardening.bath_response import TIME_POWER, Points, Start, centre_s, start_of
from selector.hardening.composition import Composition, middle
from selector.hardening.model_range import ranges_left
from selector.hardening.quenched_bar import (
    BAR_LOG_SD,
    BLEND_WT_PCT,
    CRITICAL_LOG_SD,
    FERRITE_HV,
    FURNACE_C_PER_S,
    HIGH_ALLOY_WT_PCT,
    LEVEL_SD_HRC,
    SHORTEST_S,
    SOAK_S,
    mixed_hrc,
    pearlite_hrc,
    steepness,
)
from selector.hardness_scale import hv_from_hrc
from selector.heat.bar_equivalent import LOG_SD_JOMINY
from selector.heat.boiling import Bath
from selector.heat.steel_property import SteelClass
from selector.metallurgy.austenite import Austenite, austenite
from selector.metallurgy.cold_step import after_cold_step
from selector.metallurgy.hardenability import (
    critical_cooling_time,
    heat_curve,
    heat_hardness,
    range_widening,
)
from selector.metallurgy.hardening_heat import Heat
from selector.metallurgy.martensite import as_quenched as quenched_structure
from selector.sampling import Normals

Floats = NDArray[np.float64]

# Baths in which published section limits are meant: moderately stirred, still air.
LIMIT_BATH = {"water": Bath("water"), "oil": Bath("oil"), "air": Bath("air", None, "none")}
# How far a heat lies along the end-quench bar, beside what charts differ: together what bars
# measured as quenched scatter by. As a logarithm. [-]
HEAT_LOG_SD = float(np.sqrt(BAR_LOG_SD**2 - LOG_SD_JOMINY**2))
# Scatter of published section limits between sources, as log sd of the critical time; estimate.
# A limit carried to another class of medium is no better known than the critical time itself.
LIMIT_SPREAD, CARRIED_SPREAD = 0.2, CRITICAL_LOG_SD
# Martensite at the centre of the section limit. A high-alloy steel is published as hard right
# to the centre there: nine tenths (estimate). Of steel for water it is where a soft core
# begins, half: so shells of silver steel and W1 meet the published 2.5 to 3.5 mm at 18 to 25 mm
# in water, and silver steel hardens through in oil to about 8 mm. Steel for oil is published as
# near full hardness there, within 3 to 4 HRC: three quarters. [-]
LIMIT_SHARE, HARD_THROUGH, DEEP_THROUGH = {"water": 0.5}, 0.75, 0.9
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
    curve = heat_curve(composition, points.distance_mm)
    hrc = curve.hrc + curve.sd_hrc * normals["core"][:, None]
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
    # The equivalence has an error of its own, and so have the response of the quench and the
    # product of the heat: all three along the end-quench bar, where its curve is steep or flat.
    own = np.hypot(LOG_SD_JOMINY, points.log_sd) * normals["section_limit"][:, None]
    heat_sd = range_widening(state.dissolved_wt_pct) * HEAT_LOG_SD
    distance = points.distance_mm * np.exp(own + heat_sd * normals["hardenability"][:, None])
    # Each sample is one heat, as a bar of known analysis is.
    hrc = heat_hardness(state.dissolved_wt_pct, distance, state.grain_size_astm)
    error = LEVEL_SD_HRC * normals["as_quenched"][:, None]
    return np.asarray(np.minimum(hrc + error, HARDEST_HRC))


def _by_critical_time(
    steel: Steel, heated: tuple[Austenite, Heat], points: Points, normals: Normals
) -> Floats:
    """Return the hardness by each point's time over the critical time. [HRC]."""
    state, heat = heated
    limits = steel.hardened.section_limit_mm if steel.hardened else {}
    own = LIMIT_SPREAD if heat.medium_class in limits else CARRIED_SPREAD
    spread = np.hypot(own, TIME_POWER * points.log_sd)
    farther = rim_as_simulated(points.distance_mm, points.time_s, points.place)
    spent = time_on_bar_s(farther, points.time_s)
    critical = _critical_s(steel, state, heat.medium_class)
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
    return np.asarray(published.middle + now - _soaked(steel)[1])


def _full_sd_hrc(steel: Steel) -> float:
    """Return the scatter of full hardness: nine in ten lie in the published range. [HRC]."""
    published = steel.hardened.as_quenched_hrc if steel.hardened else None
    reach = (published.high - published.low) / (2.0 * NINE_IN_TEN_SD) if published else 0.0
    return max(AS_QUENCHED_SD_HRC, reach)


def _critical_s(steel: Steel, state: Austenite, medium_class: str) -> Floats:
    """Return the time from 700 to 500 °C at which half the structure hardens. [s]."""
    reach_s = _limit_s(steel, medium_class)
    if reach_s is not None and is_high_alloy(steel):
        return np.full((1, 1), _half_s(steel, reach_s))
    # Too cold a heat dissolves no carbon, and nothing hardens in any time.
    critical = critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm)
    factor = 1.0 if reach_s is None else _half_s(steel, reach_s) / _soaked(steel)[0]
    return np.asarray(np.maximum(critical * factor, SHORTEST_S))


def _half_s(steel: Steel, reach_s: float) -> float:
    """Return the time at which half hardens, from that at the published section limit. [s]."""
    made_for = steel.hardened.quench if steel.hardened else "water"
    deep = is_high_alloy(steel)
    share = DEEP_THROUGH if deep else LIMIT_SHARE.get(made_for, HARD_THROUGH)
    return reach_s * float((share / (1.0 - share)) ** (1.0 / steepness(np.array(reach_s))))


@lru_cache(maxsize=512)
def _limit_s(steel: Steel, medium_class: str) -> float | None:
    """Return the time at the centre of the published section limit, in its own quench. [s]."""
    # The limit of the bath's own class counts, else the mean of those there are.
    limits = steel.hardened.section_limit_mm if steel.hardened else {}
    own = {name: limit for name, limit in limits.items() if name == medium_class} or limits
    begin = start(steel)
    reach = [centre_s(limit.value, LIMIT_BATH[name], begin) for name, limit in own.items()]
    return float(np.exp(np.mean(np.log(reach)))) if reach else None


@lru_cache(maxsize=512)
def _soaked(steel: Steel) -> tuple[float, float]:
    """Return critical time and hardness after the furnace soak that published data presume."""
    low, high = (
        (steel.hardened.temperature_c.low, steel.hardened.temperature_c.high)
        if steel.hardened
        else (850.0, 850.0)
    )
    contents = {element: float(v[0, 0]) for element, v in middle(steel).items()}
    state = austenite(contents, 0.5 * (low + high), SOAK_S, FURNACE_C_PER_S, "spheroidised")
    critical = critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm)
    hrc = quenched_structure(state.dissolved_wt_pct).hrc
    return float(np.ravel(critical)[0]), float(np.ravel(hrc)[0])


def _formed(steel: Steel, heat: Heat) -> Floats:
    """Return the share that turned to austenite, by how far the peak missed the range."""
    low = steel.hardened.temperature_c.low if steel.hardened else 800.0
    missed = low - heat.peak_c
    return np.clip((FORMED_NONE_C - missed) / (FORMED_NONE_C - FORMED_FULL_C), 0.0, 1.0)


def start(steel: Steel) -> Start:
    """Return how a steel enters its quench."""
    kind: SteelClass = "high-alloy" if is_high_alloy(steel) else "low-alloy"
    heat_c = steel.hardened.temperature_c.middle if steel.hardened else 850.0
    return start_of(heat_c, kind)
