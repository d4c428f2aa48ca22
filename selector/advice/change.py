"""The smallest changes that would make a part come right, each weighed like any other job."""

from collections.abc import Callable, Iterator

from catalog import Catalog
from catalog.route import Route
from catalog.steel import Steel
from selector.advice.advise import SURE, Advice
from selector.advice.altered import Change, thought_of
from selector.advice.doing import bar_words, doing_words, surface_words
from selector.advice.record import ChangeOut
from selector.decision.option import Option, Rejected, scorer_of
from selector.decision.weighing import weigh
from selector.duty.custom import custom
from selector.gate import GateName
from selector.job.bench import Bench, bench
from selector.job.candidates import screened
from selector.job.job import Job, per_job, resolved
from selector.job.supply import at_hand
from selector.job.treatment import Treatment
from selector.option.reference_bar import reference_cost
from selector.requirement import Requirement
from selector.wording import in_100

# A change is worth naming where so much more comes right. [-]
GAIN = 0.10
# So many changes are shown, and so many steels looked at for each: those that came nearest,
# and as many of those that a better workshop lets in.
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
    tried = []
    for change in thought_of(advice):
        option = best_of(advice, change.asked, promising(advice, change))
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


def promising(advice: Advice, change: Change) -> frozenset[str]:
    """Return the steels that a change is tried with.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    change : Change
        One that is worth trying.

    Returns
    -------
    frozenset of str
        Slugs: of what a demand that it eases had stopped, or of what only the workshop had,
        those that promise most, and those that came nearest besides.
    """
    near = nearest(advice, change.eases)
    if change.asked.workshop == advice.asked.workshop:
        return near
    return near | _newly_allowed(advice, change.asked)


def _newly_allowed(advice: Advice, asked: Requirement) -> frozenset[str]:
    """Return the steels most usual for the part, of what a workshop that has more allows."""
    catalog, lead = advice.job.catalog, advice.job.leading
    before = _labels_allowed(advice.job)
    better = _allowed(asked, bench(asked, catalog), catalog)
    news = [work for work in better if work.label not in before]
    news.sort(key=lambda work: (-custom(work, lead, asked), -at_hand(work)))
    # Near-equivalent steels come out alike: one speaks for its family.
    first = {work.steel.family: work.steel.slug for work in reversed(news)}
    ordered = dict.fromkeys(first[work.steel.family] for work in news)
    return frozenset(list(ordered)[:STEELS])


@per_job
def _labels_allowed(job: Job) -> frozenset[str]:
    """Return the labels of what the workshop as it is allows, once for all changes of it."""
    return frozenset(work.label for work in _allowed(job.asked, job.bench, job.catalog))


def _allowed(asked: Requirement, on: Bench, catalog: Catalog) -> Iterator[Treatment]:
    """Yield what nothing speaks against before it is worked out."""
    return (i.treatment for i in screened(asked, catalog, on) if i.gate is None)


def nearest(advice: Advice, first: frozenset[GateName] = frozenset()) -> frozenset[str]:
    """Return the steels that came nearest, of what was ranked and of what was turned down.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    first : frozenset of str
        Gates: half the steels are those that came nearest of what these turned down.

    Returns
    -------
    frozenset of str
        Slugs. Where nothing was predicted, those that such parts are usually made of.
    """
    near = nearest_first(advice)
    eased = [item.treatment for item in near if item.gate.name in first]
    works = [option.treatment for option in advice.options] + [item.treatment for item in near]
    half = list(dict.fromkeys(work.steel.slug for work in eased))[: STEELS // 2]
    return frozenset(list(dict.fromkeys([*half, *(w.steel.slug for w in works)]))[:STEELS])


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
