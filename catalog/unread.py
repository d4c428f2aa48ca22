"""Fields of the catalogue that no answer rests on, so that nobody tunes one in vain.

They are kept because they are published, explain a record to whoever reads its file, or are
held against each other by the audit.
"""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from catalog.load import FILES, TABLES, Catalog, load_catalog
from catalog.values import Record, Sourced

_CRITICAL = "critical temperatures are computed from the composition; the audit alone reads it"
_TRACE = "hardening is computed from C, Si, Mn, Cr, Mo, Ni, V, Cu and W alone"
_NOTE = "a remark for whoever reads the file"

# Kind of file and field, with the reason. A test alters every other field of every kind of file
# and asks for an answer that it moves.
UNREAD: Mapping[str, str] = MappingProxyType(
    {
        **{f"steels.temperature_c.{name}": _CRITICAL for name in ("ac1", "ac3", "ms")},
        **{
            f"steels.composition_wt_pct.{element}": _TRACE
            for element in ("P", "S", "N", "Pb", "Al", "B", "Ti", "Nb", "Co")
        },
        "routes.held": "how long a part is held at heat goes by its steel and source",
        "routes.section_mm": "what a route can heat goes by its heat source",
        "routes.note": _NOTE,
        "media.temperature_c": "how warm a bath is stands in the requirement, or is usual",
        "media.flash_point_c": "its caution states the rule; no bath is judged by it",
        "media.note": _NOTE,
        "heat_sources.power_w": "a flame goes by its gas, a furnace by its chamber",
        "heat_sources.note": _NOTE,
        "families.aliases": "a steel is known by its own names",
        "cautions.hazard": "a caution is shown by its step and text",
        "prices.note": _NOTE,
    }
)


def _values(record: Record) -> dict[str, tuple[object, ...]]:
    """Return what each field of a record says; entries of a list share a field."""
    said: dict[str, tuple[object, ...]] = {}
    for field, value in _fields(record, ""):
        said[field] = (*said.get(field, ()), value)
    return said


def _fields(value: object, field: str) -> Iterator[tuple[str, object]]:
    """Yield field and value of everything inside a value."""
    if isinstance(value, Sourced):
        yield field, value.model_dump(exclude={"source", "at", "basis", "seen"})
    elif isinstance(value, Record):
        # What the file leaves out is nobody's statement.
        stated = {name: inner for name, inner in value if name in value.model_fields_set}
        yield from _fields(stated, field)
    elif isinstance(value, dict):
        for name, inner in value.items():
            yield from _fields(inner, f"{field}.{name}" if field else name)
    elif isinstance(value, tuple) and any(isinstance(inner, Record) for inner in value):
        for inner in value:
            yield from _fields(inner, field)
    elif value not in (None, ()):
        yield field, value


def unread(catalog: Catalog) -> tuple[str, ...]:
    """Return every value of a user's own files that no answer rests on.

    Parameters
    ----------
    catalog : Catalog
        The shipped catalogue under the user's folders.

    Returns
    -------
    tuple of str
        Lines of the form "file: key.path: nothing reads it: reason"; empty for the shipped one.
    """
    shipped = load_catalog()
    idle: list[str] = []
    for kind in (*FILES, *TABLES):
        known, mine = getattr(shipped, kind), getattr(catalog, kind)
        for slug, record in mine.items():
            file, key = (f"{slug}.toml", "") if kind in FILES else (f"{kind}.toml", f"{slug}.")
            idle += _idle(kind, known.get(slug), record, (file, key))
    return (*idle, *_idle("prices", shipped.prices, catalog.prices, ("prices.toml", "")))


def _idle(
    kind: str, shipped: Record | None, mine: Record, named: tuple[str, str]
) -> Iterator[str]:
    """Yield the idle values of one record that are not those of the shipped one."""
    before = _values(shipped) if shipped is not None else {}
    for field, value in _values(mine).items():
        reason = UNREAD.get(f"{kind}.{field}")
        if reason is not None and value != before.get(field):
            yield f"{named[0]}: {named[1]}{field}: nothing reads it: {reason}"
