"""The smallest changes that would make a part come right, each weighed like any other job."""

from collections.abc import Callable

from catalog.route import Route
from catalog.steel import Steel
from selector.advice.advise import SURE, Advice
from selector.advice.altered import thought_of
from selector.advice.doing import bar_words, doing_words, surface_words
from selector.advice.record import ChangeOut
from selector.decision.option import Option, Rejected, scorer_of
from selector.decision.weighing import weigh
from selector.duty.custom import custom
from selector.job.candidates import screened
from selector.job.job import resolved
from selector.job.supply import at_hand
from selector.option.reference_bar import reference_cost
from selector.requirement import Requirement
from selector.wording import in_100

# A change is worth naming where so much more comes right. [-]
GAIN = 0.10
# So many changes are shown, and so many steels looked at for each: those that came nearest.
TOLD, STEELS = 5, 6


def changes(advice: Advice) -> tuple[ChangeOut, ...]:
    """Return the changes after which more comes right, those that help most first.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of ChangeOut
        At most five; none where the first option comes right often enough, or lives depend on
        the part.
    """
    before = advice.options[0].judged.passing_all if advice.options else 0.0
    if before >= SURE or advice.asked.safety_critical:
        return ()
    steels = nearest(advice)
    tried = []
    for change in thought_of(advice):
        option = best_of(advice, change.asked, steels)
        if option is not None and option.judged.passing_all >= before + GAIN:
            tried.append(change_out(advice, change.text, option))
    return tuple(sorted(tried, key=lambda change: -change.passing_all)[:TOLD])


def made(advice: Advice, change: ChangeOut) -> Requirement:
    """Return what is asked once a change is made.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    change : ChangeOut
        One of its changes.

    Returns
    -------
    Requirement
        The same part and workshop but for that change.

    Raises
    ------
    ValueError
        When the advice knows no such change.
    """
    for thought in thought_of(advice):
        if change.text.startswith(f"{thought.text}: "):
            return thought.asked
    msg = f"no such change: {change.text}"
    raise ValueError(msg)


def nearest(advice: Advice) -> frozenset[str]:
    """Return the steels that came nearest, of what was ranked and of what was turned down.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    frozenset of str
        Slugs. Where nothing was predicted, those that such parts are usually made of.
    """
    near = nearest_first(advice)
    works = [option.treatment for option in advice.options] + [item.treatment for item in near]
    return frozenset(list(dict.fromkeys(work.steel.slug for work in works))[:STEELS])


def nearest_first(advice: Advice) -> list[Rejected]:
    """Return what was turned down, nearest first: of about equals the rack, the usual.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    list of Rejected
        All that is rejected.
    """
    lead, budget = advice.job.leading, advice.asked.limit.budget

    def nearness(item: Rejected) -> tuple[float, bool, float, float]:
        # Of what money stops, a few per cent of the cost are no tie.
        digits = 2 if item.gate.name == "budget" else 1
        work, near = item.treatment, round(item.nearness(budget), digits)
        usual = custom(work, lead, advice.asked)
        return -near, work.stock is None, -usual, -at_hand(work)

    return sorted(advice.rejected, key=nearness)


def weighed_anew(
    advice: Advice, asked: Requirement, wanted: Callable[[Steel, Route], bool]
) -> tuple[Option, ...]:
    """Return the options of some steels and routes for a changed requirement, best first.

    Parameters
    ----------
    advice : Advice
        What was advised, whose catalogue it is.
    asked : Requirement
        The changed requirement.
    wanted : callable
        Whether a route of a steel is looked at.

    Returns
    -------
    tuple of Option
        As `advise` would rank them.
    """
    job = resolved(asked, advice.job.catalog)
    scorer = scorer_of(job, reference_cost(job))
    pool = screened(asked, advice.job.catalog, job.bench, wanted)
    return weigh(job, pool, scorer).options


def best_of(advice: Advice, asked: Requirement, steels: frozenset[str]) -> Option | None:
    """Return the best option of some steels for a changed requirement, None of none."""

    def wanted(steel: Steel, route: Route) -> bool:
        del route
        return steel.slug in steels

    return next(iter(weighed_anew(advice, asked, wanted)), None)


def change_out(advice: Advice, text: str, option: Option) -> ChangeOut:
    """Return a change with what comes first after it."""
    share = option.judged.passing_all
    return ChangeOut(
        text=f"{text}: {in_short(advice, option)}, right {in_100(share)}.",
        id=option.id,
        passing_all=share,
    )


def in_short(advice: Advice, option: Option) -> str:
    """Return an option in a few words: bar, what is done to it, its hardness."""
    return (
        f"{bar_words(advice, option)}: {doing_words(advice, option)}; {surface_words(option)}"
    )
