"""The form as plain data, in the shape of a requirement file; faults by the field they are in.

Places are written as the selector writes them: "zone.2.hardness.min", rows counted from 1.
"""

import copy
from typing import Any

from catalog import Catalog
from selector import Requirement
from selector.errors import Problem, SelectorError
from selector.job.bench import bench
from selector.requirement import requirement_from

Draft = dict[str, Any]
# Loads that lie on sections by their numbers.
OVER = ("load.torque_over", "load.bending_over")
# Where sections are named by their numbers.
NUMBERED = frozenset({"zone.section", *OVER})
# What stands for an answer that is still wanted, so that what is there can be shown at once.
_MEANWHILE = {"safety_use": "none", "load.impact": "none", "load.cycles": "static"}


def blank() -> Draft:
    """Return a part of which nothing is known yet but that it is one round piece."""
    return {
        "part": {"section": [{"shape": "round"}]},
        "zone": [{"section": [1]}],
        "load": {},
        "limit": {},
        "workshop": {"heat": []},
    }


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
    blank_one = value is None or value == ""
    if blank_one and read(draft, path) is None:
        return
    place: Any = draft
    for key in parents:
        place = place[int(key) - 1] if isinstance(place, list) else place.setdefault(key, {})
    if blank_one:
        place.pop(last, None)
    else:
        place[last] = value


def is_asked(draft: Draft, path: str) -> bool:
    """Return whether a question is still asked that was under way while another was answered.

    Parameters
    ----------
    draft : dict
        The form.
    path : str
        The place.

    Returns
    -------
    bool
        False of a mate that is said not to be there, of a hardness that is to be worked out.
    """
    within, _, last = path.rpartition(".")
    if within.endswith((".mate", ".hardness")):
        return read(draft, within) is not None
    known = (read(draft, f"{within}.{name}") is not None for name in ("hardness", "depth"))
    return not within.startswith("zone.") or last != "depth" or any(known)


def rows(draft: Draft, path: str) -> list[Draft]:
    """Return the rows of a block, to be read or changed."""
    *parents, last = path.split(".")
    place = draft
    for key in parents:
        place = place.setdefault(key, {})
    lines: list[Draft] = place.setdefault(last, [])
    return lines


def drop_row(draft: Draft, path: str, number: int) -> None:
    """Remove a row; zones keep lying on the sections they lay on, or go with the last of them.

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
    for zone in rows(draft, "zone"):
        zone["section"] = [
            kept - (kept > number) for kept in zone.get("section", ()) if kept != number
        ]
    draft["zone"] = [zone for zone in rows(draft, "zone") if zone["section"]]
    for place in OVER:
        over = read(draft, place)
        if isinstance(over, list):
            left = [kept - (kept > number) for kept in over if kept != number]
            put(draft, place, left or None)


def called(draft: Draft) -> dict[int, str]:
    """Return what each section is called, by its number."""
    return {
        number: str(row.get("name") or f"section {number}")
        for number, row in enumerate(rows(draft, "part.section"), start=1)
    }


def zone_of(draft: Draft, section: int) -> int | None:
    """Return the number of the zone that lies on a section, None where none does.

    Parameters
    ----------
    draft : dict
        The form.
    section : int
        Number of the section.

    Returns
    -------
    int or None
        From 1, the first of several.
    """
    lying = (
        number
        for number, zone in enumerate(rows(draft, "zone"), start=1)
        if section in zone.get("section", ())
    )
    return next(lying, None)


def with_zone(draft: Draft, section: int) -> int:
    """Return the number of the zone on a section, laid on it where there was none.

    Parameters
    ----------
    draft : dict
        The form, changed in place.
    section : int
        Number of the section.

    Returns
    -------
    int
        From 1.
    """
    found = zone_of(draft, section)
    if found is None:
        rows(draft, "zone").append({"section": [section]})
        found = len(rows(draft, "zone"))
    return found


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


def tentative(draft: Draft) -> Draft:
    """Return the draft with what is still wanted filled in, to show what follows so far.

    Parameters
    ----------
    draft : dict
        The form.

    Returns
    -------
    dict
        A copy; only for what does not hang on the answers that are missing.
    """
    filled = copy.deepcopy(ready(draft))
    for path, answer in _MEANWHILE.items():
        if read(filled, path) is None:
            put(filled, path, answer)
    filled["part"].setdefault("name", "part")
    for zone in filled["zone"]:
        zone.setdefault("wear", "none")
        zone.pop("mate", None) if "material" not in zone.get("mate", {}) else None
    return filled


def _without_empty(table: Draft) -> Draft:
    """Return a table without its empty tables, but a mate that was said to be there."""
    kept: Draft = {}
    for key, value in table.items():
        if isinstance(value, dict):
            inner = _without_empty(value)
            if inner or key == "mate":
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
        requirement = requirement_from(draft)
        bench(requirement, catalog)
    except SelectorError as error:
        return None, error.problems
    return requirement, ()
