"""The outline of a part from its sections: steps, fillets, bores, flats, breaks."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from selector.handover.drawing.axis import SAME_MM, Axis, Piece
from selector.handover.drawing.canvas import Canvas, number
from selector.requirement.part import Part, Section

# Height of a hexagon with its points up, and of its inner edges, over the width across flats.
HEXAGON_HALF, HEXAGON_EDGE = 1.0 / math.sqrt(3.0), 0.5 / math.sqrt(3.0)
# What is drawn thinner has no centre line, which would hide it. [em]
CENTRED = 0.6
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Stretch:
    """One section where it lies: from, to and half its height in the side view. [mm]."""

    from_mm: float
    to_mm: float
    half_mm: float
    section: Section

    @property
    def bore_mm(self) -> float:
        """Half its bore, nothing where it has none."""
        return 0.5 * (self.section.bore or 0.0)

    @property
    def wall_mm(self) -> float:
        """How deep a layer can be from any face: of a flat, to the middle of its thickness."""
        if self.section.shape == "flat":
            return 0.5 * self.section.narrowest_mm - self.bore_mm
        return self.half_mm - self.bore_mm


def half_height(section: Section) -> float:
    """Return half the height of a section seen from the side, a flat's broad one. [mm]."""
    if section.shape == "hexagon":
        return HEXAGON_HALF * section.size
    return 0.5 * section.across_mm


def stretches_of(part: Part) -> tuple[Stretch, ...]:
    """Return the sections of a part where they lie."""
    found, place = [], 0.0
    for section in part.section:
        found.append(Stretch(place, place + section.length, half_height(section), section))
        place += section.length
    return tuple(found)


def within(stretches: Sequence[Stretch], piece: Piece) -> Iterator[Stretch]:
    """Yield the sections as far as a piece shows them."""
    for s in stretches:
        low, high = max(s.from_mm, piece.from_mm), min(s.to_mm, piece.to_mm)
        if high > low:
            yield Stretch(low, high, s.half_mm, s.section)


def _fillet_mm(left: Stretch, right: Stretch) -> float:
    """Return the radius at a shoulder, as large as the step and the section let it be. [mm]."""
    given = left.section.fillet or right.section.fillet or 0.0
    thin = left if left.half_mm < right.half_mm else right
    return min(given, abs(left.half_mm - right.half_mm), 0.9 * (thin.to_mm - thin.from_mm))


def _profile(stretches: Sequence[Stretch]) -> list[tuple[str, Point]]:
    """Return the upper edge of a piece in mm: moves "L" to a point, or an arc "A" to it."""
    moves: list[tuple[str, Point]] = [("L", (stretches[0].from_mm, stretches[0].half_mm))]
    for left, right in pairwise(stretches):
        at, radius = left.to_mm, _fillet_mm(left, right)
        if abs(left.half_mm - right.half_mm) < SAME_MM:
            continue
        if radius <= SAME_MM:
            moves += [("L", (at, left.half_mm)), ("L", (at, right.half_mm))]
        elif right.half_mm < left.half_mm:
            moves += [("L", (at, left.half_mm)), ("L", (at, right.half_mm + radius))]
            moves.append(("A", (at + radius, right.half_mm)))
        else:
            moves.append(("L", (at - radius, left.half_mm)))
            moves += [("A", (at, left.half_mm + radius)), ("L", (at, right.half_mm))]
    return [*moves, ("L", (stretches[-1].to_mm, stretches[-1].half_mm))]


@dataclass(frozen=True, slots=True)
class Side:
    """The side view: where a point of the part, mm along and mm off the axis, is on paper."""

    axis: Axis
    middle: float
    stretches: tuple[Stretch, ...]

    def y(self, off_mm: float) -> float:
        """Return the height of a point so far over the axis (under it where negative)."""
        return self.middle - off_mm * self.axis.scale

    def at(self, along_mm: float, off_mm: float) -> str:
        """Return a point as a path takes it."""
        return f"{number(self.axis.x(along_mm))} {number(self.y(off_mm))}"

    def section_at(self, along_mm: float) -> Stretch:
        """Return the section at a place."""
        return next((s for s in self.stretches if along_mm <= s.to_mm), self.stretches[-1])

    def half_at(self, along_mm: float) -> float:
        """Return half the height at a place: of a shoulder, the lower side. [mm]."""
        touching = [
            s for s in self.stretches if s.from_mm - SAME_MM <= along_mm <= s.to_mm + SAME_MM
        ]
        return min((s.half_mm for s in touching), default=self.stretches[-1].half_mm)


def edge_path(side: Side, piece: Piece, sign: int) -> str:
    """Return the edge of a piece, over the axis (1) or under it (-1), from left to right."""
    here = list(within(side.stretches, piece))
    steps: list[str] = []
    last: Point | None = None
    for kind, (x_mm, y_mm) in _profile(here):
        point = side.at(x_mm, sign * y_mm)
        if kind == "A" and last is not None:
            radius = number(abs(x_mm - last[0]) * side.axis.scale)
            # Fillets are hollow to the outside: all of one edge turn the same way round.
            steps.append(f"A{radius} {radius} 0 0 {int(sign < 0)} {point}")
        else:
            steps.append(f"{'L' if steps else 'M'}{point}")
        last = (x_mm, y_mm)
    return " ".join(steps)


