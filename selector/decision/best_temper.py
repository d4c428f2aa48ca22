"""The best temper of a treatment, and what need not be worked out to find it."""

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from selector.decision.breaking_gate import is_bound_to_fail
from selector.decision.hardness_gate import hardness_gates
from selector.decision.heating_gate import heating_gates
from selector.decision.judgement import judge
from selector.decision.option import Option, Scorer
from selector.decision.preference import handicap
from selector.gate import Gate
from selector.job.job import Job
from selector.job.treatment import LAYERS, NO_TEMPER, Temper, Treatment
from selector.option.layer import LayerRun, layer_run
from selector.option.prediction import predict
from selector.option.preparation import Prepared
from selector.option.skin import Skin, skin
from selector.option.temper_choice import Choice
from selector.option.zone_hardness import zone_hardness
from selector.torch.residual_heat import RESIDUAL_HEAT

Floats = NDArray[np.float64]
# Gates that no temper mends: the first temper sampled decides them for all. Of a layer brought
# in from outside its depth is one.
PAST_TEMPERING = frozenset({"cracking", "movement", "corrosion", "days", "medium"})
# What meets a demand less often than this is far from serving: no more of it is worked out.
FAR = 0.1
# A temper by torch is read by eye, scatters most and has to gain 0.08 in score over one in an
# oven or on a plate. Where one of these keeps the window and comes so near to it in hardness,
# it never did: of 87 such pairs in nine parts the nearest fell 0.009 short. [HRC]
LIKE_HRC = 1.0
# What is softer at the middle by more than this than a temper too soft in half of the samples
# is too soft as well, however it scatters. Estimate. [HRC]
SOFTER_HRC = 0.2
# So is what is no harder at the middle by more than that than one that is hard enough in fewer
# samples than this: it would have to raise the median past the floor by its scatter. [-]
WELL_SHORT = 0.3


@dataclass(frozen=True, slots=True)
class How:
    """How treatments are weighed: by which scorer, and whether every one to its end.

    A treatment far from one demand is passed over at that, unless `every` one is worked out,
    its bar lies in the rack or is left as bought, which is soon worked out: then how often it
    would come right is known too.
    """

    scorer: Scorer
    every: bool = False

    def to_the_end(self, treatment: Treatment) -> bool:
        """Return whether all of a treatment is worked out, whether it can serve or not."""
        as_bought = treatment.route.process == "none"
        return self.every or as_bought or treatment.stock is not None

    def passes_over(self, treatment: Treatment, share: float | None) -> bool:
        """Return whether what meets a demand so often is not worked out any further."""
        return share is not None and share < FAR and not self.to_the_end(treatment)


@dataclass(frozen=True, slots=True, eq=False)
class _Zone:
    """The working zone of one temper, before anything else of it is worked out."""

    treatment: Treatment
    surface_hrc: Floats
    depth_mm: Floats
    layer: LayerRun | None
    skin: Skin | None


@dataclass(slots=True)
class _Tried:
    """Tempers that were sampled, and how hard one must be at the middle to be hard enough."""

    weighed: dict[Choice, Option] = field(default_factory=dict)
    far: list[Gate] = field(default_factory=list)
    least_hrc: float = -np.inf

    @property
    def serves(self) -> bool:
        """Whether one of them fails no gate."""
        return any(not failed(option) for option in self.weighed.values())

    def is_outdone(self, choice: Choice) -> bool:
        """Return whether a torch's temper comes to what a steadier one that serves comes to."""
        return choice.temper.means == "torch" and any(
            other.band_c is not None
            and abs(other.middle_hrc - choice.middle_hrc) < LIKE_HRC
            and not failed(option)
            for other, option in self.weighed.items()
            if other.temper.means != "torch"
        )

    def add(self, choice: Choice, end: Option | Gate) -> set[str]:
        """Note what came of a temper, and return the names of the gates it fails."""
        gates = {g.name: g for g in ([end] if isinstance(end, Gate) else failed(end))}
        soft = gates.get("hard_enough")
        if soft is not None:
            short = soft.share is not None and soft.share < WELL_SHORT
            beyond = SOFTER_HRC if short else -SOFTER_HRC
            self.least_hrc = max(self.least_hrc, choice.middle_hrc + beyond)
        if isinstance(end, Gate):
            self.far.append(end)
        else:
            self.weighed[choice] = end
        return {str(name) for name in gates}

    def best(self, in_turn: Iterable[Choice]) -> Option | Gate:
        """Return the best, or the gate that all are far from; the first of equals is kept."""
        options = [self.weighed[choice] for choice in in_turn if choice in self.weighed]
        if not options:
            return min(self.far, key=lambda gate: gate.share or 0.0)
        return max(options, key=lambda o: (-len(failed(o)), o.score - handicap(o)))


