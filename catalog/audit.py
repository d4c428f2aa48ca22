"""Cross-file checks: faults that no single file shows by itself.

One rule a function, from the catalogue to its faults; `RULES` names them all.
"""

from collections.abc import Callable, Iterator, Mapping
from itertools import chain
from typing import get_args

from catalog.fault import fault_line
from catalog.load import FILES, Catalog, load_catalog
from catalog.mark import ConditionName
from catalog.quantity import sourced
from catalog.steel import Steel, SteelClass
from catalog.steel_rule import STEEL_RULES
from catalog.values import Record

LEAST_STEELS = 30
LEAST_ROUTES = 16
LOCAL = ("flame", "fire", "induction")


def audit(catalog: Catalog, *, whole: bool = True) -> tuple[str, ...]:
    """Return every fault that shows only when the files are held against each other.

    Parameters
    ----------
    catalog : Catalog
        A loaded catalogue, so each file is sound by itself.
    whole : bool, optional
        Whether no file is missing from it; what lies idle is looked for only then.

    Returns
    -------
    tuple of str
        Lines of the form "file: key.path: rule (got value)"; empty when all is well.
    """
    idle = () if whole else (_source_used, _family_used)
    return tuple(fault for rule in RULES if rule not in idle for fault in rule(catalog))


def _files(catalog: Catalog) -> Iterator[tuple[str, Record]]:
    """Yield each record that has a file of its own, with the name of the file."""
    for kind in FILES:
        group: Mapping[str, Record] = getattr(catalog, kind)
        for slug, record in group.items():
            yield f"{slug}.toml", record


def _used_sources(catalog: Catalog) -> Iterator[tuple[str, str, str]]:
    """Yield file, key and source of each value."""
    for file, record in _files(catalog):
        for key, value in sourced(record):
            yield file, key, value.source
    for slug, caution in catalog.cautions.items():
        yield "cautions.toml", f"{slug}.fact", caution.fact.source
    for mark, said in catalog.marks.items():
        if said.hardness_hb is not None:
            yield "marks.toml", f"{mark}.hardness_hb", said.hardness_hb.source


def _source_exists(catalog: Catalog) -> Iterator[str]:
    """Every value names a source that sources.toml holds."""
    for file, key, source in _used_sources(catalog):
        if source not in catalog.sources:
            yield fault_line(file, f"{key}.source", "must be a key of sources.toml", source)


def _source_used(catalog: Catalog) -> Iterator[str]:
    """Every source serves a value; those a user's file has replaced may lie idle."""
    known = chain(_used_sources(catalog), _used_sources(load_catalog()))
    used = {source for _, _, source in known}
    for key in sorted(catalog.sources.keys() - used):
        yield fault_line(
            "sources.toml", key, "must be the source of some value", "no use of it"
        )


def _family_used(catalog: Catalog) -> Iterator[str]:
    """Every family has a steel; those a user's file has emptied may stand."""
    steels = [*catalog.steels.values(), *load_catalog().steels.values()]
    for key in sorted(catalog.families.keys() - {steel.family for steel in steels}):
        yield fault_line(
            "families.toml", key, "must be the family of some steel", "no steel in it"
        )
    for key, family in catalog.families.items():
        if family.usual and all((s.slug, s.family) != (family.usual, key) for s in steels):
            rule = "must be the slug of a steel of the family"
            yield fault_line("families.toml", f"{key}.usual", rule, family.usual)


def _caution_exists(catalog: Catalog) -> Iterator[str]:
    """Every caution that a file names is in cautions.toml."""
    for file, record in _files(catalog):
        for key, caution in _named_cautions(record):
            if caution not in catalog.cautions:
                yield fault_line(file, key, "must be a key of cautions.toml", caution)


def _named_cautions(record: Record) -> Iterator[tuple[str, str]]:
    """Yield key and id of each caution a file names."""
    if isinstance(record, Steel):
        for place, limitation in enumerate(record.limitation, start=1):
            if limitation.caution is not None:
                yield f"limitation.{place}.caution", limitation.caution
    else:
        for caution in getattr(record, "cautions", ()):
            yield "cautions", caution


def _equipment_exists(catalog: Catalog) -> Iterator[str]:
    """Every heat source and medium that a route names has its file."""
    for route in catalog.routes.values():
        for key, named, known in (
            ("heat_sources", route.heat_sources, catalog.heat_sources.keys()),
            ("media", route.media, catalog.media.keys()),
        ):
            for name in named:
                if name not in known:
                    rule = f"must be the name of a file in {key}"
                    yield fault_line(f"{route.slug}.toml", key, rule, name)


def _local_heat_is_local(catalog: Catalog) -> Iterator[str]:
    """Demand that a zone is heated by a flame, a fire or a coil: a furnace heats all of it."""
    for route in catalog.routes.values():
        named = (catalog.heat_sources.get(name) for name in route.heat_sources)
        for source in named if route.extent == "local" else ():
            if source is not None and source.kind not in LOCAL:
                rule = f"must be of kind {', '.join(LOCAL)} where a zone is heated"
                got = f"{source.slug}, a {source.kind}"
                yield fault_line(f"{route.slug}.toml", "heat_sources", rule, got)


def _price_is_of_something(catalog: Catalog) -> Iterator[str]:
    """Every price belongs to a steel, supply condition or route of the catalogue."""
    prices = catalog.prices
    for table, asked, known in (
        ("steel_per_kg", prices.steel_per_kg, catalog.steels.keys()),
        ("condition_factor", prices.condition_factor, set(get_args(ConditionName))),
        ("subcontract_minimum", prices.subcontract_minimum, catalog.routes.keys()),
        ("subcontract_per_kg", prices.subcontract_per_kg, catalog.routes.keys()),
    ):
        for key in sorted(asked.keys() - known):
            rule = "must be the price of something in the catalogue"
            yield fault_line("prices.toml", f"{table}.{key}", rule, "no such name")


def _subcontract_has_a_price(catalog: Catalog) -> Iterator[str]:
    """Work sent out has a minimum charge and a charge by mass."""
    sent = {route.slug for route in catalog.routes.values() if route.place == "subcontract"}
    for table in ("subcontract_minimum", "subcontract_per_kg"):
        for slug in sorted(sent - getattr(catalog.prices, table).keys()):
            yield fault_line("prices.toml", f"{table}.{slug}", "must be given", "nothing")


def _classes_are_covered(catalog: Catalog) -> Iterator[str]:
    """Every class of steel has at least one, and there is a choice of steels and routes."""
    present = {steel.kind for steel in catalog.steels.values()}
    for kind in get_args(SteelClass):
        if kind not in present:
            yield fault_line("steels", "kind", f"must include {kind}", "none")
    if len(catalog.steels) < LEAST_STEELS:
        rule = f"must be {LEAST_STEELS} files or more"
        yield fault_line("steels", "(folder)", rule, f"{len(catalog.steels)}")
    if len(catalog.routes) < LEAST_ROUTES:
        rule = f"must be {LEAST_ROUTES} files or more"
        yield fault_line("routes", "(folder)", rule, f"{len(catalog.routes)}")


RULES: tuple[Callable[[Catalog], Iterator[str]], ...] = (
    _source_exists,
    _source_used,
    _family_used,
    _caution_exists,
    _equipment_exists,
    _local_heat_is_local,
    *STEEL_RULES,
    _price_is_of_something,
    _subcontract_has_a_price,
    _classes_are_covered,
)
