"""What an unfinished form asks so far, and what is still to be answered."""

import copy

from catalog import Catalog
from selector import Requirement
from selector.errors import Problem, SelectorError
from selector.requirement import requirement_from
from selector.requirement.quantity import catalog_name
from selector.requirement.question import question
from ui.draft import Draft, checked, put, read, rows, whole

# What stands for an answer that is still wanted, so that what is there can be shown at once.
_MEANWHILE = {
    "part.name": "part", "safety_use": "none", "load.impact": "none", "load.cycles": "static"
}  # fmt: skip
# What a file may leave out and a form may not: it alone can decide whether a part is hardened,
# and an answer that nobody gave would decide it in silence.
HOW_BADLY = "zone.severity"
# Of these a wrong answer is left out; of any other block the whole row.
_KEPT_ROWS = frozenset({"part.section", "zone"})
# What is chosen by its name in the catalogue.
_NAMED = (("heat", "source"), ("bath", "medium"))
# What is left out may have hidden another fault.
_ROUNDS = 4


def duties_open(draft: Draft) -> tuple[str, ...]:
    """Return where it is still to be said what a zone suffers, or how badly."""
    open_ = []
    for number, zone in enumerate(rows(draft, "zone"), start=1):
        if "wear" not in zone:
            open_.append(f"zone.{number}.wear")
        elif zone["wear"] != "none" and "severity" not in zone:
            open_.append(f"zone.{number}.severity")
    return tuple(open_)


def answered_fully(
    draft: Draft, catalog: Catalog
) -> tuple[Requirement | None, tuple[Problem, ...]]:
    """Return the requirement a form stands for, or what is wrong or must still be answered.

    Parameters
    ----------
    draft : dict
        The form.
    catalog : Catalog
        What is known, for the names in it.

    Returns
    -------
    Requirement or None
        None when anything is wrong or open.
    tuple of Problem
        Empty when nothing is.
    """
    requirement, problems = checked(draft, catalog)
    known = {problem.field for problem in problems}
    open_ = tuple(
        Problem(place, "answered", "nothing", "Choose one.")
        for place in duties_open(draft)
        if place not in known
    )
    return (None if open_ else requirement), (*problems, *open_)


def spelled_out(draft: Draft) -> Draft:
    """Return a draft off a file as it is meant: names of the catalogue, and what decides."""
    meant = copy.deepcopy(draft)
    said = meant.get("workshop")
    shop = said if isinstance(said, dict) else {}
    for block, key in _NAMED:
        lines = shop.get(block)
        for line in lines if isinstance(lines, list) else ():
            if isinstance(line, dict) and isinstance(line.get(key), str):
                line[key] = catalog_name(line[key])
    zones = meant.get("zone")
    asked = question(HOW_BADLY)
    for zone in zones if isinstance(zones, list) else ():
        if asked is not None and isinstance(zone, dict) and zone.get("wear", "none") != "none":
            zone.setdefault("severity", asked.default)
    return meant


def _tentative(draft: Draft) -> Draft:
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
    filled = whole(draft)
    for path, answer in _MEANWHILE.items():
        if read(filled, path) is None:
            put(filled, path, answer)
    for zone in filled["zone"]:
        zone.setdefault("wear", "none")
        if "material" not in zone.get("mate", {}):
            zone.pop("mate", None)
    return filled


def so_far(draft: Draft) -> Requirement | None:
    """Return what a draft asks so far: what is missing filled in, what is wrong left out.

    Parameters
    ----------
    draft : dict
        The form.

    Returns
    -------
    Requirement or None
        None where a section has no size, or where nothing can be made of it.
    """
    left = whole(draft)
    for _ in range(_ROUNDS):
        try:
            return requirement_from(_tentative(left))
        except SelectorError as error:
            # From the last row up: those before it keep their numbers.
            places = {problem.field for problem in error.problems}
            if not all(_leave_out(left, at) for at in sorted(places, key=_row, reverse=True)):
                return None
    return None


def _row(place: str) -> list[str]:
    """Return a place so that its rows sort by their numbers."""
    return [key.zfill(4) for key in place.split(".")]


def _leave_out(draft: Draft, place: str) -> bool:
    """Take out the answer at a place, or its row; return whether a part is left to be shown."""
    keys = place.split(".")
    row = next((at for at, key in enumerate(keys) if key.isdigit()), None)
    asked, block = question(place), ".".join(keys[:row])
    if keys[0] == "workshop" and (row is None or read(draft, place) is None):
        draft["workshop"] = {"heat": []}
    elif row is None or block in _KEPT_ROWS:
        # A section without size or length cannot be drawn.
        bare = asked is None or (asked.needed and block == "part.section")
        if bare or read(draft, place) is None:
            return False
        put(draft, place, None)
    elif read(draft, ".".join(keys[: row + 1])) is not None:
        del rows(draft, block)[int(keys[row]) - 1]
    return True
