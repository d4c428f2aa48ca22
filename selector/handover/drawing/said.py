"""What is said on the side view: where the heat goes, what comes out, how deep it is dipped."""

from selector.handover.drawing.axis import Axis
from selector.handover.drawing.canvas import UNDER, Canvas, Type, number, text_width
from selector.handover.drawing.features import Named, place_of
from selector.handover.drawing.fields import surface_runs
from selector.handover.drawing.look import Look
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.outline import Side, Stretch
from selector.requirement.part import Feature, Part

# Sizes of the lines that say what comes out, and how far under each other. [em]
SIZES, APART = (1.4, 1.0), 1.3
# From where it is hard to where the words begin. [em]
AWAY = 3.2
# A label that is no feature's still has one, for its place.
PLACE = Feature(kind="groove")


def hard_end_mm(side: Side, marks: Marks) -> tuple[float, float] | None:
    """Return the first stretch whose surface is hard enough, None where none is. [mm]."""
    runs = [(a, b) for a, b, hrc in surface_runs(side, marks) if hrc >= marks.limits_hrc[2]]
    if not runs:
        return None
    start, end = runs[0]
    for a, b in runs[1:]:
        end = b if a - end < 1e-3 else end
    return start, end


def _lines(marks: Marks) -> list[tuple[str, float, bool]]:
    """Return the lines that say what comes out: words, size, bold."""
    return [(text, SIZES[k], k == 0) for k, text in enumerate(marks.said[: len(SIZES)])]


def has_room(
    look: Look, axis: Axis, stretches: tuple[Stretch, ...], marks: Marks, part: Part
) -> bool:
    """Return whether what comes out can be written into the half cut open, beside what is hard.

    Parameters
    ----------
    look : Look
        Letters.
    axis : Axis
        Where places are on paper.
    stretches : tuple of Stretch
        The sections.
    marks : Marks
        What is said, and what is hard.
    part : Part
        Its features must not lie there.

    Returns
    -------
    bool
        Whether `draw_said` finds room.
    """
    side, em = Side(axis, 0.0, stretches), look.em
    hard = hard_end_mm(side, marks)
    if not marks.said or hard is None:
        return False
    lines = _lines(marks)
    wide = max(text_width(text, size * em, bold=bold) for text, size, bold in lines)
    x = axis.x(hard[1]) + AWAY * em
    stretch = side.section_at(hard[1] + 1e-6 * part.length_mm)
    high = (0.72 * SIZES[0] + APART * (len(lines) - 1) + UNDER + 0.7) * em
    ends = axis.x(stretch.to_mm) - 0.5 * em
    if stretch.bore_mm > 0.0 or stretch.half_mm * axis.scale < high or x + wide > ends:
        return False
    if any(x - em < left < x + wide + em for left, _ in axis.breaks):
        return False
    spots = (axis.x(place_of(part, f)) for f in part.feature)
    return not any(x - 2.0 * em < spot < x + wide + 2.0 * em for spot in spots)


def draw_said(canvas: Canvas, side: Side, marks: Marks) -> None:
    """Write what comes out into the half cut open, with a leader from what is hard."""
    em, axis, hard = canvas.look.em, side.axis, hard_end_mm(side, marks)
    if hard is None:
        return
    x, lines = axis.x(hard[1]) + AWAY * em, _lines(marks)
    half = side.section_at(hard[1] + 1e-6).half_mm * axis.scale
    high = (0.72 * SIZES[0] + APART * (len(lines) - 1) + UNDER) * em
    foot = side.middle - 0.5 * (half + high) + 0.72 * SIZES[0] * em
    for k, (text, size, bold) in enumerate(lines):
        canvas.text(text, x, foot + k * APART * em, Type(size=size, bold=bold))
    level = foot - 0.45 * em
    start = max(axis.x(hard[1]) - 3.5 * em, 0.5 * (axis.x(hard[0]) + axis.x(hard[1])))
    canvas.add(
        f'<circle cx="{number(start)}" cy="{number(level)}" r="{number(0.2 * em)}" '
        f'fill="{canvas.look.ink}"/>'
    )
    canvas.line(start, level, x - 0.3 * em, level)


def draw_over(canvas: Canvas, axis: Axis, marks: Marks, *, said: bool) -> float:
    """Draw over the part where the heat goes and, unless it stands in it, what comes out.

    Parameters
    ----------
    canvas : Canvas
        To draw on.
    axis : Axis
        Where places are on paper.
    marks : Marks
        What is heated and said.
    said : bool
        Whether what comes out is written here.

    Returns
    -------
    float
        What height the part may begin at.
    """
    _em, top = canvas.look.em, 0.2 * canvas.look.em
    if said and marks.said:
        top = _draw_lines(canvas, axis, marks, top)
    return _draw_heat(canvas, axis, marks, top) if marks.heated_mm is not None else top


