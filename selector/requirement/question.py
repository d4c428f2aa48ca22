"""What the requirement asks in a field: its title, its help, the answers it takes.

Form, schema and messages read their words here, so that each is said once: in the models.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from selector.requirement.quantity import kind_read_by
from selector.requirement.whole import Requirement

Kind = Literal["table", "rows", "choice", "many", "tick", "count", "number", "quantity", "text"]
_ROW = re.compile(r"\.\d+(?=\.|$)")


@dataclass(frozen=True, slots=True)
class Question:
    """One field in the words of the user; `unit_kind` is the quantity it holds, if any."""

    title: str
    text: str
    kind: Kind
    answers: tuple[str, ...]
    needed: bool
    default: Any
    unit_kind: str | None


def without_rows(path: str) -> str:
    """Return a place without its row numbers: "zone.2.wear" gives "zone.wear"."""
    return _ROW.sub("", path)


def question(path: str) -> Question | None:
    """Return what is asked at a place of the requirement.

    Parameters
    ----------
    path : str
        As messages write it: "part.section.1.size".

    Returns
    -------
    Question or None
        None where the requirement has no such field.
    """
    return _question(without_rows(path))


def titled(path: str) -> str:
    """Return a place in words: "Sections 2: size"; its keys where nothing is asked there."""
    asked = question(path)
    if asked is None:
        return path
    parent, _, _ = path.rpartition(".")
    row = parent.rpartition(".")[2]
    over = question(parent.rpartition(".")[0]) if row.isdigit() else None
    if over is None:
        return asked.title
    return f"{over.title} {row}: {asked.title[:1].lower()}{asked.title[1:]}"


@cache
def _question(path: str) -> Question | None:
    """Return what is asked at a place without row numbers."""
    model: type[BaseModel] | None = Requirement
    info: FieldInfo | None = None
    for key in path.split("."):
        info = None if model is None else model.model_fields.get(key)
        if info is None:
            return None
        model = next(_models(info.annotation), None)
    return None if info is None else _asked(info, model)


def _asked(info: FieldInfo, model: type[BaseModel] | None) -> Question:
    """Return a field as a question."""
    unit_kind = next(_unit_kinds(info), None)
    return Question(
        title=info.title or "",
        text=info.description or "",
        kind=_kind(info, model, unit_kind),
        answers=() if model else tuple(_literals(info.annotation)),
        needed=info.is_required(),
        default=None if info.is_required() else info.default,
        unit_kind=unit_kind,
    )


def _kind(info: FieldInfo, model: type[BaseModel] | None, unit_kind: str | None) -> Kind:
    """Return how a field is answered."""
    inside = set(_inside(info.annotation))
    if model is not None:
        return "rows" if tuple in inside else "table"
    if unit_kind is not None:
        return "quantity"
    if next(_literals(info.annotation), None) is not None or tuple in inside:
        return "many" if tuple in inside else "choice"
    by_type: dict[type, Kind] = {bool: "tick", int: "count", float: "number"}
    return next((kind for type_, kind in by_type.items() if type_ in inside), "text")


def _inside(annotation: Any) -> Iterator[Any]:  # noqa: ANN401
    """Yield a type, what it is made of, and what reads it."""
    yield get_origin(annotation) or annotation
    yield from getattr(annotation, "__metadata__", ())
    if get_origin(annotation) is not Literal:
        for inner in get_args(annotation):
            yield from _inside(inner)


def _models(annotation: Any) -> Iterator[type[BaseModel]]:  # noqa: ANN401
    """Yield the tables inside a type."""
    for inner in _inside(annotation):
        if isinstance(inner, type) and issubclass(inner, BaseModel):
            yield inner


def _literals(annotation: Any) -> Iterator[str]:  # noqa: ANN401
    """Yield the closed set of answers inside a type."""
    if get_origin(annotation) is Literal:
        yield from get_args(annotation)
        return
    for inner in get_args(annotation):
        yield from _literals(inner)


def _unit_kinds(info: FieldInfo) -> Iterator[str]:
    """Yield the kinds of quantity that a field reads."""
    for mark in (*info.metadata, *_inside(info.annotation)):
        kind = kind_read_by(mark)
        if kind is not None:
            yield kind
