"""What a part has at its end or across it, seen from the working end."""

import math

from selector.handover.drawing.canvas import Canvas, number
from selector.handover.drawing.features import THREAD_SHARE, is_claws
from selector.handover.drawing.outline import stretches_of
from selector.requirement.part import Feature, Part, Section

# How deep a keyway or slot is, in widths, where nobody says: drawn dashed. Common practice. [-]
CUT_WIDTHS = 0.5
# Depth and head of a tooth in thicknesses at half its height: 2.25 and 1 modules, one module
# being 2/π of that thickness. Full-depth involute form. [-]
TOOTH_DEEP, TOOTH_HEAD = 2.25 * 2.0 / math.pi, 2.0 / math.pi
# From the driving face of a claw back to the foot of its ramp. [rad]
RAMP = math.radians(25.0)
HIDDEN, CHAIN = (0.6, 0.3), (1.2, 0.25, 0.25, 0.25)

Middle = tuple[float, float]


def draw_end_features(canvas: Canvas, part: Part, middle: Middle, scale: float) -> None:
    """Draw the features of a part in its end view.

    Parameters
    ----------
    canvas : Canvas
        To draw on.
    part : Part
        Whose features they are.
    middle : tuple of float
        Where the axis is on paper.
    scale : float
        Paper to part.
    """
    stretches = stretches_of(part)
    for feature in part.feature:
        index = part.place(feature)
        section = part.section[index]
        if is_claws(part, feature, stretches[index]):
            _claws(canvas, 0.5 * section.size * scale, middle)
        elif feature.kind == "thread" and index == 0:
            _thread(canvas, section, middle, scale)
        elif feature.size is not None:
            _sized(canvas, section, feature, (middle, scale))


def _sized(
    canvas: Canvas, section: Section, feature: Feature, at: tuple[Middle, float]
) -> None:
    """Draw a hole, keyway, slot or rim of teeth of known size."""
    size = feature.size or 0.0
    if feature.kind == "cross-hole":
        _hole(canvas, section, size, at)
    elif feature.kind in {"keyway", "slot"}:
        _cut(canvas, section, size, at)
    elif feature.kind == "teeth" and section.shape in {"round", "tube"}:
        _teeth(canvas, section, size, at)


def _dashed(canvas: Canvas, path: str, dashes: tuple[float, ...]) -> None:
    """Draw a thin dashed line."""
    ems = ",".join(number(v * canvas.look.em) for v in dashes)
    canvas.path(path, stroke=canvas.look.thin, style=f' stroke-dasharray="{ems}"')


def _half_wide(section: Section, off_mm: float) -> float:
    """Return how far a section reaches to the side, so far from its middle. [mm]."""
    half = 0.5 * section.narrowest_mm
    if section.shape in {"round", "tube"}:
        return math.sqrt(max(half**2 - off_mm**2, 0.0))
    return half


def _hole(canvas: Canvas, section: Section, size: float, at: tuple[Middle, float]) -> None:
    """Draw the hidden edges of a hole across: in the side view it is seen end on."""
    (x, y), scale = at
    off = 0.5 * min(size, section.across_mm)
    wide = _half_wide(section, off) * scale
    lines = " ".join(
        f"M{number(x - wide)} {number(y + sign * off * scale)} H{number(x + wide)}"
        for sign in (-1, 1)
    )
    _dashed(canvas, lines, HIDDEN)


def _cut(canvas: Canvas, section: Section, size: float, at: tuple[Middle, float]) -> None:
    """Draw a keyway or slot at the side that faces the reader of the side view."""
    (x, y), scale = at
    half = 0.5 * min(size, section.across_mm)
    out = _half_wide(section, half)
    deep = min(CUT_WIDTHS * size, 0.4 * section.narrowest_mm)
    face, foot = (number(x + v * scale) for v in (out, max(out - deep, 0.0)))
    top, low = (number(y + v * scale) for v in (-half, half))
    _dashed(canvas, f"M{face} {top} H{foot} V{low} H{face}", HIDDEN)


def _teeth(canvas: Canvas, section: Section, size: float, at: tuple[Middle, float]) -> None:
    """Draw the root circle of a toothed rim thin, and where its teeth roll as a chain line."""
    (x, y), scale = at
    tip = 0.5 * section.size
    for less, dashes in ((TOOTH_DEEP * size, None), (TOOTH_HEAD * size, CHAIN)):
        radius = (tip - less) * scale
        if radius > 0.2 * tip * scale:
            path = circle_path(x, y, radius)
            if dashes is None:
                canvas.path(path, stroke=canvas.look.thin)
            else:
                _dashed(canvas, path, dashes)


def circle_path(x: float, y: float, radius: float) -> str:
    """Return a circle as a path."""
    r = number(radius)
    left, right, level = number(x - radius), number(x + radius), number(y)
    return f"M{left} {level} A{r} {r} 0 1 0 {right} {level} A{r} {r} 0 1 0 {left} {level} Z"


def _claws(canvas: Canvas, radius: float, middle: Middle) -> None:
    """Draw two claws of ratchet form: a driving face each, heavy, and the foot of its ramp."""
    (x, y), look = middle, canvas.look
    for turn in (0.5 * math.pi, 1.5 * math.pi):
        for angle, stroke in ((turn, look.outline), (turn + RAMP, look.thin)):
            end = x + radius * math.cos(angle), y - radius * math.sin(angle)
            line = f"M{number(x)} {number(y)} L{number(end[0])} {number(end[1])}"
            canvas.path(line, stroke=stroke)


def _thread(canvas: Canvas, first: Section, middle: Middle, scale: float) -> None:
    """Draw the root of a thread as three quarters of a circle."""
    (x, y), r = middle, 0.5 * first.size * (1.0 - 2.0 * THREAD_SHARE) * scale
    turn = f"A{number(r)} {number(r)} 0 1 0 {number(x + r)} {number(y)}"
    canvas.path(f"M{number(x)} {number(y - r)} {turn}", stroke=canvas.look.thin)