def outline_path(side: Side, piece: Piece) -> str:
    """Return the closed shape of a piece, for a fill."""
    ends = f"L{side.at(piece.to_mm, 0.0)} L{side.at(piece.from_mm, 0.0)} Z"
    return " ".join(f"{edge_path(side, piece, sign)} {ends}" for sign in (1, -1))


def draw_outline(canvas: Canvas, side: Side) -> None:
    """Draw edges, ends, breaks, bores and what shows that a section is not round."""
    look, pieces = canvas.look, side.axis.pieces
    for index, piece in enumerate(pieces):
        here = list(within(side.stretches, piece))
        path = f"{edge_path(side, piece, 1)} {edge_path(side, piece, -1)}"
        if index == 0:
            path += _end(side, here[0].from_mm, here[0].half_mm)
        if index == len(pieces) - 1:
            path += _end(side, here[-1].to_mm, here[-1].half_mm)
        canvas.path(path, stroke=look.outline)
        for before, after in pairwise(here):
            _draw_bore_step(canvas, side, before, after)
        for stretch in here:
            _draw_form(canvas, side, stretch)
    for left, right in pairwise(pieces):
        _draw_break(canvas, side, left, right)


def _end(side: Side, at_mm: float, half_mm: float) -> str:
    """Return the end face of a part."""
    return f" M{side.at(at_mm, half_mm)} L{side.at(at_mm, -half_mm)}"


def _draw_form(canvas: Canvas, side: Side, s: Stretch) -> None:
    """Draw the inner edges of a hexagon, the cross on a flat face, a bore seen and hidden."""
    look, shape = canvas.look, s.section.shape
    lines = ""
    if shape == "hexagon":
        edge = -HEXAGON_EDGE * s.section.size
        lines = f"M{side.at(s.from_mm, edge)} L{side.at(s.to_mm, edge)}"
    elif shape in {"square", "flat"} and s.from_mm == _whole(side, s).from_mm:
        whole = _whole(side, s)
        middle = 0.5 * (whole.from_mm + whole.to_mm)
        if side.axis.shows(middle) and whole.to_mm == s.to_mm and shape == "square":
            lines = (
                f"M{side.at(middle, 0.0)} L{side.at(s.from_mm, -s.half_mm)} "
                f"M{side.at(middle, 0.0)} L{side.at(s.to_mm, -s.half_mm)}"
            )
    canvas.path(lines, stroke=look.thin)
    if s.bore_mm > 0.0:
        wall = f"M{side.at(s.from_mm, s.bore_mm)} L{side.at(s.to_mm, s.bore_mm)}"
        canvas.path(wall, stroke=look.outline)
        hidden = f"M{side.at(s.from_mm, -s.bore_mm)} L{side.at(s.to_mm, -s.bore_mm)}"
        dashes = f"{number(0.8 * look.em)} {number(0.35 * look.em)}"
        canvas.path(hidden, stroke=look.thin, style=f' stroke-dasharray="{dashes}"')


def _whole(side: Side, s: Stretch) -> Stretch:
    """Return the section that a shown stretch is of."""
    return side.section_at(0.5 * (s.from_mm + s.to_mm))


def _draw_bore_step(canvas: Canvas, side: Side, left: Stretch, right: Stretch) -> None:
    """Draw where a bore ends or changes its width, in the half cut open."""
    low, high = sorted((left.bore_mm, right.bore_mm))
    if high - low > SAME_MM:
        step = f"M{side.at(left.to_mm, low)} L{side.at(left.to_mm, high)}"
        canvas.path(step, stroke=canvas.look.outline)


def _draw_break(canvas: Canvas, side: Side, left: Piece, right: Piece) -> None:
    """Draw the two wavy lines of a break."""
    for at_mm in (left.to_mm, right.from_mm):
        half = side.section_at(0.5 * (left.to_mm + right.from_mm)).half_mm * side.axis.scale
        x = left.left + (left.to_mm - left.from_mm) * side.axis.scale
        if at_mm == right.from_mm:
            x = right.left
        wave = min(0.35 * canvas.look.em, 0.5 * half)
        over, y = 0.3 * canvas.look.em, side.middle
        top, low = y - half - over, y + half + over
        third = (low - top) / 3.0
        d = (
            f"M{number(x)} {number(top)} "
            f"C{number(x + wave)} {number(top + third)} "
            f"{number(x - wave)} {number(low - third)} {number(x)} {number(low)}"
        )
        canvas.path(d, stroke=canvas.look.thin)


def draw_centre_line(canvas: Canvas, side: Side) -> None:
    """Draw the centre line, a little longer than the part; none over a part as thin as it."""
    em, axis = canvas.look.em, side.axis
    if 2.0 * max(s.half_mm for s in side.stretches) * axis.scale < CENTRED * em:
        return
    dashes = ",".join(number(v * em) for v in (1.7, 0.3, 0.3, 0.3))
    ends = number(axis.left - 1.3 * em), number(axis.right + 1.3 * em)
    line = f"M{ends[0]} {number(side.middle)} H{ends[1]}"
    canvas.path(line, stroke=canvas.look.thin, style=f' stroke-dasharray="{dashes}"')
