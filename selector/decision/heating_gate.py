"""Whether a heat source brings the zone to its hardening heat, and nothing else too far."""

from dataclasses import replace
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from catalog.heat_source import HeatSource
from catalog.steel import Steel
from selector.figure import median
from selector.gate import Gate, judged, worst
from selector.hardening.as_quenched import RANGE_BEARS_C
from selector.job.job import Job, per_job
from selector.job.screening import heated_thickness
from selector.job.treatment import Temper, Treatment, is_cased_by_torch, is_torched
from selector.option.set_up import AtTorch, alike, at_torch
from selector.option.torched import torched, torched_to
from selector.torch.course import USUAL_HOLD_S
from selector.torch.residual_heat import RESIDUAL_HEAT
from selector.torch.response import Torched

Bools = NDArray[np.bool_]
# Below this a heat shows no clear red. Common practice, no source. [°C]
RED_C = 700.0
# Steel coarsens within seconds above the first, and this far above the hardening range of the
# steel; it burns from the last on. Common practice, no source. [°C]
OVERHEATED_C, OVER_RANGE_C, BURNT_C = 1050.0, 150.0, 1300.0
# A place so far above where coarsening begins comes out coarse enough to chip or crack, be it
# there for seconds. Common practice, no source. [°C]
SPOILED_K = 50.0
# A hearth of insulating firebrick doubles what a torch heats. What is thicker may come to its
# heat in the end, but not evenly, and its skin burns. Common practice, no source. [-]
HEARTH = 2.0
# A source brings so many of its sections of length to one heat at once, and with luck so many:
# beyond that one end is cold while the other is at heat. Common practice, no source. [-]
EVEN_LENGTHS, MOST_LENGTHS = 8.0, 12.0


def heating_gates(treatment: Treatment, temper: Temper, job: Job) -> list[Gate]:
    """Judge the heat: by the histories of a torch where it is followed, else by its reach."""
    # None where the heat is no worry.
    source, hardened = treatment.source, treatment.steel.hardened
    if source is None:
        return []
    if is_torched(treatment) and hardened is not None:
        return _at_torch(treatment, temper, job, source)
    thick, reach = heated_thickness(job.asked, treatment), source.section_mm.value
    if is_cased_by_torch(treatment):
        gates = list(_cased(job, alike(treatment)))
        if worst(gates) != "fail":
            gates += _too_long(job, alike(treatment), source)
        if gates:
            return gates
    if thick <= reach:
        return []
    text = f"like {thick:.0f} mm round, and {source.slug} heats about {reach:g} mm"
    return [Gate("heating", "marginal", f"at the end of its reach: {text}")]


def _at_torch(treatment: Treatment, temper: Temper, job: Job, source: HeatSource) -> list[Gate]:
    """Judge the heat of a torch or fire: as it is followed, then what such a source bears."""
    same = alike(treatment)
    gates = list(_followed(job, same))
    at, thick = at_torch(job, same), heated_thickness(job.asked, treatment)
    if worst(gates) != "fail" and thick > HEARTH * source.section_mm.value:
        gates.append(_beyond(source, thick))
    if worst(gates) != "fail":
        gates += _too_long(job, same, source)
    if treatment.route.slug == RESIDUAL_HEAT and temper.means == "residual":
        gates += _run_back(at, temper.temperature_c)
    return gates


@per_job
def _cased(job: Job, work: Treatment) -> tuple[Gate, ...]:
    """Judge whether a torch or fire brings a part to the heat at which its case grows."""
    span = work.route.temperature_c
    if span is None:
        return ()
    part = torched_to(job, work, span.middle, USUAL_HOLD_S)
    return tuple(_too_cold(work.source, span.low, part, "case"))


def _beyond(source: HeatSource, thick_mm: float) -> Gate:
    """Refuse a section that nobody hardens with such a torch, however long it is followed."""
    text = (
        f"{source.name} heats about {source.section_mm.value:g} mm round evenly, twice that in "
        f"a hearth of firebrick; this is like {thick_mm:.0f} mm"
    )
    return Gate("heating", "fail", text, 0.0)


@per_job
def _followed(job: Job, work: Treatment) -> tuple[Gate, ...]:
    """Judge the heat of a torch or fire, for all bars that it heats alike."""
    needed_c = work.steel.hardened.temperature_c.low if work.steel.hardened else 800.0
    gates = _too_cold(work.source, needed_c, torched(job, work))
    return (*gates, *_too_hot(job, work))


