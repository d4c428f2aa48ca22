"""The workshop's own things, looked up in the catalogue by the names the user gave."""

from dataclasses import dataclass, replace

from catalog import Catalog
from catalog.heat_source import HeatSource
from catalog.medium import Medium
from catalog.price import Prices
from catalog.steel import Steel
from selector.errors import Problem, RequirementError
from selector.job.bath_check import bath_problems
from selector.job.certificate import certified, measured, not_of
from selector.job.supply import Racked, racked
from selector.requirement import Requirement
from selector.requirement.workshop import Stock, Workshop

AIR, SALT = "air", "hot-salt"


@dataclass(frozen=True, slots=True)
class Unclear:
    """A bar of the rack whose name means several steels."""

    bar: Stock
    steels: tuple[Steel, ...]


@dataclass(frozen=True, slots=True)
class Bench:
    """The workshop's things as catalogue records; `prices` are its own over the list's."""

    sources: tuple[HeatSource, ...]
    media: tuple[Medium, ...]
    stock: tuple[Racked, ...]
    prices: Prices
    unclear: tuple[Unclear, ...] = ()


def _unknown(field: str, got: str, kind: str, names: list[str]) -> Problem:
    """Return the problem of a name the catalogue does not hold."""
    known = ", ".join(names[:14]) + (", …" if len(names) > 14 else "")
    return Problem(field, f"a known {kind}", repr(got), f"Choose one of: {known}.")


def bench(requirement: Requirement, catalog: Catalog) -> Bench:
    """Return the workshop's heat sources, media and stock as catalogue records.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    catalog : Catalog
        What is known.

    Returns
    -------
    Bench
        Records; stock whose name means several steels stands apart, a price for such a name
        holds for all of them.

    Raises
    ------
    RequirementError
        When a heat source, medium or steel is not in the catalogue, or a bath boils or burns.
    """
    shop = requirement.workshop
    problems: list[Problem] = []
    sources = _sources(shop, catalog, problems)
    media = _media(shop, sources, catalog, problems)
    problems += bath_problems(shop, catalog.media)
    stock, unclear = _stock(shop, catalog, problems)
    prices = _prices(shop, catalog, problems)
    if problems:
        raise RequirementError(*problems)
    return Bench(sources, media, stock, prices, unclear)


def _sources(
    shop: Workshop, catalog: Catalog, problems: list[Problem]
) -> tuple[HeatSource, ...]:
    """Return the heat sources, each with the ceiling that the user knows of."""
    sources = []
    for number, heat in enumerate(shop.heat, start=1):
        source = catalog.heat_sources.get(heat.source)
        if source is None:
            field, known = f"workshop.heat.{number}.source", list(catalog.heat_sources)
            problems.append(_unknown(field, heat.source, "heat source", known))
            continue
        if heat.ceiling is not None:
            ceiling = source.ceiling_c.model_copy(update={"value": heat.ceiling})
            source = source.model_copy(update={"ceiling_c": ceiling})
        sources.append(source)
    return tuple(sources)


def _media(
    shop: Workshop,
    sources: tuple[HeatSource, ...],
    catalog: Catalog,
    problems: list[Problem],
) -> tuple[Medium, ...]:
    """Return the media of the baths, what a salt pot holds, and air, which everybody has."""
    media = []
    for number, bath in enumerate(shop.bath, start=1):
        medium = catalog.media.get(bath.medium)
        if medium is None:
            field, known = f"workshop.bath.{number}.medium", list(catalog.media)
            problems.append(_unknown(field, bath.medium, "medium", known))
        else:
            media.append(medium)
    had = {medium.slug for medium in media}
    if SALT not in had and any(source.kind == "salt-bath" for source in sources):
        media.append(catalog.media[SALT])
    if AIR not in had:
        media.append(catalog.media[AIR])
    return tuple(media)


def _not_listed(number: int, held: Racked) -> Problem:
    """Return the problem of a bar in a condition far from all its steel is listed in."""
    rule = f"a supply condition that {held.steel.name} is listed in"
    listed = ", ".join(condition.name for condition in held.steel.condition)
    step = f"Choose one of: {listed}; or leave it out."
    field = "condition" if held.bar.condition else "steel"
    got = held.bar.condition or held.bar.steel
    return Problem(f"workshop.stock.{number}.{field}", rule, repr(got), step)


def _stock(
    shop: Workshop, catalog: Catalog, problems: list[Problem]
) -> tuple[tuple[Racked, ...], tuple[Unclear, ...]]:
    """Return the stock whose name means one steel, and that whose name means several."""
    clear, unclear = [], []
    for number, bar in enumerate(shop.stock, start=1):
        steels = _meant(bar.steel, f"workshop.stock.{number}.steel", catalog, problems)
        steels = _commonest(steels, catalog)
        if len(steels) != 1:
            unclear += [Unclear(bar, steels)] if steels else []
            continue
        held = racked(bar, steels[0], catalog)
        # A hard element is bought as such: a bar of it is no bar.
        if not held.conditions and (bar.condition or held.mark):
            problems.append(_not_listed(number, held))
        else:
            problems += not_of(number, bar, held.steel)
            clear.append(_certified(held))
    return tuple(clear), tuple(unclear)


def _meant(
    name: str, field: str, catalog: Catalog, problems: list[Problem]
) -> tuple[Steel, ...]:
    """Return the steels that a name means; where there is none, note the problem."""
    found = catalog.look_up(name)
    if not found.steels:
        problems.append(Problem(field, "a known steel", repr(name), found.did_you_mean))
    return found.steels


def _commonest(steels: tuple[Steel, ...], catalog: Catalog) -> tuple[Steel, ...]:
    """Return the one that people buy of near-equals that a name means, else all it means."""
    families = {steel.family for steel in steels}
    usual = catalog.families[families.pop()].usual if len(families) == 1 else None
    return tuple(steel for steel in steels if steel.slug == usual) or steels


def _prices(shop: Workshop, catalog: Catalog, problems: list[Problem]) -> Prices:
    """Return the price list with what the workshop itself pays in place of it."""
    listed = catalog.prices
    own: dict[str, float] = {}
    for number, price in enumerate(shop.price, start=1):
        steels = _meant(price.steel, f"workshop.price.{number}.steel", catalog, problems)
        own |= dict.fromkeys((steel.slug for steel in steels), price.per_kg)
    changed: dict[str, object] = {"steel_per_kg": listed.steel_per_kg | own} if own else {}
    if shop.labour_per_h is not None:
        changed["labour_per_h"] = shop.labour_per_h
    return listed.model_copy(update=changed) if changed else listed


def _certified(held: Racked) -> Racked:
    """Return a bar with the analysis and the hardness that its certificate gives."""
    conditions = tuple(measured(condition, held.bar) for condition in held.conditions)
    return replace(held, steel=certified(held.steel, held.bar), conditions=conditions)
