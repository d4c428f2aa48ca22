"""The condition of a bar as it is written after the name of its steel: EN24T, 42CrMo4+QT."""

import re
from collections.abc import Mapping
from typing import Literal

from catalog.values import Record, Span, Text

ConditionName = Literal[
    "annealed",
    "hot-rolled",
    "normalised",
    "cold-drawn",
    "prehard",
    "solution-treated",
    "hard-element",
    "unknown",
]
# The letters of BS 970 from P to Z, the states of EN standards, how the trade says
# pre-hardened, and the ageing heats of precipitation-hardening bar in °F.
MarkName = Literal[
    "P", "Q", "R", "S", "T", "U", "V", "W", "X", "Y", "Z",
    "QT", "PH", "A", "N", "AR", "C", "AT",
    "H900", "H925", "H1025", "H1075", "H1100", "H1150",
]  # fmt: skip


class Mark(Record):
    """What a mark says of a bar: its condition, and its Brinell hardness whatever the steel."""

    condition: ConditionName
    says: Text
    hardness_hb: Span | None = None


# How marks are written. A letter of BS 970 follows an EN number or a number of that standard
# alone, so that the last letter of another name stays what it is.
_LETTER = re.compile(
    r"(?P<name>.*?\b(?:en\s?-?\d+[a-e]?|\d{3}\s?[amh]\s?\d{2}))"
    r"[\s,/-]*(?:cond(?:ition|\.)?\s*)?(?P<mark>[p-z])"
)
_HEAT = re.compile(r"(?P<name>.+?)[\s,/-]*(?:cond(?:ition|\.)?\s*)?(?P<mark>h\s?1?\d{3})")
_PLUS = re.compile(r"(?P<name>.+?)\s*\+\s*(?P<mark>qt|ar|sh|at|c|n|a|u)")
# DIN wrote V for quenched and tempered: 42CrMo4V, C45 V.
_DIN = re.compile(r"(?P<name>(?:ck?\s?\d{2}|\d{2}[a-z][a-z\d]*\d))\s?(?P<mark>v)")
_WORDS: Mapping[str, tuple[str, ...]] = {
    "PH": (r"pre[\s-]?hard(?:ened)?", "ph", "ht", "heat[ -]treated", "htsr"),
    "QT": (
        r"q\s?[&+]\s?t", r"h\s?[&+]\s?t", "qt", "quenched and tempered",
        "hardened and tempered",
    ),
    "A": ("annealed", "soft annealed", "soft"),
    "N": ("normali[sz]ed",),
    "AR": (r"hot[\s-]rolled", "as rolled", "hrs?", "black"),
    "C": (r"cold[\s-](?:drawn|rolled|finished)", "cd", "cf", "crs", "bright"),
    "AT": (r"solution[\s-](?:treated|annealed)", "cond(?:ition)? a"),
}  # fmt: skip
_SPOKEN = [
    (re.compile(rf"(?P<name>.*?\d[a-z]?)[\s,(/-]*(?:{'|'.join(words)})\)?"), mark)
    for mark, words in _WORDS.items()
]
_SAME = {"SH": "AR", "U": "AR", "V": "QT"}


def parted(name: str) -> tuple[str, str] | None:
    """Return a written name without its mark, and the mark; None where it carries none.

    Parameters
    ----------
    name : str
        A designation as people write it: "EN24T", "42CrMo4 +QT", "1018 CD", "4140PH".

    Returns
    -------
    tuple of str, or None
        The name in lower case, and a key of marks.toml.
    """
    text = name.strip().casefold()
    for pattern in (_LETTER, _HEAT, _PLUS, _DIN):
        written = pattern.fullmatch(text)
        if written is not None:
            mark = re.sub(r"\s", "", written["mark"]).upper()
            return written["name"], mark if pattern is _LETTER else _SAME.get(mark, mark)
    for pattern, mark in _SPOKEN:
        written = pattern.fullmatch(text)
        if written is not None:
            return written["name"], mark
    return None


def stated_mark(label: str) -> str | None:
    """Return the mark that a label of a bar's condition is: "T", "condition V", "+QT", "HT".

    Parameters
    ----------
    label : str
        What stands beside the name, not the name.

    Returns
    -------
    str or None
        A key of marks.toml.
    """
    text = label.strip().lstrip("+")
    split = parted(f"en1 {text}") or parted(f"en1+{text}")
    return split[1] if split is not None and split[0] == "en1" else None
