"""Answers that many tests look at, computed once for each question.

Equal questions have equal answers and nobody changes one, so that tests may share them.
"""

from collections.abc import Callable
from dataclasses import fields
from functools import lru_cache, partial
from typing import Any

import pytest

from catalog import Catalog, load_catalog
from selector.advice.advise import Advice, advise
from selector.advice.change import changes
from selector.advice.record import ChangeOut
from selector.decision.weighing import weigh
from selector.flame.answer import FlameAnswer, flame_answer
from selector.requirement import Requirement
from tests.dog import asked, only


class _Question:
    """A requirement and a catalogue with the key they are known by."""

    def __init__(self, requirement: Requirement, catalog: Catalog) -> None:
        self.requirement, self.catalog = requirement, catalog
        rest = (
            getattr(catalog, part.name) for part in fields(catalog) if part.name != "steels"
        )
        # Records differ by identity: a user's own price list is named as the shipped
        # one. Held by the question that is kept, none gives its identity to another.
        self.key = (
            requirement.model_dump_json(),
            *(id(record) for record in (*catalog.steels.values(), *rest)),
        )

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Question) and self.key == other.key

    def __hash__(self) -> int:
        return hash(self.key)


@lru_cache(maxsize=64)
def _advice(question: _Question, **looked_at: str | None) -> Advice:
    return advise(question.requirement, question.catalog, **looked_at)


@lru_cache(maxsize=64)
def _flame(question: _Question, steel: str | None, *, changed: bool) -> FlameAnswer:
    with pytest.MonkeyPatch.context() as patch:
        if not changed:
            patch.setattr("selector.flame.answer.first_change", lambda *_: None)
        return flame_answer(question.requirement, question.catalog, steel)


def advise_once(
    requirement: Requirement,
    catalog: Catalog,
    *,
    steel: str | None = None,
    route: str | None = None,
    progress: Callable[[str, float], None] | None = None,
) -> Advice:
    """Return what `advise` does; progress is no part of the answer."""
    del progress
    return _advice(_Question(requirement, catalog), steel=steel, route=route)


@lru_cache(maxsize=64)
def changes_once(advice: Advice) -> tuple[ChangeOut, ...]:
    """Return what `changes` does, which is dearer than the advice that it goes by."""
    return changes(advice)


def flame_once(
    requirement: Requirement,
    catalog: Catalog,
    steel: str | None = None,
    progress: Callable[[str, float], None] | None = None,
    *,
    changed: bool = True,
) -> FlameAnswer:
    """Return what `flame_answer` does; progress is no part of the answer."""
    # Which single change would help is as dear as all the rest: it can be left out.
    del progress
    return _flame(_Question(requirement, catalog), steel, changed=changed)


def advised(changes: dict[str, Any] | None, *steels: str) -> Advice:
    """Return the advice on the dog, changed, among a few steels."""
    return advise_once(asked(changes), only(*steels))


def flamed(
    changes: dict[str, Any] | None = None, steel: str | None = "C45", *, changed: bool = False
) -> FlameAnswer:
    """Return the answer on flame hardening of the dog, changed, in one steel."""
    return flame_once(asked(changes), load_catalog(), steel, changed=changed)


def advise_whole(requirement: Requirement, catalog: Catalog, **looked_at: str) -> Advice:
    """Return what `advise` does, with all that was sampled of what it turned down."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("selector.advice.advise.weigh", partial(weigh, whole=True))
        return advise(requirement, catalog, **looked_at)
