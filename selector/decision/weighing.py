"""Treatments in, options out: each treatment at its best temper, judged, scored and ranked."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from selector.decision.breaking_gate import is_bound_to_fail
from selector.decision.heating_gate import heating_gates
from selector.decision.judgement import judge
from selector.decision.option import Beaten, Option, Rejected, Scorer
from selector.decision.preference import handicap, in_order, stands_back, unheard_of
from selector.decision.turn import turns
from selector.errors import OutOfRangeError, limits_left
from selector.gate import Gate
from selector.job.candidates import Screened, like_conditions_merged
from selector.job.job import Job
from selector.job.treatment import NO_TEMPER, Treatment, temper_ceilings
from selector.option.mildest_bath import but_for_bath, hardens_fully, mild_first, needless
from selector.option.prediction import predict
from selector.option.preparation import cooled_points, prepare
from selector.option.temper_choice import Choice, choices
from selector.requirement import Requirement
from selector.wording import shown

Progress = Callable[[str, float], None]
# A middle this far below the floor cannot be saved by any sample. [HRC]
HOPELESS_HRC = 6.0
# A bath that comes out right less often leaves room for a harsher one. Estimate. [-]
COMES_RIGHT = 0.9
# Gates that no temper mends: the first temper sampled decides them for all. Of a layer brought
# in from outside its depth is one.
PAST_TEMPERING = frozenset({"cracking", "movement", "corrosion", "days", "medium"})
LAYERS = frozenset({"case", "nitride", "chrome"})


@dataclass(frozen=True, slots=True, eq=False)
class Weighed:
    """What became of every treatment: ranked, rejected, or apart because it is unknown.

    `outdone` are options of the rack whose place another of their family and route took, with
    their samples; `beaten` all such options that were weighed, as figures.
    """

    options: tuple[Option, ...]
    rejected: tuple[Rejected, ...]
    apart: tuple[Rejected, ...]
    outdone: tuple[Option, ...]
    beaten: tuple[Beaten, ...]


def silent(text: str, fraction: float) -> None:
    """Report progress to nobody."""
    del text, fraction


def weigh(
    job: Job,
    pool: Iterable[Screened],
    scorer: Scorer,
    progress: Progress = silent,
    *,
    whole: bool = False,
) -> Weighed:
    """Return the treatments of a pool ranked; what is rejected whole if asked."""
    # No number of a treatment depends on which others are in the pool. Whether it is weighed
    # does: not in a bath harsher than one that hardens the same bar as asked, and not where
    # those of an earlier turn serve.
    screened = list(pool)
    stopped = [Rejected(s.treatment, s.gate) for s in screened if s.gate is not None]
    going = like_conditions_merged(s.treatment for s in screened if s.gate is None)
    options: list[Option] = []
    done = 0
    for turn in turns(going, job):
        served = {option.treatment.group: option for option in reversed(options)}
        spared = {work: turn.needless(work, served) for work in turn.treatments}
        stopped += [Rejected(work, gate) for work, gate in spared.items() if gate is not None]
        left = [work for work, gate in spared.items() if gate is None]
        done += len(spared) - len(left)
        for weighed in _each(left, job, scorer):
            progress(f"Weighing {weighed.treatment.steel.name}", done / len(going))
            done += 1
            if isinstance(weighed, Option):
                options.append(weighed)
            else:
                stopped.append(weighed if whole else replace(weighed, option=None))
    stopped = _by_result(options, stopped)
    job.forget_samples()
    unknown = tuple(item for item in stopped if item.gate.verdict == "unknown")
    rejected = tuple(item for item in stopped if item.gate.verdict != "unknown")
    ranked = tuple(in_order(_leading(options, job), job.asked))
    kept = {option.treatment.label for option in ranked}
    outdone = tuple(
        option
        for option in in_order(options, job.asked)
        if option.treatment.stock is not None and option.treatment.label not in kept
    )
    places = {option.id for option in ranked}
    beaten = tuple(_beaten(o, job.asked) for o in options if o.id not in places)
    return Weighed(ranked, rejected, unknown, outdone, beaten)


def _beaten(option: Option, asked: Requirement) -> Beaten:
    """Return what is kept of an option that takes no place."""
    back = stands_back(option, asked) or unheard_of(option)
    return Beaten(option.treatment, option.id, option.score, back)


def _by_result(options: list[Option], stopped: list[Rejected]) -> list[Rejected]:
    """Return what is stopped from every source: one that serves makes the others idle."""
    # Where none serves, the one that came nearest says why.
    served = {option.treatment.label for option in options}
    nearest: dict[str, Rejected] = {}
    for item in stopped:
        label = item.treatment.label
        if label in served:
            continue
        if label not in nearest or item.share > nearest[label].share:
            nearest[label] = item
    return list(nearest.values())


def _each(going: list[Treatment], job: Job, scorer: Scorer) -> Iterator[Option | Rejected]:
    """Yield each treatment as an option, or rejected by the gate that stops it."""
    mildest: dict[tuple[str, str, str, str], Treatment] = {}
    for treatment in mild_first(going, job.asked.workshop):
        milder = mildest.get(but_for_bath(treatment))
        if milder is not None:
            yield Rejected(treatment, needless(treatment, milder))
            continue
        weighed = _within_models(treatment, job, scorer)
        option = weighed if isinstance(weighed, Option) else weighed.option
        if option is not None and _needs_no_harsher(option):
            mildest[but_for_bath(treatment)] = treatment
        yield weighed


def _needs_no_harsher(option: Option) -> bool:
    """Return whether a harsher bath is not worth weighing: this one hardens and comes right."""
    fully = hardens_fully(option.treatment, option.judged.gates)
    return fully and option.judged.passing_all >= COMES_RIGHT


def _within_models(treatment: Treatment, job: Job, scorer: Scorer) -> Option | Rejected:
    """Return a treatment weighed; what no model can answer is unknown, not the file's fault."""
    try:
        return _weighed(treatment, job, scorer)
    except OutOfRangeError as error:
        text = f"beyond what is modelled: {limits_left(error)}"
        return Rejected(treatment, Gate("model", "unknown", text))


