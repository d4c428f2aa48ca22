"""Every treatment the catalogue and the workshop allow to be thought of, screened."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from catalog import Catalog
from catalog.heat_source import HeatSource
from catalog.medium import Medium
from catalog.route import Route
from catalog.steel import Condition, Steel
from selector.gate import Gate
from selector.job.bench import Bench
from selector.job.screening import RULES
from selector.job.sold import unfit_bar
from selector.job.supply import Racked, as_drawn
from selector.job.treatment import Treatment, knows
from selector.requirement import Requirement


@dataclass(frozen=True, slots=True)
class Screened:
    """A treatment and the gate that stopped it; `gate` is None where it may go on."""

    treatment: Treatment
    gate: Gate | None


@dataclass(frozen=True, slots=True)
class _Way:
    """A route with the media and the heat sources that it may use in a workshop."""

    route: Route
    media: tuple[Medium, ...]
    sources: tuple[HeatSource | None, ...]


# Processes whose heat is followed in a flame or fire.
FOLLOWED = frozenset({"quench", "marquench", "austemper"})
# Processes whose heat leaves no trace of how the bar was sold.
WIPED = FOLLOWED | {"case", "anneal", "normalise"}
Wanted = Callable[[Steel, Route], bool]
# How bar of a steel is had: a condition, and the bar of the rack that is in it.
_Bar = tuple[Condition, Racked | None]


def every(steel: Steel, route: Route) -> bool:
    """Return that any route of any steel is to be looked at."""
    del steel, route
    return True


def screened(
    requirement: Requirement, catalog: Catalog, on: Bench, wanted: Wanted = every
) -> Iterator[Screened]:
    """Yield every treatment of the catalogue with the first gate that stops it, or none.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    catalog : Catalog
        What is known.
    on : Bench
        What the workshop has.
    wanted : callable, optional
        Whether a route of a steel is looked at.

    Yields
    ------
    Screened
        In catalogue order.
    """
    racked = {racked.steel.slug for racked in on.stock}
    ways = [_Way(r, _media(r, on, catalog), _sources(r, on)) for r in catalog.routes.values()]
    for steel in catalog.steels.values():
        # Nobody buys an unknown bar: it counts only where it lies in the rack.
        if steel.kind == "unknown" and steel.slug not in racked:
            continue
        conditions = _sold_or_racked(requirement, steel, on)
        for treatment in _treatments(steel, conditions, ways, wanted):
            yield Screened(treatment, _objection(requirement, treatment))


def _objection(requirement: Requirement, treatment: Treatment) -> Gate | None:
    """Return the first gate that stops a treatment before anything is worked out, or none."""
    for rule in RULES:
        gate = rule(requirement, treatment)
        if gate is not None:
            return gate
    return None


def like_conditions_merged(going: Iterable[Treatment]) -> list[Treatment]:
    """Return treatments with one supply condition each where the heat wipes out the difference.

    A part that is hardened whole comes out the same from annealed, rolled or drawn bar; the
    easiest to get is kept, a bar in the rack before any.

    Parameters
    ----------
    going : iterable of Treatment
        Treatments that passed screening.

    Returns
    -------
    list of Treatment
        In the order given.
    """
    kept: dict[tuple[str, ...], Treatment] = {}
    for work in going:
        medium = work.medium.slug if work.medium else ""
        whole = work.route.extent == "whole" and work.route.process in WIPED
        heat = work.source.slug if work.source else ""
        bar = "" if whole else work.condition.name
        key = (work.steel.slug, work.route.slug, medium, heat, bar)
        if key not in kept or _ease(work) < _ease(kept[key]):
            kept[key] = work
    return list(kept.values())


def _ease(work: Treatment) -> tuple[bool, int, int]:
    """Return how easily a bar is had, least first."""
    got = ("easy", "order", "rare").index(work.condition.availability)
    surface = ("ground", "bright", "black").index(work.condition.surface)
    return (work.stock is None, got, surface)


def _treatments(
    steel: Steel, conditions: Iterable[_Bar], every_way: Iterable[_Way], wanted: Wanted
) -> Iterator[Treatment]:
    """Yield the treatments of one steel: condition × route × medium."""
    ways = [way for way in every_way if wanted(steel, way.route)]
    for condition, held in conditions:
        bar, meant = (held.bar, held.steel) if held else (None, steel)
        for way in ways:
            route = way.route
            if condition.name not in route.conditions and steel.kind != "unknown":
                continue
            for source in way.sources:
                work = Treatment(meant, condition, route, source=source, stock=bar)
                if not way.media:
                    yield work
                for medium in way.media:
                    yield Treatment(meant, condition, route, medium, source, bar)


def _sold_or_racked(requirement: Requirement, steel: Steel, on: Bench) -> Iterator[_Bar]:
    """Yield each condition of a steel, as the first bar of the rack is that is in it, or sold.

    A bar may be in one that is not listed for its steel: C45+QT. One too thin for the part
    leaves the condition to be bought, where it can be.
    """
    every = [(c, held) for held in on.stock if held.steel.slug == steel.slug
             for c in held.conditions]  # fmt: skip
    fits = [(c, held) for c, held in every if not unfit_bar(requirement, held.bar, c)]
    bought = not requirement.workshop.only_stock and steel.kind != "unknown"
    bars = fits if bought else [*fits, *every]
    thick_mm = max(section.narrowest_mm for section in requirement.part.section)
    for condition in steel.condition:
        sold = (as_drawn(condition, thick_mm), None)
        yield next((pair for pair in bars if pair[0].name == condition.name), sold)
    listed = {condition.name for condition in steel.condition}
    others = {
        c.name: (c, held) for c, held in reversed([*fits, *every]) if c.name not in listed
    }
    yield from others.values()


def _sources(route: Route, on: Bench) -> tuple[HeatSource | None, ...]:
    """Return the sources to try for a route; none where it needs or the shop has none."""
    # Flames and fires that are followed differ in what comes out, so each is tried. Of the
    # rest the measured one is taken before the judged one, then the larger.
    fit = [source for source in on.sources if source.slug in route.heat_sources]
    others = [source for source in fit if not knows(source)]
    best = max(
        others, key=lambda s: (s.control == "instrument", s.section_mm.value), default=None
    )
    if best is not None and best.control == "instrument":
        return (best,)
    flames = tuple(source for source in fit if knows(source))
    if route.process not in FOLLOWED:
        # Only a hardening heat is followed in a flame; any other goes by its size.
        return (max(fit, key=lambda s: s.section_mm.value, default=None),)
    return flames or (best,)


def _media(route: Route, on: Bench, catalog: Catalog) -> tuple[Medium, ...]:
    """Return the media a route may use here: the workshop's baths, or the firm's."""
    if route.place == "subcontract":
        return tuple(catalog.media[slug] for slug in route.media[:2])
    return tuple(medium for medium in on.media if medium.slug in route.media)
