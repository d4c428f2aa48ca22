"""The text of a letter as a file to change before it is set, and read back."""

import re
from pathlib import Path

from catalog.text import is_steady
from selector.errors import Problem, RequirementError
from selector.handover.letter.figures import figures_of, marked
from selector.handover.letter.record import Letter, Section

FIELD = "--from"
MOST_BYTES = 100_000
_OPTION = "# option: "
_REFERENCE, _DATE, _GREETING = "Our reference", "Date", "Greeting"
_HEAD = re.compile(r"\[(.+)\]")
_TOP = (
    "# Change what you like and set it with --from. Lines that begin with # are not printed,",
    "# a head in square brackets begins a section; take it out with its text, or add your own.",
    "# Picture, table and small print are made anew from the advice. A figure in the text that",
    "# the advice does not hold is marked.",
)


def text_of(letter: Letter) -> str:
    """Return a letter as a text to change.

    Parameters
    ----------
    letter : Letter
        As it was composed.

    Returns
    -------
    str
        Heads in square brackets, a paragraph a line.
    """
    parts = [*_TOP, f"{_OPTION}{letter.option or 'none'}", ""]
    top = ((_REFERENCE, letter.reference), (_DATE, letter.date), (_GREETING, letter.greeting))
    for head, text in top:
        parts += [f"[{head}]", text, ""]
    for section in letter.sections:
        parts += [f"[{section.head}]", *section.paragraphs, ""]
    return "\n".join(parts)


def read_text(path: Path) -> str:
    """Return the text that somebody changed.

    Parameters
    ----------
    path : Path
        As `--text` wrote it.

    Returns
    -------
    str
        UTF-8 text.

    Raises
    ------
    RequirementError
        When it cannot be read, is no text, or holds no section.
    """
    step = "Write one with --text FILE and change that."
    try:
        if path.stat().st_size > MOST_BYTES:
            got = f"{path} ({path.stat().st_size / 1000:.0f} kB)"
            raise RequirementError(Problem(FIELD, "under 100 kB", got, step))
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", None) or "not UTF-8 text"
        rule = "a text file that can be read"
        raise RequirementError(Problem(FIELD, rule, f"{path} ({why})", step)) from error
    if not any(_HEAD.fullmatch(line.strip()) for line in text.splitlines()):
        rule = "a letter's text, with heads in square brackets"
        raise RequirementError(Problem(FIELD, rule, f"{path} without any", step))
    return text


def changed(letter: Letter, text: str) -> Letter:
    """Return a letter with the sections of a text that somebody changed.

    Parameters
    ----------
    letter : Letter
        As the advice stands today.
    text : str
        What `text_of` gave, changed.

    Returns
    -------
    Letter
        Sections in the order of the text; one without the head of the ways has no table.
    """
    told = _sections(text)
    keys = {section.head: section.key for section in letter.sections}
    sections = tuple(
        Section(key=keys.get(head, "own"), head=head, paragraphs=tuple(paragraphs))
        for head, paragraphs in told.items()
        if head not in {_REFERENCE, _DATE, _GREETING}
    )
    has_ways = any(section.key == "ways" for section in sections)
    return letter.model_copy(
        update={
            "reference": " ".join(told.get(_REFERENCE, [letter.reference])),
            "date": " ".join(told.get(_DATE, [letter.date])),
            "greeting": " ".join(told.get(_GREETING, [letter.greeting])),
            "sections": sections,
            "table": letter.table if has_ways else None,
        }
    )


def written_for(text: str) -> str | None:
    """Return the option that a text was written for, None where it does not say."""
    line = next((x for x in text.splitlines() if x.startswith(_OPTION)), None)
    return None if line is None else line.removeprefix(_OPTION).strip()


def strange_figures(letter: Letter, fresh: Letter) -> tuple[str, ...]:
    """Return the figures of a changed letter that the advice does not hold.

    Parameters
    ----------
    letter : Letter
        With changed text.
    fresh : Letter
        As composed from the advice, in full.

    Returns
    -------
    tuple of str
        A line each: the section and the figure.
    """
    return tuple(
        f"{section.head}: {run.text}"
        for section in letter.sections
        for paragraph in section.paragraphs
        for run in marked(paragraph, held_by(fresh, section))
        if run.marked
    )


def held_by(fresh: Letter, section: Section) -> frozenset[tuple[str, str]]:
    """Return the figures a section may hold: its own of the advice, or any if it is new."""
    own = [s for s in fresh.sections if s.key == section.key]
    texts = [p for s in (own or fresh.sections) for p in s.paragraphs]
    if not own and fresh.table is not None:
        texts += [cell for row in fresh.table.rows for cell in row.cells]
    return figures_of(texts)


def _sections(text: str) -> dict[str, list[str]]:
    """Return the paragraphs under each head, lines of one paragraph joined."""
    told: dict[str, list[str]] = {}
    paragraphs: list[str] | None = None
    open_line = False
    for line in (raw.strip() for raw in text.splitlines()):
        head = _HEAD.fullmatch(line)
        if line.startswith("#"):
            continue
        if head:
            paragraphs, open_line = told.setdefault(head[1].strip(), []), False
        elif not line or paragraphs is None:
            open_line = False
        elif open_line:
            paragraphs[-1] += f" {_steady(line)}"
        else:
            paragraphs.append(_steady(line))
            open_line = True
    return told


def _steady(line: str) -> str:
    """Return a line without what would steer what shows it."""
    return line if is_steady(line) else "".join(c for c in line if is_steady(c))
