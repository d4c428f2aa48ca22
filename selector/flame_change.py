"""How to go about a flame hardening, and the one change that makes it succeed."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from selector.duty import Demand
from selector.flame_case import follow, heated_for, target_c
from selector.flame_check import edge_notes
from selector.flame_outcome import CheckName, Outcome, Setup
from selector.heat.operator import seen_cell
from selector.heat.torch import torch
from selector.process import reading_error_c
from selector.surroundings import Surroundings
from selector.torch_job import flame_of
from selector.treatment import Temper, Treatment

# How far past the zone the flame may go, in thicknesses, and how long the heat may be held. [s]
PASTS = (0.25, 0.5, 1.0, 1.5)
HOLDS_S = (10.0, 20.0, 40.0, 80.0, 150.0)
# The edge of the zone is brought this near to the heat: room enough for a heat stopped early.
EDGE_C = 20.0
# A longer hold that brings less than this is not gone on with. [HRC], [mm]
WORTH = (0.5, 0.3)
# A heating torch that a workshop can borrow. [l/min]
BORROWED_L_PER_MIN = 11.0
FURNACE_S = 3600.0


@dataclass(frozen=True, slots=True)
class Change:
    """One change after which every demand is met: what to do, what comes out, if at hand."""

    text: str
    outcome: Outcome
    at_hand: bool


@dataclass(frozen=True, slots=True)
class _Try:
    """A change to try: what it is good against, and what it makes of the case."""

    text: str
    at_hand: bool
    against: frozenset[CheckName]
    work: Treatment
    setup: Setup
    cures: frozenset[CheckName] = frozenset()


def arranged(
    work: Treatment, around: Surroundings, lead: Demand, setup: Setup | None = None
) -> Outcome:
    """Return the outcome with the least length heated and the least hold that serve.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    around : Surroundings
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
    given = setup or Setup(misread_c=reading_error_c(work, around.asked.workshop)[2])
    given = replace(given, past_mm=_past_mm(work, around, given))
    return _clear_of_notches(work, around, lead, _held(work, around, lead, given))


def _clear_of_notches(
    work: Treatment, around: Surroundings, lead: Demand, out: Outcome
) -> Outcome:
    """Return the outcome heated farther, where that takes the hard edge clear of a notch."""
    if out.failed or not edge_notes(out, around):
        return out
    for share in PASTS:
        past = share * out.part.thickest_mm
        if past > out.setup.past_mm:
            farther = follow(work, around, replace(out.setup, past_mm=past), lead)
            if not farther.failed and not edge_notes(farther, around):
                return farther
    return out


def _held(work: Treatment, around: Surroundings, lead: Demand, given: Setup) -> Outcome:
    """Return the outcome with the least hold that serves."""
    soak_s = 60.0 * work.source.soak_max_min.value if work.source else 180.0
    best = follow(work, around, replace(given, hold_s=HOLDS_S[0]), lead)
    longer = [hold for hold in HOLDS_S[1:] if hold <= soak_s]
    if not _lacks_heat(best) or not longer:
        return best
    # Where the longest hold brings nothing, none between does.
    longest = follow(work, around, replace(given, hold_s=longer[-1]), lead)
    gained = (longest.surface_hrc - best.surface_hrc, longest.depth_mm - best.depth_mm)
    if gained[0] < WORTH[0] and gained[1] < WORTH[1]:
        return best
    for hold in longer[:-1]:
        found = follow(work, around, replace(given, hold_s=hold), lead)
        best = max(best, found, key=_merit)
        if not _lacks_heat(best):
            return best
    return max(best, longest, key=_merit)


def _lacks_heat(out: Outcome) -> bool:
    """Return whether a longer hold might help."""
    return out.heated.reached and bool({c.name for c in out.failed} & {"hard", "depth"})


def _merit(out: Outcome) -> tuple[int, float, float]:
    """Return how good an outcome is: demands met, hardness, depth."""
    return (-len(out.failed), out.surface_hrc, out.depth_mm)


