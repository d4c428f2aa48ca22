"""Every field of every kind of file moves an answer, or `check` says that nothing reads it."""

import types
import typing
from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any, Literal, get_args, get_origin

import pytest

from catalog import load_catalog
from catalog.caution import Caution, Family, Source
from catalog.heat_source import HeatSource
from catalog.mark import Mark
from catalog.medium import Medium
from catalog.price import Prices
from catalog.quantity import ELEMENT_MOST_WT_PCT, implausible
from catalog.route import Route
from catalog.steel import Steel
from catalog.unread import UNREAD, unread
from catalog.values import Record, Sourced
from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.commands import cli as commands
from tests.dog import asked
from tests.overlay_case import CASES, DEFAULT, ORIGIN, SHOP, Case, span

KINDS: Mapping[str, type[Record]] = {
    "steels": Steel, "routes": Route, "media": Medium, "heat_sources": HeatSource,
    "families": Family, "cautions": Caution, "sources": Source, "prices": Prices,
    "marks": Mark,
}  # fmt: skip
STEELS = load_catalog().steels
# A steel of one's own has no price in the shipped list.
MINE = {"mine": STEELS["c45"].model_copy(update={"slug": "mine"})}
SHIPPED = replace(load_catalog(), steels=MappingProxyType({**STEELS, **MINE}))


def plain_types(annotation: Any) -> list[Any]:
    """Return the alternatives of an annotation, without None and what annotates them."""
    origin = get_origin(annotation)
    if origin is typing.Annotated:
        return plain_types(get_args(annotation)[0])
    if origin in (typing.Union, types.UnionType):
        loaded = [plain_types(part) for part in get_args(annotation) if part is not type(None)]
        return [kind for kinds in loaded for kind in kinds]
    return [annotation]


def has_fields(kind: Any) -> bool:
    """Return whether a type is a record with fields of its own, no single sourced value."""
    return isinstance(kind, type) and issubclass(kind, Record) and not issubclass(kind, Sourced)


def keys_of(path: str, kind: Any) -> tuple[str, ...]:
    """Return the keys of a table; "*" stands for names of one's own."""
    if path == "composition_wt_pct":
        return tuple(ELEMENT_MOST_WT_PCT)
    named = plain_types(kind)[0]
    return get_args(named) if get_origin(named) is Literal else ("*",)


