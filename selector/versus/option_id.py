"""The option that an id names: steel/condition/route/temper."""

from collections.abc import Iterable
from difflib import get_close_matches
from typing import NoReturn

from catalog import Catalog
from selector.errors import Problem, RequirementError
from selector.job.candidates import Screened, Wanted, every, screened
from selector.job.job import Job
from selector.job.screening import heated_thickness
from selector.job.tempers import BLAZE_THIN_MM, tempers
from selector.job.treatment import Temper, Treatment
from selector.requirement import Requirement

FIELD, BREAK = "option", "\u200b"


def option_of(name: str, job: Job) -> tuple[Treatment, Temper]:
    """Return the treatment and the temper that an id names.

    Parameters
    ----------
    name : str
        As `temperwright advise` prints it.
    job : Job
        Part, workshop and catalogue.

    Returns
    -------
    tuple
        Treatment and temper.

    Raises
    ------
    RequirementError
        When this workshop cannot attempt the option, or no such option exists.
    """
    # A sheet lets an id break anywhere, and copied from there it holds those places.
    label, _, last = name.replace(BREAK, "").strip().rpartition("/")
    pool = _labelled(job, lambda steel, _: label.startswith(f"{steel.slug}/"))
    if label not in pool:
        _unknown(name, label or last, list(_labelled(job, every)))
    work, gate = pool[label].treatment, pool[label].gate
    if gate is not None:
        step = "Choose another, or change what the workshop has."
        rule = "one that this workshop could attempt on this part"
        got = f"{name!r} ({gate.text})"
        raise RequirementError(Problem(FIELD, rule, got, step))
    by_label = {temper.label: temper for temper in _tempers(work, job)}
    if last not in by_label:
        near = get_close_matches(last, by_label, n=4, cutoff=0.0)
        rule = f"a temper that {label} can be given here"
        raise RequirementError(Problem(FIELD, rule, repr(last), f"Nearest: {', '.join(near)}."))
    return work, by_label[last]


def _labelled(job: Job, wanted: Wanted) -> dict[str, Screened]:
    """Return the treatments of a job by their label."""
    items = screened(job.asked, job.catalog, job.bench, wanted)
    return {item.treatment.label: item for item in items}


def firms_allowed(asked: Requirement, names: Iterable[str], catalog: Catalog) -> Requirement:
    """Return what is asked, with a firm allowed where an option named is a firm's work.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    names : iterable of str
        Ids of options.
    catalog : Catalog
        What is known.

    Returns
    -------
    Requirement
        The same one where nothing is to be sent out, or it may be anyhow.
    """
    routes = [name.split("/")[2].split(".")[0] for name in names if name.count("/") > 2]
    firms = {slug for slug, route in catalog.routes.items() if route.place == "subcontract"}
    if asked.workshop.subcontract or firms.isdisjoint(routes):
        return asked
    shop = asked.workshop.model_copy(update={"subcontract": True})
    return asked.model_copy(update={"workshop": shop})


def _tempers(treatment: Treatment, job: Job) -> tuple[Temper, ...]:
    """Return every temper this workshop can give a treatment."""
    thin = heated_thickness(job.asked, treatment) <= BLAZE_THIN_MM
    ceilings = job.temper_ceilings_c
    struck = job.asked.load.impact == "hammered"
    return tempers(treatment, ceilings, thin=thin, struck=struck)


def _unknown(name: str, label: str, known: list[str]) -> NoReturn:
    """Refuse an id that names no treatment, with the nearest that do."""
    steel = label.split("/", maxsplit=1)[0]
    like = [other for other in known if other.startswith(f"{steel}/")] or known
    near = get_close_matches(label, like, n=4, cutoff=0.0)
    step = f"Nearest: {', '.join(near)}, each with its temper; `temperwright advise` lists ids."
    raise RequirementError(Problem(FIELD, "the id of a known option", repr(name), step))
