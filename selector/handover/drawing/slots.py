"""Labels in rows beside what they name, each with a leader: none meets another or a line."""

from collections.abc import Sequence
from dataclasses import dataclass

# Rows that labels are tried in before one is left out.
MOST_ROWS = 5


@dataclass(frozen=True, slots=True)
class Label:
    """Words that belong to a place across the drawing, how wide, on which side rather."""

    at: float
    words: str
    wide: float
    left_first: bool = False


@dataclass(frozen=True, slots=True)
class Slot:
    """A label in its row, 0 the nearest, from `left` to `right`; its leader stands at `at`."""

    label: Label
    row: int
    left: float
    right: float

    @property
    def on_the_right(self) -> bool:
        """Whether the words stand to the right of their leader."""
        return self.left >= self.label.at


def slots(
    labels: Sequence[Label], walls: Sequence[float], span: tuple[float, float], gap: float
) -> tuple[Slot, ...]:
    """Return where labels go; one that finds no place is left out.

    Parameters
    ----------
    labels : sequence of Label
        The most needed first.
    walls : sequence of float
        Where lines pass through all rows.
    span : tuple of float
        From where to where labels may stand.
    gap : float
        Kept between words and anything else.

    Returns
    -------
    tuple of Slot
        In the order given.
    """
    placed: list[Slot] = []
    for label in labels:
        for row in range(MOST_ROWS):
            sides = (not label.left_first, label.left_first)
            tried = (_beside(label, row, gap, right=right) for right in sides)
            slot = next((s for s in tried if _fits(s, placed, walls, span, gap)), None)
            if slot is not None:
                placed.append(slot)
                break
    return tuple(placed)


def _beside(label: Label, row: int, gap: float, *, right: bool) -> Slot:
    """Return a label on one side of its leader."""
    left = label.at + gap if right else label.at - gap - label.wide
    return Slot(label, row, left, left + label.wide)


def _fits(
    slot: Slot,
    placed: list[Slot],
    walls: Sequence[float],
    span: tuple[float, float],
    gap: float,
) -> bool:
    """Return whether a label meets no other, no leader and no wall."""
    if slot.left < span[0] or slot.right > span[1]:
        return False
    if any(slot.left - 0.5 * gap < wall < slot.right + 0.5 * gap for wall in walls):
        return False
    return not any(_clash(slot, other, gap) or _clash(other, slot, gap) for other in placed)


def _clash(slot: Slot, other: Slot, gap: float) -> bool:
    """Return whether one label's words meet another's words or its leader."""
    if (
        slot.row == other.row
        and slot.left < other.right + gap
        and other.left < slot.right + gap
    ):
        return True
    passes = other.row >= slot.row
    return passes and slot.left - 0.5 * gap < other.label.at < slot.right + 0.5 * gap
