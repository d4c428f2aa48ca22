"""Strips under the side view: hardness along the surface, and how hot it got, on one axis."""

from dataclasses import replace

from selector.handover.drawing.canvas import Box, Canvas, Type, number, text_width
from selector.handover.drawing.fields import surface_runs
from selector.handover.drawing.look import MM_PER_INCH
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.outline import Side
from selector.handover.drawing.slots import Label, slots

# Bounds of the steps that the hottest it got is shown in. [°C]
HOT_BOUNDS_C = (100.0, 260.0, 550.0, 790.0, 900.0)
# Places that words are tried at, as a share of the room left beside them. [-]
MIDDLE_FIRST = (0.0, -0.15, 0.15, -0.3, 0.3, -0.5, 0.5)
TICKS_MM = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0)
TICKS_IN = (0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0)


def draw_strip(canvas: Canvas, side: Side, marks: Marks, top: float) -> None:
    """Draw the strip of hardness with its notes over it and the axis in mm under it."""
    em = canvas.look.em
    y = _draw_notes(canvas, side, marks, top) + 0.2 * em
    _draw_hardness(canvas, side, marks, y)
    y += 1.9 * em
    if marks.field is not None and not canvas.look.hatched:
        _draw_hottest(canvas, side, marks, y + 0.6 * em)
        y += 2.5 * em
    _draw_ticks(canvas, side, y)


def _draw_notes(canvas: Canvas, side: Side, marks: Marks, top: float) -> float:
    """Write the notes in rows over the strip, the nearest row last; return where it begins."""
    em, row = canvas.look.em, 1.35 * canvas.look.em
    wanted = [
        Label(
            side.axis.x(note.at_mm),
            note.words,
            text_width(note.words, em, bold=True),
            # Of two that stand close the first keeps to the left.
            left_first=number == 0 and len(marks.notes) > 1,
        )
        for number, note in enumerate(marks.notes)
    ]
    placed = slots(wanted, (), (0.0, canvas.edge), 0.3 * em)
    rows = max((slot.row + 1 for slot in placed), default=0)
    low = top + rows * row
    for slot in placed:
        foot = low - slot.row * row - 0.45 * em
        canvas.line(slot.label.at, foot - 0.7 * em, slot.label.at, low + 2.0 * em)
        x, anchor = (slot.left, "start") if slot.on_the_right else (slot.right, "end")
        canvas.text(slot.label.words, x, foot, Type(bold=True, anchor=anchor))
    return low


def _draw_hardness(canvas: Canvas, side: Side, marks: Marks, y: float) -> None:
    """Draw the strip itself, words in the runs that have room for them."""
    look, em = canvas.look, canvas.look.em
    high = 1.7 * em
    for start, end, hrc in surface_runs(side, marks):
        step = marks.step_of(hrc)
        canvas.tint(Box(side.axis.x(start), y, side.axis.x(end), y + high), look.steps[step])
    _frame(canvas, side, y, high)
    for band in marks.bands:
        _write(canvas, side, marks, (band.from_mm, band.to_mm), y, (band.words,))
    for start, end in _soft_stretches(side, marks):
        short = marks.rest.split("·", maxsplit=1)[0].strip()
        _write(canvas, side, marks, (start, end), y, (marks.rest, short))
    canvas.reach(y + high)


def _write(
    canvas: Canvas,
    side: Side,
    marks: Marks,
    ends: tuple[float, float],
    y: float,
    tried: tuple[str, ...],
) -> None:
    """Write the first words that have room amid a stretch of the strip, if any have."""
    em = canvas.look.em
    x0, x1 = (side.axis.x(at) for at in ends)
    middle = 0.5 * sum(ends)
    hrc = next((h for a, b, h in surface_runs(side, marks) if a <= middle <= b), 0.0)
    bold = marks.step_of(hrc) >= 2
    x0, x1 = _widest(side, x0, x1)
    for text in tried:
        slack = x1 - x0 - 0.6 * em - text_width(text, em, bold=bold)
        # A note's leader may come down into the strip, or a bound between light and dark.
        for share in MIDDLE_FIRST:
            x = 0.5 * (x0 + x1) + share * slack
            if text and slack >= 0.0 and _lettered(canvas, text, (x, y + 1.2 * em), bold=bold):
                return