def _draw_lines(canvas: Canvas, axis: Axis, marks: Marks, top: float) -> float:
    """Write what comes out over the part, in one line if it fits, else in two."""
    em, room = canvas.look.em, canvas.look.width - 0.4 * canvas.look.em
    bold, rest = Type(size=1.2, bold=True), ", ".join(marks.said[1:])
    head = canvas.fitted(marks.said[0], room, bold)
    wide = text_width(head, 1.2 * em, bold=True)
    foot = top + em
    x = min(axis.left, max(room - wide, 0.2 * em))
    canvas.text(head, x, foot, bold)
    if not rest:
        return foot + 0.5 * em
    # Clear of it in wider letters too, where a browser has not ours.
    beside = x + 1.1 * wide + 0.8 * em
    if beside + text_width(rest, em) <= room:
        canvas.text(rest, beside, foot)
        return foot + 0.5 * em
    foot += 1.3 * em
    rest = canvas.fitted(rest, room)
    canvas.text(rest, min(axis.left, max(room - text_width(rest, em), 0.2 * em)), foot)
    return foot + 0.5 * em


def _draw_heat(canvas: Canvas, axis: Axis, marks: Marks, top: float) -> float:
    """Draw where the heat goes: a bar with arrows under its words; return what lies under."""
    look, em = canvas.look, canvas.look.em
    x0, x1 = (axis.x(at) for at in marks.heated_mm or (0.0, 0.0))
    how = Type(bold=True, colour=look.heat)
    words = canvas.fitted(marks.heat_words, look.width - 0.5 * em, how)
    wide = text_width(words, em, bold=True)
    canvas.text(
        words, max(min(x0, look.width - wide - 0.2 * em), 0.2 * em), top + 0.8 * em, how
    )
    bar, tip = top + 1.25 * em, top + 3.4 * em
    width = number(2.0 * look.thin)
    count = max(2, min(int((x1 - x0) / (1.6 * em)) + 1, 40))
    xs = [x0 + (x1 - x0) * k / (count - 1) for k in range(count)]
    path = f"M{number(x0)} {number(bar)} H{number(x1)} " + " ".join(
        f"M{number(x)} {number(bar)} V{number(tip - 0.8 * em)}" for x in xs
    )
    canvas.path(path, style=f' stroke="{look.heat}" stroke-width="{width}"')
    half = 0.16 * em
    for x in xs:
        points = (
            f"{number(x)},{number(tip)} {number(x - half)},{number(tip - 0.85 * em)} "
            f"{number(x + half)},{number(tip - 0.85 * em)}"
        )
        canvas.add(f'<polygon points="{points}" fill="{look.heat}"/>')
    return tip + 0.1 * em


def draw_water(canvas: Canvas, side: Side, at_mm: float) -> Named:
    """Draw how far the part is dipped as a wavy line across it."""
    look, em = canvas.look, canvas.look.em
    half = side.half_at(at_mm) + 0.45 * em / side.axis.scale
    x, top, low = side.axis.x(at_mm), side.y(half), side.y(-half)
    count = max(int((low - top) / (0.5 * em)), 2)
    step = (low - top) / count
    turns = " ".join(
        f"q{number(0.18 * em * (-1) ** k)} {number(0.5 * step)} 0 {number(step)}"
        for k in range(count)
    )
    style = f' stroke="{look.accent}" stroke-width="{number(2.0 * look.thin)}"'
    canvas.path(f"M{number(x)} {number(top)} {turns}", style=style)
    return Named(PLACE, f"water line {look.size(at_mm)}", at_mm, -half)


def fillets(side: Side, look: Look) -> list[Named]:
    """Return the labels of fillets: one for each radius there is, at its first shoulder."""
    found: dict[float, Named] = {}
    for left, right in zip(side.stretches, side.stretches[1:], strict=False):
        radius = left.section.fillet or right.section.fillet
        if radius and abs(left.half_mm - right.half_mm) > 1e-6:
            thin = min(left.half_mm, right.half_mm)
            toward = 0.4 * radius if right.half_mm == thin else -0.4 * radius
            item = Named(PLACE, f"R{look.size(radius)}", left.to_mm + toward, -thin)
            found.setdefault(radius, item)
    return list(found.values())
