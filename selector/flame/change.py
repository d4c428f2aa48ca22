"""The one change that makes a flame hardening succeed."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from selector.flame.arrangement import arranged
from selector.flame.case import bath_of
from selector.flame.outcome import CheckName, Outcome, Setup
from selector.heat.boiling import bath_temperature_c
from selector.heat.torch import torch
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.process import reading_error
from selector.job.screening import RULES
from selector.job.treatment import Temper, Treatment
from selector.torch.part import flame_of
from selector.torch.reading import within

# A heating torch that a workshop can borrow. [l/min]
BORROWED_L_PER_MIN = 11.0
FURNACE_S = 3600.0
# Turned by more than this counts as all of it. [-]
WHOLLY = 0.99
# A watery bath that is warmer than usual by more than this is worth cooling. [K]
WARMER_K = 15.0
# Baths that a workshop can set up, mildest first.
BATHS = ("oil", "fast-oil", "polymer", "water", "brine")


@dataclass(frozen=True, slots=True)
class Change:
    """One change after which every demand is met: what to do, what comes out, if at hand.

    `work` is the treatment as changed, None where it is the same.
    """

    text: str
    outcome: Outcome
    at_hand: bool
    work: Treatment | None = None


@dataclass(frozen=True, slots=True)
class _Try:
    """A change to try: what it is good against, and what it makes of the case."""

    text: str
    at_hand: bool
    against: frozenset[CheckName]
    work: Treatment
    setup: Setup
    cures: frozenset[CheckName] = frozenset()


def first_change(work: Treatment, job: Job, lead: Demand, out: Outcome) -> Change | None:
    """Return the first single change after which every demand is met.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    job : Job
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
    # What turned all through, no flame makes harder: only another bath does.
    by_heat = failed - {"hard", "depth"} if _turned(out) else failed
    for trial in _trials(work, job, replace(out.setup, temper=None)):
        amiss = by_heat if trial.setup.flame is not None else failed
        if not trial.against & amiss or (trial.cures and failed - trial.cures):
            continue
        same = trial.work is work and trial.cures
        found = out if same else arranged(trial.work, job, lead, trial.setup)
        if not {check.name for check in found.failed} - trial.cures:
            text = trial.text + _besides(out, found)
            return Change(f"{text}: {found.sentence}", found, trial.at_hand, trial.work)
    return None


def _turned(out: Outcome) -> bool:
    """Return whether the zone turned to austenite all through."""
    if out.hardness is None:
        return False
    zone = within(out.hardness.along_mm, out.part.zone_mm)
    return float(np.nanmin(out.hardness.austenite_fraction[:, zone])) > WHOLLY


def _besides(out: Outcome, found: Outcome) -> str:
    """Return in words what else is done another way along with a change."""
    if not out.heated.reached:
        return ""  # nothing was done yet that could be done another way
    old, new = out.setup, found.setup
    said = []
    if abs(old.past_mm - new.past_mm) > 0.5:
        said.append(f"heat {new.past_mm:.0f} mm past the zone, not {old.past_mm:.0f}")
    if old.hold_s != new.hold_s:
        said.append(f"hold the heat {new.hold_s:.0f} s, not {old.hold_s:.0f}")
    return f" (then {', and '.join(said)})" if said else ""


def heated_whole(work: Treatment, job: Job, lead: Demand) -> Change | None:
    """Return heating the whole part in the flame and quenching it whole, where that serves.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    job : Job
        Part and workshop.
    lead : Demand
        What the leading zone asks.

    Returns
    -------
    Change or None
        None where the flame does not bring the whole part to a hard end.
    """
    found = arranged(work, job, lead)
    if found.failed:
        return None
    text = "heat the whole part in the flame and quench it whole"
    return Change(f"{text}: {found.sentence}", found, True)


def given_a_bath(work: Treatment, job: Job, lead: Demand) -> Change | None:
    """Return quenching in the steel's own kind of bath, where the workshop has none of it.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source; without a bath, or in air.
    job : Job
        Part and workshop.
    lead : Demand
        What the leading zone asks.

    Returns
    -------
    Change or None
        None where a bath is there, or something else stands in the way.
    """
    hardened, media = work.steel.hardened, job.catalog.media
    in_air = work.medium is None or work.medium.severity_class == "air"
    if hardened is None or not in_air or hardened.quench == "air":
        return None
    for slug in (slug for slug in BATHS if slug in media and slug in work.route.media):
        dipped = replace(work, medium=media[slug])
        own = media[slug].severity_class == hardened.quench
        if not own or any(rule(job.asked, dipped) for rule in RULES):
            continue
        found = arranged(dipped, job, lead)
        if not found.failed:
            text = f"quench in {media[slug].name.lower()}"
            return Change(f"{text}: {found.sentence}", found, False, dipped)
    return None


