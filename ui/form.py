"""The form: one widget a question, each with what is wrong with its answer beneath it."""

from collections.abc import Iterable, Mapping
from typing import Any

import streamlit as st

from catalog import Catalog
from selector.errors import Problem, RequirementError
from selector.requirement import requirement_from
from ui import draft as drafts
from ui import labels, session
from ui.draft import Choices, Draft
from ui.field import FIELDS, Block, Field
from ui.upload import parsed

Messages = Mapping[str, list[str]]


def choices(draft: Draft, catalog: Catalog) -> Choices:
    """Return what can be chosen where that depends on the catalogue or on the form itself.

    Parameters
    ----------
    draft : dict
        The form.
    catalog : Catalog
        What is known.

    Returns
    -------
    mapping
        Words by answer, by field.
    """
    return {
        "workshop.heat.source": {k: s.name for k, s in catalog.heat_sources.items()},
        "workshop.bath.medium": {k: m.name for k, m in catalog.media.items()},
        "zone.section": {
            number: f"{number}: {section.get('shape', '')} {section.get('size', '')}".strip(": ")
            for number, section in enumerate(drafts.rows(draft, "part.section"), start=1)
        },
    }


def place_name(path: str) -> str:
    """Return a place on the form in words: "Section 2, size"."""
    kind = drafts.kind_of(path)
    block = max(
        (b for b in drafts.BLOCKS if kind == b.path or kind.startswith(f"{b.path}.")),
        key=lambda b: len(b.path),
        default=None,
    )
    row = next((key for key in path.split(".") if key.isdigit()), "")
    name = f"{block.row} {row}".strip() if block and block.row else ""
    field = FIELDS.get(kind)
    last = field.label if field else ("" if name else (block.title if block else path))
    return ", ".join(part for part in (name, last) if part)


def sentence(problem: Problem) -> str:
    """Return a problem in a sentence, with the name its field has on the form."""
    where = labels.plain(place_name(problem.field))
    if problem.got == "nothing":
        return f"{where}: please answer."
    return (
        f"{where}: must be {labels.plain(problem.rule)}; got {labels.plain(problem.got)}. "
        f"{labels.plain(problem.next_step)}"
    )


def messages(problems: Iterable[Problem], draft: Draft) -> dict[str, list[str]]:
    """Return what is wrong, by the place where it is told.

    Parameters
    ----------
    problems : iterable of Problem
        Broken rules.
    draft : dict
        The form they were found in.

    Returns
    -------
    dict
        Sentences by place; those without a place under the empty text.
    """
    found: dict[str, list[str]] = {}
    for problem in problems:
        found.setdefault(drafts.place_of(problem), []).append(sentence(problem))
    return found
