"""What a workshop can do with a part, route by route, before any steel is chosen."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from catalog.heat_source import HeatSource
from catalog.medium import Medium
from catalog.route import Route
from catalog.steel import Steel
from selector.job.bench import AIR
from selector.job.candidates import screened
from selector.job.job import Job
from selector.job.screening import heated_thickness
from selector.job.treatment import Means, Treatment

# Gates that speak of part and workshop; the others speak of a steel.
_OF_THE_PART = frozenset({"equipment", "safety", "shape", "core", "heating"})


@dataclass(frozen=True, slots=True)
class Reach:
    """Whether a workshop can go a route with a part; `barred` says why not, else is empty.

    `media` are the baths it has for it. `beyond` is the largest heat source where the part is
    thicker than that heats evenly, and `thick_mm` the round the part heats like.
    """

    route: Route
    media: tuple[Medium, ...] = ()
    beyond: HeatSource | None = None
    thick_mm: float = 0.0
    barred: str = ""


@dataclass(frozen=True, slots=True)
class Able:
    """What a workshop can do: its routes in the order of the catalogue, how hot it tempers."""

    routes: tuple[Reach, ...]
    temper_c: Mapping[Means, float]


def able(job: Job) -> Able:
    """Return what a workshop can do with a part by every route that hardens or softens.

    Parameters
    ----------
    job : Job
        Part and workshop.

    Returns
    -------
    Able
        Without the routes that nothing but their steels keep shut.
    """
    first: dict[str, Treatment] = {}
    barred: dict[str, Counter[str]] = {
        slug: Counter() for slug, route in job.catalog.routes.items() if route.process != "none"
    }
    shut: set[str] = set()

    def wanted(steel: Steel, route: Route) -> bool:
        del steel
        slug = route.slug
        return slug in barred and slug not in first and slug not in shut

    for item in screened(job.asked, job.catalog, job.bench, wanted):
        slug, gate = item.treatment.route.slug, item.gate
        if gate is None:
            first.setdefault(slug, item.treatment)
        elif gate.name in _OF_THE_PART:
            barred[slug][gate.text] += 1
            # What is not there is wanting for any steel.
            shut |= {slug} if gate.name == "equipment" else set()
    routes = tuple(
        _open(job, first[slug]) if slug in first
        else Reach(job.catalog.routes[slug], barred=texts.most_common(1)[0][0])
        for slug, texts in barred.items()
        if slug in first or texts
    )  # fmt: skip
    return Able(routes, job.temper_ceilings_c)


def _open(job: Job, work: Treatment) -> Reach:
    """Return a route that can be gone, with the baths there are for it."""
    media = tuple(m for m in job.bench.media if m.slug in work.route.media and m.slug != AIR)
    fit = [s for s in job.bench.sources if s.slug in work.route.heat_sources]
    largest = max(fit, key=lambda s: s.section_mm.value, default=None)
    thick_mm = heated_thickness(job.asked, work)
    if largest is None or thick_mm <= largest.section_mm.value:
        return Reach(work.route, media)
    return Reach(work.route, media, largest, thick_mm)
