"""A letter set: as PDF, as a page, or as a document for a word processor."""

from dataclasses import dataclass
from typing import Any

from selector.handover.drawing.part_drawing import Drawing
from selector.handover.identity import Identity, Logo
from selector.handover.letter.editable import held_by
from selector.handover.letter.figures import Run, marked
from selector.handover.letter.record import Letter, Section
from selector.handover.sheet import Paper, Sheet, sheet

SUFFIXES = (".pdf", ".html", ".docx")
MARKED = "† A figure that the advice does not hold: set by hand."


@dataclass(frozen=True, slots=True)
class Sender:
    """Who writes: name, address and terms, and the mark beside them."""

    identity: Identity | None = None
    logo: Logo | None = None


def made(
    letter: Letter,
    sender: Sender,
    picture: Drawing | None,
    fresh: Letter | None = None,
    how: tuple[str, Paper] = (".pdf", "a4"),
) -> Sheet:
    """Return a letter as the content of a file.

    Parameters
    ----------
    letter : Letter
        What it says.
    sender : Sender
        Who writes.
    picture : Drawing or None
        The part.
    fresh : Letter, optional
        What the advice says today, where the text was changed.
    how : tuple of str
        ".pdf", ".html" or ".docx", and the paper.

    Returns
    -------
    Sheet
        The file, and what is to be said of it.
    """
    suffix, paper = how
    data = letter_data(letter, sender, picture, fresh)
    if suffix == ".docx":
        from selector.handover.letter.document import document  # noqa: PLC0415 - slow

        return Sheet(document(data, paper))
    return sheet("letter", data, suffix, paper)


def letter_data(
    letter: Letter, sender: Sender, picture: Drawing | None, fresh: Letter | None = None
) -> dict[str, Any]:
    """Return a letter as its templates take it.

    Parameters
    ----------
    letter : Letter
        What it says.
    sender : Sender
        Who writes.
    picture : Drawing or None
        The part.
    fresh : Letter, optional
        What the advice says today, where the text was changed.

    Returns
    -------
    dict
        Of JSON's kinds; texts, never markup.
    """
    who = sender.identity
    name = f"for {who.name}" if who else "for the workshop"
    if who and who.signs:
        name += f", {who.signs}"
    sections = [_section(section, fresh) for section in letter.sections]
    is_marked = any(r["marked"] for s in sections for p in s["paragraphs"] for r in p)
    shown = picture if letter.is_offer else None
    return {
        "title": letter.reference,
        "author": who.name if who else "temperwright",
        "sender": None if who is None else _sender(who),
        "logo": sender.logo.for_sheet() if sender.logo else None,
        "reference": letter.reference,
        "date": letter.date,
        "greeting": letter.greeting,
        "sections": sections,
        "table": None if letter.table is None else letter.table.model_dump(),
        "picture": None if shown is None else {"svg": shown.svg, "alt": shown.alt},
        "sign": [name, "accepted by the customer, date"] if letter.is_offer else [name],
        "terms": list(who.terms) if who and letter.is_offer else [],
        "small_print": [*letter.small_print, *([MARKED] if is_marked else [])],
        "foot": [],
    }


def _sender(who: Identity) -> dict[str, Any]:
    """Return who writes, the lines of the address in their order."""
    beside = [*who.address, who.phone, who.mail]
    return {"name": who.name, "lines": [line for line in beside if line]}


def _section(section: Section, fresh: Letter | None) -> dict[str, Any]:
    """Return a section with its strange figures marked."""
    held = None if fresh is None else held_by(fresh, section)
    return {
        "key": section.key,
        "head": section.head,
        "paragraphs": [
            [run.model_dump() for run in _runs(text, held)] for text in section.paragraphs
        ],
    }


def _runs(text: str, held: frozenset[tuple[str, str]] | None) -> tuple[Run, ...]:
    """Return a paragraph, its strange figures marked where somebody changed it."""
    return (Run(text=text),) if held is None else marked(text, held)
