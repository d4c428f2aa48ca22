"""Labels and sizes of the side view: leaders, chain of lengths, places, total, diameters."""

import itertools
from collections.abc import Callable, Sequence

from selector.handover.drawing.axis import SAME_MM
from selector.handover.drawing.canvas import Box, Canvas, Type, number, text_width
from selector.handover.drawing.features import Named
from selector.handover.drawing.look import shown_size
from selector.handover.drawing.outline import Side, Stretch
from selector.handover.drawing.slots import Label, Slot, slots

# Places of features that get a size line of their own, at most; the table has the rest.
MOST_PLACES = 3
ARROW = 0.75
# Slender arrows, as high as a third of their length.
SLENDER = 3.0


def draw_labels(
    canvas: Canvas, side: Side, named: Sequence[Named], walls: Sequence[float], top: float
) -> float:
    """Write labels under the side view, each at its leader, and return how far down they go.

    Parameters
    ----------
    canvas : Canvas
        To draw on.
    side : Side
        The side view.
    named : sequence of Named
        What is labelled, the most needed first.
    walls : sequence of float
        Where lines of sizes come down.
    top : float
        Under the part.

    Returns
    -------
    float
        Where sizes may begin.
    """
    em, row_high = canvas.look.em, 1.35 * canvas.look.em
    said = [item for item in named if item.words]
    wanted = [Label(side.axis.x(n.at_mm), n.words, text_width(n.words, em)) for n in said]
    # Arrows of the sizes beside the part come down between the labels too.
    arrows = [0.5 * (b.left + b.right) for b in canvas.lines if b.top < top < b.bottom]
    placed = slots(wanted, (*walls, *arrows), (0.0, canvas.edge), 0.35 * em)
    by_label = {id(label): item for label, item in zip(wanted, said, strict=True)}
    for slot in placed:
        _draw_label(canvas, side, slot, by_label[id(slot.label)].off_mm, top)
    rows = max((slot.row + 1 for slot in placed), default=0)
    return top + rows * row_high + (0.3 * em if rows else 0.0)


def _draw_label(canvas: Canvas, side: Side, slot: Slot, off_mm: float, top: float) -> None:
    """Write one label at the foot of its leader."""
    em = canvas.look.em
    y = top + (slot.row + 1) * 1.35 * em - 0.35 * em
    elbow = y - 0.25 * em
    x = slot.label.at
    start = side.y(off_mm)
    canvas.line(x, start, x, elbow)
    toward = 0.25 * em if slot.on_the_right else -0.25 * em
    canvas.line(x, elbow, x + toward, elbow)
    anchor = "start" if slot.on_the_right else "end"
    canvas.text(
        slot.label.words, slot.left if slot.on_the_right else slot.right, y, Type(anchor=anchor)
    )


def size_walls(side: Side, named: Sequence[Named], *, sized: bool = True) -> list[float]:
    """Return where lines of sizes come down from the side view, features `sized` or not."""
    inner = [s.to_mm for s in side.stretches]
    places = _places(side, named) if sized else []
    return [side.axis.x(at) for at in (0.0, *inner, *places)]


def _places(side: Side, named: Sequence[Named]) -> list[float]:
    """Return the places of features that are sized: none at a shoulder, each once. [mm]."""
    shoulders = [0.0, *(s.to_mm for s in side.stretches)]
    places: list[float] = []
    for item in named:
        at = item.feature.at
        if at is None or not side.axis.shows(at):
            continue
        if all(abs(at - other) > SAME_MM for other in (*shoulders, *places)):
            places.append(at)
    return sorted(places[:MOST_PLACES])


def draw_sizes(canvas: Canvas, side: Side, named: Sequence[Named], top: float) -> None:
    """Draw lengths under the side view, chain nearest, then places of features, then the whole.

    A size that finds no room is left out: the table of sections beside the drawing has all.
    """
    em, step = canvas.look.em, 1.75 * canvas.look.em
    ends = [0.0, *(s.to_mm for s in side.stretches)]
    lows: dict[float, float] = {}
    y = top + 1.2 * em
    places = _places(side, named) if canvas.look.places else []
    # The leaders of labels run down beside the sizes of places.
    walls = [side.axis.x(item.at_mm) for item in named if side.axis.shows(item.at_mm)]
    if len(side.stretches) > 1:
        pairs = list(itertools.pairwise(ends))
        drawn = [_draw_length(canvas, side, pair, y, pairs, walls) for pair in pairs]
        lows.update(
            {end: y for pair, ok in zip(pairs, drawn, strict=True) if ok for end in pair}
        )
        y += step if any(drawn) else 0.0
    for place in places:
        if _draw_length(canvas, side, (0.0, place), y, (), walls):
            lows |= {0.0: y, place: y}
            y += step
    if _draw_length(canvas, side, (0.0, ends[-1]), y):
        lows |= {0.0: y, ends[-1]: y}
    for at, low in lows.items():
        x = side.axis.x(at)
        # From the outline down, with a gap, and a little past the size line.
        start = side.y(-side.half_at(at)) + 0.3 * em
        canvas.line(x, start, x, low + 0.35 * em)
    canvas.reach(y + 0.6 * em)


