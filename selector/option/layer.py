"""How long layers are grown: carburised case and nitrided layer, by the hour.

The depth asked for sets the hours, as far as the route goes; hours and heat set the depth.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from catalog.route import Route
from catalog.steel import Steel
from selector.hardening.bath_response import POSITIONS
from selector.hardening.composition import middle
from selector.hardness_scale import hrc_from_hv
from selector.job.job import Job, per_part
from selector.job.treatment import Treatment
from selector.metallurgy.carburising import (
    MEDIA,
    Carburiser,
    carbon_at_depth,
    carbon_potential,
    depth_of_carbon,
    time_to_depth_h,
)
from selector.metallurgy.case_curve import CASE_LIMIT_HV, CaseCurve, case_curve
from selector.metallurgy.nitriding import (
    COMPOUND_LOG_SD,
    DEPTH_LOG_SD,
    compound_layer,
    nitrided_depth,
)
from selector.option.preparation import cooled_points
from selector.wording import hours_words

Floats = NDArray[np.float64]
Nitriding = Literal["gas nitriding", "nitrocarburising"]
# A layer is aimed this many standard deviations deeper than asked, as firms aim at the middle
# of "0.8 + 0.4 mm": 95 in 100 come out deep enough, and of a firm, which draws a test piece
# before it stops, 98. Common practice.
AIM_SD, FIRM_AIM_SD = 1.64, 2.05
# A low temper takes about this much off before a case is measured. [HRC]
LOW_TEMPER_HRC = 1.0
# Above this heat a nitride route grows a compound layer, and is judged by that. [°C]
COMPOUND_FROM_C = 550.0
# A torch heats for three dips of 5 minutes at most. Common practice. [h]
DIPPED_H = 0.25
# Points a case is printed at, to a quarter past its total depth, where carbon is 0.07 % above
# the core's (Harris 1943).
PROFILE_POINTS, _TOTAL_WT_PCT = 9, 0.07
# A furnace is not run up to its last degrees. Common practice. [°C]
SPARE_C = 10.0


@dataclass(frozen=True, slots=True)
class CasePoint:
    """Carbon and hardness of a case at a depth under its own surface, at the middle."""

    depth_mm: float
    carbon_wt_pct: float
    hrc: float


@dataclass(frozen=True, slots=True)
class LayerRun:
    """How a layer is grown: heat [°C], hours [h], and the depth they give [mm], at the middle.

    `asked_mm` is the depth wanted under the finished face, `removed_mm` what is ground off,
    `depth_mm` what is left of the layer; `log_sd` its scatter.
    """

    medium: Carburiser | Nitriding
    temperature_c: float
    hours: float
    asked_mm: float
    removed_mm: float
    depth_mm: float
    log_sd: float
    profile: tuple[CasePoint, ...] = ()

    @property
    def falls_short(self) -> bool:
        """Whether the longest time of the route does not give the depth asked for."""
        return self.depth_mm < self.asked_mm

    @property
    def words(self) -> str:
        """The run in words, for instance "5.5 h at 925 °C"."""
        return f"{hours_words(self.hours)} at {self.temperature_c:.0f} °C"


def layer_run(job: Job, work: Treatment) -> LayerRun | None:
    """Return how long a treatment's layer is grown, None where it brings none."""
    if work.route.process == "case":
        return _case_run(job, work)
    return _nitride_run(job, work) if work.route.process == "nitride" else None


def _medium(route: Route) -> Carburiser:
    """Return what a route carburises in."""
    if route.carburiser is None:
        msg = f"{route.slug} needs a carburiser"
        raise ValueError(msg)
    return route.carburiser


def _aim_sd(work: Treatment) -> float:
    """Return how far beyond what is asked a layer is aimed, in standard deviations."""
    return FIRM_AIM_SD if work.route.place == "subcontract" else AIM_SD


def _heat_c(work: Treatment) -> float:
    """Return the heat a layer is grown at: the middle of the route's, as the furnace allows."""
    span = work.route.temperature_c
    if span is None:
        msg = f"{work.route.slug} needs temperature_c"
        raise ValueError(msg)
    most = work.source.ceiling_c.value - SPARE_C if work.source else span.high
    return min(span.middle, most)


def _hours(route: Route, wanted_h: float) -> float:
    """Return the time wanted, as far as the route goes."""
    span = route.time_h
    if span is None:
        msg = f"{route.slug} needs time_h"
        raise ValueError(msg)
    return float(np.clip(wanted_h, span.low, span.high))


def _held_h(work: Treatment) -> float:
    """Return how long a heat source keeps a part at heat, of a torch over some dips. [h]."""
    source = work.source
    if source is None or source.kind != "flame":
        return np.inf
    return DIPPED_H


