"""The form as plain data, in the shape of a requirement file; faults by the field they are in.

Places are written as the selector writes them: "zone.2.hardness.min", rows counted from 1.
"""

import re
from collections.abc import Mapping
from typing import Any

from catalog import Catalog
from selector import Requirement
from selector.errors import Problem, SelectorError
from selector.job.bench import bench
from selector.requirement import requirement_from
from ui.field import BLOCKS, FIELDS

Draft = dict[str, Any]
Choices = Mapping[str, Mapping[Any, str]]
_ROW = re.compile(r"\.\d+(?=\.|$)")
_ROWS = tuple(block.path for block in BLOCKS if block.row)


def kind_of(path: str) -> str:
    """Return a place without its row numbers: "zone.2.wear" gives "zone.wear"."""
    return _ROW.sub("", path)


def read(draft: Draft, path: str) -> Any:  # noqa: ANN401
    """Return what the draft holds at a place.

    Parameters
    ----------
    draft : dict
        The form.
    path : str
        The place.

    Returns
    -------
    object
        None where nothing is.
    """
    place: Any = draft
    for key in path.split("."):
        place = place[int(key) - 1] if isinstance(place, list) else place.get(key)
        if place is None:
            return None
    return place


def put(draft: Draft, path: str, value: Any) -> None:  # noqa: ANN401
    """Write an answer into the draft; a blank one is removed.

    Parameters
    ----------
    draft : dict
        The form, changed in place.
    path : str
        The place.
    value : object
        The answer.
    """
    *parents, last = path.split(".")
    place: Any = draft
    for key in parents:
        place = place[int(key) - 1] if isinstance(place, list) else place.setdefault(key, {})
    if value is None or value == "":
        place.pop(last, None)
    else:
        place[last] = value


def rows(draft: Draft, path: str) -> list[Draft]:
    """Return the rows of a block, to be read or changed."""
    *parents, last = path.split(".")
    place = draft
    for key in parents:
        place = place.setdefault(key, {})
    lines: list[Draft] = place.setdefault(last, [])
    return lines


def drop_row(draft: Draft, path: str, number: int) -> None:
    """Remove a row; zones keep lying on the sections they lay on.

    Parameters
    ----------
    draft : dict
        The form, changed in place.
    path : str
        The block.
    number : int
        Which row, from 1.
    """
    del rows(draft, path)[number - 1]
    if path == "part.section":
        for zone in rows(draft, "zone"):
            zone["section"] = [
                kept - (kept > number) for kept in zone.get("section", ()) if kept != number
            ]


def ready(draft: Draft) -> Draft:
    """Return the draft as a requirement: no empty optional table, every obligatory one.

    Parameters
    ----------
    draft : dict
        The form.

    Returns
    -------
    dict
        A copy.
    """
    filled: Draft = {"part": {}, "load": {}, "workshop": {}, **_without_empty(draft)}
    for path in ("part.section", "zone", "workshop.heat"):
        rows(filled, path)
    return filled


def _without_empty(table: Draft) -> Draft:
    """Return a table without its empty tables; rows stay, empty or not."""
    kept: Draft = {}
    for key, value in table.items():
        if isinstance(value, dict):
            inner = _without_empty(value)
            if inner:
                kept[key] = inner
        elif isinstance(value, list):
            kept[key] = [_without_empty(v) if isinstance(v, dict) else v for v in value]
        else:
            kept[key] = value
    return kept


def checked(draft: Draft, catalog: Catalog) -> tuple[Requirement | None, tuple[Problem, ...]]:
    """Return the requirement the draft stands for, or what is wrong with it.

    Parameters
    ----------
    draft : dict
        The form.
    catalog : Catalog
        What is known, for the names in it.

    Returns
    -------
    Requirement or None
        None when anything is wrong.
    tuple of Problem
        Empty when nothing is.
    """
    try:
        requirement = requirement_from(ready(draft))
        bench(requirement, catalog)
    except SelectorError as error:
        return None, error.problems
    return requirement, ()


def place_of(problem: Problem) -> str:
    """Return the place on the form where a problem is shown; empty when it has none.

    Parameters
    ----------
    problem : Problem
        A broken rule.

    Returns
    -------
    str
        A field, else the row or block around it.
    """
    path = problem.field
    while path:
        kind = kind_of(path)
        if kind in FIELDS or kind in {block.path for block in BLOCKS}:
            return path
        path = path.rpartition(".")[0]
    return ""


def misfits(draft: Draft, choices: Choices) -> tuple[Problem, ...]:
    """Return what in a file the form has no place for, or could not show.

    Parameters
    ----------
    draft : dict
        Contents of a file.
    choices : mapping
        What can be chosen, by field.

    Returns
    -------
    tuple of Problem
        Empty when the form can hold the file; faults of typed text are left to the form.
    """
    problems = []
    for path, value in _leaves(draft):
        field = FIELDS.get(kind_of(path))
        if field is not None and not field.holds(value, choices.get(kind_of(path))):
            step = "Mend the file, or leave this out and choose it in the form."
            problems.append(Problem(path, f"{field.wanted}", repr(value), step))
    return tuple(problems)


def beyond(draft: Draft) -> tuple[str, ...]:
    """Return the places of answers that came from a file and have no field on the form."""
    return tuple(path for path, _ in _leaves(draft) if kind_of(path) not in FIELDS)


def _leaves(table: Draft, path: str = "") -> list[tuple[str, Any]]:
    """Return every answer with its place."""
    answers: list[tuple[str, Any]] = []
    for key, value in table.items():
        place = f"{path}.{key}" if path else key
        if isinstance(value, dict):
            answers += _leaves(value, place)
        elif kind_of(place) in _ROWS and isinstance(value, list):
            for number, row in enumerate(value, start=1):
                answers += _leaves(row, f"{place}.{number}") if isinstance(row, dict) else []
        else:
            answers.append((place, value))
    return answers
