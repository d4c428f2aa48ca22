"""Treatments in, options out: each treatment at its best temper, judged, scored and ranked."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from selector.decision.best_temper import How, best_temper, failed, never_tempered, unheated
from selector.decision.drawback import stands_back, unheard_of
from selector.decision.hardness_gate import floor_hrc
from selector.decision.judgement import days_gate
from selector.decision.option import Beaten, Option, Rejected, Scorer
from selector.decision.preference import in_order, tie_break, ties_with
from selector.decision.turn import turns
from selector.duty.merit import SELDOM
from selector.errors import OutOfRangeError, limits_left
from selector.figure import median
from selector.gate import Gate
from selector.job.candidates import Screened, like_conditions_merged
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.option.cost import days_of
from selector.option.mildest_bath import but_for_bath, hardens_fully, mild_first, needless
from selector.option.preparation import cooled_points, prepare
from selector.option.temper_choice import Choice, misread_too, tempers_worth
from selector.requirement import Requirement
from selector.wording import shown

Progress = Callable[[str, float], None]
# A middle this far below the floor cannot be saved by any sample. [HRC]
HOPELESS_HRC = 6.0
# A bath that comes out right less often leaves room for a harsher one. Estimate. [-]
COMES_RIGHT = 0.9
# The usual way of treating a bar serves that comes right as often as this: a seldom one of it
# is not thought of. Estimate. [-]
SERVES = 0.7


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
    barred = [Rejected(s.treatment, s.gate) for s in screened if s.gate is not None]
    going = like_conditions_merged(s.treatment for s in screened if s.gate is None)
    options, turned_down = _in_turns(going, job, How(scorer, every=whole), progress)
    if not options and not whole:
        # Where nothing serves, how near each came is what is asked for.
        turned_down = [_to_the_end(item, job, scorer) for item in turned_down]
    stopped = _by_result(options, barred + turned_down)
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


def _in_turns(
    going: list[Treatment], job: Job, how: How, progress: Progress
) -> tuple[list[Option], list[Rejected]]:
    """Return the options among treatments, and what is turned down, turn by turn."""
    options: list[Option] = []
    stopped: list[Rejected] = []
    done = 0
    for turn in turns(going, job):
        served = {option.treatment.group: option for option in reversed(options)}
        spared = {work: turn.needless(work, served) for work in turn.treatments}
        stopped += [Rejected(work, gate) for work, gate in spared.items() if gate is not None]
        left = [work for work, gate in spared.items() if gate is None]
        done += len(spared) - len(left)
        for weighed in _each(left, job, how):
            progress(f"Weighing {weighed.treatment.steel.name}", done / len(going))
            done += 1
            if isinstance(weighed, Option):
                options.append(weighed)
            else:
                stopped.append(weighed if how.every else replace(weighed, option=None))
    return options, stopped


def _to_the_end(item: Rejected, job: Job, scorer: Scorer) -> Rejected:
    """Return what was passed over worked out to its end, anything else as it is."""
    if item.share > 0.0 or item.gate.share is None:
        return item
    weighed = _within_models(item.treatment, job, How(scorer, every=True))
    return replace(weighed, option=None) if isinstance(weighed, Rejected) else item


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


def _each(going: list[Treatment], job: Job, how: How) -> Iterator[Option | Rejected]:
    """Yield each treatment as an option, or rejected by the gate that stops it."""
    mildest: dict[tuple[str, str, str, str], Treatment] = {}
    for treatment in mild_first(going, job.asked.workshop):
        milder = mildest.get(but_for_bath(treatment))
        if milder is not None:
            yield Rejected(treatment, needless(treatment, milder))
            continue
        weighed = _within_models(treatment, job, how)
        if _needs_no_harsher(weighed, job):
            mildest[but_for_bath(treatment)] = treatment
        yield weighed


def _needs_no_harsher(weighed: Option | Rejected, job: Job) -> bool:
    """Return whether a harsher bath is not worth weighing: this one hardens and comes right."""
    option = weighed if isinstance(weighed, Option) else weighed.option
    # A quicker dip leaves more heat behind the end: what is refused for its heat in oil may
    # serve in water.
    if option is None or (isinstance(weighed, Rejected) and weighed.gate.name == "heating"):
        return False
    # What falls short of the window may come to it in the harsher bath.
    low = job.leading.low_hrc
    in_window = low is None or median(option.judged.prediction.surface_hrc) >= low
    fully = hardens_fully(option.treatment, option.judged.gates)
    return in_window and fully and option.judged.passing_all >= COMES_RIGHT


def _within_models(treatment: Treatment, job: Job, how: How) -> Option | Rejected:
    """Return a treatment weighed; what no model can answer is unknown, not the file's fault."""
    try:
        return _weighed(treatment, job, how)
    except OutOfRangeError as error:
        text = f"beyond what is modelled: {limits_left(error)}"
        return Rejected(treatment, Gate("model", "unknown", text))