def _past_mm(work: Treatment, around: Surroundings, setup: Setup) -> float:
    """Return how far past the zone the flame must go for the zone's edge to come to heat."""
    past = 0.0
    for share in PASTS:
        job, part, _ = heated_for(work, around, replace(setup, past_mm=past))
        past = share * part.thickest_mm
        job, part, (heated, grid) = heated_for(work, around, replace(setup, past_mm=past))
        edges = [z for z in part.zone_mm if 0.0 < z < part.length_mm] or [job.middle_mm]
        peak = dict(zip(grid.cells().tolist(), heated.temperature_c.max(axis=1), strict=True))
        if min(peak[seen_cell(grid, z)] for z in edges) >= target_c(work) - EDGE_C:
            break
    return past


def first_change(
    work: Treatment, around: Surroundings, lead: Demand, out: Outcome
) -> Change | None:
    """Return the first single change after which every demand is met.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    around : Surroundings
        Part and workshop.
    lead : Demand
        What the leading zone asks.
    out : Outcome
        What comes out without a change.

    Returns
    -------
    Change or None
        Recomputed; None where no single change serves.
    """
    failed = {check.name for check in out.failed}
    for trial in _trials(work, around, replace(out.setup, temper=None)):
        if not trial.against & failed or (trial.cures and failed - trial.cures):
            continue
        same = trial.work is work and trial.cures
        found = out if same else arranged(trial.work, around, lead, trial.setup)
        if not {check.name for check in found.failed} - trial.cures:
            return Change(f"{trial.text}: {found.sentence}", found, trial.at_hand)
    return None


def _trials(work: Treatment, around: Surroundings, setup: Setup) -> Iterator[_Try]:
    """Yield single changes, what is at hand first."""
    hold: frozenset[CheckName] = frozenset({"held"})
    uneven: frozenset[CheckName] = frozenset({"even", "movement"})
    yield _Try(
        "hold and turn the part in the flame", True, uneven, work, replace(setup, turns=True)
    )
    yield _Try("hold it in tongs, a vice or a lathe", True, hold, work, setup, hold)
    yield from _flames(work, around, setup)
    yield from _baths(work, around, setup)
    softer: frozenset[CheckName] = frozenset({"not_too_hard", "drawn"})
    for heat in (200.0, 300.0, 400.0, 500.0):
        drawn = replace(setup, temper=Temper("furnace", heat, FURNACE_S))
        yield _Try(f"draw it in a furnace at {heat:.0f} °C", False, softer, work, drawn)


def _flames(work: Treatment, around: Surroundings, setup: Setup) -> Iterator[_Try]:
    """Yield other flames."""
    source, shop = work.source, around.asked.workshop
    if source is None:
        return
    gentle: frozenset[CheckName] = frozenset({"hard", "depth", "corner", "even"})
    strong: frozenset[CheckName] = frozenset({"reach", "hard"})
    half, twice = (replace(setup, flame=flame_of(source, shop, times)) for times in (0.5, 2.0))
    yield _Try("take a tip for half the gas", True, gentle, work, half)
    yield _Try("take a tip for twice the gas", False, strong, work, twice)
    if source.slug not in {"oxy-propane", "oxy-acetylene"}:
        bigger = replace(setup, flame=torch("oxy-propane", BORROWED_L_PER_MIN))
        yield _Try("take an oxy-propane heating torch", False, strong, work, bigger)


def _baths(work: Treatment, around: Surroundings, setup: Setup) -> Iterator[_Try]:
    """Yield other baths: harsher against softness, milder against cracks and bow."""
    order = ("oil", "fast-oil", "polymer", "water", "brine")
    now = work.medium.slug if work.medium else "air"
    place = (
        order.index(now) if now in order else {"warm-water": 2, "vegetable-oil": 0}.get(now, -1)
    )
    for n, slug in enumerate(order):
        medium = around.catalog.media.get(slug)
        if n == place or slug == now or medium is None or slug not in work.route.media:
            continue
        against: frozenset[CheckName] = (
            frozenset({"hard", "depth"}) if n > place else frozenset({"cracking", "movement"})
        )
        other = replace(work, medium=medium)
        yield _Try(f"quench in {medium.name.lower()}", False, against, other, setup)
