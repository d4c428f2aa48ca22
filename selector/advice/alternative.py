"""What could be done instead: three answers that differ in kind, and why they are not first."""

from typing import Literal

from selector.advice.advise import SURE, Advice
from selector.advice.doing import bar_words, bought_as, doing_words, surface_words
from selector.advice.order import set_back_words, why_not_first
from selector.advice.record import AlternativeOut
from selector.decision.option import Option, Rejected
from selector.decision.output import cost_out, rounded_share
from selector.decision.preference import LESS_SURE
from selector.decision.risk import chief_risk
from selector.duty.custom import custom
from selector.duty.merit import SELDOM
from selector.gate import BY_STEEL, looked_at
from selector.hardness_scale import hv_from_hb, hv_from_hrc
from selector.job.ready_hard import delivered_hrc
from selector.job.sold import sold_for
from selector.job.treatment import Treatment
from selector.option.labour import labour_h
from selector.wording import condition_words, in_100, shown

Kind = Literal["cheap", "better", "as_bought", "bought_hard", "sent_out"]
KIND_WORDS: dict[Kind, str] = {
    "cheap": "Cheap steel, with care",
    "better": "Better steel, simple treatment",
    "as_bought": "No hardening",
    "bought_hard": "Buy it ready hard",
    "sent_out": "Send it out",
}
# What costs little by the kilogram and asks for a careful heat and quench.
CHEAP_STEEL = frozenset(
    {"mild", "free-cutting", "medium-carbon", "high-carbon", "case-hardening", "spring"}
)
# A way that takes so much more of one's own work than the first is no simpler. Estimate. [-]
_SIMPLER = 1.25
# Hardening at home, which a part that needs none is not offered.
_HARDENS: tuple[Kind, ...] = ("cheap", "better")
# Three places: the cheap way, the easy way, and the way round hardening at home.
PLACES: tuple[tuple[Kind, ...], ...] = (
    ("cheap",), ("better",), ("as_bought", "bought_hard", "sent_out"),
)  # fmt: skip
SHOWN = 3


def kind_of(work: Treatment) -> Kind:
    """Return of what kind an answer is."""
    if work.route.place == "subcontract":
        return "sent_out"
    if work.condition.name == "hard-element":
        return "bought_hard"
    if work.route.process in {"none", "anneal", "normalise"}:
        return "as_bought"
    return "cheap" if work.steel.kind in CHEAP_STEEL else "better"


def alternatives(advice: Advice) -> tuple[AlternativeOut, ...]:
    """Return up to three answers that differ in kind, the best of each.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of AlternativeOut
        Never the first option itself; none where there is no first.
    """
    if not advice.options:
        return ()
    best = _worth_saying(advice, _best_of_kinds(advice, advice.options[0]))
    chosen = [k for k in (_first_of(kinds, best) for kinds in PLACES) if k is not None]
    # Where one way is barred, another way round hardening at home takes its place.
    spare = [kind for kind in best if kind not in chosen]
    kinds = [*chosen, *spare][:SHOWN]
    return tuple(_out(advice, kind, *best[kind]) for kind in KIND_WORDS if kind in kinds)


def needs_no_heat(advice: Advice) -> bool:
    """Return whether what stands first serves as it is bought."""
    first = advice.options[0]
    soft = kind_of(first.treatment) == "as_bought"
    return soft and first.judged.passing_all >= SURE


def barred(advice: Advice) -> tuple[str, ...]:
    """Return why a kind of answer that nothing is left of is out, a sentence a kind.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of str
        With the gate that stopped what came nearest; empty where there is no first option.
    """
    if not advice.options or needs_no_heat(advice):
        return ()
    there = {kind_of(option.treatment) for option in advice.options}
    gone = [kind for kinds in PLACES if there.isdisjoint(kinds) for kind in kinds]
    said = ((kind, _stopped(advice, kind)) for kind in gone)
    return tuple(f"{KIND_WORDS[kind]}, not open: {why}" for kind, why in said if why)


def _stopped(advice: Advice, kind: Kind) -> str | None:
    """Return what stopped the nearest of a kind; None where nothing of it was looked at."""
    if kind == "sent_out" and not advice.asked.workshop.subcontract:
        return "the workshop says no (workshop.subcontract)"
    if kind in _HARDENS and not advice.asked.workshop.heat:
        return None
    mine = [
        item
        for item in advice.rejected
        if kind_of(item.treatment) == kind and _could_matter(advice, item)
    ]
    if kind == "as_bought":
        soft, mine = _too_soft(advice, mine)
        if soft is not None:
            return soft
    if not mine:
        return None
    budget = advice.asked.limit.budget
    nearest = max(mine, key=lambda item: _nearness(item, budget))
    text = f"{nearest.gate.text.rstrip('.')} ({bought_as(advice, nearest.treatment.steel)}"
    return f"{text}, right {in_100(nearest.share)})" if nearest.share > 0 else f"{text})"


