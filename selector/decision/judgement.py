"""One predicted option judged: its gates, and its value on each criterion."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from selector.decision.bath_gate import bath_gates
from selector.decision.breaking_gate import breaking_gates
from selector.decision.duty_gate import contact_factor, duty_gates
from selector.decision.hardness_gate import (
    ceiling_hrc,
    depth_mm,
    floor_hrc,
    hardness_gates,
    off_window_hrc,
)
from selector.decision.heating_gate import heating_gates, spared
from selector.decision.slack_gate import slack_gate, took
from selector.decision.softening_gate import hot_gates, keeps_hard
from selector.decision.standard import Standard, standard_of
from selector.duty.custom import custom
from selector.duty.strength import least_and_weakest, strength_words
from selector.duty.wear import edge_loss_hrc, life
from selector.figure import median
from selector.gate import BUDGETED, Gate, Verdict, judged, worst
from selector.job.job import Job
from selector.job.supply import at_hand
from selector.option.caution import HYDROGEN_FROM_HRC
from selector.option.movement import movement_words
from selector.option.plating import FATIGUE_KEPT
from selector.option.prediction import Prediction
from selector.requirement.priority import CRITERIA, Criterion
from selector.wording import beside, shown

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
# Tempering one zone further by torch without spoiling the next succeeds three times in four.
# Estimate; as a bound on a standard normal.
RETEMPER_NORMAL = 0.674
# What steels of each resistance do where it is severe.
_SEVERE: Mapping[str, tuple[Verdict, str]] = {
    "none": ("fail", "severe corrosion: it rusts"),
    "mild": ("fail", "severe corrosion: it stands damp, no more"),
    "good": ("marginal", "it stands weather and fresh water; brine and chlorides pit it"),
    "chloride": ("pass", "it stands brine and chlorides"),
}


@dataclass(frozen=True, eq=False)
class Judged:
    """An option with its gates and its criteria; shape of values (samples, criteria)."""

    prediction: Prediction
    gates: tuple[Gate, ...]
    values: Floats
    right: Bools
    affordable: Bools | None
    failing: Floats

    @property
    def verdict(self) -> str:
        """The verdict of the deciding gate."""
        return worst(self.gates)

    @property
    def passing(self) -> Bools:
        """Which part of the sample comes out right and inside the budget, if one is given."""
        return self.right if self.affordable is None else self.right & self.affordable

    @cached_property
    def passing_all(self) -> float:
        """The share of the sample that comes out right, whatever it costs."""
        return float(np.mean(self.right))

    @property
    def within_budget(self) -> float | None:
        """The share of the sample inside the budget; None where no budget is given."""
        return None if self.affordable is None else float(np.mean(self.affordable))

    @property
    def failing_all(self) -> float:
        """The chance that it yields, tires or snaps in service; NaN where that is unknown."""
        return float(np.mean(self.failing))

    def value(self, criterion: Criterion) -> float:
        """Return the median value of one criterion, in its own unit."""
        if criterion not in self._medians:
            column = self.values[:, CRITERIA.index(criterion)]
            self._medians[criterion] = median(column)
        return self._medians[criterion]

    @cached_property
    def _medians(self) -> dict[Criterion, float]:
        """The medians that have been asked for."""
        return {}


def judge(prediction: Prediction, sensitivity_hrc: float, job: Job) -> Judged:
    """Return an option with its gates and criteria."""
    standard, move, bill = standard_of(job), prediction.movement, prediction.bill
    limit = standard.asked.limit
    hrc = prediction.surface_hrc
    bears = standard.bears
    if prediction.treatment.route.process == "chrome":
        bears = replace(bears, fatigue_kept=FATIGUE_KEPT)
    factor, weakest = least_and_weakest(prediction.section_hrc, bears, standard.normals["load"])
    in_hand = np.minimum(factor, contact_factor(hrc, standard))
    slack = slack_gate(prediction, standard.asked)
    gates = (
        *heating_gates(prediction.treatment, prediction.temper, job),
        *bath_gates(prediction.treatment, standard.asked),
        *hardness_gates(prediction, standard.lead),
        *([] if slack is None else [slack]),
        *_other_zones(prediction, standard),
        *breaking_gates(prediction, standard.asked.load),
        *_bearing_gates(prediction, standard, (factor, weakest)),
        *duty_gates(prediction, hrc, standard),
        *_limit_gates(prediction, standard),
        *hot_gates(prediction, job),
    )
    values: dict[Criterion, Floats | float] = {
        "hardness": _wearing(prediction, hrc, standard),
        "strength": in_hand,
        "snap_margin": np.nan_to_num(prediction.snap_margin_hrc, nan=0.0),
        "movement": move.moved_mm / move.permitted_mm,
        "cost": bill.cost,
        "operator_sensitivity": sensitivity_hrc,
        "days": bill.days,
        "custom": custom(prediction.treatment, standard.lead, standard.asked),
        "at_hand": at_hand(prediction.treatment),
    }
    return Judged(
        prediction,
        gates,
        _columns(values, len(hrc)),
        _lasting(_together(hrc, prediction, standard, in_hand), prediction, job),
        None if limit.budget is None else np.asarray(bill.cost <= limit.budget),
        failing=1 - (in_hand >= 1.0) * (1 - prediction.snapped),
    )


def _columns(values: Mapping[Criterion, Floats | float], count: int) -> Floats:
    """Return the values of the criteria side by side; shape (samples, criteria)."""
    side_by_side = np.empty((count, len(CRITERIA)))
    for place, name in enumerate(CRITERIA):
        side_by_side[:, place] = values[name]
    return side_by_side


def _named(number: int | None, standard: Standard) -> str:
    """Return the section that yields or tires first, by number, name and size."""
    if number is None or len(standard.asked.part.section) == 1:
        return "the weakest place"
    section = standard.asked.part.section[number]
    name = section.name or f"{section.shape} {section.size:g} mm"
    return f"the weakest place, section {number + 1} ({name}),"


def _bearing_gates(
    prediction: Prediction, standard: Standard, bears: tuple[Floats, int | None]
) -> list[Gate]:
    """Judge strength, by the factor and the section that has the least, and movement."""
    gates, (factor, weakest) = [], bears
    if standard.bears.is_known:
        text = f"{_named(weakest, standard)} {strength_words(median(factor))}"
        gates.append(judged("strength", factor >= 1.0, text))
    move = prediction.movement
    if move.stated:
        gates.append(
            judged("movement", move.moved_mm <= move.permitted_mm, movement_words(move))
        )
    return gates


def _cuts(standard: Standard) -> bool:
    """Return whether the leading zone is an edge."""
    return standard.asked.zone[standard.lead.zone].wear in {"abrasive", "edge-impact"}


def _severe(stands: str, *, cuts: bool) -> tuple[Verdict, str]:
    """Return what severe corrosion does to a steel; an edge is rinsed and dried after use."""
    if cuts and stands == "mild":
        return "marginal", "severe corrosion: it pits unless it is rinsed and dried after use"
    return _SEVERE[stands]


def _limit_gates(prediction: Prediction, standard: Standard) -> list[Gate]:
    """Judge corrosion, budget and days."""
    gates, steel, limit = [], prediction.treatment.steel, standard.asked.limit
    if limit.corrosion == "severe":
        gates.append(Gate("corrosion", *_severe(steel.corrosion, cuts=_cuts(standard))))
    elif limit.corrosion == "mild" and steel.corrosion == "none":
        hard = median(prediction.surface_hrc) > HYDROGEN_FROM_HRC
        kept = " or waxed" if hard else ", or have it blacked or plated"
        text = f"{steel.name} rusts: keep it oiled{kept}"
        gates.append(Gate("corrosion", "marginal", text))
    if limit.budget is not None:
        cost, currency = prediction.bill.cost, prediction.bill.currency
        about = beside(median(cost), limit.budget, 0)
        text = f"costs about {about} of the {limit.budget:.0f} {currency} you allow"
        if limit.currency is not None and limit.currency != currency:
            # Nobody knows the rate of the day: the price list decides what the figures mean.
            text = (
                f"costs about {about} {currency}; you allow {limit.budget:.0f} "
                f"{limit.currency}, compared as it stands"
            )
        gates.append(judged("budget", cost <= limit.budget, text, BUDGETED))
    if limit.days is not None:
        gates.append(days_gate(prediction.bill.days, limit.days))
    return gates


def days_gate(days: float, allowed: float) -> Gate:
    """Judge how long a part takes; both in days."""
    text = f"takes {days:g} days; {allowed:g} allowed"
    return Gate("days", "fail" if days > allowed else "pass", text)


def _wearing(prediction: Prediction, hrc: Floats, standard: Standard) -> Floats:
    """Return the life over the life wanted where one is, else how far off the window. [HRC]."""
    asked, lead, normals = standard.asked, standard.lead, standard.normals
    wanted, work = asked.zone[lead.zone].life_ratio, prediction.treatment
    if wanted is not None:
        return life(work, hrc, lead, asked, normals) / wanted
    off = off_window_hrc(work, hrc, lead)
    return np.asarray(off + edge_loss_hrc(work, lead, asked, normals))


def _other_zones(prediction: Prediction, standard: Standard) -> list[Gate]:
    """Judge the zones beside the leading one against their own floor and ceiling."""
    gates = []
    for demand in standard.others:
        hrc = prediction.section_hrc[:, list(demand.sections)].min(axis=1)
        name, middle = f"zone {demand.zone + 1}", shown(median(hrc))
        floor = floor_hrc(prediction.treatment, demand)
        if floor is not None:
            text = f"{name} needs {shown(floor)}; predicted {middle}"
            gates.append(judged("hard_enough", hrc >= floor, text))
        if demand.ceiling_hrc is not None:
            hardest = prediction.section_hrc[:, list(demand.sections)].max(axis=1)
            middle = shown(median(hardest))
            text = f"{name} must not pass {shown(demand.ceiling_hrc)}; predicted {middle}"
            gate = judged("not_too_hard", hardest <= demand.ceiling_hrc, text)
            if gate.verdict == "fail" and standard.has_flame:
                text = f"{text}: temper it further by torch"
                gate = Gate("not_too_hard", "marginal", text, gate.share)
            gates.append(gate)
    return gates


def _together(
    hrc: Floats, prediction: Prediction, standard: Standard, in_hand: Floats
) -> Bools:
    """Return which part of the sample meets every sampled demand at once, the budget apart."""
    demand, move = standard.lead, prediction.movement
    good = ~prediction.crack.cracked & (in_hand >= 1.0)
    good &= np.nan_to_num(prediction.snap_margin_hrc, nan=1.0) > 0
    floor = floor_hrc(prediction.treatment, demand)
    if floor is not None:
        deep = depth_mm(prediction.treatment, demand)
        good &= (hrc >= floor) & (prediction.depth_mm >= deep)
    ceiling = ceiling_hrc(prediction.treatment, demand)
    if ceiling is not None:
        good &= hrc <= ceiling
    if move.stated:
        good &= move.moved_mm <= move.permitted_mm
    taken = took(prediction, standard.asked)
    if taken is not None:
        good &= taken
    return np.asarray(good & _others_met(prediction, standard))


def _lasting(good: Bools, prediction: Prediction, job: Job) -> Bools:
    """Return which part of what is good no flame has coarsened and no service softens."""
    for fine in (spared(prediction.treatment, job), keeps_hard(prediction, job)):
        good = good if fine is None else good & fine
    return good


def _others_met(prediction: Prediction, standard: Standard) -> Bools:
    """Return where the other zones keep their bounds, one tempered further where it must."""
    met = np.ones(len(prediction.surface_hrc), dtype=bool)
    mended = (standard.normals["rework"] < RETEMPER_NORMAL) & standard.has_flame
    for demand in standard.others:
        hrc = prediction.section_hrc[:, list(demand.sections)]
        floor = floor_hrc(prediction.treatment, demand)
        if floor is not None:
            met &= hrc.min(axis=1) >= floor
        if demand.ceiling_hrc is not None:
            met &= (hrc.max(axis=1) <= demand.ceiling_hrc) | mended
    return met
