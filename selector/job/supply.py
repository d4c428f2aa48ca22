"""In which supply condition of its steel a bar of the rack is taken to be, and how hard."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import get_args

import numpy as np

from catalog import Catalog
from catalog.mark import ConditionName, Mark, stated_mark
from catalog.steel import Condition, Steel
from catalog.values import Span
from selector.hardness_scale import (
    hrc_from_hv,
    hv_from_hb,
    hv_from_hrc,
    hv_from_tensile_mpa,
)
from selector.job.treatment import Treatment
from selector.requirement.workshop import Stock


@dataclass(frozen=True, slots=True)
class Racked:
    """A bar of the rack, the one steel that its name means and the states it may be in.

    `mark` is the mark of condition that name or label carries, a key of marks.toml.
    """

    bar: Stock
    steel: Steel
    mark: str | None = None
    conditions: tuple[Condition, ...] = ()


_ENDS = ("low", "high")
SOFT: tuple[ConditionName, ...] = ("normalised", "hot-rolled", "annealed", "cold-drawn")
# What a label or a trade name says of how plain bar was finished. Common practice.
_FINISHED: tuple[tuple[ConditionName, re.Pattern[str]], ...] = (
    ("cold-drawn", re.compile(r"\b(?:bright|bms|crs|cold[- ](?:rolled|finished))\b", re.I)),
    ("hot-rolled", re.compile(r"\b(?:black|hrs|as[- ]rolled)\b", re.I)),
)
# Bar of these kinds this thin is bright unless it is said to be black. Common practice. [mm]
_BRIGHT, BRIGHT_TO_MM = frozenset({"mild", "free-cutting", "medium-carbon"}), 25.4


def racked(bar: Stock, steel: Steel, catalog: Catalog) -> Racked:
    """Return a bar as the steel and the conditions it is judged in.

    Parameters
    ----------
    bar : Stock
        The bar; a condition that is not stated fits any but a hard element, unless the steel is
        sold in no other.
    steel : Steel
        Its steel.
    catalog : Catalog
        What its marks say.

    Returns
    -------
    Racked
        Without conditions where it is said to be in one that is not listed for its steel and
        whose hardness nobody gives. A soft bar is taken as the first soft condition that is
        listed, in the order of `SOFT`: heat wipes out the difference.
    """
    named = _named(bar)
    mark = None
    if not named:
        # A label that says nothing leaves it to the name.
        stated = stated_mark(bar.condition) if bar.condition else None
        mark = stated or catalog.look_up(bar.steel).mark
    if mark is not None:
        named = {catalog.marks[mark].condition}
    found = _conditions(bar, steel, named, (mark, catalog.marks))
    if bar.size is not None:
        found = tuple(as_drawn(condition, bar.size) for condition in found)
    return Racked(bar, steel, mark, found)


def _named(bar: Stock) -> set[ConditionName]:
    """Return the conditions that the label of a bar names, or how its name says it is made."""
    label = bar.condition or ""
    named: set[ConditionName] = {name for name in get_args(ConditionName) if name in label}
    if named:
        return named
    said = f"{bar.steel} {label}"
    return {name for name, words in _FINISHED if words.search(said)}


def _conditions(
    bar: Stock,
    steel: Steel,
    named: set[ConditionName],
    marked: tuple[str | None, Mapping[str, Mark]],
) -> tuple[Condition, ...]:
    """Return the conditions that a bar may be judged in, each as hard as its mark says."""
    if not named:
        bars = [c for c in steel.condition if c.name != "hard-element"]
        return _as_hard(bar, _as_finished(bar, steel, bars) or list(steel.condition))
    mark, marks = marked
    band = None if mark is None else strength_hb(steel, mark, marks, bar.size)
    same = tuple(c for c in steel.condition if c.name in named)
    if band is not None:
        like, name = (same or steel.condition)[0], next(iter(named))
        harder = {"name": name, "hardness_hb": band, "hardness_hrc": None}
        return (like.model_copy(update=harder),)
    if same or not named & set(SOFT):
        return same
    soft = (c for name in SOFT for c in steel.condition if c.name == name)
    return tuple(soft)[:1]


def _as_finished(bar: Stock, steel: Steel, sold: list[Condition]) -> list[Condition]:
    """Return the conditions that a bar may be in by its size: thin plain bar is bright."""
    bright = any(condition.name == "cold-drawn" for condition in sold)
    thin = bar.size is not None and bar.size <= BRIGHT_TO_MM
    if bright and thin and steel.kind in _BRIGHT:
        return [condition for condition in sold if condition.name != "hot-rolled"]
    return sold


def _as_hard(bar: Stock, sold: list[Condition]) -> tuple[Condition, ...]:
    """Return the conditions that a bar's hardness fits best, all where it is not known."""
    if bar.hardness is None:
        return tuple(sold)
    off = [_off_hardness(condition, bar.hardness) for condition in sold]
    return tuple(c for c, by in zip(sold, off, strict=True) if by == min(off))


