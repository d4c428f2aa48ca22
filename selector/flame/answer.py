"""Will the torch do? The verdict of each family, read off its best option at a torch."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from catalog import Catalog
from selector.decision.criteria import Range
from selector.decision.option import Option, Rejected, Scorer, scorer_of
from selector.decision.weighing import Progress, Weighed, silent, weigh
from selector.duty.custom import custom
from selector.figure import median
from selector.flame.as_bought import (
    as_bought_words,
    bar_that_serves,
    goes_before,
    is_bar,
    left_as_bought,
    unheated,
)
from selector.flame.change import Change, first_change
from selector.flame.condition import conditions
from selector.flame.pool import left_alone, torched
from selector.flame.record import FlameWord
from selector.gate import FUNCTIONAL
from selector.job.demand import Demand
from selector.job.job import Job, resolved
from selector.job.treatment import Treatment, knows
from selector.option.reference_bar import reference_cost
from selector.requirement import Requirement
from selector.torch.residual_heat import RESIDUAL_HEAT
from selector.undisturbed import undisturbed

LOCAL, WHOLE = "local-torch", "through-torch"
# What may be said, the word that leaves the least doubt first.
BY_DOUBT: tuple[FlameWord, ...] = ("not_needed", "yes", "yes_if", "coupon_first", "no")
# So many leading families get every error looked at, and the first its one change.
LOOKED_AT = 6
# An option that comes out right less often has a condition of its own; where even three in
# ten go wrong, a hand tries it on a coupon before he risks the part. [-]
SURE, TRIED_FIRST = 0.9, 0.7
# Where one heat in twenty leaves the surface under this, a file says so first. [-], [HRC]
RARELY, SOFT_HRC = 0.05, 20.0


@dataclass(frozen=True, slots=True, eq=False)
class FlameVerdict:
    """The verdict of one family: a word, why, what must not go wrong, the one change.

    It `follows` where its bar would do as bought and yet is not what is advised.
    """

    word: FlameWord
    treatment: Treatment
    why: str
    option: Option | None = None
    conditions: tuple[str, ...] = ()
    change: Change | None = None
    follows: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class FlameAnswer:
    """The answer for a part: one word, and the verdict of each family, best first.

    `residual` is the verdict of dipping the end and letting the heat run back, for a part that
    is struck; where it leaves the least doubt it leads the others too. `bought` is what is sold
    hard enough to be used without any heat.
    """

    job: Job
    ranges: tuple[Range, ...]
    word: FlameWord
    why: str
    verdicts: tuple[FlameVerdict, ...]
    residual: FlameVerdict | None = None
    bought: str | None = None

    @property
    def best(self) -> FlameVerdict | None:
        """The first verdict, if there is any."""
        return self.verdicts[0] if self.verdicts else None


@undisturbed()
def flame_answer(
    asked: Requirement,
    catalog: Catalog,
    steel: str | None = None,
    progress: Progress | None = None,
    job: Job | None = None,
) -> FlameAnswer:
    """Return whether the torch will do for a part; what its `job` has simulated is used."""
    # The zone is heated alone; where it is the whole part, that is heated whole. The options
    # are those that `advise` weighs, in the same order.
    if job is None or steel is not None:
        catalog = catalog.assuming(steel)
        job = resolved(asked, catalog)
    scorer = scorer_of(job, reference_cost(job))
    wanted = None if steel is None else {s.slug for s in catalog.find(steel)}
    if asked.safety_critical or (
        job.leading.floor_hrc is None and _bears_unheated(job, scorer, wanted)
    ):
        word, why = unheated(asked, job.leading)
        return FlameAnswer(job, scorer.ranges, word, why, ())
    weighed = _weighed(job, scorer, wanted, progress or silent)
    verdicts = _verdicts(job, scorer, weighed)
    if verdicts and (verdicts[0].word in {"no", "yes_if"} or verdicts[0].conditions):
        lead = verdicts[0]
        verdicts[0] = replace(lead, change=first_change(job, lead.treatment, lead.option))
    if not verdicts:
        return FlameAnswer(job, scorer.ranges, "no", _unanswered(job), ())
    back = _run_back(job, scorer, verdicts)
    # An end that is dipped and tempered by the heat behind it is hardened at the torch too.
    says = verdicts[0] if back is None else min((verdicts[0], back), key=_doubt)
    if says is back:
        verdicts.insert(0, says)
    bare = bar_that_serves(job, scorer, wanted) if says.word == "no" else None
    if bare is not None:
        why = as_bought_words(bare.treatment, job.leading)
        says = FlameVerdict("not_needed", bare.treatment, why)
        verdicts.insert(0, says)
    bought = _bought_hard(job, verdicts)
    return FlameAnswer(job, scorer.ranges, says.word, says.why, tuple(verdicts), back, bought)


def _unanswered(job: Job) -> str:
    """Return why no family has a verdict."""
    if any(knows(source) for source in job.bench.sources):
        return "no steel that was asked about is hardened at a torch or fire"
    return "the workshop has no torch or fire"


def _weighed(job: Job, scorer: Scorer, steels: set[str] | None, progress: Progress) -> Weighed:
    """Return what is hardened at the torch weighed: the zone alone, else the whole part."""
    local = len(job.hard) < len(job.asked.part.section)
    pool = torched(job, LOCAL if local else WHOLE, steels)
    weighed = weigh(job, pool, scorer, progress, whole=True)
    if weighed.options or not local:
        return weighed
    # Another zone, such as a driving end, may want hardness too: then all of it is heated.
    all_over = weigh(job, torched(job, WHOLE, steels), scorer, progress, whole=True)
    return all_over if all_over.options else weighed


def _bought_hard(job: Job, verdicts: Iterable[FlameVerdict]) -> str | None:
    """Return what is sold hard enough to be used as it is, None where nothing is."""
    for verdict in verdicts:
        bare = left_as_bought(job, verdict.treatment)
        if bare is not None and not is_bar(bare):
            return f"{bare.steel.spoken}: {as_bought_words(bare, job.leading)}"
    return None


def _bears_unheated(job: Job, scorer: Scorer, steels: set[str] | None) -> bool:
    """Return whether any bar, left as it is sold, bears what is asked."""
    # No wear asks for hardness, and yet the load may: a leaf that bends to and fro.
    return bool(weigh(job, left_alone(job, steels), scorer).options)


def _verdicts(job: Job, scorer: Scorer, weighed: Weighed) -> list[FlameVerdict]:
    """Return the verdict of each family, best first."""
    ranked = {option.treatment.steel.family: option for option in reversed(weighed.options)}
    verdicts: dict[str, FlameVerdict] = {}
    promise = partial(_promise, job=job)
    for place, option in enumerate(weighed.options):
        family = option.treatment.steel.family
        if ranked[family] is option:
            verdicts[family] = _of_option(job, option, looked_at=place < LOOKED_AT)
    for stopped in sorted(weighed.apart, key=promise):
        work = stopped.treatment
        verdicts.setdefault(work.steel.family, _of_unknown(stopped, weighed))
    for stopped in sorted(weighed.rejected, key=promise):
        work = stopped.treatment
        verdict = _as_bought(job, work) or _too_dear(job, stopped)
        verdict = verdict or FlameVerdict("no", work, stopped.gate.text, stopped.option)
        verdicts.setdefault(work.steel.family, verdict)
    best = weighed.options[:1]
    needless = [family for family, v in verdicts.items() if v.word == "not_needed"]
    for family in needless if best else ():
        verdict = verdicts[family]
        if not goes_before(job, scorer, verdict.treatment, best[0]):
            verdicts[family] = replace(verdict, follows=True)
    return sorted(verdicts.values(), key=_rank)


def _doubt(verdict: FlameVerdict) -> int:
    """Return how much of a doubt a word leaves, least first."""
    return BY_DOUBT.index(verdict.word)


def _rank(verdict: FlameVerdict) -> int:
    """Return in which turn a verdict stands; what was weighed keeps its order."""
    weighed = verdict.word in {"yes", "yes_if"} or (
        verdict.word == "coupon_first" and bool(verdict.conditions)
    )
    weighed = weighed or verdict.follows
    return BY_DOUBT.index("yes") if weighed else _doubt(verdict)


def _of_unknown(stopped: Rejected, weighed: Weighed) -> FlameVerdict:
    """Return the verdict of an unknown bar: a coupon first, unless no steel serves."""
    work = stopped.treatment
    # What was turned down before anything was worked out says nothing of this torch.
    tried = [item for item in weighed.rejected if item.gate.share is not None]
    if weighed.options or not tried:
        return FlameVerdict("coupon_first", work, stopped.gate.text, stopped.option)
    near = max(tried, key=lambda item: item.share)
    why = (
        f"no steel that is known comes out right here, so a bar that is not does not either: "
        f"{near.treatment.steel.name}: {near.gate.text}"
    )
    return FlameVerdict("no", work, why, stopped.option)


def _promise(stopped: Rejected, job: Job) -> tuple[bool | float, ...]:
    """Return which refusal to show: of the rack, the nearest miss, the usual, its own bath."""
    work, why = stopped.treatment, stopped.gate.name
    hardened, medium = work.steel.hardened, work.medium
    own = bool(hardened and medium and medium.severity_class == hardened.quench)
    usual = custom(work, job.leading, job.asked)
    # Will the flame do: what says so of the flame comes first, what the dealer has last.
    told = (why == "stock") - (why == "heating")
    return work.stock is None, -stopped.share, told, -usual, stopped.option is None, not own


def _as_bought(job: Job, work: Treatment) -> FlameVerdict | None:
    """Return that bar is hard enough as it is bought; None where it is not."""
    bare = left_as_bought(job, work)
    if bare is None or not is_bar(bare):
        return None
    return FlameVerdict("not_needed", bare, as_bought_words(bare, job.leading))


def _of_option(job: Job, option: Option, *, looked_at: bool) -> FlameVerdict:
    """Return the verdict of an option that passes every gate, or narrowly so."""
    work = option.treatment
    bought = _as_bought(job, work)
    if bought is not None:
        return bought
    if work.stock is not None and work.stock.evidence == "none":
        why = (
            f"the {work.steel.name} in the rack is not proved: harden and break a coupon of it"
        )
        return FlameVerdict("coupon_first", work, why, option)
    said = conditions(job, option, every=looked_at)
    right = option.judged.passing_all
    times = f"it comes out right {100 * right:.0f} times in 100"
    if right < TRIED_FIRST:
        why = f"{times}: harden and temper a coupon first"
        return FlameVerdict("coupon_first", work, why, option, said)
    if not said and right < SURE:
        said = (f"it may have to be done again: {times}",)
    if not said and np.quantile(option.judged.prediction.surface_hrc, RARELY) < SOFT_HRC:
        said = ("it is filed before it is tempered: one heat in twenty leaves it soft",)
    if not said:
        return FlameVerdict("yes", work, _sentence(option, job.leading), option)
    return FlameVerdict("yes_if", work, said[0], option, said)


def _too_dear(job: Job, stopped: Rejected) -> FlameVerdict | None:
    """Return the verdict of what money alone stops: it is the torch that is asked about."""
    option = stopped.option
    if stopped.gate.name != "budget" or option is None or stopped.share < FUNCTIONAL[1]:
        return None
    verdict = _of_option(job, option, looked_at=False)
    said = (f"it may cost more: {stopped.gate.text}", *verdict.conditions)
    if verdict.word not in {"yes", "yes_if"}:
        return replace(verdict, conditions=said)
    return replace(verdict, word="yes_if", why=said[0], conditions=said)


def _sentence(option: Option, lead: Demand) -> str:
    """Return what comes out of an option, in a sentence."""
    outcome = option.judged.prediction
    depth = median(outcome.depth_mm)
    deep = "hard through" if outcome.hard_through else f"hard to {depth:.1f} mm"
    surface = median(outcome.surface_hrc)
    text = f"{surface:.0f} HRC, {deep}"
    if lead.low_hrc is not None and not lead.derived and surface < lead.low_hrc:
        short = lead.low_hrc - surface
        text += f"; {lead.low_hrc:.0f} HRC was asked, {short:.1f} under it is within the slack"
    return text


def _run_back(job: Job, scorer: Scorer, verdicts: list[FlameVerdict]) -> FlameVerdict | None:
    """Return the verdict of tempering a struck part's end by the heat left behind it."""
    asked = job.asked
    struck = asked.load.impact == "hammered" or any(z.wear == "edge-impact" for z in asked.zone)
    served = {v.treatment.steel.slug for v in verdicts if v.word in {"yes", "yes_if"}}
    # Where nothing serves that is tempered apart, the heat behind may temper what it can.
    steels = served or {v.treatment.steel.slug for v in verdicts}
    if not struck:
        return None
    weighed = weigh(job, torched(job, RESIDUAL_HEAT, steels), scorer, whole=True)
    if weighed.options:
        return _of_option(job, weighed.options[0], looked_at=True)
    stopped = min(
        (*weighed.apart, *weighed.rejected), key=partial(_promise, job=job), default=None
    )
    if stopped is None:
        return None
    return FlameVerdict("no", stopped.treatment, stopped.gate.text, stopped.option)