def _too_soft(advice: Advice, mine: list[Rejected]) -> tuple[str | None, list[Rejected]]:
    """Return that no bar as bought is hard enough, else those that are, of some that fail."""
    lead, asked = advice.job.leading, advice.asked
    floor = lead.floor_hrc if lead.bought_hrc is None else lead.bought_hrc
    if floor is None:
        return None, mine
    hard = [item for item in mine if _as_sold_hrc(item.treatment) >= floor]
    sold = [item for item in advice.rejected if kind_of(item.treatment) == "as_bought"]
    if hard or not sold:
        return None, hard
    usual = [item for item in sold if custom(item.treatment, lead, asked) >= SELDOM]
    if not usual:
        return "no bar as bought is hard enough", hard
    best = max((item.treatment for item in usual), key=_as_sold_hrc)
    words = f"{bought_as(advice, best.steel)}, {condition_words(best.condition.name)}"
    hrc = shown(_as_sold_hrc(best))
    return f"no bar as bought is hard enough: {words}, has {hrc}", hard


def _as_sold_hrc(work: Treatment) -> float:
    """Return how hard a bar is as bought, none of what is softened after. [HRC]."""
    return delivered_hrc(work.condition) if work.route.process == "none" else 0.0


def _could_matter(advice: Advice, item: Rejected) -> bool:
    """Return whether another workshop or demand would let a treatment in."""
    # What is sold for other parts or in other sizes, or is no steel for such a part says
    # nothing.
    if item.gate.name in {"shape", "stock", *BY_STEEL}:
        return False
    return sold_for(item.treatment.condition, advice.asked)


def _nearness(item: Rejected, budget: float | None) -> tuple[float, int, float, bool]:
    """Return how near a treatment came: by share and cost, a soft bar by how hard it is."""
    bought, hv = item.treatment.condition, 0.0
    if bought.hardness_hrc is not None:
        hv = float(hv_from_hrc(bought.hardness_hrc.high, outside="extend"))
    elif bought.hardness_hb is not None:
        hv = float(hv_from_hb(bought.hardness_hb.high, outside="extend"))
    soft = item.treatment.route.process == "none"
    held = item.treatment.stock is not None
    return (item.nearness(budget), looked_at(item.gate), hv if soft else 0.0, held)


def _best_of_kinds(advice: Advice, first: Option) -> dict[Kind, tuple[int, Option]]:
    """Return the best option of each kind with its place; none like the first in all."""
    best: dict[Kind, tuple[int, Option]] = {}
    own = (kind_of(first.treatment), first.treatment.steel.family)
    for place, option in enumerate(advice.options[1:], start=2):
        kind = kind_of(option.treatment)
        other = (kind, option.treatment.steel.family) != own
        if other and not set_back_words(advice, first, option) and _keeps(advice, kind, option):
            best.setdefault(kind, (place, option))
    return best


def _keeps(advice: Advice, kind: Kind, option: Option) -> bool:
    """Return whether an option is beside the first what its kind says: cheap, or simple."""
    first = advice.options[0]
    if kind == "cheap":
        return option.judged.value("cost") < first.judged.value("cost")
    if kind == "better" and kind_of(first.treatment) in _HARDENS:
        # No steel is the better for coming out wrong more often.
        sure = option.judged.passing_all >= first.judged.passing_all - LESS_SURE
        return sure and work_h(advice, option) <= _SIMPLER * work_h(advice, first)
    return True


def _worth_saying(
    advice: Advice, best: dict[Kind, tuple[int, Option]]
) -> dict[Kind, tuple[int, Option]]:
    """Return the kinds that differ: none hardened in vain, no cheap one too dear."""
    gone: set[Kind] = set(_HARDENS) if needs_no_heat(advice) else set()
    if gone and advice.job.leading.low_hrc is None:
        # Nobody sends out to harden what asks for no hardness.
        gone.add("sent_out")
    if "cheap" in best and "better" in best:
        costs = [best[kind][1].judged.value("cost") for kind in _HARDENS]
        gone |= {"cheap"} if costs[0] >= costs[1] else set()
    return {kind: found for kind, found in best.items() if kind not in gone}


def _first_of(kinds: tuple[Kind, ...], best: dict[Kind, tuple[int, Option]]) -> Kind | None:
    """Return which of some kinds stands highest; None where none is left."""
    there = [kind for kind in kinds if kind in best]
    return min(there, key=lambda kind: best[kind][0], default=None)


def work_h(advice: Advice, option: Option) -> float:
    """Return the hours of one's own work on a part: machining, treatment, checking. [h]."""
    items, prices = option.judged.prediction.bill.items, advice.job.catalog.prices
    bench = sum(items[name] for name in ("machining", "inspection", "straightening"))
    heat_h = labour_h(option.treatment, advice.asked.part)
    return float(bench / prices.labour_per_h + heat_h)


def _out(advice: Advice, kind: Kind, place: int, option: Option) -> AlternativeOut:
    """Return an alternative as plain data."""
    bill, judged = option.judged.prediction.bill, option.judged
    return AlternativeOut(
        kind=kind,
        kind_words=KIND_WORDS[kind],
        place=place,
        id=option.id,
        bar=bar_words(advice, option),
        doing=doing_words(advice, option),
        surface=surface_words(option),
        cost=cost_out(bill),
        currency=bill.currency,
        days=bill.days,
        work_h=round(work_h(advice, option), 2),
        passing_all=round(judged.passing_all, 4),
        within_budget=rounded_share(judged.within_budget),
        risk=chief_risk(option),
        why_not_first=why_not_first(advice, option),
    )
