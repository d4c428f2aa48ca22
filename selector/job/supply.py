"""In which supply condition of its steel a bar of the rack is taken to be."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import get_args

from catalog.steel import ConditionName, Steel
from selector.job.treatment import Treatment
from selector.requirement.workshop import Stock


@dataclass(frozen=True, slots=True)
class Racked:
    """A bar of the rack and the one steel that its name means."""

    bar: Stock
    steel: Steel


SOFT: tuple[ConditionName, ...] = ("normalised", "hot-rolled", "annealed", "cold-drawn")


def stated(bar: Stock) -> set[ConditionName]:
    """Return the conditions that the label of a bar names; none where it names no known one."""
    return {name for name in get_args(ConditionName) if bar.condition and name in bar.condition}


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
        return tuple(name for name in listed if name != "hard-element")
    same = tuple(name for name in listed if name in names)
    if same or not names & set(SOFT):
        return same
    return next(((name,) for name in SOFT if name in listed), ())


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
