"""Whether a bar is hard enough as it is bought, and what no one here hardens."""

from dataclasses import replace

from selector.decision.hardness_gate import ceiling_hrc
from selector.decision.option import Option, Scorer
from selector.decision.preference import in_order
from selector.decision.weighing import weigh
from selector.duty.custom import custom
from selector.duty.merit import SELDOM
from selector.flame.pool import left_alone
from selector.flame.record import FlameWord
from selector.hardening.stock import bought_hrc
from selector.job.asked_words import asked_words
from selector.job.borne import CERTIFIED_HRC
from selector.job.candidates import Screened
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.ready_hard import TURNED_HRC, delivered_hrc
from selector.job.sold import stock_rule
from selector.job.supply import as_drawn, is_rare
from selector.job.treatment import Treatment
from selector.requirement import Requirement


def left_as_bought(job: Job, work: Treatment) -> Treatment | None:
    """Return how a steel serves without any heat, None where it does not.

    Parameters
    ----------
    job : Job
        What is asked, and what is known.
    work : Treatment
        A treatment of the steel: a bar of the rack counts as it lies there, others in every
        condition that they are sold in.

    Returns
    -------
    Treatment or None
        The bar left as bought, where it is as hard as the leading zone asks, can be cut to the
        part, and such parts are made of it so.
    """
    thick_mm = max(section.narrowest_mm for section in job.asked.part.section)
    sold = (work.condition,) if work.stock is not None else tuple(
        as_drawn(condition, thick_mm) for condition in work.steel.condition
    )  # fmt: skip
    routes = [route for route in job.catalog.routes.values() if route.process == "none"]
    return next(
        (
            bare
            for condition in sold
            for route in routes
            if condition.name in route.conditions
            for bare in [
                replace(work, condition=condition, route=route, medium=None, source=None)
            ]
            if _serves(job, bare)
        ),
        None,
    )


def goes_before(job: Job, scorer: Scorer, bare: Treatment, option: Option) -> bool:
    """Return whether a bar left as bought is advised before what is hardened at the torch.

    Parameters
    ----------
    job : Job
        What is asked, and what is known.
    scorer : Scorer
        By which both are weighed.
    bare : Treatment
        The bar left as bought.
    option : Option
        The best at the torch.

    Returns
    -------
    bool
        False too where the bar fails a demand other than that for hardness.
    """
    left = weigh(job, (Screened(bare, None),), scorer, whole=True).options
    return bool(left) and in_order([*left, option], job.asked)[0] is not option


def bar_that_serves(job: Job, scorer: Scorer, steels: set[str] | None) -> Option | None:
    """Return the best bar that is as hard as asked where it lies or as it is sold.

    Parameters
    ----------
    job : Job
        What is asked, and what is known.
    scorer : Scorer
        By which bars are weighed.
    steels : set of str or None
        The steels asked about, None of all.

    Returns
    -------
    Option or None
        None where no bar serves without any heat.
    """
    options = weigh(job, left_alone(job, steels), scorer).options
    works = ((option, option.treatment) for option in options)
    return next((o for o, work in works if is_bar(work) and _serves(job, work)), None)


def _serves(job: Job, bare: Treatment) -> bool:
    """Return whether a bar serves as bought."""
    if not _is_as_asked(bare, job.leading):
        return False
    sold = not is_rare(bare) and custom(bare, job.leading, job.asked) >= SELDOM
    return (bare.stock is not None or sold) and stock_rule(job.asked, bare) is None


def _is_as_asked(bare: Treatment, lead: Demand) -> bool:
    """Return whether a bar as bought lies between floor and ceiling."""
    hrc, top = bought_hrc(bare.condition), ceiling_hrc(bare, lead)
    ceiling = 99.0 if top is None else top
    # The slack of a window that was given is for what a heat strays by; a mill's bar is picked.
    floor = lead.floor_hrc if lead.derived else lead.low_hrc
    return floor is not None and floor <= hrc <= ceiling


def is_bar(bare: Treatment) -> bool:
    """Return whether what is bought is bar to be made into the part, or lies in the rack."""
    # What is sold harder than can be turned was hardened to be used: it answers whether to
    # buy, not whether a flame will do.
    return bare.stock is not None or delivered_hrc(bare.condition) <= TURNED_HRC


def as_bought_words(bare: Treatment, lead: Demand) -> str:
    """Return how hard a bar is as bought, beside what is asked."""
    condition = bare.condition
    bar = f"{condition.name} bar is {bought_hrc(condition):.0f} HRC as bought"
    return f"{bar}, the zone asks {asked_words(lead)}"


def unheated(asked: Requirement, lead: Demand) -> tuple[FlameWord, str]:
    """Return the word for a part that nobody here hardens, and why.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    lead : Demand
        Of its leading zone.

    Returns
    -------
    tuple of str
        The word and its reason.
    """
    needless = lead.floor_hrc is None or (lead.low_hrc or 0.0) <= CERTIFIED_HRC
    if asked.safety_critical:
        text = (
            "use certified bar"
            if needless
            else ("have it hardened by qualified people, or use certified bar")
        )
        return "not_needed" if needless else "no", f"{asked.vital_use}: {text}"
    asks = "asks for hardness" if lead.low_hrc is None else "has to be hard"
    return "not_needed", f"no zone {asks} ({lead.reason})"
