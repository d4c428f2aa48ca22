"""Will flame hardening do? The verdict for each steel that could, out of its own histories."""

from collections import defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from catalog import Catalog
from selector.candidates import screened
from selector.duty import Demand
from selector.flame_case import follow
from selector.flame_change import Change, arranged, first_change
from selector.flame_check import edge_notes
from selector.flame_outcome import CheckName, Outcome, Setup
from selector.flame_residual import RESIDUAL_HEAT
from selector.heat.operator import reading
from selector.metallurgy.martensite import hardness
from selector.preparation import supply_hrc
from selector.process import reading_error_c
from selector.requirement import Requirement
from selector.surroundings import Surroundings, surroundings
from selector.torch_depth import LEVEL_LOG_SD
from selector.torch_job import knows
from selector.treatment import Treatment

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
# Nine heats in ten lie within this many standard deviations on the bad side.
NINE_IN_TEN = 1.28


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
    is struck, with the first family that goes that way.
    """

    asked: Requirement
    word: FlameWord
    why: str
    verdicts: tuple[FlameVerdict, ...]
    demand: Demand
    residual: FlameVerdict | None = None

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
    OutOfRangeError
        The part or a bath is none that can be computed.
    """
    around = surroundings(asked, catalog, count=1)
    tell = progress or (lambda _text, _fraction: None)
    lead = around.leading
    families = {} if _is_disc(asked) else _families(asked, catalog, around, steel)
    found: list[FlameVerdict] = []
    for number, (family, items) in enumerate(families.items()):
        tell(f"Heating {family}", number / max(len(families), 1))
        best = _best(_verdicts(items, around, lead))
        if best is not None:
            found.append(best)
    found.sort(key=_rank)
    word, why = _overall(found, lead, asked)
    back = _run_back(asked, catalog, around, found)
    return FlameAnswer(asked, word, why, tuple(found), lead, back)


def _run_back(
    asked: Requirement, catalog: Catalog, around: Surroundings, found: list[FlameVerdict]
) -> FlameVerdict | None:
    """Return the verdict of drawing a struck part's end by the heat left behind it."""
    struck = asked.load.impact == "hammered" or any(z.wear == "edge-impact" for z in asked.zone)
    if not struck or asked.safety_critical or around.leading.floor_hrc is None:
        return None
    wanted = {
        v.treatment.steel.slug: v.outcome.setup
        for v in found
        if v.word in {"yes", "yes_if"} and v.outcome is not None
    }
    ways = [
        item.treatment
        for item in screened(asked, catalog, around.bench)
        if item.gate is None
        and item.treatment.route.slug == RESIDUAL_HEAT
        and knows(item.treatment.source)
        and item.treatment.steel.slug in wanted
    ]
    if not ways:
        return None
    work = min(ways, key=_ease)
    setup = replace(wanted[work.steel.slug], temper=None)
    near = follow(work, around, setup, around.leading)
    # Heat for the draw is laid up behind the zone: half as far again as the zone is long.
    past = max(2.0 * setup.past_mm, 0.5 * (near.part.zone_mm[1] - near.part.zone_mm[0]))
    far = follow(work, around, replace(setup, past_mm=past), around.leading)
    out = min(near, far, key=lambda o: (len(o.failed), -o.surface_hrc))
    failed = {check.name for check in out.failed}
    word: FlameWord = "yes" if not failed else "yes_if" if failed <= HANDLING else "no"
    why = "; ".join(check.text for check in out.failed) or out.sentence
    if out.hardness is not None and out.temper.means == "none":
        why = "after a dip that cools the end through, too little heat comes back to draw it"
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


def _families(
    asked: Requirement, catalog: Catalog, around: Surroundings, steel: str | None
) -> dict[str, list[tuple[Treatment, str | None, bool]]]:
    """Return by family the torch treatments, each with its objection and whether in doubt."""
    wanted = {s.slug for s in catalog.find(steel)} if steel is not None else None
    by_family: dict[str, list[tuple[Treatment, str | None, bool]]] = defaultdict(list)
    for item in screened(asked, catalog, around.bench):
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
    items: list[tuple[Treatment, str | None, bool]], around: Surroundings, lead: Demand
) -> Iterator[FlameVerdict]:
    """Yield the verdicts of a family, the likeliest treatment first, until one is yes."""
    open_ones = [work for work, objection, _ in items if objection is None]
    if not open_ones:
        work, objection, doubt = max(items, key=lambda item: item[2])
        yield FlameVerdict("coupon_first" if doubt else "no", work, objection or "")
    for work in sorted(open_ones, key=_ease):
        answer = _verdict(work, around, lead)
        yield answer
        if answer.word in {"yes", "not_needed"} or _settled(answer):
            return


