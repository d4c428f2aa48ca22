"""How to go about a flame hardening: how far past the zone, and how long held."""

from dataclasses import replace

import numpy as np

from selector.flame.case import follow, heated_for, job_of, target_c
from selector.flame.check import BAD_CASE, edge_notes
from selector.flame.outcome import SAFE, Outcome, Setup
from selector.hardening.stock import stock_of
from selector.heat.operator import seen_cell
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.process import reading_error
from selector.job.treatment import Treatment
from selector.torch.heating import LINGER_LOG_SD
from selector.torch.part import EDGE_C, PASTS

# How long the heat may be held. [s]
HOLDS_S = (10.0, 20.0, 40.0, 80.0, 150.0)
# A longer hold that brings less than this is not gone on with. [HRC], [mm]
WORTH = (0.5, 0.3)
# So many longer holds are tried for one that bears to be cut short.
LONGER = 2


def arranged(work: Treatment, job: Job, lead: Demand, setup: Setup | None = None) -> Outcome:
    """Return the outcome with the least length heated and the least hold that serve.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    job : Job
        Part and workshop.
    lead : Demand
        What the leading zone asks.
    setup : Setup, optional
        What is already decided.

    Returns
    -------
    Outcome
        The best that hold and length can do.
    """
    given = setup or Setup(misread_c=reading_error(work, job.asked.workshop).shift_c)
    # A short hold needs the flame farther past the zone for its edge to come to heat; held
    # longer, less of the part gets hot.
    brief, longer = (
        replace(given, hold_s=hold, past_mm=_past_mm(work, job, replace(given, hold_s=hold)))
        for hold in HOLDS_S[:2]
    )
    found = [_held(work, job, lead, longer), follow(work, job, brief, lead)]
    if stock_of(work).structure == "spheroidised":
        # Carbide takes its time: held as long as the flame allows, more of it is dissolved.
        longest = replace(longer, hold_s=_holds_s(work)[-1])
        found.append(follow(work, job, longest, lead))
    best = max(found, key=_spare if any(not out.failed for out in found) else _merit)
    return _clear_of_notches(work, job, lead, _sure(work, job, lead, best))


def cut_short(setup: Setup) -> Setup:
    """Return a way of doing it whose hold is cut as short as it is in one heat of ten.

    Parameters
    ----------
    setup : Setup
        As meant.

    Returns
    -------
    Setup
        Else the same.
    """
    return replace(setup, hold_s=setup.hold_s * float(np.exp(-BAD_CASE * LINGER_LOG_SD)))


def _sure(work: Treatment, job: Job, lead: Demand, out: Outcome) -> Outcome:
    """Return the outcome held longer, where that bears the hold to be cut short."""
    longer = [hold for hold in _holds_s(work) if hold > out.setup.hold_s]
    for hold in (out.setup.hold_s, *longer[:LONGER]):
        meant = replace(out.setup, hold_s=hold)
        found = out if hold == out.setup.hold_s else follow(work, job, meant, lead)
        if found.failed:
            break
        if not follow(work, job, replace(cut_short(meant), temper=found.temper), lead).failed:
            return found
    return out


def _clear_of_notches(work: Treatment, job: Job, lead: Demand, out: Outcome) -> Outcome:
    """Return the outcome heated farther, where that takes the hard edge clear of a notch."""
    if out.failed or not edge_notes(out, job):
        return out
    for share in PASTS:
        past = share * out.part.thickest_mm
        if past > out.setup.past_mm:
            farther = follow(work, job, replace(out.setup, past_mm=past), lead)
            if not farther.failed and not edge_notes(farther, job):
                return farther
    return out


def _held(work: Treatment, job: Job, lead: Demand, given: Setup) -> Outcome:
    """Return the outcome with the least hold that serves, from the one given up."""
    best = follow(work, job, given, lead)
    longer = [hold for hold in _holds_s(work) if hold > given.hold_s]
    if not _lacks_heat(best) or not longer:
        return best
    # Where the longest hold brings nothing, none between does.
    longest = follow(work, job, replace(given, hold_s=longer[-1]), lead)
    gained = (longest.surface_hrc - best.surface_hrc, longest.depth_mm - best.depth_mm)
    if gained[0] < WORTH[0] and gained[1] < WORTH[1]:
        return best
    for hold in longer[:-1]:
        found = follow(work, job, replace(given, hold_s=hold), lead)
        best = max(best, found, key=_merit)
        if not _lacks_heat(best):
            return best
    return max(best, longest, key=_merit)


def _holds_s(work: Treatment) -> list[float]:
    """Return the holds that the source allows, shortest first. [s]."""
    soak_s = 60.0 * work.source.soak_max_min.value if work.source else 180.0
    return [hold for hold in HOLDS_S if hold <= soak_s]


def _lacks_heat(out: Outcome) -> bool:
    """Return whether a longer hold might help; what is hard through gains no depth."""
    lacking = {"hard"} if out.through else {"hard", "depth"}
    return out.heated.reached and bool({check.name for check in out.failed} & lacking)


def _merit(out: Outcome) -> tuple[int, float, float]:
    """Return how good an outcome is: demands met, hardness, depth."""
    return (-len(out.failed), out.surface_hrc, out.depth_mm)


def _spare(out: Outcome) -> tuple[int, float]:
    """Return how safely an outcome meets its demands: those it meets, the narrowest."""
    # How easily it cracks, neither hold nor length changes.
    margins = [check.margin for check in out.checks if check.name != "cracking"]
    return (-len(out.failed), min([SAFE, *margins]))


def _past_mm(work: Treatment, job: Job, setup: Setup) -> float:
    """Return how far past the zone the flame must go for the zone's edge to come to heat."""
    # The farther it goes, the thinner it is spread: it goes no farther than the zone comes to
    # heat, and where it never does, as near as may be.
    part = job_of(work, job, setup)[1]
    edges = [z for z in part.zone_mm if 0.0 < z < part.length_mm]
    served = part.pasts[0] * part.thickest_mm
    for share in part.pasts:
        past = share * part.thickest_mm
        torching, _, (heated, grid) = heated_for(work, job, replace(setup, past_mm=past))
        if not heated.reached:
            break
        served = past
        peak = dict(zip(grid.cells().tolist(), heated.temperature_c.max(axis=1), strict=True))
        coldest = min(peak[seen_cell(grid, z)] for z in edges or [torching.middle_mm])
        if coldest >= target_c(work) - EDGE_C:
            break
    return served
