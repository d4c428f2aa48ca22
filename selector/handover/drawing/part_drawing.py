"""The drawing of a part: side view, end view, sizes and strips in one SVG."""

from dataclasses import dataclass
from hashlib import sha256
from html import escape

from selector.handover.drawing.axis import axis_of, stretches
from selector.handover.drawing.bracket import Bracket, draw_brackets
from selector.handover.drawing.canvas import (
    HATCH_CLOSE,
    Canvas,
    Type,
    hatches,
    number,
    text_width,
)
from selector.handover.drawing.end_view import draw_end, end_extent_mm, thick_words
from selector.handover.drawing.features import draw_features, place_of
from selector.handover.drawing.fields import cut_paths, surface_runs
from selector.handover.drawing.look import Look, slim
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.outline import (
    Side,
    draw_centre_line,
    draw_outline,
    outline_path,
    stretches_of,
)  # fmt: skip
from selector.handover.drawing.said import draw_over, draw_said, draw_water, fillets, has_room
from selector.handover.drawing.sizes import (
    across_reach,
    draw_across,
    draw_labels,
    draw_sizes,
    size_walls,
)  # fmt: skip
from selector.handover.drawing.strip import draw_strip
from selector.requirement.part import Part

# Room round the end view, and of a break. [em]
AT_END, BREAK = 2.4, 1.3
# The end view takes this share of the width at most; else it is drawn smaller, and says so.
MOST_END = 0.3
CAPTION = "end view"


@dataclass(frozen=True, slots=True)
class Drawing:
    """An SVG, what it shows in a sentence, its size, and its scale in words.

    `free` is a corner at the lower right that nothing is drawn in: its width and height.
    """

    svg: str
    alt: str
    width: float
    height: float
    scale: str
    broken: bool
    free: tuple[float, float]


@dataclass(frozen=True, slots=True)
class _Fit:
    """The scales a part is drawn at, and how wide the column of the end view is."""

    scale: float
    end_scale: float
    column: float


def drawn(part: Part, marks: Marks, look: Look, brackets: tuple[Bracket, ...] = ()) -> Drawing:
    """Return a part drawn to scale.

    Parameters
    ----------
    part : Part
        Sections from the working end, with features.
    marks : Marks
        What is known of hardness and heat.
    look : Look
        Size, letters, colours.
    brackets : tuple of Bracket
        What is said under its stretches.

    Returns
    -------
    Drawing
        The same for the same part, marks and look; ids in it are its own on a page.
    """
    fit = _fitted(part, marks, look)
    shown = _shown(part, marks)
    axis = axis_of(shown, fit.scale, look.sides * look.em, BREAK * look.em)
    stretched = stretches_of(part)
    tall = 2.0 * min(stretch.half_mm for stretch in stretched) * fit.scale
    canvas = Canvas(slim(look, tall), _key(part, marks, look))
    inside = has_room(look, axis, stretched, marks, part)
    top = draw_over(canvas, axis, marks, said=not inside)
    _wide_mm, high_mm = end_extent_mm(part)
    half = 0.5 * high_mm * fit.scale
    room = max(half, 0.5 * high_mm * fit.end_scale if look.end_view else 0.0)
    over = across_reach(stretched, fit.scale, look.em) if look.sizes else 0.0
    # Heat that is drawn over the part stands in the room of the end view.
    need = half if marks.heated_mm is not None else room
    middle = max(top + need + 0.4 * look.em, over)
    side = Side(axis, middle, stretched)
    if fit.column:
        canvas.edge = axis.right + look.sides * look.em
    low = _draw_side(canvas, side, part, marks, said=inside)
    if brackets:
        low = draw_brackets(canvas, side, brackets, low)
    if look.strips:
        draw_strip(canvas, side, marks, low + 0.5 * look.em)
    under = low
    if fit.column:
        canvas.edge = look.width
        x = 0.5 * (axis.right + look.sides * look.em + look.width)
        level = max(middle, room + 0.6 * look.em)
        _draw_end_view(canvas, part, marks, (x, level), fit)
        under = level + 0.5 * high_mm * fit.end_scale + 3.0 * look.em
    height = canvas.low + 0.3 * look.em
    words = scale_words(fit.scale, look)
    alt = _alt(part, marks, words, look)
    svg, broken = _svg(canvas, height, alt), len(axis.pieces) > 1
    free = look.width - axis.right - look.sides * look.em, max(height - under, 0.0)
    return Drawing(svg, alt, look.width, height, words, broken, free)


