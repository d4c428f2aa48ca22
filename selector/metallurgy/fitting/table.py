"""Rows of comma-separated text, checked cell by cell, every fault listed at once."""

import csv
import math
from collections.abc import Iterable, Mapping, Sequence

from selector.errors import Problem, SelectorError

Row = Mapping[str, str]
Ranges = Mapping[str, tuple[float, float]]

MOST_TOLD = 10


def rows_of(
    lines: Iterable[str], texts: Sequence[str], numbers: Ranges, optional: Ranges
) -> list[Row]:
    """Return the rows of a table with a heading, each cell as it should be.

    Parameters
    ----------
    lines : iterable of str
        Text, heading first. [-]
    texts : sequence of str
        Columns that hold some text. [-]
    numbers : mapping of str to pair of float
        Columns that hold a figure, with the least and the most that can be meant. [-]
    optional : mapping of str to pair of float
        The same, where column or cell may be missing. [-]

    Returns
    -------
    list of mapping
        The rows, cells as text. [-]

    Raises
    ------
    SelectorError
        If a column is missing or a cell is no figure in its range; up to ten faults are listed.

    References
    ----------
    .. [1] Y. Shafranovich, Common Format and MIME Type for CSV Files, RFC 4180, 2005.
    """
    table = csv.DictReader(lines, strict=True)
    try:
        rows = list(table)
    except csv.Error as error:
        step = "Save the table as plain comma-separated text in UTF-8."
        place = f"line {table.reader.line_num}"
        raise SelectorError(Problem(place, "a row of the table", str(error), step)) from error
    missing = [name for name in (*texts, *numbers) if name not in (table.fieldnames or ())]
    if missing:
        step = "Name the columns in the first line."
        got = ", ".join(table.fieldnames or ()) or "nothing"
        rule = f"a heading with {', '.join(missing)} as well"
        raise SelectorError(Problem("line 1", rule, got, step))
    problems = []
    for number, row in enumerate(rows, 2):
        given = {name: limits for name, limits in optional.items() if row.get(name)}
        problems += _problems(f"line {number}", row, texts, {**numbers, **given})
    if problems:
        raise SelectorError(*problems[:MOST_TOLD])
    return list(rows)


def _problems(
    place: str, row: Mapping[str | None, str | None], texts: Sequence[str], numbers: Ranges
) -> list[Problem]:
    """Return what is wrong in one row."""
    step = "Correct it or leave the row out."
    problems = [
        Problem(f"{place}, {name}", "given", repr(row.get(name) or ""), step)
        for name in texts
        if not (row.get(name) or "").strip()
    ]
    if None in row:
        quote = "Quote text that holds a comma."
        problems.append(Problem(place, "as long as the heading", "more cells", quote))
    for name, (low, high) in numbers.items():
        if not low <= _number(row.get(name)) <= high:
            rule = f"a figure between {low:g} and {high:g}"
            got = repr(row.get(name) or "")
            problems.append(Problem(f"{place}, {name}", rule, got, step))
    return problems


def _number(text: str | None) -> float:
    """Return the number a text means, NaN if none."""
    try:
        return float(text or "")
    except ValueError:
        return math.nan
