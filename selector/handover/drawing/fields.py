"""Regions of hardness as paths: of a computed field, or of bands by their depth."""

from collections.abc import Iterator
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.handover.drawing.axis import SAME_MM
from selector.handover.drawing.canvas import number
from selector.handover.drawing.marks import Band, Field, Marks
from selector.handover.drawing.outline import Side, Stretch, within
from selector.kept import per_record

Floats = NDArray[np.float64]
# A block of the field is read at so many places across, and at most so many along.
ACROSS, MOST_ALONG = 25, 240
# As fine as the field is read along where that is not more. [mm]
FINE_MM = 0.25


def value_at(field: Field, what: Floats, along_mm: Floats, share: Floats) -> Floats:
    """Return a field at places along and across, shape (share, along)."""
    columns = np.array([np.interp(share, field.share, column) for column in what.T])
    return np.array([np.interp(along_mm, field.along_mm, row) for row in columns.T])


def _blocks(side: Side) -> Iterator[Stretch]:
    """Yield what is shown of each section: never across a step or a break."""
    for piece in side.axis.pieces:
        yield from within(side.stretches, piece)


def _along(block: Stretch) -> Floats:
    """Return the places along a block that the field is read at. [mm]."""
    count = int(min(max((block.to_mm - block.from_mm) / FINE_MM, 2), MOST_ALONG))
    return np.linspace(block.from_mm, block.to_mm, count)


def cut_paths(side: Side, marks: Marks, low: float, high: float) -> str:
    """Return where the half cut open is as hard as from `low` to `high` HRC, as one path.

    Parameters
    ----------
    side : Side
        The side view.
    marks : Marks
        With a field, or with bands.
    low, high : float
        Bounds of hardness. [HRC]

    Returns
    -------
    str
        Path data, empty where nowhere.
    """
    if marks.field is not None:
        return " ".join(_contour(side, marks, block, (low, high)) for block in _blocks(side))
    return " ".join(
        _band_path(side, block, band)
        for band in marks.bands
        if low <= _of_band(band, marks) < high
        for block in _blocks(side)
    ).strip()


def _of_band(band: Band, marks: Marks) -> float:
    """Return how hard a band is; one that is only asked lies in the middle of what is asked."""
    return (
        band.hrc if band.hrc is not None else 0.5 * (marks.limits_hrc[3] + marks.limits_hrc[4])
    )


def _contour(side: Side, marks: Marks, block: Stretch, bounds: tuple[float, float]) -> str:
    """Return the filled contour of one block of the field."""
    from contourpy import FillType, contour_generator  # noqa: PLC0415 - with the sheets alone

    field = marks.field
    if field is None:
        return ""
    along, share = _along(block), np.linspace(0.0, 1.0, ACROSS)
    hrc = value_at(field, field.hrc, along, share)
    if hrc.min() >= bounds[1] or hrc.max() < bounds[0]:
        return ""
    off = block.half_mm - (1.0 - share) * block.wall_mm
    if off[0] > block.bore_mm + SAME_MM:
        # A flat is cut along the middle of its thickness: its core is as wide as its face.
        off, hrc = np.insert(off, 0, block.bore_mm), np.insert(hrc, 0, hrc[0], axis=0)
    if hrc.min() >= bounds[0] and hrc.max() < bounds[1]:
        return _rectangle(side, (block.from_mm, block.to_mm), (off[0], off[-1]))
    maker = contour_generator(along, off, hrc, fill_type=FillType.OuterOffset)
    # Of each polygon its points, and where its rings begin and end.
    points, offsets = maker.filled(*bounds)[:2]
    return " ".join(
        _closed(side, np.asarray(ring)[a:b])
        for ring, ends in zip(points, offsets, strict=True)
        if ring is not None and ends is not None
        for a, b in pairwise(ends)
    )


def _closed(side: Side, ring: Floats) -> str:
    """Return a closed line as a path, points nearer than can be seen left out."""
    spots = [(side.axis.x(float(x)), side.y(float(y))) for x, y in ring]
    near = 0.03 * side.axis.scale if side.axis.scale > 5.0 else 0.03
    kept = spots[:1]
    for x, y in spots[1:]:
        if abs(x - kept[-1][0]) + abs(y - kept[-1][1]) > near:
            kept.append((x, y))
    return "M" + " L".join(f"{number(x)} {number(y)}" for x, y in kept) + " Z"