def core_wt_pct(steel: Steel) -> float:
    """Return the carbon of a steel at the middle of its limits. [wt %]."""
    return float(middle(steel)["C"].ravel()[0])


@per_part
def case_of(job: Job, work: Treatment) -> CaseCurve | None:
    """Return the hardness of a case by its carbon, in the leading section's quench."""
    points = cooled_points(work, job)
    if points is None:
        return None
    surface = points.distance_mm[:, job.lead_section * len(POSITIONS)]
    contents = {name: float(v.ravel()[0]) for name, v in middle(work.steel).items()}
    return case_curve(contents, float(np.median(surface)))


def _limit_wt_pct(curve: CaseCurve | None) -> float | None:
    """Return the carbon at which a case ends at 550 HV, None where none is so hard. [wt %]."""
    ends_hrc = float(hrc_from_hv(CASE_LIMIT_HV)) + LOW_TEMPER_HRC
    return curve.carbon_for(ends_hrc) if curve is not None else None


@per_part
def _case_run(job: Job, work: Treatment) -> LayerRun:
    """Return how long a case is grown: by the depth asked for and what is ground off."""
    medium, heat_c = _medium(work.route), _heat_c(work)
    core, potential = core_wt_pct(work.steel), float(carbon_potential(heat_c, medium))
    asked, removed = job.leading.depth_mm, job.asked.part.stock_removal or 0.0
    log_sd = MEDIA[medium].log_sd
    curve = case_of(job, work)
    limit = _limit_wt_pct(curve)
    if limit is None:
        return LayerRun(medium, heat_c, _hours(work.route, 0.0), asked, removed, 0.0, log_sd)
    aim = (asked + removed) * np.exp(_aim_sd(work) * log_sd)
    aim = max(aim, _usual_mm(job, work) + removed)
    wanted_h = float(time_to_depth_h(aim, limit, core, potential, heat_c, medium))
    # No deeper than is published of the route, nor longer than its heat is held.
    deepest = work.route.depth_mm.high if work.route.depth_mm else np.inf
    longest_h = time_to_depth_h(deepest, limit, core, potential, heat_c, medium)
    hours = min(_hours(work.route, wanted_h), float(longest_h), _held_h(work))
    grown = float(depth_of_carbon(limit, core, potential, heat_c, hours, medium))
    total = depth_of_carbon(core + _TOTAL_WT_PCT, core, potential, heat_c, hours, medium)
    depths = np.linspace(0.0, 1.25 * float(total), PROFILE_POINTS)
    carbon = carbon_at_depth(depths, core, potential, heat_c, hours, medium)
    hrc = curve.at(carbon) - LOW_TEMPER_HRC if curve is not None else np.zeros(depths.size)
    profile = tuple(
        CasePoint(*map(float, row)) for row in zip(depths, carbon, hrc, strict=True)
    )
    left = max(grown - removed, 0.0)
    return LayerRun(medium, heat_c, hours, asked, removed, left, log_sd, profile)


def _usual_mm(job: Job, work: Treatment) -> float:
    """Return the least depth of a route's cases, where nobody asks for a depth of his own."""
    # Who packs a box for hours does not stop at a tenth of a millimetre.
    own = job.asked.zone[job.leading.zone].depth is not None
    return 0.0 if own or work.route.depth_mm is None else work.route.depth_mm.low


@per_part
def _nitride_run(job: Job, work: Treatment) -> LayerRun:
    """Return how long a layer is nitrided, by the depth asked for."""
    # What is left on a part to be ground is ground off before: nitriding comes last.
    heat_c = _heat_c(work)
    asked, compound = job.leading.depth_mm, heat_c > COMPOUND_FROM_C
    log_sd = COMPOUND_LOG_SD if compound else DEPTH_LOG_SD
    of_one_hour = _nitrided_mm(work.steel, heat_c, 1.0)
    wanted_h = (asked * np.exp(_aim_sd(work) * log_sd) / of_one_hour) ** 2
    hours = _hours(work.route, float(wanted_h))
    grown = _nitrided_mm(work.steel, heat_c, hours)
    medium: Nitriding = "nitrocarburising" if compound else "gas nitriding"
    return LayerRun(medium, heat_c, hours, asked, 0.0, grown, log_sd)


def _nitrided_mm(steel: Steel, heat_c: float, hours: float) -> float:
    """Return the depth of a nitrided steel, or of its compound layer. [mm]."""
    # Not beyond what is published of the steel: past it the layer grows, but hardly hardens.
    if heat_c > COMPOUND_FROM_C:
        return float(compound_layer(heat_c, hours))
    contents = {name: v.middle for name, v in steel.composition_wt_pct.items()}
    depth = float(nitrided_depth(contents, heat_c, hours))
    return min(depth, steel.nitrided.depth_mm.high) if steel.nitrided else depth