def _weighed(treatment: Treatment, job: Job, how: How) -> Option | Rejected:
    """Return a treatment at its best temper, or rejected by the gate that stops it."""
    late = _late(treatment, job)
    if late is not None and how.passes_over(treatment, late.share):
        return Rejected(treatment, late)
    cold = unheated(treatment, job)
    if cold is not None and how.passes_over(treatment, cold.share):
        return Rejected(treatment, cold)
    # The middle of all uncertainties decides what no sample could turn.
    middle = job.middle()
    ceilings = middle.temper_ceilings_c
    points = cooled_points(treatment, middle)
    ready = prepare(treatment, middle)
    chosen = tempers_worth(ready, ceilings)
    hopeless = _hopeless(treatment, chosen, middle, cold)
    if hopeless is not None:
        return Rejected(treatment, hopeless)
    back = None if cold is not None else never_tempered(treatment, chosen, middle)
    if back is not None and how.passes_over(treatment, back.share):
        return Rejected(treatment, back)
    best = best_temper(prepare(treatment, job), misread_too(chosen, ready, points), how)
    if isinstance(best, Gate):
        return Rejected(treatment, best)
    stopping = _stopping(best)
    return best if stopping is None else Rejected.of(best, stopping)


def _late(treatment: Treatment, job: Job) -> Gate | None:
    """Return the gate of what takes longer than is allowed, however it comes out, or none."""
    allowed = job.asked.limit.days
    if allowed is None:
        return None
    gate = days_gate(days_of(treatment, job.catalog.prices.practice), allowed)
    return replace(gate, share=0.0) if gate.verdict == "fail" else None


def _hopeless(
    treatment: Treatment, chosen: Iterable[Choice], middle: Job, cold: Gate | None
) -> Gate | None:
    """Return the gate that stops a treatment far too soft at the middle, or none."""
    hardest = max(choice.middle_hrc for choice in chosen)
    floor = floor_hrc(treatment, middle.leading)
    if floor is None or hardest >= floor - HOPELESS_HRC or not _is_known(treatment):
        return None
    if cold is not None:
        return cold
    text = f"reaches about {shown(hardest)}; needs {shown(floor)} or more"
    if not treatment.hardens:
        text = f"needs {shown(floor)} or more; predicted {shown(hardest)}"
    return Gate("hard_enough", "fail", text, 0.0)


def _is_known(treatment: Treatment) -> bool:
    """Return whether the hardness of the temper choice is that of the working surface."""
    soft = {"none", "anneal", "normalise"}
    return treatment.hardens or treatment.route.process in {*soft, "case"}


def _stopping(option: Option) -> Gate | None:
    """Return the gate that stops an option: the worst failed or unknown one."""
    stopping = failed(option)
    if stopping:
        return min(stopping, key=lambda gate: gate.share if gate.share is not None else 0.0)
    return next((gate for gate in option.judged.gates if gate.verdict == "unknown"), None)


def _leading(options: Iterable[Option], job: Job) -> list[Option]:
    """Return the best option of each family and route: near-equals do not order others."""
    groups: dict[tuple[str, str], list[Option]] = defaultdict(list)
    for option in options:
        groups[option.treatment.group].append(option)
    return [_speaker(group, job) for group in groups.values()]


def _usually_done(group: list[Option]) -> list[Option]:
    """Return what near-equals are left where a bar is seldom treated so and need not be."""
    # Dry ice is not fetched, nor an oil steel put in water, where the usual way serves.
    usual = {
        option.treatment.steel.slug
        for option in group
        if option.judged.value("custom") > SELDOM and option.judged.passing_all >= SERVES
    }
    return [
        option
        for option in group
        if option.judged.value("custom") > SELDOM or option.treatment.steel.slug not in usual
    ]


def _more_usual(first: Option, group: list[Option], asked: Requirement) -> Option:
    """Return the most usual way of treating the bar of an option that ties with it."""
    # Of one bar nothing but how it is treated differs: silver steel goes into water.
    bar = (first.treatment.steel.slug, first.treatment.stock)
    level = [
        option
        for option in group
        if (option.treatment.steel.slug, option.treatment.stock) == bar
        and ties_with(option, first, asked)
    ]
    most = max(option.judged.value("custom") for option in level)
    return in_order([o for o in level if o.judged.value("custom") >= most], asked)[0]


def _speaker(group: list[Option], job: Job) -> Option:
    """Return the best of near-equals: of near ties had as easily, the one that people buy."""
    group = _usually_done(group)
    first = _more_usual(in_order(group, job.asked)[0], group, job.asked)
    family = job.catalog.families.get(first.treatment.steel.family)
    usual = None if family is None else family.usual

    def level(option: Option) -> bool:
        easy = tie_break(option, job.asked) <= tie_break(first, job.asked)
        return easy and ties_with(option, first, job.asked)

    named = (o for o in group if o.treatment.steel.slug == usual and level(o))
    return max(named, key=lambda option: option.score, default=first)
