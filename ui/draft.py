"""The form as plain data, in the shape of a requirement file; faults by the field they are in.

Places are written as the selector writes them: "zone.2.hardness.min", rows counted from 1.
"""

import copy
from collections.abc import Iterator
from itertools import zip_longest
from typing import Any

from catalog import Catalog
from selector import Requirement
from selector.errors import Problem, SelectorError
from selector.job.bench import bench
from selector.requirement import requirement_from
from selector.requirement.question import question

Draft = dict[str, Any]
# Loads that lie on sections by their numbers.
OVER = ("load.torque_over", "load.bending_over")


def whole(draft: Draft) -> Draft:
    """Return a draft with every table and block that a requirement must have.

    Parameters
    ----------
    draft : dict
        Of a file, or {} for a part of which nothing is known.

    Returns
    -------
    dict
        A copy.
    """
    filled: Draft = {
        "part": {},
        "load": {},
        "limit": {},
        "workshop": {},
        **copy.deepcopy(draft),
    }
    for path in ("part.section", "zone", "workshop.heat"):
        rows(filled, path)
    return filled


def blank() -> Draft:
    """Return a part of which nothing is known yet but that it is one round piece."""
    return whole({"part": {"section": [{"shape": "round"}]}, "zone": [{"section": [1]}]})


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
        if isinstance(place, list):
            number = int(key) - 1
            place = place[number] if number < len(place) else None
        else:
            place = place.get(key) if isinstance(place, dict) else None
    return place


def put(draft: Draft, path: str, value: Any) -> None:  # noqa: ANN401
    """Write an answer into the draft; a blank one is removed.

    A table within a table goes with its last answer, and with one that it cannot lack.

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
    places: list[Any] = [draft]
    for key in parents:
        place = places[-1]
        places.append(
            place[int(key) - 1] if isinstance(place, list) else place.setdefault(key, {})
        )
    if value is not None and value != "":
        places[-1][last] = value
        return
    places[-1].pop(last, None)
    if len(parents) > 1 and isinstance(places[-2], dict):
        asked = question(path)
        if not places[-1] or (asked and asked.needed):
            del places[-2][parents[-1]]


def rows(draft: Draft, path: str) -> list[Draft]:
    """Return the rows of a block, to be read or changed."""
    *parents, last = path.split(".")
    place = draft
    for key in parents:
        place = place.setdefault(key, {})
    lines: list[Draft] = place.setdefault(last, [])
    return lines


def drop_row(draft: Draft, path: str, number: int) -> None:
    """Remove a row; zones and loads keep lying on the sections they lay on, or go with them.

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
    if path != "part.section":
        return
    zones = [f"zone.{zone}.section" for zone in range(1, len(rows(draft, "zone")) + 1)]
    for place in (*zones, *OVER):
        left = [kept - (kept > number) for kept in read(draft, place) or () if kept != number]
        put(draft, place, left or None)
    draft["zone"] = [zone for zone in rows(draft, "zone") if "section" in zone]


def differing(before: Any, after: Any, path: str = "") -> Iterator[str]:  # noqa: ANN401
    """Yield where two drafts differ: a row, a table or one answer.

    Parameters
    ----------
    before, after : dict
        The form, or what stands in it at a place.
    path : str
        The place.

    Yields
    ------
    str
        The places; of what only one of them has, the whole row or table.
    """
    if isinstance(before, dict) and isinstance(after, dict):
        inner = {str(key): (before.get(key), after.get(key)) for key in {**before, **after}}
    elif _are_rows(before) and _are_rows(after):
        pairs = enumerate(zip_longest(before, after), start=1)
        inner = {str(number): pair for number, pair in pairs}
    else:
        if before != after:
            yield path
        return
    for key, (one, other) in inner.items():
        yield from differing(one, other, f"{path}.{key}" if path else key)


def _are_rows(found: Any) -> bool:  # noqa: ANN401
    """Return whether something is the rows of a block, which may be none."""
    return isinstance(found, list) and all(isinstance(row, dict) for row in found)


def called(draft: Draft) -> dict[int, str]:
    """Return what each section is called, by its number."""
    return {
        number: str(row.get("name") or f"section {number}")
        for number, row in enumerate(rows(draft, "part.section"), start=1)
    }


def zone_of(draft: Draft, section: int) -> int | None:
    """Return the number of the first zone that lies on a section, None where none does."""
    lying = (
        number
        for number, zone in enumerate(rows(draft, "zone"), start=1)
        if section in zone.get("section", ())
    )
    return next(lying, None)


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
        requirement = requirement_from(draft)
        bench(requirement, catalog)
    except SelectorError as error:
        return None, error.problems
    return requirement, ()
