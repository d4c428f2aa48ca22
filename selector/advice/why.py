"""Why not this one: a steel or a route by its place, or by the gate that stops it."""

from selector.advice.advise import Advice
from selector.advice.doing import bar_words, doing_words, surface_words, way_words
from selector.advice.let_in import Way, let_in, way_of
from selector.advice.order import why_not_first
from selector.advice.record import ChangeOut, WhyOut
from selector.decision.option import Rejected
from selector.duty.custom import custom
from selector.errors import Problem, RequirementError
from selector.gate import PREDICTED, looked_at
from selector.job.treatment import Treatment
from selector.wording import condition_words, times_in_100

# So many of the ways in which it was thought of are worth a line.
SHOWN = 8
# What only these stop would have been weighed, were there nothing more usual.
PASSED_OVER = frozenset({"custom", "near"})


def why(advice: Advice, name: str) -> tuple[WhyOut, ...]:
    """Return how each way to use a steel or to go a route stands, the nearest first.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    name : str
        Any designation of a steel, or slug or kind of a route.

    Returns
    -------
    tuple of WhyOut
        Its options by place, then what stopped the others, at most `SHOWN`.

    Raises
    ------
    RequirementError
        When the name means no steel and no route.
    """
    steels = {steel.slug for steel in advice.job.catalog.find(name)}
    if not steels and name not in advice.job.catalog.route_names():
        step = "`temperwright steels` and `temperwright routes` list them."
        raise RequirementError(Problem("--why", "a known steel or route", repr(name), step))

    def meant(work: Treatment) -> bool:
        named = name in {work.route.slug, work.route.kind}
        return work.steel.slug in steels if steels else named

    ranked = [
        WhyOut(
            treatment=f"{bar_words(advice, option)}: {doing_words(advice, option)}",
            place=place,
            gate=None,
            text=f"{surface_words(option)}. "
            + (f"Not first: {why_not_first(advice, option)}" if place > 1 else "It is first"),
            share=option.judged.passing_all,
        )
        for place, option in enumerate(advice.options, start=1)
        if meant(option.treatment)
    ]
    stopped = [item for item in (*advice.rejected, *advice.apart) if meant(item.treatment)]

    def nearness(item: Rejected) -> tuple[float, bool, bool, float]:
        # Of what came equally near it is the way that could be gone here, then the usual one,
        # that is asked about.
        usual = custom(item.treatment, advice.job.leading, advice.asked)
        predicted, passed = looked_at(item.gate) == PREDICTED, item.gate.name in PASSED_OVER
        return item.share, predicted, passed, usual

    # One line a reason: what stops a bar in one bath mostly stops it in the next.
    once = {item.gate.text: item for item in sorted(stopped, key=nearness)}
    nearest = sorted(once.values(), key=nearness, reverse=True)
    shown = nearest[: max(0, SHOWN - len(ranked))]
    changes = let_in(advice, shown)
    return tuple([*ranked, *(_stopped(item, changes) for item in shown)][:SHOWN])


def _stopped(item: Rejected, changes: dict[Way, ChangeOut]) -> WhyOut:
    """Return what stopped a treatment, how often it would come out right, what lets it in."""
    work = item.treatment
    text = item.gate.text.rstrip(".")
    if item.share > 0.0:
        text += f"; it would come out right {times_in_100(item.share)}"
    bar = f"{work.steel.spoken}, {condition_words(work.condition.name)}"
    return WhyOut(
        treatment=f"{bar}: {way_words(work)}",
        place=None,
        gate=item.gate.name,
        text=text,
        share=item.share,
        change=changes.get(way_of(work)),
    )
