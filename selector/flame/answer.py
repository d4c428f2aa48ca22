"""Will flame hardening do? The verdict for each steel that could, out of its own histories."""

from collections import defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from catalog import Catalog
from selector.flame.arrangement import arranged
from selector.flame.assumption import flame_assumptions
from selector.flame.case import follow
from selector.flame.change import Change, first_change, given_a_bath, heated_whole
from selector.flame.check import asked_words, slack_words
from selector.flame.odds import limits, odds_of, steadied
from selector.flame.outcome import CheckName, Outcome, Setup
from selector.job.candidates import screened
from selector.job.demand import Demand
from selector.job.job import Job, resolved
from selector.job.process import reading_error
from selector.job.treatment import Treatment, knows
from selector.metallurgy.martensite import hardness
from selector.option.mildest_bath import is_too_harsh
from selector.option.preparation import supply_hrc
from selector.requirement import Requirement
from selector.torch.residual_heat import RESIDUAL_HEAT

FlameWord = Literal["yes", "yes_if", "no", "not_needed", "coupon_first"]
Progress = Callable[[str, float], None]
ROUTE = "local-torch"
ORDER: tuple[FlameWord, ...] = ("not_needed", "yes", "yes_if", "coupon_first", "no")
# Beyond this much carbon in solution, austenite is kept and nothing gets harder. [wt %]
RICHEST_WT_PCT = 0.8
# Demands that any bar fails alike until the workshop does it another way.
HANDLING: frozenset[CheckName] = frozenset({"even", "held"})
# Shorter than this share of its thickness, a part is a disc. [-]
DISC = 0.5
# So many of the steels that the flame suits are tried by the heat that runs back.
RUN_BACKS = 3
# Heat for the draw is laid up behind the zone, over this share of its length. Common practice.
LAID_UP = (0.5, 1.0)
# What was not tried for an objection counts as more than any number of misses.
HOPELESS = 9
WHOLE = "the zone is the whole part: harden it whole"


@dataclass(frozen=True, slots=True, eq=False)
class FlameVerdict:
    """The verdict for one steel in one condition and bath."""

    word: FlameWord
    treatment: Treatment
    why: str
    outcome: Outcome | None = None
    change: Change | None = None
    odds: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class FlameAnswer:
    """The answer for a part: one word, and the verdict of each family, best first.

    `residual` is the verdict of dipping the end and letting the heat run back, for a part that
    is struck, with the first family that goes that way; `assumed` what the best family's
    figures take for granted.
    """

    asked: Requirement
    word: FlameWord
    why: str
    verdicts: tuple[FlameVerdict, ...]
    demand: Demand
    residual: FlameVerdict | None = None
    assumed: tuple[str, ...] = ()

    @property
    def best(self) -> FlameVerdict | None:
        """The first verdict, if there is any."""
        return self.verdicts[0] if self.verdicts else None


def flame_answer(
    asked: Requirement,
    catalog: Catalog,
    steel: str | None = None,
    progress: Progress | None = None,
) -> FlameAnswer:
    """Return whether local torch hardening will do for a part.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    catalog : Catalog
        What is known.
    steel : str, optional
        Only this steel, by any name.
    progress : callable, optional
        Called with a sentence and a fraction.

    Returns
    -------
    FlameAnswer
        Verdicts by family, best first.

    Raises
    ------
    RequirementError
        Something is named that the catalogue does not hold, or a bath boils or burns.
    OutOfRangeError
        The part is none that can be computed.
    """
    job = resolved(asked, catalog, count=1)
    tell = progress or (lambda _text, _fraction: None)
    lead = job.leading
    none = lead.floor_hrc is None or _is_disc(asked)
    families = {} if none else _families(asked, catalog, job, steel)
    found: list[FlameVerdict] = []
    for number, (family, items) in enumerate(families.items()):
        tell(f"Heating {family}", number / max(len(families), 1))
        best = _best(_verdicts(items, job, lead))
        if best is not None:
            found.append(best)
    found.sort(key=_rank)
    if found and found[0].why == WHOLE:
        found[0] = replace(found[0], change=heated_whole(found[0].treatment, job, lead))
    elif found and found[0].outcome is None and found[0].word == "no":
        found[0] = replace(found[0], change=given_a_bath(found[0].treatment, job, lead))
    word, why = _overall(found, lead, asked)
    back = _run_back(asked, catalog, job, found)
    shown = found and (found[0].outcome or found[0].change)
    assumed = flame_assumptions(found[0].treatment, job) if shown else ()
    return FlameAnswer(asked, word, why, tuple(found), lead, back, assumed)


