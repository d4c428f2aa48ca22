"""The workshop's own things, looked up in the catalogue by the names the user gave."""

from dataclasses import dataclass

from catalog import Catalog
from catalog.heat_source import HeatSource
from catalog.medium import Medium
from catalog.steel import Steel
from selector.errors import Problem, RequirementError
from selector.job.bath_check import bath_problems
from selector.job.supply import stated, taken_as
from selector.requirement import Requirement
from selector.requirement.workshop import Stock

AIR = "air"


@dataclass(frozen=True, slots=True)
class Bench:
    """The workshop's things as catalogue records."""

    sources: tuple[HeatSource, ...]
    media: tuple[Medium, ...]
    stock: tuple[tuple[Stock, Steel], ...]
    unclear: tuple[tuple[Stock, tuple[Steel, ...]], ...] = ()


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
        Records; stock whose name means several steels stands apart.

    Raises
    ------
    RequirementError
        When a heat source, medium or steel is not in the catalogue, or a bath boils or burns.
    """
    shop = requirement.workshop
    problems: list[Problem] = []
    sources = []
    for number, heat in enumerate(shop.heat, start=1):
        source = catalog.heat_sources.get(heat.source)
        if source is None:
            problems.append(
                _unknown(
                    f"workshop.heat.{number}.source",
                    heat.source,
                    "heat source",
                    list(catalog.heat_sources),
                )
            )
            continue
        if heat.ceiling is not None:
            number_c = source.ceiling_c.model_copy(update={"value": heat.ceiling})
            source = source.model_copy(update={"ceiling_c": number_c})
        sources.append(source)
    media = []
    for number, bath in enumerate(shop.bath, start=1):
        medium = catalog.media.get(bath.medium)
        if medium is None:
            problems.append(
                _unknown(
                    f"workshop.bath.{number}.medium", bath.medium, "medium", list(catalog.media)
                )
            )
        else:
            media.append(medium)
    problems += bath_problems(shop, catalog.media)
    if AIR not in {medium.slug for medium in media}:
        media.append(catalog.media[AIR])
    stock, unclear = _racked(requirement, catalog, problems)
    if problems:
        raise RequirementError(*problems)
    return Bench(tuple(sources), tuple(media), stock, unclear)


def _not_listed(number: int, got: str, steel: Steel) -> Problem:
    """Return the problem of a bar in a condition far from all its steel is listed in."""
    rule = f"a supply condition that {steel.name} is listed in"
    listed = ", ".join(condition.name for condition in steel.condition)
    step = f"Choose one of: {listed}; or leave it out."
    return Problem(f"workshop.stock.{number}.condition", rule, repr(got), step)


def _racked(
    requirement: Requirement, catalog: Catalog, problems: list[Problem]
) -> tuple[tuple[tuple[Stock, Steel], ...], tuple[tuple[Stock, tuple[Steel, ...]], ...]]:
    """Return the stock whose name means one steel, and that whose name means several."""
    clear, unclear = [], []
    for number, bar in enumerate(requirement.workshop.stock, start=1):
        steels = catalog.find(bar.steel)
        if not steels:
            names = [steel.name for steel in catalog.steels.values()]
            problems.append(
                _unknown(f"workshop.stock.{number}.steel", bar.steel, "steel", names)
            )
        elif len(steels) > 1:
            unclear.append((bar, steels))
        elif bar.condition and stated(bar) and not taken_as(bar, steels[0]):
            problems.append(_not_listed(number, bar.condition, steels[0]))
        else:
            clear.append((bar, steels[0]))
    return tuple(clear), tuple(unclear)
