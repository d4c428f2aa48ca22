"""The words that the trade has for things: plain names in a table, read as patterns."""

import re
from collections.abc import Iterable, Mapping
from itertools import product
from pathlib import Path
from typing import Any

import tomli

# Any words of the phrase stand for dots, a hyphen or nothing for a space.
_DOTS, _SPACE = r"\b[^,;(]*\b", "[- ]?"
_EITHER = re.compile(r"\{([^}]*)\}")


def table(file: Path) -> Mapping[str, Any]:
    """Return a table of names as it is written."""
    return tomli.loads(file.read_text(encoding="utf-8"))


def one_of(names: Iterable[str]) -> str:
    """Return the pattern of any of some names, in the singular or the plural.

    Parameters
    ----------
    names : iterable of str
        As they stand in a table.

    Returns
    -------
    str
        Pattern, to be read whatever the case.

    Examples
    --------
    >>> one_of(["band {saw,knife}"])
    '(?:band[- ]?saw(?:e?s)?|band[- ]?kni(?:fe|ves?))'
    """
    return f"(?:{'|'.join(_pattern(text) for name in names for text in spelled(name))})"


def spelled(name: str) -> list[str]:
    """Return a name in each of the words that its braces allow.

    Parameters
    ----------
    name : str
        As it stands in a table.

    Returns
    -------
    list of str
        Plain names, an empty choice left out.

    Examples
    --------
    >>> spelled("{test,proof} {long,} bar")
    ['test long bar', 'test bar', 'proof long bar', 'proof bar']
    """
    parts = _EITHER.split(name)
    choices = [part.split(",") if n % 2 else [part] for n, part in enumerate(parts)]
    return [" ".join("".join(chosen).split()) for chosen in product(*choices)]


def _pattern(text: str) -> str:
    """Return the pattern of one name."""
    return _DOTS.join(part.replace(" ", _SPACE) for part in _plural(text).split(" ... "))


def _plural(text: str) -> str:
    """Return the pattern of a name whose last word may be in the plural."""
    if text.endswith("fe"):
        return f"{text[:-2]}(?:fe|ves?)"
    if re.search("[^aeiou]y$", text):
        return f"{text[:-1]}(?:y|ies)"
    return f"{text}(?:e?s)?"
