"""The smallest changes that would make a part come right, each weighed like any other job."""

from collections.abc import Iterator
from dataclasses import dataclass

from catalog.route import Route
from catalog.steel import Steel
from selector.advice.advise import SURE, Advice
from selector.advice.doing import bar_words, doing_words, surface_words
from selector.advice.record import ChangeOut
from selector.decision.option import Option, scorer_of
from selector.decision.weighing import weigh
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.job.candidates import screened
from selector.job.job import resolved
from selector.option.reference_bar import reference_cost
from selector.requirement import Requirement
from selector.requirement.workshop import Bath, Heat, Measure
from selector.wording import in_100, shown

# A change is worth naming where so much more comes right. [-]
GAIN = 0.10
# So many changes are shown, and so many steels looked at for each: those that came nearest.
TOLD, STEELS = 5, 6
# How far a demand is given way to: loads by a tenth, run-out and days twofold, hardness by two
# points, the budget by a quarter.
LESS, TWICE, POINTS_HRC, DEARER = 0.9, 2.0, 2.0, 1.25
OVEN_C, OIL_L = 250.0, 15.0


@dataclass(frozen=True, slots=True)
class _Change:
    """A requirement changed in one thing, and that thing in words."""

    text: str
    asked: Requirement


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
    steels = _nearest(advice)
    tried = []
    for change in _thought_of(advice):
        option = _best(advice, change.asked, steels)
        if option is not None and option.judged.passing_all >= before + GAIN:
            tried.append(_out(advice, change.text, option))
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
    for thought in _thought_of(advice):
        if change.text.startswith(f"{thought.text}: "):
            return thought.asked
    msg = f"no such change: {change.text}"
    raise ValueError(msg)


def _nearest(advice: Advice) -> frozenset[str]:
    """Return the steels that came nearest, of what was ranked and of what was turned down."""
    near = sorted(advice.rejected, key=lambda item: -item.share)
    works = [option.treatment for option in advice.options] + [item.treatment for item in near]
    return frozenset(list(dict.fromkeys(work.steel.slug for work in works))[:STEELS])


def _best(advice: Advice, asked: Requirement, steels: frozenset[str]) -> Option | None:
    """Return the best option of some steels for a changed requirement, None of none."""

    def wanted(steel: Steel, route: Route) -> bool:
        del route
        return steel.slug in steels

    job = resolved(asked, advice.job.catalog)
    scorer = scorer_of(job, reference_cost(job))
    pool = screened(asked, advice.job.catalog, job.bench, wanted)
    return next(iter(weigh(job, pool, scorer).options), None)


def _out(advice: Advice, text: str, option: Option) -> ChangeOut:
    """Return a change with what comes first after it."""
    said = (
        f"{bar_words(advice, option)}: {doing_words(advice, option)}; {surface_words(option)}"
    )
    share = option.judged.passing_all
    return ChangeOut(
        text=f"{text}: {said}, right {in_100(share)}.", id=option.id, passing_all=share
    )


def _thought_of(advice: Advice) -> Iterator[_Change]:
    """Yield the changes: a tool is sooner bought than a demand given up."""
    yield from _of_workshop(advice.asked)
    yield from _of_demands(advice.asked)
    yield from _of_window(advice)


def _of_workshop(asked: Requirement) -> Iterator[_Change]:
    """Yield one thing more in the workshop."""
    shop = asked.workshop

    def with_it(text: str, **update: object) -> _Change:
        more = shop.model_copy(update=update)
        return _Change(text, asked.model_copy(update={"workshop": more}))

    tools: tuple[tuple[Measure, str], ...] = (
        ("crayon", "With a temperature crayon"),
        ("thermocouple", "With a thermocouple"),
    )
    for tool, text in tools:
        if tool not in shop.measure and shop.heat:
            yield with_it(text, measure=(*shop.measure, tool))
    if not any(heat.source == "kitchen-oven" for heat in shop.heat):
        oven = Heat(source="kitchen-oven", ceiling=OVEN_C)
        yield with_it("With a kitchen oven to temper in", heat=(*shop.heat, oven))
    if not any("oil" in bath.medium for bath in shop.bath) and shop.heat:
        yield with_it("With a bath of oil", bath=(*shop.bath, Bath(medium="oil", volume=OIL_L)))
    if shop.heat and not shop.protect:
        yield with_it("Wrapped in foil against the air", protect=("foil",))
    if not shop.subcontract:
        yield with_it("Sent out to a firm", subcontract=True)


def _of_demands(asked: Requirement) -> Iterator[_Change]:
    """Yield one load or limit eased."""
    load, limit = asked.load, asked.limit
    for name in ("torque", "bending", "axial", "contact"):
        value = getattr(load, name)
        if value:
            less = load.model_copy(update={name: LESS * value})
            yield _Change(f"With a tenth less {name}", asked.model_copy(update={"load": less}))

    def eased(text: str, **update: object) -> _Change:
        wider = limit.model_copy(update=update)
        return _Change(text, asked.model_copy(update={"limit": wider}))

    if limit.runout:
        yield eased(
            f"If it may run out {TWICE * limit.runout:g} mm", runout=TWICE * limit.runout
        )
    if limit.days:
        yield eased(f"With {TWICE * limit.days:g} days", days=TWICE * limit.days)
    if limit.budget:
        more = DEARER * limit.budget
        yield eased(f"With a budget of {more:.0f}", budget=more)


def _of_window(advice: Advice) -> Iterator[_Change]:
    """Yield the stated window of the leading zone two points wider at either end."""
    asked, number = advice.asked, advice.job.leading.zone
    zone = asked.zone[number]
    if zone.hardness is None:
        return
    for end, sign, words in (("min", -1.0, "is enough"), ("max", 1.0, "is not too much")):
        hardness_hv = getattr(zone.hardness, end)
        if hardness_hv is None:
            continue
        hrc = float(hrc_from_hv(hardness_hv, outside="extend")) + sign * POINTS_HRC
        wider = zone.hardness.model_copy(
            update={end: float(hv_from_hrc(hrc, outside="extend"))}
        )
        zones = list(asked.zone)
        zones[number] = zone.model_copy(update={"hardness": wider})
        yield _Change(
            f"If {shown(hrc)} {words}", asked.model_copy(update={"zone": tuple(zones)})
        )
