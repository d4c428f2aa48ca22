"""A stockholder's price list or a rack as CSV: each line taken, or refused with its reason."""

import csv
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from catalog.csv_text import csv_lines
from catalog.fault import fault_line
from catalog.load import Catalog, CatalogError
from catalog.price import Prices

DENSITY_KG_PER_MM3 = 7.85e-6
UNITS = ("kg", "m", "bar")
# Cells of a line by the heads of their columns.
Row = Mapping[str, str]
# Dearer a kg than any bar, which is a slip of the unit.
MOST_PER_KG = 500.0


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a list: what it becomes, or why it is refused."""

    number: int
    text: str
    taken: tuple[str, float] | None = None
    refused: str | None = None


def read_rows(path: Path) -> dict[int, Row]:
    """Return the lines of a CSV file by number, under the names of its heads in small letters.

    Parameters
    ----------
    path : Path
        Comma, semicolon or tab between; the first line holds the heads.

    Returns
    -------
    dict of int to mapping of str to str
        Blanks round a value taken off; a line that ends early lacks its last columns.

    Raises
    ------
    CatalogError
        When it cannot be read, or has no head named steel.
    """
    try:
        lines = csv_lines(path.read_text(encoding="utf-8-sig"))
    except (OSError, UnicodeDecodeError, csv.Error) as fault:
        got = getattr(fault, "strerror", None) or str(fault)
        rule = "must be a CSV file in UTF-8"
        raise CatalogError((fault_line(str(path), "(whole file)", rule, got),)) from fault
    heads = [cell.casefold() for cell in lines[0][1]] if lines else []
    if "steel" not in heads:
        rule, got = "must name a column steel", f"{', '.join(heads) or 'nothing':.80}"
        raise CatalogError((fault_line(str(path), "first line", rule, got),))
    return {number: dict(zip(heads, cells, strict=False)) for number, cells in lines[1:]}


def price_lines(rows: Mapping[int, Row], catalog: Catalog) -> list[Line]:
    """Return a price list line by line, each price a kg.

    Parameters
    ----------
    rows : mapping of int to mapping of str to str
        By their numbers. Columns steel, price and currency; unit: kg (where absent), m with
        size, or bar with size and length, in millimetres of round bar.
    catalog : Catalog
        What is known, with the price list that is added to.

    Returns
    -------
    list of Line
        What is taken is the slug of a steel and its price in the currency of the list.
    """
    lines: list[Line] = []
    seen: dict[str, int] = {}
    for number, row in rows.items():
        line = _priced(number, row, catalog)
        if line.taken is not None:
            slug = line.taken[0]
            first = seen.setdefault(slug, number)
            if first != number:
                line = Line(number, line.text, refused=f"{slug} has a price in line {first}")
        lines.append(line)
    return lines


def _priced(number: int, row: Row, catalog: Catalog) -> Line:
    """Return one line of a price list."""
    text = ", ".join(value for value in row.values() if value)
    name, currency = row.get("steel", ""), row.get("currency", "").upper()
    meant = catalog.look_up(name)
    if len(meant.steels) != 1:
        several = " or ".join(steel.name for steel in meant.steels)
        why = f"may be {several}" if several else f"no known steel. {meant.did_you_mean}"
        return Line(number, text, refused=f"{name!r}: {why}")
    listed = catalog.prices.currency.upper()
    if currency != listed:
        got = currency or "nothing"
        return Line(number, text, refused=f"currency must be {listed}, the list's (got {got})")
    try:
        per_kg = _per_kg(row)
    except ValueError as fault:
        return Line(number, text, refused=str(fault))
    return Line(number, text, taken=(meant.steels[0].slug, round(per_kg, 3)))


def _per_kg(row: Row) -> float:
    """Return the price of one kg, whatever unit it is quoted in."""
    price, unit = _positive(row, "price"), row.get("unit", "").casefold() or "kg"
    if unit not in UNITS:
        msg = f"unit must be one of {', '.join(UNITS)} (got {unit!r})"
        raise ValueError(msg)
    if unit != "kg":
        length_mm = 1000.0 if unit == "m" else _positive(row, "length")
        area_mm2 = math.pi / 4 * _positive(row, "size") ** 2
        price /= area_mm2 * length_mm * DENSITY_KG_PER_MM3
    if price > MOST_PER_KG:
        msg = f"{price:.0f} a kg must be at most {MOST_PER_KG:g}: look at unit and size"
        raise ValueError(msg)
    return price


def _positive(row: Row, key: str) -> float:
    """Return a number of a line; a comma may stand for the point."""
    text = row.get(key, "").removesuffix("mm").strip()
    try:
        number = float(text.replace(",", ".")) if text.count(",") <= 1 else math.nan
    except ValueError:
        number = math.nan
    if not 0 < number < math.inf:
        msg = f"{key} must be a number above 0 (got {text!r})"
        raise ValueError(msg)
    return number


def stock_lines(
    rows: Mapping[int, Row], catalog: Catalog, refuse: Callable[[Row], str]
) -> list[Line]:
    """Return a rack line by line.

    Parameters
    ----------
    rows : mapping of int to mapping of str to str
        By their numbers. Columns steel, size, condition and evidence, as a requirement has
        them.
    catalog : Catalog
        What is known.
    refuse : callable
        Says what is wrong with a bar, or nothing.

    Returns
    -------
    list of Line
        What is taken is the name of the bar, counted.
    """
    lines = []
    for number, row in rows.items():
        text = ", ".join(value for value in row.values() if value)
        name = row.get("steel", "")
        meant = catalog.look_up(name)
        if not meant.steels:
            why = f"{name!r}: no known steel. {meant.did_you_mean}"
        else:
            why = refuse(row)
        taken = None if why else (name, 1.0)
        lines.append(Line(number, text, taken=taken, refused=why or None))
    return lines


def price_file(prices: Prices, lines: list[Line]) -> str:
    """Return a price list as a file, with the prices of all lines in it."""
    mine = dict(line.taken for line in lines if line.taken is not None)
    note = f"{prices.note} {len(mine)} steels priced from a list of your own."
    data = prices.model_dump()
    data.update(note=note, steel_per_kg={**prices.steel_per_kg, **mine})
    flat = [
        f"{key} = {_value(value)}" for key, value in data.items() if type(value) is not dict
    ]
    tables = [
        "\n".join(
            [f"[{key}]", *(f"{_key(name)} = {_value(held)}" for name, held in value.items())]
        )
        for key, value in data.items()
        if type(value) is dict
    ]
    return "\n\n".join(["\n".join(flat), *tables]) + "\n"


def _key(name: str) -> str:
    """Return a key as TOML writes it: in quotes where it holds a dot."""
    return f'"{name}"' if "." in name else name


def _value(value: object) -> str:
    """Return a plain value as TOML writes it."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"'
    return repr(value)