def _run_back(
    asked: Requirement, catalog: Catalog, job: Job, found: list[FlameVerdict]
) -> FlameVerdict | None:
    """Return the verdict of drawing a struck part's end by the heat left behind it."""
    struck = asked.load.impact == "hammered" or any(z.wear == "edge-impact" for z in asked.zone)
    if not struck or asked.safety_critical or job.leading.floor_hrc is None:
        return None
    wanted = {
        v.treatment.steel.slug: v.outcome.setup
        for v in found
        if v.word in {"yes", "yes_if"} and v.outcome is not None
    }
    ways: dict[str, Treatment] = {}
    for item in screened(asked, catalog, job.bench):
        work = item.treatment
        if item.gate or work.route.slug != RESIDUAL_HEAT or not knows(work.source):
            continue
        slug = work.steel.slug
        if slug in wanted and (slug not in ways or _ease(work) < _ease(ways[slug])):
            ways[slug] = work
    tried: list[FlameVerdict] = []
    # The dip is into water: steels made for it come first, and of those the best in the flame.
    suited = sorted((slug for slug in wanted if slug in ways), key=lambda s: _ease(ways[s]))
    for slug in suited[:RUN_BACKS]:
        tried.append(_drawn_by_its_own_heat(ways[slug], job, wanted[slug]))
        if tried[-1].word == "yes":
            break
    return min(tried, key=_rank, default=None)


def _drawn_by_its_own_heat(work: Treatment, job: Job, setup: Setup) -> FlameVerdict:
    """Return the verdict of dipping the end of one steel and letting the heat run back."""
    setup = replace(setup, temper=None)
    out = follow(work, job, setup, job.leading)
    long_mm = out.part.zone_mm[1] - out.part.zone_mm[0]
    for share in LAID_UP:
        if not out.failed:
            break
        past = max(2.0 * setup.past_mm, share * long_mm)
        more = follow(work, job, replace(setup, past_mm=past), job.leading)
        out = min(out, more, key=lambda o: (len(o.failed), -o.surface_hrc))
    failed = {check.name for check in out.failed}
    word: FlameWord = "yes" if not failed else "yes_if" if failed <= HANDLING else "no"
    why = "; ".join(check.text for check in out.failed) or out.sentence
    if out.hardness is not None and out.temper.means == "none":
        why = "after a dip that cools the end through, too little heat comes back to draw it"
    if word == "yes_if":
        why = f"yes if this is put right: {why}"
    return FlameVerdict(word, work, why, out)


def _overall(
    found: list[FlameVerdict], lead: Demand, asked: Requirement
) -> tuple[FlameWord, str]:
    """Return the one word for the part, and why."""
    if asked.safety_critical:
        text = "have it hardened by qualified people, or use certified bar"
        return "no", f"{asked.safety_use}: {text}"
    if lead.floor_hrc is None:
        return "not_needed", f"no zone asks for hardness ({lead.reason})"
    if _is_disc(asked):
        text = "heating and quench of a disc are not simulated: try the heat on a coupon"
        return "coupon_first", f"the part is a disc, less than half as long as thick; {text}"
    if not found:
        return "no", "the workshop has no torch or fire, or no steel here answers to one"
    return found[0].word, found[0].why


def _is_disc(asked: Requirement) -> bool:
    """Return whether a part is no bar with an end: a flame plays on its faces."""
    thickest = max(max(s.size, s.width or 0.0) for s in asked.part.section)
    return asked.part.length_mm < DISC * thickest


def _toothed(asked: Requirement) -> bool:
    """Return whether the part has teeth or an edge, where alone it may be meant to be hard."""
    return any(feature.kind in {"teeth", "edge"} for feature in asked.part.feature)


def _families(
    asked: Requirement, catalog: Catalog, job: Job, steel: str | None
) -> dict[str, list[tuple[Treatment, str | None, bool]]]:
    """Return by family the torch treatments, each with its objection and whether in doubt."""
    wanted = {s.slug for s in catalog.find(steel)} if steel is not None else None
    by_family: dict[str, list[tuple[Treatment, str | None, bool]]] = defaultdict(list)
    for item in screened(asked, catalog, job.bench):
        work = item.treatment
        if work.route.slug != ROUTE or not (wanted is None or work.steel.slug in wanted):
            continue
        if not knows(work.source):
            continue
        gate = item.gate
        if gate is not None and gate.name == "heating" and not _needs_soak(work):
            gate = None  # the histories decide whether the flame can do it
        by_family[work.steel.family].append(
            (work, gate.text if gate else None, gate is not None and gate.verdict == "unknown")
        )
    return by_family


def _needs_soak(work: Treatment) -> bool:
    """Return whether a steel needs more heat and time than a colour can judge."""
    hardened = work.steel.hardened
    return hardened is not None and hardened.temperature_c.low > 900.0


def _verdicts(
    items: list[tuple[Treatment, str | None, bool]], job: Job, lead: Demand
) -> Iterator[FlameVerdict]:
    """Yield the verdicts of a family, the likeliest treatment first, until one is yes."""
    open_ones = [work for work, objection, _ in items if objection is None]
    if not open_ones:
        # What is in doubt may yet do; of the rest, the bar in the rack is what was asked about.
        work, objection, doubt = min(items, key=lambda item: (not item[2], _ease(item[0])))
        yield FlameVerdict("coupon_first" if doubt else "no", work, objection or "")
    settled: set[str] = set()
    # With one condition left, a treatment that needs a change cannot be better.
    least = HOPELESS
    for work in sorted(open_ones, key=_ease):
        bath = work.medium.slug if work.medium else ""
        if bath in settled or (settled and is_too_harsh(work.steel, work.medium)):
            continue
        answer = _verdict(work, job, lead, search=least > 1)
        yield answer
        if answer.word == "yes_if":
            least = min(least, _amiss(answer))
        if answer.word in {"yes", "not_needed"}:
            return
        if _settled(answer):
            settled.add(bath)
            # Another bath may leave less to chance.
            if not answer.odds and answer.word == "yes_if":
                return