def _widest(side: Side, x0: float, x1: float) -> tuple[float, float]:
    """Return the widest piece of a stretch between the breaks in it."""
    cuts = [(left, right) for left, right in side.axis.breaks if x0 < left < x1]
    starts = [x0, *(right for _, right in cuts)]
    ends = [*(left for left, _ in cuts), x1]
    return max(zip(starts, ends, strict=True), key=lambda piece: piece[1] - piece[0])


def _lettered(
    canvas: Canvas, text: str, at: tuple[float, float], *, bold: bool = False
) -> bool:
    """Write words over the colours there, if they are told from all of them, and say so."""
    how = Type(anchor="middle", bold=bold)
    ink = canvas.letters_over(canvas.box_of(text, *at, how))
    return ink is not None and canvas.try_text(text, *at, replace(how, colour=ink))


def _soft_stretches(side: Side, marks: Marks) -> list[tuple[float, float]]:
    """Return the stretches that are as bought, a piece of the part at a time. [mm]."""
    joined: list[tuple[float, float]] = []
    for start, end, hrc in surface_runs(side, marks):
        if hrc >= marks.limits_hrc[0]:
            continue
        if joined and start - joined[-1][1] < 1e-3:
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return joined


def _draw_hottest(canvas: Canvas, side: Side, marks: Marks, y: float) -> None:
    """Draw how hot each place of the surface got, figures where there is room."""
    look, em = canvas.look, canvas.look.em
    high, runs = 1.7 * em, surface_runs(side, marks, hottest=True)
    for start, end, peak_c in runs:
        place = Box(side.axis.x(start), y, side.axis.x(end), y + high)
        canvas.tint(place, look.hot[_hot_step(peak_c)])
    _frame(canvas, side, y, high)
    last = side.axis.left - 2.0 * em
    for start, end, peak_c in runs:
        text, middle = (
            f"{5 * round(peak_c / 5):.0f}",
            0.5 * (side.axis.x(start) + side.axis.x(end)),
        )
        half = 0.5 * text_width(text, em)
        if middle - half < max(last + 2.5 * em, side.axis.left + 0.3 * em):
            continue
        fits = middle + half < side.axis.right - 0.3 * em
        if fits and _lettered(canvas, text, (middle, y + 1.2 * em)):
            last = middle + half


def _hot_step(peak_c: float) -> int:
    """Return which of the six steps of heat a temperature lies in, from 0."""
    return sum(peak_c >= bound for bound in HOT_BOUNDS_C)


def _frame(canvas: Canvas, side: Side, y: float, high: float) -> None:
    """Draw the frame of a strip, a piece of the part at a time."""
    look = canvas.look
    for piece in side.axis.pieces:
        x0, x1 = piece.left, piece.left + (piece.to_mm - piece.from_mm) * side.axis.scale
        canvas.add(
            f'<rect x="{number(x0)}" y="{number(y)}" width="{number(x1 - x0)}" '
            f'height="{number(high)}" fill="none" stroke="{look.ink}" '
            f'stroke-width="{number(look.thin)}"/>'
        )


def _draw_ticks(canvas: Canvas, side: Side, y: float) -> None:
    """Draw the axis of places: ticks as near as their figures let them be."""
    look, em = canvas.look, canvas.look.em
    ticks, per_mm = (TICKS_IN, MM_PER_INCH) if look.inches else (TICKS_MM, 1.0)
    near = (t * per_mm for t in ticks if t * per_mm * side.axis.scale >= 3.4 * em)
    every = next(near, ticks[-1] * per_mm)
    length = side.stretches[-1].to_mm
    for n in range(int(length / every + 1e-9) + 1):
        at = n * every
        if not side.axis.shows(at):
            continue
        x = side.axis.x(at)
        canvas.line(x, y, x, y + 0.4 * em, look.grey)
        how = Type(anchor="middle", colour=look.grey)
        canvas.try_text(f"{at / per_mm:g}", x, y + 1.35 * em, how)
    unit = Type(colour=look.grey)
    canvas.try_text(
        "in" if look.inches else "mm", side.axis.right + 1.2 * em, y + 1.35 * em, unit
    )
    canvas.reach(y + 1.6 * em)