def _too_cold(
    source: HeatSource | None, needed_c: float, part: Torched, purpose: str = "harden"
) -> list[Gate]:
    """Judge whether the zone comes to the heat that it needs to harden, or to case."""
    gate = judged("heating", part.rim_c >= needed_c - RANGE_BEARS_C, "")
    if gate.verdict == "pass" or source is None:
        return []
    at_c = median(part.rim_c)
    # In wider steps where it is far off: steels a few degrees apart read alike.
    step_c = 50 if at_c < RED_C else 10
    words = f"too little to {purpose}" if gate.verdict == "fail" else "which may not do"
    text = f"{source.name} brings the zone to about {step_c * round(at_c / step_c)} °C"
    return [replace(gate, text=f"{text}, {words}")]


def _long_mm(job: Job, work: Treatment) -> float:
    """Return how long the stretch is that is brought to one heat. [mm]."""
    if is_cased_by_torch(work):
        # Compound is put on what is to be hard; what lies beyond may stay dull.
        cased = range(min(job.hard), max(job.hard) + 1)
        return sum(job.asked.part.section[number].length for number in cased)
    low_mm, high_mm = at_torch(job, work).task.part.zone_mm
    return high_mm - low_mm


def _too_long(job: Job, work: Treatment, source: HeatSource) -> list[Gate]:
    """Judge a stretch that is longer than a source brings to one heat at once."""
    even_mm, long_mm = EVEN_LENGTHS * source.section_mm.value, _long_mm(job, work)
    if long_mm <= even_mm:
        return []
    text = (
        f"{source.name} keeps about {even_mm:.0f} mm of length at one heat; this is "
        f"{long_mm:.0f} mm"
    )
    gate = judged("heating", _evenly(job, work), text)
    return [gate if gate.verdict == "fail" else replace(gate, verdict="marginal")]


@per_job
def _evenly(job: Job, work: Treatment) -> Bools:
    """Return in which heats a stretch comes to one heat from end to end."""
    # The longer it is, the fewer hands keep all of it at one heat, at the most one in two;
    # beyond that none does.
    source = work.source
    lengths = 0.0 if source is None else _long_mm(job, work) / source.section_mm.value
    beyond = (lengths - EVEN_LENGTHS) / (MOST_LENGTHS - EVEN_LENGTHS)
    least = -np.inf if beyond <= 0.0 else np.inf
    if 0.0 < beyond <= 1.0:
        least = NormalDist().inv_cdf(0.5 * beyond)
    return np.asarray(job.shared()["torch_bias"] >= least)


def _too_hot(job: Job, work: Treatment) -> list[Gate]:
    """Judge whether another place coarsens or burns before the zone is at its heat."""
    hottest, limit = torched(job.one_heat(), work).hottest_c, overheated_c(work.steel)
    if hottest >= BURNT_C:
        text = f"another place burns first: {_tens(hottest)} °C before the zone is at its heat"
        return [Gate("heating", "fail", text, 0.0)]
    if hottest <= limit:
        return []
    text = f"an edge gets to {_tens(hottest)} °C, and the grain coarsens from {_tens(limit)}"
    gate = judged("heating", _spared(job, work), text)
    return [gate if gate.verdict == "fail" else replace(gate, verdict="marginal")]


@per_job
def _spared(job: Job, work: Treatment) -> Bools:
    """Return in which heats no place of a part comes out coarse."""
    once = torched(job.one_heat(), work)
    # The hottest place is ahead of the zone by as much, be it stopped early or late.
    ahead_k = once.hottest_c - float(once.heats.stop_c[0])
    hottest_c = torched(job, work).heats.stop_c + ahead_k
    return np.asarray(hottest_c <= overheated_c(work.steel) + SPOILED_K)


def spared(treatment: Treatment, job: Job) -> Bools | None:
    """Return in which heats at a torch all is even and no place coarse, None elsewhere."""
    same = alike(treatment)
    if is_cased_by_torch(treatment):
        return np.asarray(_evenly(job, same))
    if not is_torched(treatment) or treatment.steel.hardened is None:
        return None
    return np.asarray(_spared(job, same) & _evenly(job, same))


def _tens(heat_c: float) -> str:
    """Return a heat as a hand can read it, to 10 °C."""
    return f"{10 * round(heat_c / 10)}"


def _run_back(at: AtTorch, colour_c: float) -> list[Gate]:
    """Judge whether enough heat comes back behind the dipped end."""
    dip = at.dip
    if dip is not None and dip.colour_after_s(colour_c) is not None:
        return []
    text = f"too little heat comes back behind the end to temper it at {colour_c:.0f} °C"
    return [Gate("heating", "fail", text, 0.0)]


def overheated_c(steel: Steel) -> float:
    """Return the heat above which a steel coarsens in the flame. [°C]."""
    top = steel.hardened.temperature_c.high if steel.hardened else OVERHEATED_C
    return min(OVERHEATED_C, top + OVER_RANGE_C)
