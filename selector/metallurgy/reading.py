"""Published tempered hardness read from comma-separated text, every fault told at once."""

import csv
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.errors import Problem, SelectorError
from selector.metallurgy.temper_curve import ELEMENTS, Floats

# What a column may hold: the least and the most that can be meant. Elements may be left empty.
NUMBERS: Mapping[str, tuple[float, float]] = {
    "tempering_time_s": (0.1, 1e8),
    "tempering_temperature_c": (20.0, 800.0),
    "tempered_hrc": (-30.0, 70.0),
    "c_wt": (0.01, 2.5),
}
TEXTS = ("source", "steel")
# Least readings worth a fit: one for each of its coefficients.
LEAST_READINGS = 24
MOST_TOLD = 10


@dataclass(frozen=True, slots=True, eq=False)
class Readings:
    """Published tempered hardness: one array element a reading."""

    source: NDArray[np.str_]
    steel: NDArray[np.str_]
    composition_wt_pct: Mapping[str, Floats]
    temperature_c: Floats
    time_s: Floats
    hrc: Floats

    def where(self, chosen: NDArray[np.bool_]) -> "Readings":
        """Return the chosen readings."""
        return Readings(
            source=self.source[chosen],
            steel=self.steel[chosen],
            composition_wt_pct={e: v[chosen] for e, v in self.composition_wt_pct.items()},
            temperature_c=self.temperature_c[chosen],
            time_s=self.time_s[chosen],
            hrc=self.hrc[chosen],
        )


def readings(lines: Iterable[str]) -> Readings:
    """Return the readings in lines of comma-separated text with a heading.

    Columns: source, steel, tempering_time_s, tempering_temperature_c, tempered_hrc, and for
    each element its symbol in lower case with `_wt`; an element without a column is absent.

    Parameters
    ----------
    lines : iterable of str
        Text, heading first. [-]

    Returns
    -------
    Readings
        The readings in their order. [-]

    Raises
    ------
    SelectorError
        If a column is missing or a cell is no figure in its range; up to ten faults are told.

    References
    ----------
    .. [1] R. A. Grange and R. W. Baughman, Trans. ASM 48, 1956, 165-197, the source of most.
    """
    table = csv.DictReader(lines, strict=True)
    try:
        rows = list(table)
    except csv.Error as error:
        step = "Save the table as plain comma-separated text in UTF-8."
        place = f"line {table.line_num}"
        raise SelectorError(Problem(place, "a row of the table", str(error), step)) from error
    missing = [name for name in (*TEXTS, *NUMBERS) if name not in (table.fieldnames or ())]
    if missing:
        step = "Name the columns in the first line."
        got = ", ".join(table.fieldnames or ()) or "nothing"
        rule = f"a heading with {', '.join(missing)} as well"
        raise SelectorError(Problem("line 1", rule, got, step))
    problems = [p for number, row in enumerate(rows, 2) for p in _problems(number, row)]
    if problems:
        raise SelectorError(*problems[:MOST_TOLD])

    def column(name: str) -> Floats:
        return np.array([float(row.get(name) or 0.0) for row in rows])

    return Readings(
        source=np.array([row["source"] for row in rows]),
        steel=np.array([row["steel"] for row in rows]),
        composition_wt_pct={e: column(f"{e.lower()}_wt") for e in ("C", *ELEMENTS)},
        temperature_c=column("tempering_temperature_c"),
        time_s=column("tempering_time_s"),
        hrc=column("tempered_hrc"),
    )


def _problems(number: int, row: Mapping[str | None, str | None]) -> list[Problem]:
    """Return what is wrong in one row."""
    found = [
        _problem(number, name, "given", row.get(name))
        for name in TEXTS
        if not (row.get(name) or "").strip()
    ]
    if None in row:
        step = "Quote text that holds a comma."
        found.append(Problem(f"line {number}", "as long as the heading", "more cells", step))
    alloy = {f"{e.lower()}_wt": (0.0, 30.0) for e in ELEMENTS if row.get(f"{e.lower()}_wt")}
    for name, (low, high) in {**NUMBERS, **alloy}.items():
        if not low <= _number(row.get(name)) <= high:
            rule = f"a figure between {low:g} and {high:g}"
            found.append(_problem(number, name, rule, row.get(name)))
    return found


def _number(text: str | None) -> float:
    """Return the number a text means, NaN if none."""
    try:
        return float(text or "")
    except ValueError:
        return math.nan


def _problem(number: int, name: str, rule: str, got: str | None) -> Problem:
    """Return the problem of one cell."""
    return Problem(
        f"line {number}, {name}", rule, repr(got or ""), "Correct it or leave the row out."
    )


def enough(given: Readings) -> Readings:
    """Return readings that suffice for a fit.

    Parameters
    ----------
    given : Readings
        Published readings. [-]

    Returns
    -------
    Readings
        The same. [-]

    Raises
    ------
    SelectorError
        If there are fewer readings than coefficients, or but one steel.

    References
    ----------
    .. [1] Common practice.
    """
    steels = np.unique(given.steel).size
    if given.hrc.size < LEAST_READINGS or steels < 2:
        rule = f"{LEAST_READINGS} or more, of two steels or more"
        got = f"{given.hrc.size} of {steels}"
        raise SelectorError(Problem("readings", rule, got, "Add published readings."))
    return given
