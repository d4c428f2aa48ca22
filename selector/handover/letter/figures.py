"""Figures in a text, and which of them the advice does not hold."""

import re
from collections.abc import Iterable
from itertools import pairwise

from selector.record import Plain

_UNIT = (
    r"HRC|HB|HV|mm|°C|°F|in(?= /)|lb ft|N m|N|days?|minutes|hours?|"
    r"(?:times |fewer |more )?in 100|pieces|[A-Z]{2,3}\b|[€£$]|%"
)
# A figure stands apart from letters, or it is part of a name: EN19, 42CrMo4.
_FIGURE = re.compile(rf"(?<![\w.,/])(\d+(?:[.,]\d+)*)(?![\w])(?:\s?({_UNIT}))?")
# Of a range the first has the unit of the last.
_TO = re.compile(r"\s?(?:to|and|–|-|or)\s?")
_FRACTION = re.compile(r"\b(?:one|two|three|nine) times? in (?:[a-z]+)\b")


class Run(Plain):
    """A stretch of text; a marked one is a figure that the advice does not hold."""

    text: str
    marked: bool = False


class _Found(Plain):
    """A figure, where it stands, and its unit."""

    start: int
    end: int
    value: str
    unit: str


def _found(text: str) -> list[_Found]:
    """Return the figures of a text in their order."""
    found = [
        _Found(
            start=match.start(1),
            end=match.end(),
            value=match[1].replace(",", "."),
            unit=_plain(match[2] or ""),
        )
        for match in _FIGURE.finditer(text)
    ]
    for number, (one, other) in reversed(list(enumerate(pairwise(found)))):
        if not one.unit and other.unit and _TO.fullmatch(text[one.end : other.start]):
            found[number] = one.model_copy(update={"unit": found[number + 1].unit})
    return found


def _plain(unit: str) -> str:
    """Return a unit without its number: days and day are one."""
    if unit.endswith("in 100"):
        return "in 100"
    return unit.removesuffix("s") if unit.islower() and unit != "minutes" else unit


def figures_of(texts: Iterable[str]) -> frozenset[tuple[str, str]]:
    """Return the figures of some texts, with their units.

    Parameters
    ----------
    texts : iterable of str
        Plain language.

    Returns
    -------
    frozenset of tuple of str
        Value and unit; a chance in words is one too.
    """
    held = set()
    for text in texts:
        held |= {(figure.value, figure.unit) for figure in _found(text)}
        held |= {(match[0], "") for match in _FRACTION.finditer(text)}
    return frozenset(held)


def marked(text: str, held: frozenset[tuple[str, str]]) -> tuple[Run, ...]:
    """Return a text with the figures marked that are not among those held.

    Parameters
    ----------
    text : str
        As somebody wrote it.
    held : frozenset
        What `figures_of` found in the advice's own letter.

    Returns
    -------
    tuple of Run
        The whole text; a figure without unit passes by its value alone.
    """
    values = {value for value, _ in held}
    strange = [
        (figure.start, figure.end)
        for figure in _found(text)
        if (figure.value, figure.unit) not in held
        and (figure.unit or figure.value not in values)
    ]
    strange += [
        match.span() for match in _FRACTION.finditer(text) if (match[0], "") not in held
    ]
    runs, place = [], 0
    for start, end in sorted(strange):
        runs += [Run(text=text[place:start]), Run(text=text[start:end], marked=True)]
        place = end
    runs.append(Run(text=text[place:]))
    return tuple(run for run in runs if run.text)
