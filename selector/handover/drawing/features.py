"""Features of a part on its side view, each with the words of its label."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from selector.handover.drawing.canvas import Box, Canvas, number
from selector.handover.drawing.look import shown_size
from selector.handover.drawing.outline import Side, Stretch
from selector.requirement.part import Feature, Part

# A thread is as deep as this share of its diameter on each side. Common drawing practice. [-]
THREAD_SHARE = 0.075
# A slot or keyway without a stated length is drawn so many widths long.
SLOT_WIDTHS = 2.5


@dataclass(frozen=True, slots=True)
class Named:
    """A feature with the words of its label, and the place its leader comes from, in mm."""

    feature: Feature
    words: str
    at_mm: float
    off_mm: float


def place_of(part: Part, feature: Feature) -> float:
    """Return where a feature is drawn: without a place, amid its section. [mm]."""
    if feature.at is not None:
        return min(feature.at, part.length_mm)
    index = part.place(feature)
    before = sum(s.length for s in part.section[:index])
    return before + 0.5 * part.section[index].length


def words_of(feature: Feature, shown: Callable[[float], str] = shown_size) -> str:
    """Return a feature in a few words with its size: "Ø6 across", "keyway 5 wide"."""
    size = shown(feature.size) if feature.size else ""
    name = feature.kind.replace("-", " ")
    if feature.kind == "cross-hole":
        return f"Ø{size} across" if size else "cross hole"
    if feature.kind in {"slot", "keyway"} and size:
        return f"{name} {size} wide"
    if feature.kind == "teeth":
        return f"teeth {size} thick" if size else "teeth"
    return name


def draw_features(canvas: Canvas, side: Side, part: Part) -> list[Named]:
    """Draw every feature in its place and return what is to be labelled.

    Parameters
    ----------
    canvas : Canvas
        To draw on.
    side : Side
        The side view.
    part : Part
        Whose features they are.

    Returns
    -------
    list of Named
        In the order given.
    """
    found = []
    for feature in part.feature:
        at_mm = place_of(part, feature)
        stretch = side.section_at(at_mm)
        form = _drawn_claws if is_claws(part, feature, stretch) else _FORMS.get(feature.kind)
        low_mm = (form or _drawn_mark)(canvas, side, stretch, (feature, at_mm))
        found.append(Named(feature, words_of(feature, canvas.look.size), at_mm, low_mm))
    return found


Placed = tuple[Feature, float]


def _drawn_hole(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw a hole across with its own centre lines."""
    feature, at_mm = placed
    if feature.size is None:
        return _drawn_mark(canvas, side, stretch, placed)
    x, y = side.axis.x(at_mm), side.middle
    radius = 0.5 * min(feature.size, 2.0 * stretch.half_mm) * side.axis.scale
    look = canvas.look
    canvas.add(
        f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(radius)}" '
        f'fill="{look.ground}" stroke="{look.ink}" stroke-width="{number(look.outline)}"/>'
    )
    reach = radius + 0.4 * look.em
    canvas.take(Box(x - radius, y - reach, x + radius, y + reach))
    canvas.path(f"M{number(x)} {number(y - reach)} V{number(y + reach)}", stroke=look.thin)
    return -radius / side.axis.scale


