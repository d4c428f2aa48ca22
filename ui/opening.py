"""What a part starts from: a blank sheet, a shipped example, a file of the visitor's own."""

from contextlib import suppress
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter, ValidationError

from catalog.example import example_text
from selector.errors import RequirementError
from selector.requirement.question import question, without_rows
from selector.requirement.read import parsed, parsed_file
from ui import form, session, store
from ui.draft import NUMBERED, Draft, blank, unfit

# What the widgets of some kinds hold.
_HELD: dict[str, TypeAdapter[int] | TypeAdapter[float] | TypeAdapter[bool]] = {
    "count": TypeAdapter(int), "number": TypeAdapter(float), "tick": TypeAdapter(bool),
}  # fmt: skip
_NUMBERS = TypeAdapter(list[int])
# So many faults of a file are told one by one.
_TOLD = 12


def blank_part(aim: str) -> None:
    """Take up a blank part; its answer is sought in the view `aim`."""
    session.start(blank(), aim=aim)


def example(name: str) -> Draft:
    """Return a shipped example without its safety use, which each user must answer.

    Parameters
    ----------
    name : str
        One of the shipped names.

    Returns
    -------
    dict
        A draft of the form.
    """
    data = parsed(f"{name}.toml", example_text(name).encode())
    data.pop("safety_use", None)
    return data


def kept_file(path: Path) -> str:
    """Return the id of a part kept from a file, before any visitor is there."""
    key = store.new_id()
    store.keep_part(key, {"draft": answered(parsed_file(path)), "tried": True})
    return key


def take_file(name: str, content: bytes) -> bool:
    """Take up the part in a file, or keep why it was not taken.

    Parameters
    ----------
    name : str
        Name of the file.
    content : bytes
        All of it.

    Returns
    -------
    bool
        Whether it was taken: answers that break a rule are, to be mended in the form.
    """
    try:
        data = answered(parsed(name, content))
    except RequirementError as error:
        session.refuse(error.problems)
        return False
    problems = unfit(data)
    session.refuse(problems)
    if not problems:
        session.start(data, tried=True)
    return not problems


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


def why_refused() -> list[str]:
    """Return every reason why the last file was not taken, each with the key of its field."""
    problems = session.refused()
    said = [f"Not taken. {form.sentence(problem)}" for problem in problems[:_TOLD]]
    if len(problems) > _TOLD:
        said.append(f"and {len(problems) - _TOLD} faults more.")
    return said
