"""In which supply condition of its steel a bar of the rack is taken to be."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import get_args

from catalog.steel import Condition, ConditionName, Steel
from selector.hardness_scale import hv_from_hb, hv_from_hrc
from selector.job.treatment import Treatment
from selector.requirement.workshop import Stock


@dataclass(frozen=True, slots=True)
class Racked:
    """A bar of the rack and the one steel that its name means."""

    bar: Stock
    steel: Steel


# What a bar is in by its name: an old EN or BS number with its strength letter, or a mark of
# the stockholder. Standards EN 10083 (+QT, +N, +A), EN 10277 (+C), BS 970 (P to Z).
_MARKS: tuple[tuple[str, ConditionName], ...] = (
    (r"^\s*(en\s?-?\d+[a-e]?|\d{3}[amh]\d{2})\s?[p-z]\s*$", "prehard"),
    (r"(\+\s*qt|\bph|\d\s*ph|\bht|\d\s*ht|pre-?hard)\s*$", "prehard"),
    (r"(\+\s*c|\s+cd)\s*$", "cold-drawn"),
    (r"\+\s*n\s*$", "normalised"),
    (r"\+\s*a\s*$", "annealed"),
)
SOFT: tuple[ConditionName, ...] = ("normalised", "hot-rolled", "annealed", "cold-drawn")


def stated(bar: Stock) -> set[ConditionName]:
    """Return the conditions that a bar is said to be in, or that its name carries: EN24T."""
    if bar.condition:
        return {name for name in get_args(ConditionName) if name in bar.condition}
    return {name for mark, name in _MARKS if re.search(mark, bar.steel, re.IGNORECASE)}


def taken_as(bar: Stock, steel: Steel) -> tuple[ConditionName, ...]:
    """Return the conditions of a steel that a bar of it may be judged in.

    Parameters
    ----------
    bar : Stock
        The bar; a condition that is not stated fits any but a hard element.
    steel : Steel
        Its steel.

    Returns
    -------
    tuple of str
        A soft bar in a condition not listed for its steel is taken as the first soft one that
        is, in the order of `SOFT`: heat wipes out the difference. Empty where a hard one
        is not listed.
    """
    listed = [condition.name for condition in steel.condition]
    names = stated(bar)
    if not names:
        sold = [condition for condition in steel.condition if condition.name != "hard-element"]
        return tuple(condition.name for condition in _as_hard(bar, sold))
    same = tuple(name for name in listed if name in names)
    if same or not names & set(SOFT):
        return same
    return next(((name,) for name in SOFT if name in listed), ())


def _as_hard(bar: Stock, sold: list[Condition]) -> list[Condition]:
    """Return the conditions that a bar's hardness fits best, all where it is not known."""
    if bar.hardness is None:
        return sold
    off = [_off_hardness(condition, bar.hardness) for condition in sold]
    return [condition for condition, by in zip(sold, off, strict=True) if by == min(off)]


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


def presumed(stock: Iterable[Racked]) -> list[str]:
    """Return a sentence for each bar judged in another condition than its label says."""
    said = []
    for racked in stock:
        bar, steel = racked.bar, racked.steel
        names = taken_as(bar, steel)
        if stated(bar) and not set(names) <= stated(bar):
            said.append(f"{steel.name} {bar.condition}: judged as {names[0]} bar.")
    return said


# How easily a bar is had; 1 in the rack. Common practice, no source. [-]
_EASE = {"easy": 0.6, "order": 0.3, "rare": 0.0}


def at_hand(work: Treatment) -> float:
    """Return how easily the bar of a treatment is had: 1 in the rack, 0 rare. [-]."""
    return 1.0 if work.stock is not None else _EASE[work.condition.availability]


def at_hand_words(work: Treatment) -> str:
    """Return how easily the bar of a treatment is had, in words."""
    if work.stock is not None:
        return "in the rack"
    words = {"easy": "every shop has it", "order": "to order", "rare": "hard to get"}
    return words[work.condition.availability]
