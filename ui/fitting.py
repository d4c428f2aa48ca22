"""What of a file, or of a part kept before, the form can hold."""

from typing import Any

from selector.errors import Problem, SelectorError
from selector.requirement import requirement_from
from selector.requirement.question import question, without_rows
from ui.draft import OVER, Draft, read

# The longest text that a widget takes.
MOST_LETTERS = 200
# What is typed, and so can be mended by typing.
_TYPED = frozenset({"text", "quantity", "number", "count"})
# Where sections are named by their numbers.
_NUMBERED = frozenset({"zone.section", *OVER})


def unfit(data: Draft) -> tuple[Problem, ...]:
    """Return what is wrong in a file, if any of it is such that no field could mend it.

    Parameters
    ----------
    data : dict
        Contents of a file.

    Returns
    -------
    tuple of Problem
        Empty when the form can hold the file; what is blank in it is left to the form.
    """
    try:
        requirement_from(data)
    except SelectorError as error:
        problems = tuple(p for p in error.problems if p.got != "nothing")
        return () if all(_mendable(problem, data) for problem in problems) else problems
    return ()


def _mendable(problem: Problem, data: Draft) -> bool:
    """Return whether a fault is in an answer that was typed and is not too long."""
    asked, value = question(problem.field), read(data, problem.field)
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    if asked is None or asked.kind not in _TYPED or (is_number and asked.kind == "text"):
        return False
    return is_number or (isinstance(value, str) and len(value) <= MOST_LETTERS)


def fits(kept: object, path: str = "") -> bool:
    """Return whether what was kept has a shape that the form can hold, whatever became of it.

    Parameters
    ----------
    kept : object
        A draft, or what stands at a place in one.
    path : str
        The place.

    Returns
    -------
    bool
        Missing and wrong answers fit.
    """
    asked = question(path) if path else None
    if not path or (asked and (asked.kind == "table" or path[-1].isdigit())):
        under = f"{path}." if path else ""
        return isinstance(kept, dict) and all(fits(v, f"{under}{k}") for k, v in kept.items())
    match asked.kind if asked else None:
        case None:
            return False
        case "rows":
            return isinstance(kept, list) and all(
                fits(row, f"{path}.{number}") for number, row in enumerate(kept, start=1)
            )
        case "many":
            kind = int if without_rows(path) in _NUMBERED else str
            return isinstance(kept, list) and all(isinstance(one, kind) for one in kept)
        case _:
            weights = path.startswith("priorities.") and isinstance(kept, dict)
            return weights or isinstance(kept, str | int | float)


def answered(given: Any, place: str = "") -> Any:  # noqa: ANN401
    """Return what a file gives without its nulls, numbers of sections no longer as texts.

    Parameters
    ----------
    given : object
        All of it, or what stands at a place.
    place : str
        The place without row numbers.

    Returns
    -------
    object
        A copy; a null answers nothing.
    """
    if isinstance(given, dict):
        under = f"{place}." if place else ""
        return {k: answered(v, f"{under}{k}") for k, v in given.items() if v is not None}
    if isinstance(given, list):
        return [answered(one, place) for one in given]
    is_number = place in _NUMBERED and isinstance(given, str) and given.strip().isdigit()
    return int(given) if is_number else given