def unheated(treatment: Treatment, job: Job) -> Gate | None:
    """Return the gate that a treatment fails by its hardening heat, whatever its temper."""
    # What comes to heat at the middle does so in half of the samples.
    cold = _failing_heat(treatment, NO_TEMPER, job.middle())
    return cold and _failing_heat(treatment, NO_TEMPER, job)


def never_tempered(treatment: Treatment, chosen: Iterable[Choice], middle: Job) -> Gate | None:
    """Return the gate that all tempers fail as no heat comes back for them, or none."""
    if treatment.route.slug != RESIDUAL_HEAT:
        # Its temper asks nothing of the hardening heat.
        return _failing_heat(treatment, NO_TEMPER, middle)
    gates = [_failing_heat(treatment, choice.temper, middle) for choice in chosen]
    return gates[0] if all(gates) else None


def _failing_heat(treatment: Treatment, temper: Temper, job: Job) -> Gate | None:
    """Return the gate of its heat that a treatment fails, or none."""
    gates = heating_gates(treatment, temper, job)
    return next((gate for gate in gates if gate.verdict == "fail"), None)


def best_temper(ready: Prepared, chosen: Iterable[Choice], how: How) -> Option | Gate:
    """Return the best temper of a treatment, or the gate that all its tempers are far from.

    Parameters
    ----------
    ready : Prepared
        The treatment heated and quenched, over the samples.
    chosen : iterable of Choice
        Tempers that are worth choosing.
    how : How
        How treatments are weighed.

    Returns
    -------
    Option or Gate
        The temper that fails the fewest gates, of these the one with the best score.
    """
    treatment, job, waiting = ready.treatment, ready.job, list(chosen)
    layered = treatment.route.process in LAYERS
    past_tempering = PAST_TEMPERING | ({"depth"} if layered else set())
    every, tried = how.to_the_end(treatment), _Tried()
    for hope in range(3):
        for choice in (c for c in waiting if _hope(treatment, c, job) == hope):
            soft = choice.middle_hrc < tried.least_hrc and not every
            if not soft and not tried.is_outdone(choice):
                end = _sampled(ready, choice, how)
                if tried.add(choice, end) & past_tempering:
                    return end
        if tried.serves:
            break
    return tried.best(waiting)


def _sampled(ready: Prepared, choice: Choice, how: How) -> Option | Gate:
    """Return one temper judged and scored, or the demand on hardness that it is far from."""
    treatment, job = ready.treatment, ready.job
    lead, cold = job.leading, _failing_heat(treatment, choice.temper, job)
    if cold is not None and how.passes_over(treatment, cold.share):
        return cold
    found = zone_hardness(ready, choice.temper)
    if lead.floor_hrc is not None:
        shares = [float(np.mean(found.surface >= lead.floor_hrc))]
        shares.append(float(np.mean(found.depth_mm >= lead.depth_mm)))
        if how.passes_over(treatment, min(shares)):
            run, lost = layer_run(job, treatment), skin(job, ready.alike)
            zone = _Zone(treatment, found.surface, found.depth_mm, run, lost)
            gates = hardness_gates(zone, lead)
            return min(gates, key=lambda gate: 1.0 if gate.share is None else gate.share)
    prediction = predict(ready, choice.temper, found)
    judged = judge(prediction, choice.sensitivity_hrc, job)
    return how.scorer.option(judged, choice)


def _hope(treatment: Treatment, choice: Choice, job: Job) -> int:
    """Return when to sample a temper: later where all gates are passed by no earlier one."""
    # Left as quenched comes second, what is bound to fail a gate last.
    if is_bound_to_fail(treatment, choice.temper, job.asked):
        return 2
    return int(choice.temper.means == "none" or not choice.aimed)


def failed(option: Option) -> list[Gate]:
    """Return the gates an option fails."""
    return [gate for gate in option.judged.gates if gate.verdict == "fail"]