def _draw_length(
    canvas: Canvas,
    side: Side,
    ends_mm: tuple[float, float],
    y: float,
    chain: Sequence[tuple[float, float]] = (),
    walls: Sequence[float] = (),
) -> bool:
    """Draw one length between two places clear of walls, and say whether there was room."""
    em, look = canvas.look.em, canvas.look
    text = look.size(ends_mm[1] - ends_mm[0])
    x0, x1 = (side.axis.x(at) for at in ends_mm)
    wide, foot = text_width(text, em), y - 0.22 * em
    x = _clear((x0, x1), 0.5 * wide + 0.2 * em, walls)
    if x is not None:
        if not canvas.try_text(text, x, foot, Type(anchor="middle")):
            return False
        if x1 - x0 >= 2.4 * ARROW * em:
            canvas.line(x0, y, x1, y)
            _arrow(canvas, (x0, y), (1.0, 0.0))
            _arrow(canvas, (x1, y), (-1.0, 0.0))
            return True
    elif not _outside(canvas, side, (text, wide), (ends_mm, chain), (foot, walls)):
        return False
    reach = 1.4 * ARROW * em
    low, high = max(x0 - reach, 0.0), min(x1 + reach, look.width)
    canvas.line(low, y, high, y)
    _arrow(canvas, (x0, y), (-1.0, 0.0))
    _arrow(canvas, (x1, y), (1.0, 0.0))
    return True


def _clear(ends: tuple[float, float], half: float, walls: Sequence[float]) -> float | None:
    """Return the place nearest the middle where no wall runs through a text, None of none."""
    middle = 0.5 * (ends[0] + ends[1])
    beside = [wall + side * half for wall in walls for side in (-1.0, 1.0)]
    free = [
        x
        for x in (middle, *beside)
        if ends[0] + half <= x + 1e-9 <= ends[1] - half + 2e-9
        and all(abs(x - wall) > 0.99 * half for wall in walls)
    ]
    return min(free, key=lambda x: abs(x - middle), default=None)


def _outside(
    canvas: Canvas,
    side: Side,
    text: tuple[str, float],
    where: tuple[tuple[float, float], Sequence[tuple[float, float]]],
    line: tuple[float, Sequence[float]],
) -> bool:
    """Write a short length beside its arrows: where a neighbour has room, or past an end."""
    (words, wide), (ends_mm, chain), (foot, walls) = text, where, line
    em = canvas.look.em
    before = next((c for c in chain if abs(c[1] - ends_mm[0]) < SAME_MM), None)
    after = next((c for c in chain if abs(c[0] - ends_mm[1]) < SAME_MM), None)
    for neighbour, x, anchor in (
        (before, side.axis.x(ends_mm[0]) - 1.2 * em, "end"),
        (after, side.axis.x(ends_mm[1]) + 1.2 * em, "start"),
    ):
        if neighbour is not None:
            theirs = text_width(canvas.look.size(neighbour[1] - neighbour[0]), em)
            room = side.axis.x(neighbour[1]) - side.axis.x(neighbour[0])
            if 0.5 * (room - theirs) < wide + 1.8 * em:
                continue
        box = canvas.box_of(words, x, foot, Type(anchor=anchor))
        if any(box.left - 0.1 * em < wall < box.right + 0.1 * em for wall in walls):
            continue
        if canvas.try_text(words, x, foot, Type(anchor=anchor)):
            return True
    return False


def _arrow(canvas: Canvas, tip: tuple[float, float], into: tuple[float, float]) -> None:
    """Draw a slender arrow head at `tip`, its body lying `into` from there."""
    long = ARROW * canvas.look.em
    (x, y), (dx, dy) = tip, into
    bx, by, half = x + dx * long, y + dy * long, 0.5 * long / SLENDER
    points = (
        f"{number(x)},{number(y)} {number(bx - dy * half)},{number(by + dx * half)} "
        f"{number(bx + dy * half)},{number(by - dx * half)}"
    )
    canvas.add(f'<polygon points="{points}" fill="{canvas.look.ink}"/>')


