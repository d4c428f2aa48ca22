"""TOML files into one frozen catalogue; every failure says file, key, rule and value."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, replace
from functools import cache, cached_property
from pathlib import Path
from types import MappingProxyType
from typing import Any, TypeVar

import tomli
from pydantic import ValidationError

from catalog.caution import Caution, Family, Source
from catalog.fault import fault_line
from catalog.heat_source import HeatSource
from catalog.kept import kept
from catalog.look_up import Carriers, Meaning, carriers, listed, look_up
from catalog.mark import Mark
from catalog.medium import Medium
from catalog.price import Prices
from catalog.quantity import implausible
from catalog.route import Route
from catalog.steel import Steel
from catalog.text import RULE, is_steady
from catalog.values import Record

SHIPPED = Path(__file__).parent
R = TypeVar("R", bound=Record)
# What is a folder with a record a file, and what is a file with a record a table.
FILES: Mapping[str, type[Record]] = MappingProxyType(
    {"steels": Steel, "routes": Route, "media": Medium, "heat_sources": HeatSource}
)
TABLES: Mapping[str, type[Record]] = MappingProxyType(
    {"families": Family, "cautions": Caution, "sources": Source, "marks": Mark}
)


class CatalogError(Exception):
    """One or more catalogue files break a rule; the text lists them all, one a line.

    Parameters
    ----------
    problems : tuple of str
        Lines of the form "file: key.path: rule (got value)".
    rest : Catalog, optional
        The catalogue without the files that broke one, for whoever looks for more faults.
    """

    def __init__(self, problems: tuple[str, ...], rest: "Catalog | None" = None) -> None:
        self.problems = problems
        self.rest = rest
        super().__init__("\n".join(problems))


@dataclass(frozen=True)
class Catalog:
    """All that is known: steels, routes, media, heat sources, cautions, prices, sources."""

    steels: MappingProxyType[str, Steel]
    routes: MappingProxyType[str, Route]
    media: MappingProxyType[str, Medium]
    heat_sources: MappingProxyType[str, HeatSource]
    families: MappingProxyType[str, Family]
    cautions: MappingProxyType[str, Caution]
    sources: MappingProxyType[str, Source]
    marks: MappingProxyType[str, Mark]
    prices: Prices

    @cached_property
    def carriers(self) -> Carriers:
        """The steels that carry each name."""
        return carriers(self.steels.values())

    def look_up(self, name: str) -> Meaning:
        """Return what a written name means, or what it may have meant; see `look_up`."""
        return look_up(name, self.carriers)

    def listed(self, text: str) -> tuple[Steel, ...]:
        """Return the steels that a text means, by whatever it is part of; see `listed`."""
        groups = {slug: family.name for slug, family in self.families.items()}
        return listed(text, self.steels.values(), self.carriers, groups)

    def find(self, name: str) -> tuple[Steel, ...]:
        """Return the steels that carry `name` in any naming system.

        Parameters
        ----------
        name : str
            A designation in any spelling, with or without its system: "EN 19", "1.7225",
            "AISI 4140", "silver steel".

        Returns
        -------
        tuple of Steel
            Empty when no steel has this name; more than one when the name means several. Each
            has the composition that the name stands for.
        """
        return self.look_up(name).steels

    def assuming(self, name: str | None) -> "Catalog":
        """Return the catalogue with the composition that a name stands for.

        Parameters
        ----------
        name : str or None
            A designation; None, or one without a window of its own, changes nothing.

        Returns
        -------
        Catalog
            Itself, or a copy with the steels of this name as it means them.
        """
        meant = {steel.slug: steel for steel in self.find(name)} if name else {}
        if all(self.steels[slug] is steel for slug, steel in meant.items()):
            return self
        return replace(self, steels=MappingProxyType({**self.steels, **meant}))

    def route_names(self) -> set[str]:
        """Return what routes are called by: slugs and kinds."""
        return {name for route in self.routes.values() for name in (route.slug, route.kind)}


# What pydantic says of a fault, in the words of a rule; others stand as it says them.
_RULES = {
    "missing": "must be given",
    "string_too_short": "must not be empty",
    "too_short": "must not be empty",
    "extra_forbidden": "must be a field of this file",
    "float_type": "must be a number",
    "int_type": "must be a whole number",
    "string_type": "must be text in quotes",
    "bool_type": "must be true or false",
    "tuple_type": "must be a list in square brackets",
}


def _problems_of(path: Path, entry: str, error: ValidationError) -> Iterator[str]:
    """Yield one line for each fault pydantic lists for `path`, or in one entry of it."""
    faults = error.errors(include_url=False)
    for fault in faults:
        place = fault["loc"]
        inner = any(other["loc"][: len(place)] == place for other in faults if other != fault)
        if fault["type"] == "too_short" and inner:
            continue  # empty only because what stands in it is faulty
        # Entries of a list are counted from 1, as in a requirement.
        steps = (str(step + 1) if isinstance(step, int) else step for step in place)
        key = ".".join(step for step in (entry, *steps) if step) or "(whole file)"
        rule = _RULES.get(fault["type"], fault["msg"].removeprefix("Value error, "))
        rule = rule.replace("Input should be a valid", "must be a valid").replace(
            "Input should", "must"
        )
        got = "nothing" if fault["type"] == "missing" else f"{fault['input']!r:.80}"
        yield fault_line(path.name, key, rule, got)


def _table(path: Path, problems: list[str]) -> dict[str, Any] | None:
    """Return the parsed file, or None with the fault noted."""
    try:
        return tomli.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        got = f"nothing at {path}"
        problems.append(fault_line(path.name, "(whole file)", "file must exist", got))
    except ValueError as fault:  # TOML, encoding, or an integer without end
        problems.append(f"{path.name}: (whole file): must be UTF-8 TOML ({fault})")
    return None


def _record(
    model: type[R], data: object, path: Path, problems: list[str], entry: str = ""
) -> R | None:
    """Return `data` as a record, or None with its faults noted."""
    try:
        record = model.model_validate(data)
    except ValidationError as error:
        problems.extend(_problems_of(path, entry, error))
        return None
    problems.extend(fault_line(path.name, *fault) for fault in implausible(record))
    return record


def _folder(
    model: type[R],
    folders: tuple[Path, ...],
    name: str,
    problems: list[str],
    below: Mapping[str, R] | None,
) -> MappingProxyType[str, R]:
    """Return one record a file, keyed by file name; later folders replace earlier entries."""
    records = dict(below or {})
    for folder in folders:
        for path in sorted((folder / name).glob("*.toml")):
            data = _table(path, problems)
            if data is None:
                continue
            if "slug" in data:
                rule, got = "the file's name is the slug", f"{data['slug']!r:.80}"
                problems.append(fault_line(path.name, "slug", rule, got))
                continue
            record = _record(model, {"slug": path.stem, **data}, path, problems)
            if record is not None:
                records[path.stem] = record
    return MappingProxyType(dict(sorted(records.items())))


def _mapping(
    model: type[R],
    folders: tuple[Path, ...],
    name: str,
    problems: list[str],
    below: Mapping[str, R] | None,
) -> MappingProxyType[str, R]:
    """Return the named tables of one file as records; later folders add or replace."""
    records = dict(below or {})
    for folder in folders:
        path = folder / f"{name}.toml"
        if not path.exists() and folder != SHIPPED:
            continue
        for key, data in (_table(path, problems) or {}).items():
            record = _record(model, data, path, problems, key)
            if not is_steady(key):
                rule, got = f"must be {RULE}", f"{key!r:.80}"
                problems.append(fault_line(path.name, "(table name)", rule, got))
            if record is not None:
                records[key] = record
    return MappingProxyType(records)


def _prices(
    folders: tuple[Path, ...], problems: list[str], below: Prices | None
) -> Prices | None:
    """Return the last price list there is."""
    paths = [path for folder in folders if (path := folder / "prices.toml").exists()]
    if not paths and below is not None:
        return below
    path = paths[-1] if paths else folders[-1] / "prices.toml"
    data = _table(path, problems)
    return None if data is None else _record(Prices, data, path, problems)


def load_catalog(*folders: str | Path) -> Catalog:
    """Return the shipped catalogue, overlaid by the user's `folders` in the given order.

    Parameters
    ----------
    *folders : str or Path
        Folders of the same layout as the shipped one; any part may be absent.

    Returns
    -------
    Catalog
        Frozen; the shipped one alone is read once a process.

    Raises
    ------
    CatalogError
        When any file breaks a rule; all faults of all files are listed.
    """
    return _load((SHIPPED, *(Path(folder) for folder in folders)))


@cache
def _load(folders: tuple[Path, ...]) -> Catalog:
    """Return the catalogue of all folders; the shipped one as it is kept, if it is."""
    if folders != (SHIPPED,):
        try:
            shipped = _load((SHIPPED,))
        except CatalogError:  # its faults are listed with those of the other folders
            return _read(folders)
        return _read(folders[1:], shipped)
    parts = dict(kept(SHIPPED, lambda: _plain(_read(folders))))
    prices = parts.pop("prices")
    return Catalog(**{k: MappingProxyType(v) for k, v in parts.items()}, prices=prices)


def _plain(known: Catalog) -> dict[str, Any]:
    """Return a catalogue as what can be written to disk."""
    parts = {field.name: getattr(known, field.name) for field in fields(known)}
    return {name: part if name == "prices" else dict(part) for name, part in parts.items()}


def _is_folder(path: Path) -> bool:
    """Return whether a folder is there; a name that no file can have is none."""
    try:
        return path.is_dir()
    except (OSError, ValueError):
        return False


def _read(folders: tuple[Path, ...], under: Catalog | None = None) -> Catalog:
    """Return the checked catalogue of folders, laid over another; see `load_catalog`."""
    below = _plain(under) if under else dict.fromkeys(field.name for field in fields(Catalog))
    there = tuple(folder for folder in folders if _is_folder(folder))
    problems = [
        fault_line(str(folder), "(folder)", "folder must exist", "nothing there")
        for folder in folders
        if folder not in there
    ]
    parts: dict[str, Any] = {"prices": _prices(there, problems, below["prices"])}
    for name, model in FILES.items():
        parts[name] = _folder(model, there, name, problems, below[name])
    for name, model in TABLES.items():
        parts[name] = _mapping(model, there, name, problems, below[name])
    problems += [
        fault_line(
            f"{steel.slug}.toml", "family", "must be a key of families.toml", steel.family
        )
        for steel in parts["steels"].values()
        if steel.family not in parts["families"]
    ]
    known = None if parts["prices"] is None else Catalog(**parts)
    if problems or known is None:
        raise CatalogError(tuple(problems), known)
    return known