def _key(part: Part, marks: Marks, look: Look) -> str:
    """Return the id of a drawing: the same for the same part, marks and look."""
    field = marks.field
    sums = None if field is None else (field.hrc.tobytes(), field.peak_c.tobytes())
    known = marks.bands, marks.said, marks.notes, marks.heated_mm, marks.rest, sums
    return "d" + sha256(repr((part, known, look)).encode()).hexdigest()[:10]


def scale_words(scale: float, look: Look) -> str:
    """Return the scale of a drawing on paper: "full size", "1 : 2"; on a screen "to scale".

    Parameters
    ----------
    scale : float
        Paper to part.
    look : Look
        Whether it is paper.

    Returns
    -------
    str
        In words.
    """
    if look.unit != "mm":
        return "to scale"
    if scale == 1.0:
        return "full size"
    return f"{scale:g} : 1" if scale > 1.0 else f"1 : {1.0 / scale:g}"


def _shown(part: Part, marks: Marks) -> tuple[tuple[float, float], ...]:
    """Return which stretches of the part are shown."""
    places, place = [], 0.0
    for section in part.section:
        place += section.length
        places.append(place)
    for feature in part.feature:
        at, half = place_of(part, feature), 2.0 * (feature.size or 0.0)
        places += [at - half, at, at + half]
    for band in marks.bands:
        places += [band.from_mm, band.to_mm]
    places += [*(marks.heated_mm or ()), *(note.at_mm for note in marks.notes)]
    # A blade is as long as it is beside its width, not its thickness.
    thick = max(*end_extent_mm(part), 1e-3)
    return stretches(places, part.length_mm, thick)


def _fitted(part: Part, marks: Marks, look: Look) -> _Fit:
    """Return the largest scale at which side and end view find room."""
    shown = _shown(part, marks)
    length_mm, (wide_mm, high_mm) = sum(b - a for a, b in shown), end_extent_mm(part)
    gaps = (len(shown) - 1) * BREAK * look.em + 2.0 * look.sides * look.em
    least = text_width(CAPTION, look.em) if look.end_view else 0.0
    for scale in look.scales:
        if high_mm * scale > look.height:
            continue
        end = min(scale, MOST_END * look.width / wide_mm)
        if end < scale:
            end = next((s for s in look.scales if s <= end), end)
        column = max(end * wide_mm, least) + AT_END * look.em if look.end_view else 0.0
        if length_mm * scale + gaps + column <= look.width:
            return _Fit(scale, end, column)
    # Whatever is asked, it is drawn: smaller than any scale of the list, without an end view.
    room = max(look.width - gaps, 0.2 * look.width)
    scale = min(room / length_mm, look.height / high_mm)
    return _Fit(scale, scale, 0.0)


def _draw_side(canvas: Canvas, side: Side, part: Part, marks: Marks, *, said: bool) -> float:
    """Draw the side view with labels and sizes, and return where it ends."""
    look, em, axis = canvas.look, canvas.look.em, side.axis
    for piece in axis.pieces:
        canvas.path(outline_path(side, piece), fill=look.soft)
    _draw_hard(canvas, side, marks)
    draw_outline(canvas, side)
    named = draw_features(canvas, side, part)
    half = max(s.half_mm for s in side.stretches) * axis.scale
    draw_centre_line(canvas, side)
    if marks.water_mm is not None:
        named.append(draw_water(canvas, side, marks.water_mm))
    low = side.middle + half + 0.4 * em
    if said:
        draw_said(canvas, side, marks)
    if look.sizes:
        draw_across(canvas, side)
    walls = size_walls(side, named, sized=look.places) if look.sizes else []
    if look.labels:
        low = draw_labels(canvas, side, [*named, *fillets(side, look)], walls, low)
    if look.sizes:
        draw_sizes(canvas, side, named, low)
    canvas.reach(low)
    return canvas.low