def _settled(answer: FlameVerdict) -> bool:
    """Return whether only the workshop's own handling stands in the way, whatever the bar."""
    failed = {check.name for check in answer.outcome.failed} if answer.outcome else set()
    if failed == {"bath"}:
        return True
    return answer.word == "yes_if" and bool(failed) and failed <= HANDLING


def _ease(work: Treatment) -> tuple[bool, bool, int]:
    """Return what to try first: the rack, the steel's own bath, bar that is easy to get."""
    hardened, medium = work.steel.hardened, work.medium
    own = bool(hardened and medium and medium.severity_class == hardened.quench)
    return (
        work.stock is None,
        not own,
        ("easy", "order", "rare").index(work.condition.availability),
    )


def _rank(verdict: FlameVerdict) -> tuple[int, int, float, tuple[bool, bool, int]]:
    """Return the order: word, what fails or must not go wrong, narrowest margin, then ease."""
    # In quarters of an error: less of a difference is none, and ease decides.
    spare = round(4.0 * verdict.outcome.margin) / 4.0 if verdict.outcome else 0.0
    return (ORDER.index(verdict.word), _amiss(verdict), -spare, _ease(verdict.treatment))


def _amiss(verdict: FlameVerdict) -> int:
    """Return how many demands fail or must be seen to; untried is worse than any."""
    untried = HOPELESS - 1 if verdict.why == WHOLE else HOPELESS
    failed = len(verdict.outcome.failed) if verdict.outcome else untried
    return failed + len(verdict.odds)


def _best(verdicts: Iterator[FlameVerdict]) -> FlameVerdict | None:
    """Return the best verdict of a family."""
    return min(verdicts, key=_rank, default=None)


def _unheated(work: Treatment, job: Job, lead: Demand) -> FlameVerdict | None:
    """Return the verdict that needs no heat to be computed, None where it does."""
    floor, ceiling = lead.floor_hrc, lead.ceiling_hrc
    supply = float(supply_hrc(work, {"supply_hardness": np.zeros(1)})[0])
    if floor is not None and floor <= supply <= (ceiling or 99.0):
        bar = f"{work.condition.name} bar is {supply:.0f} HRC as bought"
        text = f"{bar}, the zone asks {asked_words(lead)}"
        return FlameVerdict("not_needed", work, text)
    top = _hardest_hrc(work)
    if floor is not None and floor > top:
        text = (
            f"{work.steel.name} tops out near {top:.0f} HRC undrawn, the zone asks "
            f"{asked_words(lead)}"
        )
        return FlameVerdict("no", work, text)
    if len(job.hard) == len(job.asked.part.section) and not _toothed(job.asked):
        return FlameVerdict("no", work, WHOLE)
    return None


def _verdict(work: Treatment, job: Job, lead: Demand, *, search: bool = True) -> FlameVerdict:
    """Return the verdict for one treatment that screening lets pass; the change if searched."""
    plain = _unheated(work, job, lead)
    if plain is not None:
        return plain
    if work.stock is not None and work.stock.evidence == "none":
        text = (
            f"the {work.steel.name} in the rack is not proved: harden and break a coupon of it"
        )
        return FlameVerdict("coupon_first", work, text, arranged(work, job, lead))
    out, shop = arranged(work, job, lead), job.asked.workshop
    read = reading_error(work, shop)
    if not out.failed:
        odds = (*odds_of(work, job, lead, out, read), *limits(out, job))
        word: FlameWord = "yes" if not odds else "yes_if"
        why = out.sentence + slack_words(out, lead) if not odds else f"yes if {odds[0]}"
        return FlameVerdict(word, work, why, out, steadied(work, job, lead, out, odds), odds)
    change = first_change(work, job, lead, out) if search else None
    why = "; ".join(check.text for check in out.failed)
    if change is None or not change.at_hand:
        return FlameVerdict("no", work, why, out, change)
    # What must not go wrong is told of the part as it is then done.
    after, then = change.outcome, change.work or work
    if after.setup.misread_c < read.shift_c:  # judged out of the sun
        read = reading_error(work, shop.model_copy(update={"light": "shade"}))
    odds = (*odds_of(then, job, lead, after, read), *limits(after, job))
    why = f"yes if you {change.text.partition(': ')[0]}; as it is, {why}"
    return FlameVerdict("yes_if", work, why, out, change, odds)


def _hardest_hrc(work: Treatment) -> float:
    """Return the hardness of a steel's martensite, the most that any quench can give. [HRC]."""
    carbon = work.steel.composition_wt_pct.get("C")
    return float(hardness(min(carbon.high, RICHEST_WT_PCT), 1.0)) if carbon else 70.0
