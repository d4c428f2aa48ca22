"""What must not go wrong in a flame hardening, one error at a time, and the better reading."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import numpy as np

from selector.flame.arrangement import arranged, cut_short
from selector.flame.case import follow
from selector.flame.change import Change
from selector.flame.check import BAD_CASE, edge_notes, left_out
from selector.flame.outcome import Outcome
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.process import ReadingError, reading_error
from selector.job.treatment import Treatment
from selector.option.movement import permitted_movement
from selector.torch.heating import LEVEL_LOG_SD


def limits(out: Outcome, job: Job) -> tuple[str, ...]:
    """Return the conditions that lie in the part: notches at a hard edge, other hard zones.

    Parameters
    ----------
    out : Outcome
        What comes out.
    job : Job
        Part and demands.

    Returns
    -------
    tuple of str
        Conditions.
    """
    return (*edge_notes(out, job), *left_out(out, job))


def steadied(
    work: Treatment, job: Job, lead: Demand, out: Outcome, odds: tuple[str, ...]
) -> Change | None:
    """Return a better reading of the heat as the one change, where it leaves no condition.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    job : Job
        Part and workshop.
    lead : Demand
        What the leading zone asks.
    out : Outcome
        What comes out.
    odds : tuple of str
        What must not go wrong.

    Returns
    -------
    Change or None
        Dim light where the light is to blame, else a crayon.
    """
    if not odds or limits(out, job):
        return None
    shop, setup = job.asked.workshop, replace(out.setup, misread_c=0.0, temper=None)
    now, ways = reading_error(work, shop), []
    crayon = shop.model_copy(update={"measure": ("crayon",)})
    if reading_error(work, crayon) < now:
        ways.append(("read the heat by a temperature crayon", crayon, False))
    if now.shift_c > 0.0:
        dim = shop.model_copy(update={"light": "dim"})
        ways.insert(0, ("judge the heat in dim light", dim, True))
    for text, better, at_hand in ways:
        found = arranged(work, job, lead, setup)
        error = reading_error(work, better)
        if not found.failed and not any(odds_of(work, job, lead, found, error)):
            return Change(f"{text}: {found.sentence}", found, at_hand)
    return None


def odds_of(
    work: Treatment,
    job: Job,
    lead: Demand,
    out: Outcome,
    misread: ReadingError,
) -> Iterator[str]:
    """Yield in words what must not go wrong: each error alone, at nine in ten.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    job : Job
        Part and workshop.
    lead : Demand
        What the leading zone asks.
    out : Outcome
        What comes out.
    misread : ReadingError
        How far the heat is misread.

    Yields
    ------
    str
        A condition, and what fails without it that did not before.
    """
    known = {check.name for check in out.failed}  # such as that nothing holds it
    for stray, words in _errors(out, misread):
        found = follow(work, job, replace(out.setup, temper=out.temper, **stray), lead)
        if stray.get("misread_c", 0.0) > 0 and not found.heated.reached:
            continue  # what the flame cannot reach cannot be overshot
        amiss = [check.text for check in found.failed if check.name not in known]
        if amiss:
            yield f"{words} ({amiss[0]})"
    limit, bad_mm = permitted_movement(job.asked).mm, out.bow_mm[1]
    if out.bow_mm[0] <= limit < bad_mm:
        bad = f"{bad_mm:.2f} mm in a bad case, {limit:.2f} permitted"
        yield f"it bows no more than usual ({bad})"


def _errors(out: Outcome, misread: ReadingError) -> Iterator[tuple[dict[str, Any], str]]:
    """Yield each error of one heat in ten, and the condition that it does not happen."""
    off = BAD_CASE * float(np.hypot(misread.bias_c, misread.scatter_c))
    shift = misread.shift_c
    strong = float(np.exp(BAD_CASE * LEVEL_LOG_SD))
    # Where the light shifts every reading one way, no draw of nine in ten errs the other way.
    if off > shift:
        early = f"the heat is not stopped {off - shift:.0f} °C too early"
        yield {"misread_c": shift - off}, early
    if off + shift > 0:
        over = f"the heat is not overshot by {off + shift:.0f} °C"
        yield {"misread_c": shift + off}, over
    brief_s = cut_short(out.setup).hold_s
    yield {"hold_s": brief_s}, f"the hold is not cut to {brief_s:.0f} s"
    clings = "the part is moved well in the bath, so that no vapour clings"
    yield {"collapse": BAD_CASE}, clings
    # A flame that is drawn back anyhow is drawn back to the same, whether strong or weak.
    if out.heated.level * strong > 1.0:
        yield {"strength": 1.0 / strong}, "the flame is no weaker than usual"
    if out.heated.level == 1.0:
        yield {"strength": strong}, "the flame is drawn back in good time"
