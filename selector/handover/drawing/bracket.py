"""Brackets under a part that say in a word or two what each stretch of it is."""

from dataclasses import dataclass

from selector.handover.drawing.canvas import Canvas, Type, text_width
from selector.handover.drawing.outline import Side

# From the part to its brackets, their ticks, and to the words under them. [em]
OFF, TICK, UNDER = 0.6, 0.35, 1.35
# Between two brackets. [em]
GAP = 0.6


@dataclass(frozen=True, slots=True)
class Bracket:
    """A stretch and what is said of it. [mm]."""

    from_mm: float
    to_mm: float
    words: str


def draw_brackets(
    canvas: Canvas, side: Side, brackets: tuple[Bracket, ...], top: float
) -> float:
    """Draw brackets under a part, and return where they end.

    Parameters
    ----------
    canvas : Canvas
        What is drawn on.
    side : Side
        The side view above them.
    brackets : tuple of Bracket
        From left to right.
    top : float
        Where the part ends.

    Returns
    -------
    float
        The lowest place that is taken.
    """
    em = canvas.look.em
    y, right = top + OFF * em, -1e9
    for bracket in brackets:
        left, end = side.axis.x(bracket.from_mm), side.axis.x(bracket.to_mm)
        left += 0.5 * GAP * em * (bracket.from_mm > 0.0)
        if end - left < 2.0 * TICK * em:
            continue
        canvas.line(left, y, end, y)
        for x in (left, end):
            canvas.line(x, y - TICK * em, x, y + TICK * em)
        wide = text_width(bracket.words, em)
        # Words wider than their bracket hang over it, to the side where there is room.
        at = max(0.5 * (left + end), right + GAP * em + 0.5 * wide, 0.5 * wide)
        at = max(min(at, canvas.look.width - 0.5 * wide), 0.5 * wide)
        row = 0.0 if at - 0.5 * wide >= right else 1.2 * em
        canvas.text(bracket.words, at, y + UNDER * em + row, Type(anchor="middle"))
        right = at + 0.5 * wide
    return canvas.low