def _weighed(treatment: Treatment, job: Job, scorer: Scorer) -> Option | Rejected:
    """Return a treatment at its best temper, or rejected by the gate that stops it."""
    # The middle of all uncertainties decides what no sample could turn.
    middle = job.middle()
    chosen = _choices(treatment, middle)
    hopeless = _hopeless(treatment, chosen, middle)
    if hopeless is not None:
        return Rejected(treatment, hopeless)
    best = _best(treatment, chosen, job, scorer)
    stopping = _stopping(best)
    return best if stopping is None else Rejected.of(best, stopping)


def _choices(treatment: Treatment, middle: Job) -> tuple[Choice, ...]:
    """Return the tempers of a treatment that are worth sampling."""
    ceilings = temper_ceilings(middle.asked.workshop, middle.bench.sources)
    points = cooled_points(treatment, middle)
    return choices(prepare(treatment, middle), ceilings, points)


def _hopeless(treatment: Treatment, chosen: Iterable[Choice], middle: Job) -> Gate | None:
    """Return the gate that stops a treatment far too soft at the middle, or none."""
    hardest = max(choice.middle_hrc for choice in chosen)
    floor_hrc = middle.leading.floor_hrc
    if floor_hrc is None or hardest >= floor_hrc - HOPELESS_HRC or not _is_known(treatment):
        return None
    too_cold = next(
        (g for g in heating_gates(treatment, NO_TEMPER, middle) if g.verdict == "fail"), None
    )
    if too_cold is not None:
        return too_cold
    text = f"reaches about {shown(hardest)}; needs {shown(floor_hrc)} or more"
    if not treatment.hardens:
        text = f"needs {shown(floor_hrc)} or more; predicted {shown(hardest)}"
    return Gate("hard_enough", "fail", text, 0.0)


def _is_known(treatment: Treatment) -> bool:
    """Return whether the hardness of the temper choice is that of the working surface."""
    soft = {"none", "anneal", "normalise"}
    return treatment.hardens or treatment.route.process in {*soft, "case"}


def _best(treatment: Treatment, chosen: Iterable[Choice], job: Job, scorer: Scorer) -> Option:
    """Return the best temper of a treatment: fewest failed gates, then score."""
    ready = prepare(treatment, job)
    layered = treatment.route.process in LAYERS
    past_tempering = PAST_TEMPERING | ({"depth"} if layered else set())
    weighed: dict[Choice, Option] = {}
    waiting = list(chosen)
    for hope in range(3):
        for choice in waiting:
            if _hope(treatment, choice, job) == hope:
                prediction = predict(ready, choice.temper)
                judged = judge(prediction, choice.sensitivity_hrc, job)
                weighed[choice] = scorer.option(judged, choice)
                if any(gate.name in past_tempering for gate in _failed(weighed[choice])):
                    return weighed[choice]
        if any(not _failed(option) for option in weighed.values()):
            break
    # In the order of the tempers, as the first of equals is kept.
    options = [weighed[choice] for choice in waiting if choice in weighed]
    return max(
        options,
        key=lambda o: (-len(_failed(o)), o.score - handicap(o)),
    )


def _hope(treatment: Treatment, choice: Choice, job: Job) -> int:
    """Return when to sample a temper: later where all gates are passed by no earlier one."""
    # Left as quenched comes second, what is bound to fail a gate last.
    if is_bound_to_fail(treatment, choice.temper, job.asked):
        return 2
    return int(choice.temper.means == "none" or not choice.aimed)


def _failed(option: Option) -> list[Gate]:
    """Return the gates an option fails."""
    return [gate for gate in option.judged.gates if gate.verdict == "fail"]


def _stopping(option: Option) -> Gate | None:
    """Return the gate that stops an option: the worst failed or unknown one."""
    failed = _failed(option)
    if failed:
        return min(failed, key=lambda gate: gate.share if gate.share is not None else 0.0)
    return next((gate for gate in option.judged.gates if gate.verdict == "unknown"), None)


def _leading(options: Iterable[Option], job: Job) -> list[Option]:
    """Return the best option of each family and route: near-equals do not order others."""
    groups: dict[tuple[str, str], list[Option]] = defaultdict(list)
    for option in options:
        groups[option.treatment.group].append(option)
    return [in_order(group, job.asked)[0] for group in groups.values()]
