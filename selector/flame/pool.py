"""Which treatments a flame is asked about: of one route at a torch, or left as bought."""

from collections.abc import Callable, Iterable

from catalog.route import Route
from catalog.steel import Steel
from selector.job.candidates import Screened, screened
from selector.job.job import Job
from selector.job.treatment import knows


def torched(job: Job, route: str, steels: set[str] | None) -> Iterable[Screened]:
    """Return the treatments of one route at a torch or fire.

    Parameters
    ----------
    job : Job
        Part and workshop.
    route : str
        Name of the route in the catalogue.
    steels : set of str or None
        The steels asked about, None of all.

    Returns
    -------
    iterable of Screened
        With the gate that stops each, if one does.
    """
    pool = _pool(job, steels, lambda by: by.slug == route)
    return (item for item in pool if knows(item.treatment.source))


def left_alone(job: Job, steels: set[str] | None) -> Iterable[Screened]:
    """Return bars that are left as they are bought.

    Parameters
    ----------
    job : Job
        Part and workshop.
    steels : set of str or None
        The steels asked about, None of all.

    Returns
    -------
    iterable of Screened
        With the gate that stops each, if one does.
    """
    return _pool(job, steels, lambda by: by.process == "none")


def _pool(
    job: Job, steels: set[str] | None, taken: Callable[[Route], bool]
) -> Iterable[Screened]:
    """Return the treatments of the steels asked about, by the routes that are taken."""

    def wanted(steel: Steel, by: Route) -> bool:
        return taken(by) and (steels is None or steel.slug in steels)

    return screened(job.asked, job.catalog, job.bench, wanted)