def _draw_hard(canvas: Canvas, side: Side, marks: Marks) -> None:
    """Draw what is hard: hatched in the half cut open, or filled, the outside in its steps."""
    look, limits = canvas.look, marks.limits_hrc
    if look.hatched:
        for low, high, name in ((limits[2], 1e3, "hard"), (limits[0], limits[2], "soft")):
            fill = f"url(#{canvas.key}-{name})"
            path = cut_paths(side, marks, low, high)
            # A case thinner than the lines of the hatching stand apart is filled.
            thin = name == "hard" and _is_thin(side, marks, look)
            canvas.path(path, fill=look.ink if thin else fill, style=' fill-rule="evenodd"')
        return
    bounds = (-1e3, *limits, 1e3)
    for step in range(1, 6):
        path = cut_paths(side, marks, bounds[step], bounds[step + 1])
        canvas.path(path, fill=look.steps[step], style=' fill-rule="evenodd"')
    for start, end, hrc in surface_runs(side, marks):
        step = marks.step_of(hrc)
        if step > 0:
            half = side.section_at(0.5 * (start + end)).half_mm
            corners = ((start, 0.0), (end, 0.0), (end, -half), (start, -half))
            path = "M" + " L".join(side.at(x, y) for x, y in corners) + " Z"
            canvas.path(path, fill=look.steps[step])


def _is_thin(side: Side, marks: Marks, look: Look) -> bool:
    """Return whether all that is hard is a layer too thin to be hatched."""
    depths = [band.depth_mm for band in marks.bands]
    most = HATCH_CLOSE * look.em / side.axis.scale
    return marks.field is None and all(d is not None and d < most for d in depths)


def _draw_end_view(
    canvas: Canvas, part: Part, marks: Marks, middle: tuple[float, float], fit: _Fit
) -> None:
    """Draw the end view with its caption."""
    look, em = canvas.look, canvas.look.em
    canvas.look = slim(look, min(s.narrowest_mm for s in part.section) * fit.end_scale)
    draw_end(canvas, part, marks, middle, fit.end_scale)
    canvas.look = look
    y = middle[1] + 0.5 * end_extent_mm(part)[1] * fit.end_scale + 1.9 * em
    caption = CAPTION
    how = Type(anchor="middle", colour=look.grey)
    if fit.end_scale != fit.scale:
        caption += f", {scale_words(fit.end_scale, look)}"
    half = 0.5 * text_width(caption, em)
    x = min(max(middle[0], half), look.width - half)
    canvas.try_text(caption, x, y, how)
    if thick := thick_words(part, look):
        half = min(0.5 * text_width(thick, em), 0.5 * look.width)
        canvas.try_text(thick, min(x, look.width - half), y + 1.3 * em, how)


def _alt(part: Part, marks: Marks, scale: str, look: Look) -> str:
    """Return what a drawing shows, in a sentence."""
    count = len(part.section)
    hard = f"; {', '.join(marks.said)}" if marks.said else ""
    heat = f"; {marks.heat_words}" if marks.heat_words else ""
    return (
        f"{part.name}, {count} section{'s' * (count > 1)}, "
        f"{look.size(part.length_mm)} {'inches' if look.inches else 'mm'} long, "
        f"drawn {scale} from the side and the end{hard}{heat}."
    )


def _svg(canvas: Canvas, height: float, alt: str) -> str:
    """Return the whole drawing."""
    look, unit = canvas.look, canvas.look.unit
    wide, high, defs = number(look.width), number(height), hatches(canvas) * look.hatched
    size = f'width="{wide}{unit}" height="{high}{unit}"' if unit == "mm" else 'width="100%"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" {size} '
        f'role="img" aria-label="{escape(alt)}" font-family="{look.font}">'
        f"{defs}{''.join(canvas.elements)}</svg>"
    )
