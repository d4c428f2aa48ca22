"""What must not go wrong at the torch: each error of one heat, and what lies in the part."""

import math
from collections.abc import Iterator

from selector.decision.judgement import judge
from selector.decision.option import Option
from selector.gate import Gate
from selector.job.asked_words import asked_words
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.process import reading_error
from selector.option.prediction import predict
from selector.option.preparation import prepare
from selector.option.torched import meant_torched
from selector.requirement.part import Part
from selector.requirement.workshop import Workshop
from selector.torch.part import Stretch
from selector.torch.response import HOLD_LOG_SD, Torched

# What one heat in ten strays by, in standard deviations.
BAD_CASE = 1.28
# Less than this between two zones is rounding. [mm]
APART_MM = 0.01
# Gates that no single heat moves: they stand in the option's own verdict.
STANDING = frozenset({"budget", "days", "corrosion", "pair", "skin", "cracking"})


def conditions(job: Job, option: Option, *, every: bool) -> tuple[str, ...]:
    """Return the conditions under which an option at a torch does, the gravest first."""
    # None where it simply does.
    part = meant_torched(job, option.treatment)
    said = [*_marginal(option)]
    if every:
        said += _errors(job, option)
    said += _left_out(job.asked.part, job.demands, part.part)
    return (*said, *handling(job.asked.workshop, part))


def handling(shop: Workshop, part: Torched) -> Iterator[str]:
    """Yield what the workshop must do about the part itself."""
    if shop.held_by is None and not shop.turns_part:
        yield "it is held in tongs, a vice or a lathe: nothing is said to hold it"
    if part.is_uneven:
        uneven = f"about {10 * round(part.uneven_k / 10):.0f} °C from side to side"
        yield f"it is turned in the flame: {uneven} if it is not"


def _marginal(option: Option) -> Iterator[str]:
    """Yield the gates that an option passes narrowly."""
    for gate in option.judged.gates:
        if gate.verdict == "marginal" and gate.name not in {"pair", "skin"}:
            share = (
                "" if gate.share is None else f" (right {100 * gate.share:.0f} times in 100)"
            )
            yield f"you watch this: {gate.text}{share}"


def _errors(job: Job, option: Option) -> Iterator[str]:
    """Yield each error of one heat in ten that spoils the part, and what fails with it."""
    work = option.treatment
    error = reading_error(work, job.asked.workshop)
    off_c = BAD_CASE * math.hypot(error.bias_c, error.scatter_c)
    meant = _failing(job.middle(), option)
    strays: list[tuple[dict[str, float], str]] = []
    if error.bias_c > 0.0:
        sds, back = off_c / error.bias_c, BAD_CASE * error.scatter_c / error.bias_c
        early, over = off_c - error.shift_c, off_c + error.shift_c
        if early > 0.0:
            strays.append(({"eye_bias": -sds}, f"the heat is not stopped {early:.0f} °C early"))
        if over > 0.0:
            strays.append(({"eye_bias": sds}, f"the heat is not overshot by {over:.0f} °C"))
        hold_s = meant_torched(job, work).hold_s
        cut_s = hold_s * math.exp(-BAD_CASE * HOLD_LOG_SD)
        brief = {"eye_scatter": -BAD_CASE, "eye_bias": back}
        strays.append((brief, f"the hold is not cut to {cut_s:.0f} s"))
    clings = "the part is moved well in the bath, so that no vapour clings"
    strays.append(({"bath_bias": -BAD_CASE}, clings))
    strays.append(({"torch_bias": -BAD_CASE}, "the flame is no weaker than usual"))
    strays.append(({"torch_bias": BAD_CASE}, "the flame is turned down in good time"))
    for stray, words in strays:
        amiss = [
            g for g in _failing(job.strayed(**stray), option) if g.name not in _names(meant)
        ]
        if amiss:
            yield f"{words} ({amiss[0].text})"


def _names(gates: list[Gate]) -> set[str]:
    """Return the names of some gates."""
    return {gate.name for gate in gates}


def _failing(once: Job, option: Option) -> list[Gate]:
    """Return the gates that one heat fails."""
    ready = prepare(option.treatment, once)
    prediction = predict(ready, option.choice.temper)
    judged = judge(prediction, option.choice.sensitivity_hrc, once)
    return [g for g in judged.gates if g.verdict == "fail" and g.name not in STANDING]


def _left_out(whole: Part, demands: tuple[Demand, ...], part: Stretch) -> Iterator[str]:
    """Yield which other places ask for hardness but lie apart from what is heated."""
    low, high = part.zone_mm
    if part.turned_round:
        low, high = whole.length_mm - high, whole.length_mm - low
    ends = [0.0]
    for section in whole.section:
        ends.append(ends[-1] + section.length)
    for demand in demands:
        apart = [
            n
            for n in demand.sections
            if demand.floor_hrc is not None
            and (ends[n + 1] <= low + APART_MM or ends[n] >= high - APART_MM)
        ]
        if apart:
            named = "section " + " and ".join(str(n + 1) for n in apart)
            yield (
                f"{named}, which lies apart and asks {asked_words(demand)} too, gets a heat of "
                "its own; how that softens this zone is not computed"
            )
