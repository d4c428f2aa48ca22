"""Fields of a list laid over a part file: `part.quantity`, `part.section.1.size`."""

import json
from collections.abc import Mapping, Sequence
from copy import deepcopy
from difflib import get_close_matches
from functools import cache
from typing import Any

from catalog.text import visible
from selector.errors import Problem, RequirementError

Table = dict[str, Any]
# Heads that a shop writes without the path of the field.
SHORT = {"name": "part.name", "quantity": "part.quantity", "budget": "limit.budget"}
# The column that names the part file of a line.
FILE = "file"


def carried_columns(heads: Sequence[str]) -> tuple[str, ...]:
    """Return the heads that name no field, such as an order number: carried as they are."""
    known = {FILE, *SHORT}
    return tuple(head for head in heads if head and head not in known and "." not in head)


def faulty_columns(heads: Sequence[str], name: str) -> list[Problem]:
    """Return what is wrong with the heads of a list.

    Parameters
    ----------
    heads : sequence of str
        In small letters; one with a dot must be a field of a part.
    name : str
        Of the list.

    Returns
    -------
    list of Problem
        One for each head that is no field.
    """
    wrong = [head for head in heads if "." in head and _kinds(head) is None]
    return [
        Problem(
            f"{name} line 1", "fields of a part where they have a dot", repr(head), _near(head)
        )
        for head in map(visible, wrong)
    ]


def _near(head: str) -> str:
    """Return the field that may have been meant, and where all are listed."""
    plain = ".".join("1" if step.isdigit() else step for step in head.split("."))
    alike = [path for path in _paths() if path.casefold() == plain.casefold()]
    close = alike or get_close_matches(plain, _paths(), n=1)
    meant = f"Did you mean {close[0]}? " if close else ""
    return f"{meant}`temperwright schema --requirement` lists them."


def over(data: object, laid: Mapping[str, str]) -> object:
    """Return the data of a part file with the fields of a line laid over it.

    Parameters
    ----------
    data : object
        What the file holds.
    laid : mapping of str to str
        Text of the cells by head; items of a list are counted from 1.

    Returns
    -------
    object
        The same without `laid`, else a copy.

    Raises
    ------
    RequirementError
        When a cell counts past the end of a list, or names a field of what is no table.
    """
    if not laid or not isinstance(data, dict):
        return data
    changed = deepcopy(data)
    faults = []
    for head, cell in laid.items():
        path = SHORT.get(head, head)
        try:
            _put(changed, path.split("."), _value(path, cell))
        except (LookupError, TypeError):
            rule = "a field of its part file, items of a list counted from 1"
            faults.append(Problem(head, rule, repr(cell), "Check the number."))
    if faults:
        raise RequirementError(*faults)
    return changed


def _put(at: Any, steps: list[str], value: object) -> None:  # noqa: ANN401 - table or list
    """Set a field; an absent table is made, and a list takes one more item at its end."""
    for number, step in enumerate(steps):
        if isinstance(at, list):
            place = int(step) - 1
            if not 0 <= place <= len(at):
                raise IndexError(step)
            if place == len(at):
                at.append({})
            key: Any = place
        elif isinstance(at, dict):
            key = step
        else:
            raise TypeError(step)
        if number == len(steps) - 1:
            at[key] = value
            return
        if isinstance(at, dict):
            at.setdefault(key, [] if steps[number + 1].isdigit() else {})
        at = at[key]


def _value(path: str, cell: str) -> object:
    """Return a cell as its field takes it: a figure, a list in brackets, else text."""
    kinds = _kinds(path) or frozenset()
    if cell[:1] in "[{" and kinds & {"array", "object"}:
        try:
            return json.loads(cell)
        except (ValueError, RecursionError):
            return cell
    if "boolean" in kinds:
        return {"true": True, "yes": True, "false": False, "no": False}.get(
            cell.casefold(), cell
        )
    if kinds & {"number", "integer"}:
        try:
            number = float(cell)
        except ValueError:
            return cell
        return int(number) if number.is_integer() and "integer" in kinds else number
    return cell


@cache
def _schema() -> Table:
    """Return the JSON schema of a requirement."""
    from selector.requirement import Requirement  # noqa: PLC0415 - a list alone needs it

    return Requirement.model_json_schema()


def _branches(node: Table) -> list[Table]:
    """Return what a place of the schema may hold, references followed."""
    if "$ref" in node:
        return _branches(_schema()["$defs"][node["$ref"].rsplit("/", 1)[1]])
    inner = [branch for part in node.get("anyOf", ()) for branch in _branches(part)]
    return inner or [node]


def _kinds(path: str) -> frozenset[str] | None:
    """Return the JSON types that a field takes, None where there is no such field."""
    nodes = _branches(_schema())
    for step in path.split("."):
        deeper: list[Table] = []
        for node in nodes:
            inner = (
                node.get("items") if step.isdigit() else node.get("properties", {}).get(step)
            )
            free = node.get("additionalProperties")
            inner = free if inner is None and isinstance(free, dict) else inner
            deeper += _branches(inner) if isinstance(inner, dict) else []
        nodes = deeper
    return frozenset(node.get("type", "string") for node in nodes) if nodes else None


@cache
def _paths() -> tuple[str, ...]:
    """Return all fields of a requirement, the first item standing for each of a list."""
    paths: list[str] = []

    def walk(nodes: list[Table], before: str) -> None:
        for node in nodes:
            for name, inner in node.get("properties", {}).items():
                path = f"{before}{name}"
                paths.append(path)
                walk(_branches(inner), f"{path}.")
            if isinstance(node.get("items"), dict):
                walk(_branches(node["items"]), f"{before}1.")

    walk(_branches(_schema()), "")
    return tuple(dict.fromkeys(paths))
