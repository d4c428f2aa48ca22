"""The one pipeline: requirement and catalogue in, ranked and reasoned advice out."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog, load_catalog
from selector.collecting import held_back
from selector.decision.comparison import Compare, Comparison, other_methods
from selector.decision.criteria import Range, merits, range_table
from selector.decision.heating_gate import heating_gates
from selector.decision.judgement import Judged, fails_undrawn, judge
from selector.decision.ranking import pairwise_share, reference_ideal
from selector.gate import Gate
from selector.job.candidates import like_conditions_merged, screened
from selector.job.job import Job, resolved
from selector.job.treatment import Treatment, temper_ceilings
from selector.option.mildest_bath import but_for_bath, hardens_fully, mild_first, needless
from selector.option.prediction import predict
from selector.option.preparation import cooled_points, prepare
from selector.option.reference_bar import reference_cost
from selector.option.temper_choice import Choice, choices
from selector.requirement import Requirement
from selector.requirement.priority import CRITERIA
from selector.wording import shown

Floats = NDArray[np.float64]
Progress = Callable[[str, float], None]
# A middle this far below the floor cannot be saved by any draw. [HRC]
HOPELESS_HRC = 6.0
TOSS_UP = 0.60
# Gates that no temper mends: the first temper drawn tells for all of them. Of a layer brought
# in from outside its depth is one.
PAST_TEMPERING = frozenset({"cracking", "movement", "corrosion", "days", "medium"})
LAYERS = frozenset({"case", "nitride"})


@dataclass(frozen=True, slots=True, eq=False)
class Option:
    """One ranked option: judged, scored, with the band of tempers that serves as well."""

    judged: Judged
    choice: Choice
    merit: Floats
    scores: Floats

    @property
    def treatment(self) -> Treatment:
        """What is done to which steel."""
        return self.judged.prediction.treatment

    @property
    def id(self) -> str:
        """`steel/condition/route/temper`, stable as the catalogue grows."""
        return f"{self.treatment.label}/{self.choice.temper.label}"

    @property
    def score(self) -> float:
        """Expected score: mean over the draws, one that fails a gate counting nothing."""
        return float(np.mean(self.scores))


@dataclass(frozen=True, slots=True, eq=False)
class Rejected:
    """A treatment that is out (or unknown), and the gate that decided."""

    treatment: Treatment
    gate: Gate
    option: Option | None = None

    @property
    def share(self) -> float:
        """Share of draws that pass all gates; 0 where nothing was drawn."""
        return self.option.judged.passing_all if self.option else 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Advice:
    """Everything the outputs are made of."""

    asked: Requirement
    job: Job
    options: tuple[Option, ...]
    rejected: tuple[Rejected, ...]
    apart: tuple[Rejected, ...]
    ranges: tuple[Range, ...]
    weights: Mapping[str, float]
    comparisons: tuple[Comparison, ...] = ()
    reference_cost: float = 0.0
    shares: Mapping[tuple[str, str], float] = field(default_factory=dict)

    @property
    def toss_up(self) -> bool:
        """Whether the first two cannot be told apart inside their error bars."""
        if len(self.options) < 2:
            return False
        first, second = self.options[:2]
        return self.shares[first.id, second.id] < TOSS_UP

    @property
    def as_bought(self) -> Option | None:
        """The best option without heat treatment that passes every gate outright."""
        return next(
            (
                option
                for option in self.options
                if option.treatment.route.process == "none"
                and option.treatment.condition.name != "hard-element"
                and option.judged.verdict == "pass"
            ),
            None,
        )

    @property
    def verdict(self) -> str:
        """One word for the whole advice."""
        if self.asked.safety_critical:
            return "safety_referral"
        if not self.options:
            return "coupon_first" if self.apart else "no_option"
        if self.as_bought is not None:
            return "leave_as_bought"
        return "toss_up" if self.toss_up else "harden"


@held_back()
def advise(
    requirement: Requirement,
    catalog: Catalog | None = None,
    *,
    steel: str | None = None,
    route: str | None = None,
    progress: Progress | None = None,
    compare: Compare = other_methods,
) -> Advice:
    """Return ranked advice for one part in one workshop.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    catalog : Catalog, optional
        What is known; the shipped catalogue if absent.
    steel, route : str, optional
        Look only at this steel (any designation) or route (slug or kind).
    progress : callable, optional
        Called with a sentence and a fraction.
    compare : callable, optional
        Orders the same options by other methods.

    Returns
    -------
    Advice
        Ranked options, what was rejected and why, what stands apart as unknown.

    Raises
    ------
    RequirementError
        When the requirement names things the catalogue does not hold.
    """
    known = catalog or load_catalog()
    tell = progress or (lambda _text, _fraction: None)
    job = resolved(requirement, known)
    tell("Screening steels and routes", 0.05)
    wanted = None if steel is None else {s.slug for s in known.find(steel)}
    pool = [
        item
        for item in screened(requirement, known, job.bench)
        if _looked_at(item.treatment, wanted, route)
    ]
    rejected = [
        Rejected(s.treatment, s.gate) for s in pool if s.gate and s.gate.verdict == "fail"
    ]
    apart = [
        Rejected(s.treatment, s.gate) for s in pool if s.gate and s.gate.verdict == "unknown"
    ]
    reference = reference_cost(job)
    scorer = scorer_of(job, reference)
    weights = requirement.priorities.weights()
    options: list[Option] = []
    going = like_conditions_merged(s.treatment for s in pool if s.gate is None)
    for number, (treatment, gate, option) in enumerate(_weighed(going, job, scorer)):
        tell(f"Drawing {treatment.steel.name}", 0.1 + 0.85 * number / len(going))
        if gate is None and option is not None:
            options.append(option)
        elif gate is not None:
            found = apart if gate.verdict == "unknown" else rejected
            found.append(Rejected(treatment, gate, option))
    ranked = _ranked(options)
    tell("Comparing", 0.97)
    merits = np.array([option.merit.mean(axis=0) for option in ranked[:40]])
    return Advice(
        asked=requirement,
        job=job,
        options=ranked,
        rejected=tuple(rejected),
        apart=tuple(apart),
        ranges=scorer.ranges,
        weights={str(k): v for k, v in weights.items()},
        comparisons=compare(merits, scorer.weights) if len(ranked) > 1 else (),
        reference_cost=reference,
        shares=_pairwise(ranked[:8]),
    )


def _looked_at(treatment: Treatment, steels: set[str] | None, route: str | None) -> bool:
    """Return whether a treatment is among those the user wants to see."""
    if steels is not None and treatment.steel.slug not in steels:
        return False
    return route is None or route in {treatment.route.slug, treatment.route.kind}


@dataclass(frozen=True, slots=True, eq=False)
class Scorer:
    """Ranges and weights of one advice."""

    ranges: tuple[Range, ...]
    weights: Floats

    def option(self, judged: Judged, choice: Choice) -> Option:
        """Return a judged option with its score.

        Parameters
        ----------
        judged : Judged
            Gates and values.
        choice : Choice
            Its temper.

        Returns
        -------
        Option
            Scored over the draws.
        """
        merit = merits(self.ranges, judged.values)
        scores = reference_ideal(merit, self.weights) * judged.passing
        return Option(judged, choice, merit, scores)


def scorer_of(job: Job, reference: float) -> Scorer:
    """Return what scores the options of one requirement.

    Parameters
    ----------
    job : Job
        What is asked.
    reference : float
        What the part costs as bought in the reference steel.

    Returns
    -------
    Scorer
        Ranges and weights.
    """
    limit, weights = job.asked.limit, job.asked.priorities.weights()
    by_life = job.asked.zone[job.leading.zone].life_ratio is not None
    ranges = range_table(limit.budget, reference, limit.days, by_life=by_life)
    return Scorer(ranges, np.array([weights[name] for name in CRITERIA]))


def _weighed(
    going: list[Treatment], job: Job, scorer: Scorer
) -> Iterator[tuple[Treatment, Gate | None, Option | None]]:
    """Yield each treatment with the gate that stops it, if one does, and what was drawn."""
    # The middle of all uncertainties decides what no draw could turn.
    once = job.middle()
    ceilings = temper_ceilings(job.asked.workshop, job.bench.sources)
    mildest: dict[tuple[str, str, str], Treatment] = {}
    for treatment in mild_first(going, job):
        milder = mildest.get(but_for_bath(treatment))
        if milder is not None:
            yield treatment, needless(treatment, milder), None
            continue
        points = cooled_points(treatment, once)
        chosen = choices(prepare(treatment, once), once, ceilings, points)
        hopeless = _hopeless(treatment, chosen, once)
        if hopeless is not None:
            yield treatment, hopeless, None
            continue
        best = _best(treatment, chosen, job, scorer)
        if hardens_fully(treatment, best.judged.gates):
            mildest[but_for_bath(treatment)] = treatment
        yield treatment, _stopping(best), best


def _hopeless(treatment: Treatment, chosen: Iterable[Choice], once: Job) -> Gate | None:
    """Return the gate that stops a treatment far too soft at the middle, or none."""
    hardest = max(choice.middle_hrc for choice in chosen)
    floor_hrc = once.leading.floor_hrc
    if floor_hrc is None or hardest >= floor_hrc - HOPELESS_HRC or not _is_told(treatment):
        return None
    too_cold = next((g for g in heating_gates(treatment, once) if g.verdict == "fail"), None)
    if too_cold is not None:
        return too_cold
    text = f"reaches about {shown(hardest)}; needs {shown(floor_hrc)} or more"
    if not treatment.hardens:
        text = f"needs {shown(floor_hrc)} or more; predicted {shown(hardest)}"
    return Gate("hard_enough", "fail", text, 0.0)


def _is_told(treatment: Treatment) -> bool:
    """Return whether the hardness of the temper choice is that of the working surface."""
    return treatment.hardens or treatment.route.process in {"none", "normalise", "case"}


def _best(treatment: Treatment, chosen: Iterable[Choice], job: Job, scorer: Scorer) -> Option:
    """Return the best temper of a treatment: fewest failed gates, then score."""
    ready = prepare(treatment, job)
    layered = treatment.route.process in LAYERS
    past_tempering = PAST_TEMPERING | ({"depth"} if layered else set())
    found: dict[Choice, Option] = {}
    waiting = list(chosen)
    for hope in range(3):
        for choice in waiting:
            if _hope(treatment, choice, job) == hope:
                drawn = predict(ready, choice.temper, job)
                found[choice] = scorer.option(judge(drawn, choice.sensitivity_hrc, job), choice)
                if any(gate.name in past_tempering for gate in _failed(found[choice])):
                    return found[choice]
        if any(not _failed(option) for option in found.values()):
            break
    # In the order of the tempers, as the first of equals is kept.
    options = [found[choice] for choice in waiting if choice in found]
    return max(options, key=lambda o: (-len(_failed(o)), o.score))


def _hope(treatment: Treatment, choice: Choice, job: Job) -> int:
    """Return when to draw a temper: later where all gates are passed by no earlier one."""
    # Left as quenched comes second, what is bound to fail a gate last.
    if fails_undrawn(treatment, choice.temper, job):
        return 2
    return int(choice.temper.means == "none")


def _failed(option: Option) -> list[Gate]:
    """Return the gates an option fails."""
    return [gate for gate in option.judged.gates if gate.verdict == "fail"]


def _stopping(option: Option) -> Gate | None:
    """Return the gate that stops an option: the worst failed or unknown one."""
    failed = _failed(option)
    if failed:
        return min(failed, key=lambda gate: gate.share if gate.share is not None else 0.0)
    return next((gate for gate in option.judged.gates if gate.verdict == "unknown"), None)


def _ranked(options: list[Option]) -> tuple[Option, ...]:
    """Return the best option of each family and route, by expected score."""
    best: dict[tuple[str, str], Option] = {}
    for option in options:
        group = option.treatment.group
        if group not in best or option.score > best[group].score:
            best[group] = option
    return tuple(sorted(best.values(), key=lambda o: (-o.score, o.id)))


def _pairwise(options: tuple[Option, ...]) -> dict[tuple[str, str], float]:
    """Return the share of draws in which each leading option beats each other."""
    return {
        (a.id, b.id): pairwise_share(a.scores, b.scores)
        for a in options
        for b in options
        if a is not b
    }


__all__ = ["Advice", "Option", "Rejected", "advise"]