def _rectangle(side: Side, along_mm: tuple[float, float], off_mm: tuple[float, float]) -> str:
    """Return a rectangle in mm as a path."""
    (a, b), (low, high) = along_mm, off_mm
    corners = ((a, low), (b, low), (b, high), (a, high))
    return "M" + " L".join(side.at(x, y) for x, y in corners) + " Z"


def _band_path(side: Side, block: Stretch, band: Band) -> str:
    """Return a band in one block: under the surface, behind an end face it reaches, or all."""
    low, high = max(block.from_mm, band.from_mm), min(block.to_mm, band.to_mm)
    if high <= low:
        return ""
    if band.depth_mm is None or band.depth_mm >= block.wall_mm:
        return _rectangle(side, (low, high), (block.bore_mm, block.half_mm))
    inner = block.half_mm - band.depth_mm
    path = _rectangle(side, (low, high), (inner, block.half_mm))
    ends = side.stretches[0].from_mm, side.stretches[-1].to_mm
    deep = min(band.depth_mm, high - low)
    if low == ends[0]:
        path += " " + _rectangle(side, (low, low + deep), (block.bore_mm, inner))
    if high == ends[1]:
        path += " " + _rectangle(side, (high - deep, high), (block.bore_mm, inner))
    return path


# A drawing asks some six times: for its tints, its words and what is said of it.
@per_record(8)
def surface_runs(
    side: Side, marks: Marks, *, hottest: bool = False
) -> list[tuple[float, float, float]]:
    """Return the surface in runs of one step each: from, to [mm], and hardness [HRC].

    Parameters
    ----------
    side : Side
        The side view.
    marks : Marks
        With a field, or with bands.
    hottest : bool
        Whether to read the hottest temperature instead, unstepped: a run a place. [°C]

    Returns
    -------
    list of tuple
        Broken at the breaks too.
    """
    runs: list[tuple[float, float, float]] = []
    for block in _blocks(side):
        along = _along(block)
        # A band ends where its section does: the very edge belongs to neither.
        edge = 1e-3 * (block.to_mm - block.from_mm)
        inside = np.clip(along, block.from_mm + edge, block.to_mm - edge)
        values = _surface(marks, inside, hottest=hottest)
        steps = [int(v // 25) if hottest else marks.step_of(v) for v in values]
        start = 0
        for k in range(1, len(along) + 1):
            if k == len(along) or steps[k] != steps[start]:
                end = along[k - 1] if k == len(along) else 0.5 * (along[k - 1] + along[k])
                begin = block.from_mm if start == 0 else 0.5 * (along[start - 1] + along[start])
                runs.append((float(begin), float(end), float(np.median(values[start:k]))))
                start = k
    return runs


def _surface(marks: Marks, along: Floats, *, hottest: bool) -> Floats:
    """Return hardness at the surface, or the hottest it got, at places along."""
    if marks.field is not None:
        what = marks.field.peak_c if hottest else marks.field.hrc
        return np.asarray(value_at(marks.field, what, along, np.array([1.0]))[0])
    hrc = np.full(len(along), marks.bought_hrc)
    for band in marks.bands:
        hrc[(along >= band.from_mm) & (along <= band.to_mm)] = _of_band(band, marks)
    return hrc


def surface_hrc(field: Field, at_mm: float) -> float:
    """Return the hardness of the surface at a place along a field. [HRC]."""
    return float(value_at(field, field.hrc, np.array([at_mm]), np.array([1.0]))[0, 0])


def depth_share(marks: Marks, at_mm: float) -> float:
    """Return how much of the way from surface to centre is hard at a place, 0 to 1. [-]."""
    field = marks.field
    if field is None:
        return 0.0
    share = np.linspace(1.0, 0.0, 101)
    hrc = value_at(field, field.hrc, np.array([at_mm]), share)[:, 0]
    soft = np.flatnonzero(hrc < marks.limits_hrc[2])
    return 1.0 if soft.size == 0 else float(1.0 - share[soft[0]])