def leaves(annotation: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Yield every field of a model with its type; entries of a list share a field."""
    (kind, *_) = plain_types(annotation)
    origin, inner = get_origin(kind), get_args(kind)
    if has_fields(kind):
        for name, part in kind.model_fields.items():
            if name != "slug":
                yield from leaves(part.annotation, f"{path}.{name}" if path else name)
    elif origin is dict:
        for key in keys_of(path, inner[0]):
            yield from leaves(inner[1], f"{path}.{key}")
    elif origin is tuple and has_fields(plain_types(inner[0])[0]):
        yield from leaves(inner[0], path)
    else:
        yield path, kind


FIELDS = {
    f"{kind}.{path}": leaf for kind, model in KINDS.items() for path, leaf in leaves(model)
}


def mutable(value: Any) -> Any:
    """Return plain data with lists for tuples."""
    if isinstance(value, dict):
        return {key: mutable(inner) for key, inner in value.items()}
    return [mutable(inner) for inner in value] if isinstance(value, list | tuple) else value


def other_sourced(value: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Yield sourced values that say clearly something else."""
    numbers = {key: value[key] for key in ("value", "min", "max") if value.get(key)}
    if "points" in value:
        yield {**value, "points": [[x, y - 6.0] for x, y in value["points"]]}
    elif "text" in value:
        yield {**value, "text": f"Altered. {value['text']}"}
    for factor in (1.4, 0.6, 1.1, 0.9, 1.03) if numbers else ():
        yield {**value, **{key: number * factor for key, number in numbers.items()}}


def other(value: Any, kind: Any) -> Iterator[Any]:
    """Yield values of a field that are clearly not the given one."""
    if isinstance(value, dict):
        yield from other_sourced(value)
    elif isinstance(value, bool):
        yield not value
    elif isinstance(value, int | float):
        yield from (value + 1,) if isinstance(value, int) else (1.6 * value, 0.5 * value)
    elif get_origin(kind) is Literal:
        yield from (word for word in get_args(kind) if word != value)
    else:
        yield f"{value} altered" if isinstance(value, str) else value[1:]


def altered(kind: str, path: str, case: Case) -> Iterator[Any]:
    """Yield catalogues in which one field of one entry, or of the price list, is another."""
    group = getattr(SHIPPED, kind)
    record = group[case.entry] if case.entry else group
    *places, last = path.split(".")
    for value in case.values or other(held(record, path, case.key), FIELDS[f"{kind}.{path}"]):
        # What a file leaves out is left out.
        data = mutable(record.model_dump(exclude_unset=True))
        at = data
        for place in places:
            at = at.setdefault(place, {})
            at = at[0] if isinstance(at, list) else at
        at[case.key if last == "*" else last] = value
        try:
            loaded = KINDS[kind].model_validate(data)
        except ValueError:
            continue
        if not list(implausible(loaded)):
            entries = MappingProxyType({**group, case.entry: loaded}) if case.entry else loaded
            yield replace(SHIPPED, **{kind: entries})


def held(record: Record, path: str, key: str) -> Any:
    """Return what a record holds at a field, as plain data."""
    at = mutable(record.model_dump(exclude_none=True))
    for place in path.split("."):
        at = at[0] if isinstance(at, list) else at
        at = at[key if place == "*" else place]
    return at


def answer(catalog: Any, case: Case, cli: Any, monkeypatch: Any) -> str:
    """Return what is answered from a catalogue."""
    if case.listing:
        monkeypatch.setattr("selector.commands.filter.load_catalog", lambda: catalog)
        return cli.invoke(commands, [case.listing, *LISTED[case.listing]]).stdout
    steels = {slug: catalog.steels[slug] for slug in case.steels}
    few = replace(catalog, steels=MappingProxyType(steels))
    return advice_out(
        advise(asked({**SHOP, **case.changes}), few, route=case.route)
    ).model_dump_json()


LISTED = {"steels": ["C45", "--explain"], "routes": []}


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_moves_an_answer_or_is_said_to_be_read_by_nothing(kind, cli, monkeypatch):
    idle, before = [], {}
    for name in (name for name in FIELDS if name.split(".")[0] == kind and name not in UNREAD):
        case = CASES.get(name, DEFAULT[kind])
        asking = replace(case, entry="", values=())
        key = repr(asking)
        if key not in before:
            before[key] = answer(SHIPPED, case, cli, monkeypatch)
        path = name.split(".", 1)[1]
        if not any(
            answer(catalog, case, cli, monkeypatch) != before[key]
            for catalog in altered(kind, path, case)
        ):
            idle.append(name)
    assert idle == []


# What the entries that are tried do not hold, or hold alone.
UNREAD_VALUES = {
    **{
        f"steels.composition_wt_pct.{name}": (span(0.001, 0.01),)
        for name in ELEMENT_MOST_WT_PCT
    },
    "routes.section_mm": (span(1, 20),),
    "routes.held": (True,),
    "heat_sources.note": ([{"text": "Mine.", **ORIGIN}],),
    "families.aliases": (["Mine"],),
}


def test_what_is_said_to_be_unread_is_a_field():
    assert set(UNREAD) <= set(FIELDS)


@pytest.mark.parametrize("name", UNREAD)
def test_what_is_unread_is_said_of_a_file_that_alters_it(name):
    kind, path = name.split(".", 1)
    case = replace(DEFAULT[kind], values=UNREAD_VALUES.get(name, ()))
    (catalog, *_) = altered(kind, path, case)
    (line,) = (line for line in unread(catalog) if not line.startswith("mine.toml"))
    assert line.endswith(f"{path}: nothing reads it: {UNREAD[name]}")
