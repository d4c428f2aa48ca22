"""The part seen from its working end: sections inside each other, what is hard at that end."""

import math

from selector.handover.drawing.canvas import Canvas, number
from selector.handover.drawing.end_features import circle_path, draw_end_features
from selector.handover.drawing.fields import depth_share, surface_hrc
from selector.handover.drawing.look import Look
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.outline import CENTRED
from selector.requirement.part import Part, Section


def extent_mm(section: Section) -> tuple[float, float]:
    """Return how wide and high a section is from the end, a flat on its edge. [mm]."""
    if section.shape == "hexagon":
        return section.size, 2.0 / math.sqrt(3.0) * section.size
    return section.narrowest_mm, section.across_mm


def end_extent_mm(part: Part) -> tuple[float, float]:
    """Return how wide and high a part is from the end. [mm]."""
    extents = [extent_mm(section) for section in part.section]
    return max(wide for wide, _ in extents), max(high for _, high in extents)


def shape_path(section: Section, x: float, y: float, scale: float, less_mm: float = 0.0) -> str:
    """Return the shape of a section about a point, so much less a side, as a path.

    Parameters
    ----------
    section : Section
        Its form.
    x, y : float
        Where its middle is on paper.
    scale : float
        Paper to part.
    less_mm : float
        How far inside its surface. [mm]

    Returns
    -------
    str
        Closed; empty where nothing is left.
    """
    wide, high = extent_mm(section)
    a, b = (0.5 * v - less_mm for v in (wide, high))
    if section.shape == "hexagon":
        b = 0.5 * high - less_mm * 2.0 / math.sqrt(3.0)
    if min(a, b) <= 0.0:
        return ""
    a, b = a * scale, b * scale
    if section.shape in {"round", "tube"}:
        return circle_path(x, y, a)
    if section.shape == "hexagon":
        corners = [(0, -b), (a, -0.5 * b), (a, 0.5 * b), (0, b), (-a, 0.5 * b), (-a, -0.5 * b)]
    else:
        corners = [(-a, -b), (a, -b), (a, b), (-a, b)]
    return "M" + " L".join(f"{number(x + dx)} {number(y + dy)}" for dx, dy in corners) + " Z"


def draw_end(
    canvas: Canvas, part: Part, marks: Marks, middle: tuple[float, float], scale: float
) -> None:
    """Draw a part from its working end, the middle of the view at `middle`."""
    look, (x, y) = canvas.look, middle
    seen: list[Section] = []
    for section in part.section:
        # What lies behind is seen where it stands out all round, or on a side.
        wide, high = extent_mm(section)
        hidden = any(
            wide <= extent_mm(s)[0] and high <= extent_mm(s)[1] and s.shape == section.shape
            for s in seen
        )
        if not hidden:
            seen.append(section)
    for section in reversed(seen):
        path = shape_path(section, x, y, scale)
        canvas.path(path, stroke=look.outline, fill=look.soft)
    first = part.section[0]
    _draw_hard(canvas, first, marks, middle, scale)
    canvas.path(shape_path(first, x, y, scale), stroke=look.outline)
    bore = first.bore
    if bore:
        hole = circle_path(x, y, 0.5 * bore * scale)
        canvas.path(hole, stroke=look.outline, fill=look.ground)
    draw_end_features(canvas, part, middle, scale)
    wide, high = (0.5 * v * scale + 0.6 * look.em for v in end_extent_mm(part))
    dashes = ",".join(number(v * look.em) for v in (1.2, 0.25, 0.25, 0.25))
    along = f"M{number(x - wide)} {number(y)} H{number(x + wide)}"
    over = f"M{number(x)} {number(y - high)} V{number(y + high)}"
    for path, across_mm in zip((over, along), extent_mm(first), strict=True):
        if across_mm * scale >= CENTRED * look.em:
            canvas.path(path, stroke=look.thin, style=f' stroke-dasharray="{dashes}"')


def _draw_hard(
    canvas: Canvas, first: Section, marks: Marks, middle: tuple[float, float], scale: float
) -> None:
    """Fill what is hard behind the end: a rim as deep as it is, or all of it."""
    x, y = middle
    half = first.most_depth_mm
    hrc: float | None
    if marks.field is not None:
        depth = depth_share(marks, 0.5 * first.length) * half
        hrc = surface_hrc(marks.field, 0.5 * first.length)
    else:
        band = next((b for b in marks.bands if b.from_mm <= 0.0), None)
        if band is None:
            return
        depth, hrc = (half if band.depth_mm is None else band.depth_mm), band.hrc
    if depth <= 0.0:
        return
    outer = shape_path(first, x, y, scale)
    inner = "" if depth >= 0.98 * half else shape_path(first, x, y, scale, depth)
    fill = canvas.look.steps[4 if hrc is None else marks.step_of(hrc)]
    if canvas.look.hatched:
        fill = f"url(#{canvas.key}-hard)"
    canvas.path(f"{outer} {inner}".strip(), fill=fill, style=' fill-rule="evenodd"')


def thick_words(part: Part, look: Look) -> str:
    """Return how thick the flats of a part are, which its side view does not show."""
    flats = dict.fromkeys(s.narrowest_mm for s in part.section if s.shape == "flat")
    return f"{' and '.join(map(look.size, flats))} thick" if flats else ""
