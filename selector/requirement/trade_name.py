"""What tools and parts do by the names that the trade has for them.

A name raises a presumption alone: what the part is, its sections and its mate say as well.
"""

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Literal

from selector.requirement.part_name import itself
from selector.requirement.vocabulary import one_of, table

Trade = Literal[
    "presses", "presses_by_use", "measures", "edged", "maybe_edged", "stirs", "cuts_metal",
    "keen", "thin_blade", "crops", "ground", "maybe_ground", "springs", "folded_spring",
    "formed", "rubs", "stamps", "pushes", "backs", "driven_home", "bends_metal", "dog",
    "cam", "turns_screws",
    "turns_by_hand", "breaks", "prises", "splits", "guides_tools", "centre", "locates", "grips",
    "traces", "burnishes", "collet", "meshes", "worked_upon", "cuts_hot", "pulls", "lives",
]  # fmt: skip
# Where one of these follows in the same words, what stands before says its kind alone.
_PIECES = (
    "bolt", "nut", "screw", "stud", "shaft", "spindle", "bush", "bushing", "bearing", "gear",
    "pinion", "spring", "lever", "bracket", "handle", "holder", "housing", "clamp", "guard",
    "stand", "case", "box", "wagon", "engine", "locomotive", "railway", "puller", "extractor",
    "sharpener",
)  # fmt: skip
_TABLE = table(Path(__file__).with_name("trades.toml"))
# What a name says it is for, where that is to measure; a stand for that measures nothing.
_TO_MEASURE = re.compile(
    r"\bfor (?:measuring|gauging|checking|calibrating|inspecting|aligning|lining[ -]up|truing|"
    r"tramming)\b(?! holes)",
    re.IGNORECASE,
)
_STANDS = (
    *_PIECES, "frame", "table", "arm", "rail", "rod", "base", "tray", "rack", "drift", "wrench",
)  # fmt: skip
_NO_MEASURE = re.compile(rf"\b{one_of(_STANDS)}\b", re.IGNORECASE)
# A tool or a gauge for what carries lives carries none, nor does a toy.
_TOOLS = (
    "tool", "spanner", "wrench", "key", "jig", "gauge", "punch", "die", "press", "mandrel",
    "drift", "reamer", "tap", "drill", "stand", "template", "cutter", "puller", "extractor",
    "compressor", "expander", "gate", "toy", "model",
)  # fmt: skip
_TOOL = re.compile(rf"\b{one_of(_TOOLS)}\b", re.IGNORECASE)
_LEAF = re.compile(r"\blea(?:f|ves)\b")


@dataclass(frozen=True, slots=True)
class TradeWindow:
    """The hardness that a trade runs a tool at, and the least that serves. [HRC]."""

    low_hrc: float
    high_hrc: float
    floor_hrc: float


def trade_names() -> tuple[str, ...]:
    """Return the trades of the table."""
    return tuple(_TABLE)


@cache
def trade_window(trade: Trade) -> TradeWindow:
    """Return the window of its own that a trade has."""
    hrc = _TABLE[trade]["hrc"]
    return TradeWindow(float(hrc["low"]), float(hrc["high"]), float(hrc["floor"]))


@cache
def _names(trade: Trade) -> re.Pattern[str]:
    """Return the pattern of the names of a trade."""
    kind = _TABLE[trade]
    ends = [*(() if kind.get("pieces_too") else _PIECES), *kind.get("no_more_before", ())]
    behind = "".join(rf"(?<!\b{word}[- ])" for word in kind.get("not_behind", ()))
    ahead = rf"(?![^,;(]*\b{one_of(ends)}\b)" if ends else ""
    if only := kind.get("only_before"):
        ahead += rf"(?![ -]+(?!{one_of(only)}\b)[a-z])"
    return re.compile(rf"\b{behind}{one_of(kind['names'])}\b{ahead}", re.IGNORECASE)


@cache
def does(name: str, trade: Trade) -> bool:
    """Return whether a part does what a trade's tools do, by its name."""
    words = name if _TABLE[trade].get("for_too") else itself(name)
    return _names(trade).search(words) is not None


def presses(name: str) -> bool:
    """Return whether it shears, pierces or coins under a press or a lever."""
    return does(name, "presses") or does(name, "presses_by_use")


def measures(name: str) -> bool:
    """Return whether it measures or sets by its faces, or is for measuring."""
    if _TO_MEASURE.search(name) and not _NO_MEASURE.search(itself(name)):
        return True
    return does(name, "measures")


def is_edged(name: str) -> bool:
    """Return whether it is a tool that is nothing without its edge or point."""
    return does(name, "edged") and not does(name, "stirs")


def may_be_edged(name: str) -> bool:
    """Return whether it has an edge if the rest of the part does not say otherwise."""
    return does(name, "maybe_edged") and not does(name, "stirs")


def is_spring(name: str) -> bool:
    """Return whether it is a spring, or one leaf for a spring."""
    leaf = _LEAF.search(itself(name)) is not None
    return (leaf and re.search(r"\bspring\b", name, re.I) is not None) or does(name, "springs")


def carries_lives(name: str) -> bool:
    """Return whether lives hang on it by its name: no tool or gauge for such a part."""
    return does(name, "lives") and _TOOL.search(itself(name)) is None


def works_ground(name: str, *, lightly: bool = False) -> bool:
    """Return whether it works the ground, where stones strike it."""
    return (not lightly and does(name, "maybe_ground")) or does(name, "ground")
