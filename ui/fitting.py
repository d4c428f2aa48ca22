"""What of a file, or of a part kept before, the form can hold: as the widgets hold it."""

from contextlib import suppress
from typing import Any

from pydantic import TypeAdapter, ValidationError

from selector.errors import Problem, SelectorError
from selector.requirement import requirement_from
from selector.requirement.question import question, without_rows
from ui.draft import NUMBERED, Draft, read

# The longest text that a widget takes.
MOST_LETTERS = 200
# What the widgets of some kinds hold.
_HELD: dict[str, TypeAdapter[int] | TypeAdapter[float] | TypeAdapter[bool]] = {
    "count": TypeAdapter(int), "number": TypeAdapter(float), "tick": TypeAdapter(bool),
}  # fmt: skip
_NUMBERS = TypeAdapter(list[int])


def unfit(data: Draft) -> tuple[Problem, ...]:
    """Return what in a file no field of the form could mend.

    Parameters
    ----------
    data : dict
        Contents of a file.

    Returns
    -------
    tuple of Problem
        Empty when the form can hold the file; faults of typed answers are left to the form.
    """
    try:
        requirement_from(data)
    except SelectorError as error:
        return tuple(p for p in error.problems if p.got != "nothing" and not _mendable(p, data))
    return ()


def _mendable(problem: Problem, data: Draft) -> bool:
    """Return whether a fault is in an answer that a widget can show: a short text or number."""
    asked = question(problem.field)
    value = read(data, problem.field)
    if asked is None or not isinstance(value, str | int | float) or isinstance(value, bool):
        return False
    if isinstance(value, str):
        return asked.kind in {"text", "quantity"} and len(value) <= MOST_LETTERS
    return asked.kind == "quantity"


def fits(kept: object) -> bool:
    """Return whether a draft has a shape that the form can hold, whatever became of it."""
    return isinstance(kept, dict) and all(_fits(key, value) for key, value in kept.items())


def _fits(path: str, value: object) -> bool:
    """Return whether an answer is of the kind that is asked for at its place."""
    asked = question(path)
    match asked.kind if asked else None:
        case None:
            return False
        case "table":
            return isinstance(value, dict) and all(
                _fits(f"{path}.{key}", inner) for key, inner in value.items()
            )
        case "rows":
            return isinstance(value, list) and all(
                isinstance(row, dict) and all(_fits(f"{path}.{k}", v) for k, v in row.items())
                for row in value
            )
        case "many":
            kind = int if path in NUMBERED else str
            return isinstance(value, list) and all(isinstance(one, kind) for one in value)
        case _:
            weights = path.startswith("priorities.") and isinstance(value, dict)
            return weights or isinstance(value, str | int | float)


def answered(table: Draft, path: str = "") -> Draft:
    """Return a table without its nulls, which answer nothing, its numbers no longer texts."""
    kept: Draft = {}
    for key, value in table.items():
        at = f"{path}.{key}" if path else key
        if isinstance(value, dict):
            kept[key] = answered(value, at)
        elif isinstance(value, list):
            kept[key] = _listed(at, value)
        elif value is not None:
            kept[key] = _as_widget_holds(at, value)
    return kept


def _listed(path: str, values: list[Any]) -> list[Any]:
    """Return the rows or answers of a list, the numbers of sections as numbers."""
    if without_rows(path) in NUMBERED:
        with suppress(ValidationError):
            return _NUMBERS.validate_python(values)
    return [
        answered(value, f"{path}.{number}") if isinstance(value, dict) else value
        for number, value in enumerate(values, start=1)
    ]


def _as_widget_holds(path: str, value: object) -> object:
    """Return an answer that the requirement takes as text too as the number or tick it is."""
    asked = question(path)
    kind = _HELD.get(asked.kind) if asked is not None else None
    if kind is None or isinstance(value, bool):
        return value
    try:
        return kind.validate_python(value)
    except ValidationError:
        return value