def _settled(answer: FlameVerdict) -> bool:
    """Return whether only the workshop's own handling stands in the way, whatever the bar."""
    failed = {check.name for check in answer.outcome.failed} if answer.outcome else set()
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


def _rank(verdict: FlameVerdict) -> tuple[int, int, tuple[bool, bool, int]]:
    """Return the order of verdicts: word, then how many demands fail, then ease."""
    failed = len(verdict.outcome.failed) if verdict.outcome else 9
    return (ORDER.index(verdict.word), failed, _ease(verdict.treatment))


def _best(verdicts: Iterator[FlameVerdict]) -> FlameVerdict | None:
    """Return the best verdict of a family."""
    return min(verdicts, key=_rank, default=None)


def _verdict(work: Treatment, around: Surroundings, lead: Demand) -> FlameVerdict:
    """Return the verdict for one treatment that screening lets pass."""
    floor, ceiling = lead.floor_hrc, lead.ceiling_hrc
    supply = float(supply_hrc(work, {"supply_hardness": np.zeros(1)})[0])
    if floor is not None and floor <= supply <= (ceiling or 99.0):
        bar = f"{work.condition.name} bar is {supply:.0f} HRC as bought"
        text = f"{bar}, the zone asks {floor:.0f}"
        return FlameVerdict("not_needed", work, text)
    top = _hardest_hrc(work)
    if floor is not None and floor > top:
        text = (
            f"{work.steel.name} tops out near {top:.0f} HRC undrawn, the zone asks {floor:.0f}"
        )
        return FlameVerdict("no", work, text)
    if work.stock is not None and work.stock.evidence == "none":
        text = (
            f"the {work.steel.name} in the rack is not proved: harden and break a coupon of it"
        )
        return FlameVerdict("coupon_first", work, text, arranged(work, around, lead))
    out = arranged(work, around, lead)
    if not out.failed:
        read = reading_error_c(work, around.asked.workshop)
        odds = (*_odds(work, around, lead, out, read), *edge_notes(out, around))
        word: FlameWord = "yes" if not odds else "yes_if"
        why = out.sentence if not odds else f"yes if {odds[0]}"
        return FlameVerdict(
            word, work, why, out, _steadied(work, around, lead, out, odds), odds
        )
    change = first_change(work, around, lead, out)
    word = "yes_if" if change is not None and change.at_hand else "no"
    why = "; ".join(check.text for check in out.failed)
    return FlameVerdict(word, work, why, out, change)


def _hardest_hrc(work: Treatment) -> float:
    """Return the hardness of a steel's martensite, the most that any quench can give. [HRC]."""
    carbon = work.steel.composition_wt_pct.get("C")
    return float(hardness(min(carbon.high, RICHEST_WT_PCT), 1.0)) if carbon else 70.0


def _steadied(
    work: Treatment, around: Surroundings, lead: Demand, out: Outcome, odds: tuple[str, ...]
) -> Change | None:
    """Return the crayon as the one change, where a heat read with it leaves no condition."""
    read = reading(["crayon"], around.asked.workshop.light)
    error = (read.bias_c, read.scatter_c, read.shift_c)
    if not odds or edge_notes(out, around):
        return None
    found = arranged(work, around, lead, Setup())
    if found.failed or any(_odds(work, around, lead, found, error)):
        return None
    return Change(f"read the heat by a temperature crayon: {found.sentence}", found, False)


def _odds(
    work: Treatment,
    around: Surroundings,
    lead: Demand,
    out: Outcome,
    error_c: tuple[float, float, float],
) -> Iterator[str]:
    """Yield in words what must not go wrong: each error alone, at nine in ten."""
    bias, scatter, shift = error_c
    off = NINE_IN_TEN * float(np.hypot(bias, scatter))
    strong = float(np.exp(NINE_IN_TEN * LEVEL_LOG_SD))
    trials = (
        ({"misread_c": shift - off}, f"the heat is not stopped {off - shift:.0f} °C too early"),
        ({"misread_c": shift + off}, f"the heat is not overshot by {off + shift:.0f} °C"),
        ({"strength": 1.0 / strong}, "the flame is no weaker than usual"),
        ({"strength": strong}, "the flame is drawn back in good time"),
        (
            {"collapse": NINE_IN_TEN},
            "the part is moved well in the bath, so that no vapour clings",
        ),
    )
    for stray, words in trials:
        found = follow(work, around, replace(out.setup, temper=out.temper, **stray), lead)  # type: ignore[arg-type]
        if found.failed:
            yield f"{words} ({found.failed[0].text})"