def across_words(stretch: Stretch, shown: Callable[[float], str] = shown_size) -> str:
    """Return how thick a section is as a drawing has it: "Ø22", "□12", "12 A/F", "40 × 6"."""
    section = stretch.section
    size = shown(section.size)
    if section.shape in {"round", "tube"}:
        return f"Ø{size}"
    if section.shape == "hexagon":
        return f"{size} A/F"
    if section.shape == "flat":
        return f"{shown(section.across_mm)} × {shown(section.narrowest_mm)}"
    return f"{size} sq"


def across_reach(stretches: Sequence[Stretch], scale: float, em: float) -> float:
    """Return how far over the middle the sizes beside a part go: by thin ends past the part."""
    highs = [2.0 * end.half_mm * scale for end in (stretches[0], stretches[-1])]
    return max(0.5 * high + _past_arrows(high, em) for high in highs)


def _past_arrows(high: float, em: float) -> float:
    """Return how far a size goes past its ends: not at all where its arrows fit between."""
    return 0.0 if high >= 2.4 * ARROW * em else 1.4 * ARROW * em


def draw_across(canvas: Canvas, side: Side) -> None:
    """Draw how thick the first section is at the left, the last at the right, others inside."""
    em, first, last = canvas.look.em, side.stretches[0], side.stretches[-1]
    _draw_height(canvas, side, first, side.axis.left - 2.0 * em, side.axis.left)
    if len(side.stretches) > 1:
        _draw_height(canvas, side, last, side.axis.right + 2.4 * em, side.axis.right)
    for stretch in side.stretches[1:-1]:
        x = side.axis.x(0.5 * (stretch.from_mm + stretch.to_mm))
        if side.axis.x(stretch.to_mm) - side.axis.x(stretch.from_mm) > 5.0 * em:
            _draw_height(canvas, side, stretch, x + 0.8 * em, None)


def _written_inside(canvas: Canvas, words: str, at: tuple[float, float], high: float) -> bool:
    """Write the height of a section upwards into its lower half, where no line runs."""
    em, half = canvas.look.em, 0.5 * text_width(words, canvas.look.em)
    how = Type(anchor="middle", turned=True, grounded=True)
    slack = 0.5 * high - 2.0 * half - 0.6 * em
    return slack >= 0.0 and any(
        canvas.try_text(words, at[0], at[1] + 0.25 * high + share * slack, how)
        for share in (0.0, -0.25, 0.25, -0.5, 0.5)
    )


def _across_within(canvas: Canvas, stretch: Stretch, room: float) -> str:
    """Return how thick a section is; of a flat without room its width, as the end has both."""
    words = across_words(stretch, canvas.look.size)
    if stretch.section.shape == "flat" and text_width(words, canvas.look.em) > room:
        return words.partition(" ")[0]
    return words


def _draw_height(
    canvas: Canvas, side: Side, stretch: Stretch, x: float, face: float | None
) -> None:
    """Draw the height of a section at a place, with lines to it from its face if outside."""
    em, top, low = canvas.look.em, side.y(stretch.half_mm), side.y(-stretch.half_mm)
    high = low - top
    words = _across_within(canvas, stretch, high - 0.6 * em)
    wide = text_width(words, em)
    how = Type(anchor="middle", turned=True)
    fits = high >= wide + 0.6 * em
    reach = _past_arrows(high, em)
    # The arrows may not run through what is written over the part.
    if not canvas.is_free(Box(x - 0.1 * em, top - reach, x, low + reach), lines=False):
        return
    if face is None and not _written_inside(canvas, words, (x - 0.25 * em, side.middle), high):
        return
    if face is not None:
        y = side.middle if fits else low + 0.5 * wide + 0.9 * em
        if not fits:
            # A thin part: the words stand level beside the arrows.
            anchor = "end" if x < face else "start"
            shift = -0.4 * em if x < face else 0.4 * em
            if not canvas.try_text(
                words, x + shift, side.middle + 0.3 * em, Type(anchor=anchor)
            ):
                return
        elif not canvas.try_text(words, x - 0.25 * em, y, how):
            return
        past = 0.35 * em if x > face else -0.35 * em
        for y_end in (top, low):
            canvas.line(face + past, y_end, x + past, y_end)
    canvas.line(x, top - reach, x, low + reach)
    sense = 1.0 if reach == 0.0 else -1.0
    _arrow(canvas, (x, top), (0.0, sense))
    _arrow(canvas, (x, low), (0.0, -sense))