def _trials(work: Treatment, job: Job, setup: Setup) -> Iterator[_Try]:
    """Yield single changes, what is at hand first."""
    hold: frozenset[CheckName] = frozenset({"held"})
    uneven: frozenset[CheckName] = frozenset({"even", "movement"})
    yield _Try(
        "hold and turn the part in the flame", True, uneven, work, replace(setup, turns=True)
    )
    yield _Try("hold it in tongs, a vice or a lathe", True, hold, work, setup, hold)
    yield from _own_bath(work, job, setup)
    yield from _reading(work, job, setup)
    yield from _flames(work, job, setup)
    yield from _baths(work, job, setup)
    softer: frozenset[CheckName] = frozenset({"not_too_hard", "drawn"})
    for heat in (200.0, 300.0, 400.0, 500.0):
        drawn = replace(setup, temper=Temper("furnace", heat, FURNACE_S))
        yield _Try(f"draw it in a furnace at {heat:.0f} °C", False, softer, work, drawn)


def _flames(work: Treatment, job: Job, setup: Setup) -> Iterator[_Try]:
    """Yield other flames."""
    source, shop = work.source, job.asked.workshop
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


def _own_bath(work: Treatment, job: Job, setup: Setup) -> Iterator[_Try]:
    """Yield what can be done about the bath that is there."""
    if work.medium is None or work.medium.kind == "air":
        return
    name = work.medium.name.lower()
    soft: frozenset[CheckName] = frozenset({"hard", "depth"})
    too_little: frozenset[CheckName] = frozenset({"bath"})
    yield _Try(
        f"quench in more {name}, in a deep vessel", False, too_little, work, setup, too_little
    )
    kept = bath_of(work, job)
    warm_c, usual_c = (
        bath_temperature_c(bath) for bath in (kept, replace(kept, temperature_c=None))
    )
    if work.medium.severity_class == "water" and warm_c > usual_c + WARMER_K:
        cooled = replace(setup, bath=replace(kept, temperature_c=None))
        yield _Try(f"let the bath cool to {usual_c:.0f} °C", True, soft, work, cooled)
    if kept.agitation in {"none", "mild"}:
        moved = replace(setup, bath=replace(kept, agitation="moderate"))
        yield _Try(f"move the part well in the {name}", True, soft, work, moved)


def _reading(work: Treatment, job: Job, setup: Setup) -> Iterator[_Try]:
    """Yield judging the heat out of the light that makes it look duller than it is."""
    misread_c = reading_error(work, job.asked.workshop).shift_c
    hot: frozenset[CheckName] = frozenset(
        {"corner", "not_too_hard", "reach", "hard", "depth", "movement"}
    )
    if misread_c > 0.0:
        shaded = replace(setup, misread_c=0.0)
        yield _Try("judge the heat in the shade", True, hot, work, shaded)


def _baths(work: Treatment, job: Job, setup: Setup) -> Iterator[_Try]:
    """Yield other baths, the steel's own first: harsher against softness, milder for cracks."""
    now = work.medium.slug if work.medium else "air"
    place = (
        BATHS.index(now) if now in BATHS else {"warm-water": 2, "vegetable-oil": 0}.get(now, -1)
    )
    kept = {bath.medium for bath in job.asked.workshop.bath}
    hardened = work.steel.hardened
    known = job.catalog.media
    own = {
        slug
        for slug in BATHS
        if hardened and slug in known and known[slug].severity_class == hardened.quench
    }
    for slug in sorted(BATHS, key=lambda s: s not in own):
        n, medium = BATHS.index(slug), known.get(slug)
        # What the workshop keeps is weighed as a treatment of its own.
        if n == place or slug == now or slug in kept:
            continue
        if medium is None or slug not in work.route.media:
            continue
        against: frozenset[CheckName] = (
            frozenset({"hard", "depth"}) if n > place else frozenset({"cracking", "movement"})
        )
        other = replace(work, medium=medium)
        # Another bath's warmth and motion are its own.
        moved = replace(setup, bath=None)
        yield _Try(f"quench in {medium.name.lower()}", False, against, other, moved)