def _off_hardness(condition: Condition, hardness_hv: float) -> float:
    """Return how far a hardness lies outside what a condition is sold in. [HV]."""
    brinell, rockwell = condition.hardness_hb, condition.hardness_hrc
    if rockwell is not None:
        low, high = (
            float(hv_from_hrc(end, outside="extend")) for end in (rockwell.low, rockwell.high)
        )
    elif brinell is not None:
        # A maximum alone bounds the soft ones from above.
        low = 0.0 if brinell.min is None else float(hv_from_hb(brinell.min, outside="extend"))
        high = float(hv_from_hb(brinell.high, outside="extend"))
    else:
        return 0.0
    return max(low - hardness_hv, hardness_hv - high, 0.0)


def strength_hb(
    steel: Steel, mark: str, marks: Mapping[str, Mark], size_mm: float | None
) -> Span | None:
    """Return how hard bar of a mark is: by the steel's own standard, else whatever the steel.

    Parameters
    ----------
    steel : Steel
        The steel.
    mark : str
        A key of `marks`.
    marks : mapping
        What marks say.
    size_mm : float or None
        Size of the bar; None takes all sizes together. [mm]

    Returns
    -------
    Span or None
        [HB] None where nobody gives it, and the condition as listed counts.
    """
    bands = sorted((b for b in steel.strength_hb if b.mark == mark), key=lambda b: b.to_mm)
    if not bands:
        return marks[mark].hardness_hb
    if size_mm is None:
        least, most = min(b.low for b in bands), max(b.high for b in bands)
        return bands[0].model_copy(update={"min": least, "max": most})
    return next((b for b in bands if size_mm <= b.to_mm), bands[-1])


def presumed(stock: Iterable[Racked], marks: Mapping[str, Mark]) -> list[str]:
    """Return a sentence for each bar judged otherwise than its label alone would say."""
    said = []
    for held in stock:
        said += [text for text in (_as_marked(held, marks), _as_named(held)) if text]
    return said


def _as_marked(held: Racked, marks: Mapping[str, Mark]) -> str | None:
    """Say in which condition a bar is judged, where its label or name states one."""
    bar, steel, mark = held.bar, held.steel, held.mark
    if not held.conditions:
        return None
    judged = held.conditions[0]
    if mark is None:
        other = _named(bar) and judged.name not in _named(bar)
        return f"{steel.name} {bar.condition}: judged as {judged.name} bar." if other else None
    hard = judged.hardness_hb
    taken = (
        f"taken as {hard.low:.0f} to {hard.high:.0f} HB"
        if marks[mark].condition == "prehard" and hard is not None
        else f"judged as {judged.name} bar"
    )
    most = max((b.to_mm for b in steel.strength_hb if b.mark == mark), default=None)
    beyond = ""
    if most is not None and bar.size is not None and bar.size > most:
        beyond = f" The standard has it up to {most:g} mm: the middle may be softer."
    return f"{bar.steel}: {marks[mark].says}; {taken}.{beyond}"


def _as_named(held: Racked) -> str | None:
    """Say how the composition that a bar's name stands for differs from its steel's."""
    window = held.steel.assumed
    if window is None:
        return None
    return f"{held.bar.steel}: judged by the composition of that name. {window.differs.text}"


def as_drawn(sold: Condition, size_mm: float) -> Condition:
    """Return drawn wire as hard as it is in a size, anything else as it is listed.

    Parameters
    ----------
    sold : Condition
        How it is sold.
    size_mm : float
        Diameter of the wire. [mm]

    Returns
    -------
    Condition
        Its hardness by ISO 18265 from the strength at that size, within that of all sizes.
    """
    known, whole = sold.drawn_mpa, sold.hardness_hrc
    if not known or whole is None:
        return sold
    sizes = [at.at_mm for at in known]
    mpa = [np.interp(size_mm, sizes, [getattr(at, end) for at in known]) for end in _ENDS]
    hv = hv_from_tensile_mpa(mpa, outside="extend")
    hrc = np.clip(hrc_from_hv(hv, outside="extend"), whole.low, whole.high)
    at = f"{known[0].at} at {size_mm:g} mm, by ISO 18265"
    ends = {"min": round(float(hrc[0]), 1), "max": round(float(hrc[1]), 1), "at": at}
    return sold.model_copy(update={"hardness_hrc": whole.model_copy(update=ends)})


def is_rare(work: Treatment) -> bool:
    """Return whether the bar of a treatment is one that few merchants sell in short lengths."""
    return work.stock is None and work.condition.availability == "rare"


# How easily a bar is had; 1 in the rack. Common practice, no source. [-]
EASE = {"easy": 0.6, "order": 0.3, "rare": 0.0}


def at_hand(work: Treatment) -> float:
    """Return how easily the bar of a treatment is had: 1 in the rack, 0 rare. [-]."""
    return 1.0 if work.stock is not None else EASE[work.condition.availability]


def at_hand_words(work: Treatment) -> str:
    """Return how easily the bar of a treatment is had, in words."""
    if work.stock is not None:
        return "in the rack"
    words = {"easy": "every shop has it", "order": "to order", "rare": "hard to get"}
    return words[work.condition.availability]