def _drawn_slot(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw a slot or keyway with round ends; its length is not known, so they are dashed."""
    feature, at_mm = placed
    if feature.size is None:
        return _drawn_mark(canvas, side, stretch, placed)
    wide = min(feature.size, 2.0 * stretch.half_mm)
    room = 0.98 * (stretch.to_mm - stretch.from_mm)
    long = max(min(SLOT_WIDTHS * wide, room), 0.0)
    left = min(max(at_mm - 0.5 * long, stretch.from_mm), stretch.to_mm - long)
    radius = 0.5 * min(wide, long)
    x0, x1 = side.axis.x(left), side.axis.x(left + long)
    high, top = wide * side.axis.scale, side.y(0.5 * wide)
    look = canvas.look
    canvas.add(
        f'<rect x="{number(x0)}" y="{number(top)}" width="{number(max(x1 - x0, 0.0))}" '
        f'height="{number(high)}" rx="{number(radius * side.axis.scale)}" '
        f'fill="{look.ground}" stroke="{look.ink}" stroke-width="{number(look.thin)}" '
        f'stroke-dasharray="{number(0.6 * look.em)} {number(0.25 * look.em)}"/>'
    )
    canvas.take(Box(x0, top, x1, top + high))
    return -0.5 * wide


def _drawn_thread(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw a thread over its section: the thin line of its root on both sides."""
    del placed
    root = stretch.half_mm * (1.0 - 2.0 * THREAD_SHARE)
    path = " ".join(
        f"M{side.at(s.from_mm, sign * root)} L{side.at(s.to_mm, sign * root)}"
        for s in _shown(side, stretch)
        for sign in (1, -1)
    )
    canvas.path(path, stroke=canvas.look.thin)
    return -stretch.half_mm


def _shown(side: Side, stretch: Stretch) -> list[Stretch]:
    """Return what is shown of a section."""
    from selector.handover.drawing.outline import within  # noqa: PLC0415 - one use

    return [s for piece in side.axis.pieces for s in within((stretch,), piece)]


def is_claws(part: Part, feature: Feature, stretch: Stretch) -> bool:
    """Return whether teeth are claws on the working end, as deep as their place.

    Parameters
    ----------
    part : Part
        Whose feature it is.
    feature : Feature
        What is asked of.
    stretch : Stretch
        The section it lies in.

    Returns
    -------
    bool
        True of teeth without a thickness near the working end of a plain part.
    """
    if feature.kind != "teeth" or feature.at is None or feature.size is not None:
        return False
    on_end = stretch.from_mm == 0.0 and 0.0 < feature.at <= 0.5 * stretch.half_mm
    return on_end and part.shape_class == "plain"


def _drawn_claws(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw claws of ratchet form to their roots, as the rim is seen from the side."""
    _, at_mm = placed
    angles = np.linspace(0.0, 0.5 * np.pi, 16)
    deep = at_mm * (1.0 - angles / angles[-1])
    off = -stretch.half_mm * np.sin(angles)
    spots = [side.at(float(x), float(y)) for x, y in zip(deep, off, strict=True)]
    canvas.path("M" + " L".join(spots), stroke=0.6 * canvas.look.outline)
    return -0.3 * stretch.half_mm


def _drawn_teeth(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw the teeth of a rim seen from the side: lines along it, closer towards the edge."""
    del placed
    look = canvas.look
    angles = np.arcsin(np.clip(np.arange(1, 8) / 7.5, 0.0, 1.0))
    lines = [
        f"M{side.at(s.from_mm, -stretch.half_mm * float(np.sin(a)))} "
        f"L{side.at(s.to_mm, -stretch.half_mm * float(np.sin(a)))}"
        for s in _shown(side, stretch)
        for a in angles[::2]
    ]
    canvas.path(" ".join(lines), stroke=look.thin)
    return -stretch.half_mm


def _drawn_groove(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw a groove round the section: two lines across, its width apart if known."""
    feature, at_mm = placed
    half = 0.5 * (feature.size or 0.0)
    low, high = max(at_mm - half, stretch.from_mm), min(at_mm + half, stretch.to_mm)
    h = stretch.half_mm
    path = f"M{side.at(low, h)} L{side.at(low, -h)} M{side.at(high, h)} L{side.at(high, -h)}"
    canvas.path(path, stroke=canvas.look.thin)
    return -h


def _drawn_edge(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw an edge as a heavy line at its place."""
    _, at_mm = placed
    h = stretch.half_mm
    path = f"M{side.at(at_mm, h)} L{side.at(at_mm, -h)}"
    canvas.path(path, stroke=1.6 * canvas.look.outline)
    return -h


def _drawn_mark(canvas: Canvas, side: Side, stretch: Stretch, placed: Placed) -> float:
    """Draw a small mark on the lower outline where something is that has no form of its own."""
    _, at_mm = placed
    x, y, r = side.axis.x(at_mm), side.y(-stretch.half_mm), 0.14 * canvas.look.em
    canvas.add(
        f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(r)}" fill="{canvas.look.ink}"/>'
    )
    return -stretch.half_mm


_FORMS: dict[str, Callable[[Canvas, Side, Stretch, Placed], float]] = {
    "cross-hole": _drawn_hole,
    "slot": _drawn_slot,
    "keyway": _drawn_slot,
    "thread": _drawn_thread,
    "teeth": _drawn_teeth,
    "groove": _drawn_groove,
    "edge": _drawn_edge,
}
