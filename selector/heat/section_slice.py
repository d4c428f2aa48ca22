"""Heat in a cross-section: corners, flats, holes near an edge, a flame from one side.

The same solver on a plane section of unit length. What it adds to the round result is a factor:
how a corner or the thin wall beside a hole cools or heats against the round of like size.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.conduction import Plan, Stop, conduct
from selector.heat.end_quench import time_between
from selector.heat.exchange import steady
from selector.heat.grid import Grid, Wall, round_grid, widening_edges
from selector.heat.steel_property import SteelProperty

Floats = NDArray[np.float64]
Shape = Literal["round", "square", "hexagon", "flat"]

CELLS = 36  # across the larger side of a section with slanted or round edges
SAMPLES = 12  # points a side in each cell, to measure a cut cell
LEAST_SHARE = 0.12  # a cell cut smaller than this is left out
SURFACE_PART, WIDEST_PART = 1 / 60, 1 / 16


@dataclass(frozen=True, slots=True)
class Hole:
    """A round hole through the section: place from its centre, and diameter."""

    x_mm: float
    y_mm: float
    diameter_mm: float


@dataclass(frozen=True, slots=True)
class Outline:
    """A section: side, width across flats or thickness; width of a flat; and a round beside it.

    The round is what the section is held against; left out, one as thick as it is high.
    """

    shape: Shape
    size_mm: float
    width_mm: float | None = None
    round_mm: float | None = None


@dataclass(frozen=True, slots=True)
class SectionEffect:
    """Cooling time of a place in the section over that of the round: less is quicker."""

    corner_fraction: float
    side_fraction: float
    centre_fraction: float


def plate_grid(thickness_mm: float, fineness: float = 1.0) -> Grid:
    """Return the cells through a wide plate, one square metre of it, walls on both sides.

    Parameters
    ----------
    thickness_mm : float
        Thickness. [mm]
    fineness : float, optional
        2 halves every cell. [-]

    Returns
    -------
    Grid
        Faces "left" and "right"; across runs from the left. [-]

    Raises
    ------
    OutOfRangeError
        The thickness is not above 0.

    References
    ----------
    .. [1] S. V. Patankar, Numerical Heat Transfer and Fluid Flow, 1980, chapter 4
       (from memory).
    """
    _positive("thickness_mm", thickness_mm)
    x = _sides(thickness_mm, fineness)
    opened = np.ones((x.size, 1))
    opened[[0, -1]] = 0.0
    cut = (np.ones((x.size - 1, 1)), opened, np.zeros((x.size - 1, 2)))
    return _plane(x, np.array([-500.0, 500.0]), cut, ends=False)


def slice_grid(
    shape: Shape,
    size_mm: float,
    width_mm: float | None = None,
    holes: Sequence[Hole] = (),
    fineness: float = 1.0,
) -> Grid:
    """Return the cells of a cross-section, one metre long.

    Parameters
    ----------
    shape : {"round", "square", "hexagon", "flat"}
        Section; a hexagon lies on a flat, top and bottom. [-]
    size_mm : float
        Diameter, side, width across flats, or thickness (upright) of a flat. [mm]
    width_mm : float, optional
        Width of a flat. [mm]
    holes : sequence of Hole, optional
        Holes, inside or breaking the edge. [-]
    fineness : float, optional
        2 halves every cell. [-]

    Returns
    -------
    Grid
        Faces "left", "right", "top", "bottom" by the side a wall faces, and "hole"; across runs
        along x, along runs along y, both from the centre. [-]

    Raises
    ------
    OutOfRangeError
        The shape is not known, a size is not above 0, or a hole leaves no steel.

    Notes
    -----
    Cells cut by a slant or a hole keep their true volume, openings and wall; a cell cut to less
    than 12 % is left out.

    References
    ----------
    .. [1] S. V. Patankar, Numerical Heat Transfer and Fluid Flow, 1980, chapter 4
       (from memory).

    Examples
    --------
    >>> bar = slice_grid("hexagon", 20.0)
    >>> area = float(bar.mesh.volume[bar.active].sum()) * 1e6
    >>> abs(area / (0.5 * 3**0.5 * 20.0**2) - 1) < 0.01
    True
    """
    _positive("size_mm", size_mm)
    half_x, half_y = _half_sides(shape, size_mm, width_mm)
    for n, hole in enumerate(holes):
        _positive(f"holes[{n}].diameter_mm", hole.diameter_mm)
    straight = shape in ("square", "flat") and not holes
    if straight:
        x, y = _sides(2 * half_x, fineness), _sides(2 * half_y, fineness)
    else:
        cell = 2.0 * max(half_x, half_y) / (CELLS * fineness)
        x, y = (np.linspace(-h, h, max(round(2 * h / cell), 8) + 1) for h in (half_x, half_y))
    cut = _cut(shape, (half_x, half_y), holes, (x, y))
    if not cut[0].any():
        step = "Make the hole smaller."
        raise OutOfRangeError(Problem("holes", "smaller than the part", "no steel left", step))
    grid = _plane(x, y, cut)
    return _name_holes(grid, shape, (half_x, half_y), holes)


def _positive(field: str, value: float) -> None:
    """Refuse a size that is not above zero."""
    if not 0.0 < value < 1e4:
        rule = "above 0 and below 10000 mm"
        raise OutOfRangeError(Problem(field, rule, f"{value:g} mm", "Give the real size."))


def _half_sides(shape: str, size_mm: float, width_mm: float | None) -> tuple[float, float]:
    """Return half the width and half the height of the box about a section."""
    half = size_mm / 2
    if shape == "flat":
        width = math.nan if width_mm is None else width_mm
        _positive("width_mm", width)
        return width / 2, half
    box = {"round": half, "square": half, "hexagon": 2 * half / math.sqrt(3.0)}
    if shape not in box:
        rule, step = "round, square, hexagon or flat", "Choose the nearest."
        raise OutOfRangeError(Problem("shape", rule, repr(shape), step))
    return box[shape], half


def _sides(span_mm: float, fineness: float) -> Floats:
    """Return edges across a span, fine at both sides."""
    first, widest = (span_mm * part / fineness for part in (SURFACE_PART, WIDEST_PART))
    return widening_edges(-span_mm / 2, span_mm / 2, first, widest, both=True)


def _inside(
    shape: str, half: tuple[float, float], holes: Sequence[Hole], x: Floats, y: Floats
) -> NDArray[np.bool_]:
    """Return which points are steel."""
    half_x, half_y = half
    if shape == "round":
        steel = np.hypot(x, y) <= half_x
    elif shape == "hexagon":
        steel = (np.abs(y) <= half_y) & (np.abs(x) * math.sqrt(3.0) + np.abs(y) <= 2 * half_y)
    else:
        steel = (np.abs(x) <= half_x) & (np.abs(y) <= half_y)
    for hole in holes:
        steel = steel & (np.hypot(x - hole.x_mm, y - hole.y_mm) > hole.diameter_mm / 2)
    return steel


def _cut(
    shape: str,
    half: tuple[float, float],
    holes: Sequence[Hole],
    edges: tuple[Floats, Floats],
) -> tuple[Floats, Floats, Floats]:
    """Return the steel share of each cell and how far its faces across x and y stand open."""
    x, y = edges
    part = (np.arange(SAMPLES) + 0.5) / SAMPLES
    inner_x, inner_y = ((e[:-1, None] + np.diff(e)[:, None] * part).ravel() for e in edges)

    def steel(at_x: Floats, at_y: Floats) -> Floats:
        points = _inside(shape, half, holes, at_x[:, None], at_y[None, :])
        return points.astype(np.float64)

    rows, columns = x.size - 1, y.size - 1
    filled = steel(inner_x, inner_y).reshape(rows, SAMPLES, columns, SAMPLES).mean(axis=(1, 3))
    share = np.where(filled < LEAST_SHARE, 0.0, filled)
    kept = share > 0.0
    open_x, open_y = np.zeros((rows + 1, columns)), np.zeros((rows, columns + 1))
    open_x[1:-1] = steel(x[1:-1], inner_y).reshape(rows - 1, columns, SAMPLES).mean(axis=2)
    open_y[:, 1:-1] = steel(inner_x, y[1:-1]).reshape(rows, SAMPLES, columns - 1).mean(axis=1)
    open_x[1:-1] *= kept[1:] & kept[:-1]
    open_y[:, 1:-1] *= kept[:, 1:] & kept[:, :-1]
    return share, open_x, open_y


def _plane(
    x_mm: Floats, y_mm: Floats, cut: tuple[Floats, Floats, Floats], ends: bool = True
) -> Grid:
    """Return volumes, conductances and walls of a plane section of unit length."""
    share, open_x, open_y = cut
    x, y = x_mm * 1e-3, y_mm * 1e-3
    dx, dy = np.diff(x)[:, None], np.diff(y)[None, :]
    active = share > 0.0
    volume = np.where(active, share * dx * dy, 1.0)
    middle_x, middle_y = 0.5 * (x[1:] + x[:-1]), 0.5 * (y[1:] + y[:-1])
    across = open_x[1:-1] * dy / np.diff(middle_x)[:, None]
    along = open_y[:, 1:-1] * dx / np.diff(middle_y)[None, :]
    # A whole cell has a wall on each closed side; a cut cell one, closing its outline.
    whole = share > 0.999
    to_x, to_y = (open_x[1:] - open_x[:-1]) * dy, (open_y[:, 1:] - open_y[:, :-1]) * dx
    slant = np.where(active & ~whole, np.hypot(to_x, to_y), 0.0)
    steep = np.abs(to_x) >= np.abs(to_y)
    gap_x, gap_y = (0.5 * share * np.broadcast_to(d, share.shape) for d in (dx, dy))
    walls: list[Wall] = []
    for face, opened, looks in (
        ("left", open_x[:-1], steep & (to_x > 0.0)),
        ("right", open_x[1:], steep & (to_x < 0.0)),
    ):
        size = np.where(whole, (1.0 - opened) * dy, slant * looks)
        walls.append(Wall(size > 1e-12, face, size, gap_x, across=True))
    for face, opened, looks in (
        ("bottom", open_y[:, :-1], ~steep & (to_y > 0.0)),
        ("top", open_y[:, 1:], ~steep & (to_y < 0.0)),
    ):
        size = np.where(whole, (1.0 - opened) * dx, slant * looks)
        walls.append(Wall(size > 1e-12, face, size, gap_y, across=False))
    kept = walls if ends else walls[:2]
    return Grid.of((volume, across, along), (middle_x, middle_y), active, kept)


def _to_outline_mm(shape: str, half: tuple[float, float], x: Floats, y: Floats) -> Floats:
    """Return how far points lie inside the outline of a section without its holes."""
    half_x, half_y = half
    if shape == "round":
        return np.asarray(half_x - np.hypot(x, y))
    aside = half_x - np.abs(x)
    if shape == "hexagon":
        aside = half_y - 0.5 * (np.abs(x) * math.sqrt(3.0) + np.abs(y))
    return np.minimum(aside, half_y - np.abs(y))


def _name_holes(
    grid: Grid, shape: str, half: tuple[float, float], holes: Sequence[Hole]
) -> Grid:
    """Call the walls that lie nearer to a hole's edge than to the outline by its name."""
    face = grid.wall_face.copy()
    x, y = grid.across_mm[grid.mesh.wall_row], grid.along_mm[grid.mesh.wall_column]
    outline = _to_outline_mm(shape, half, x, y)
    for hole in holes:
        edge = np.hypot(x - hole.x_mm, y - hole.y_mm) - hole.diameter_mm / 2
        face[np.abs(edge) < outline] = "hole"
    return Grid(grid.mesh, grid.across_mm, grid.along_mm, grid.active, face)


def section_effect(
    outline: Outline, curve: Floats, steel: SteelProperty, start_c: float
) -> SectionEffect:
    """Return how corner, flat and centre of a section cool against a round that stands for it.

    Times from 700 to 500 °C over those of surface and centre of the round; multiply the round's
    time by them.

    Parameters
    ----------
    outline : Outline
        Section, and its round. [-]
    curve : ndarray
        Heat leaving the surface, all round, as `exchange.convection` gives. [-]
    steel : SteelProperty
        Cooling properties. [-]
    start_c : float
        Temperature at the start, above 700 °C. [°C]

    Returns
    -------
    SectionEffect
        Time over the round's: corner and middle of a side over its surface, centre over its
        centre. [-]

    Raises
    ------
    OutOfRangeError
        As `slice_grid`; or the start is not above 700 °C.

    References
    ----------
    .. [1] As `slice_grid`.
    """
    if not start_c > 705.0:
        rule, step = "above 705 °C", "Give the hardening heat."
        raise OutOfRangeError(Problem("start_c", rule, f"{start_c:g} °C", step))
    shape, size_mm, width_mm = outline.shape, outline.size_mm, outline.width_mm
    like_mm = size_mm if outline.round_mm is None else outline.round_mm
    part, bar = slice_grid(shape, size_mm, width_mm), round_grid(like_mm, fineness=3.0)
    half_x, half_y = _half_sides(shape, size_mm, width_mm)
    corner = half_y if shape in ("square", "flat") else 0.0
    places = (part.cell(half_x, corner), part.cell(0.0, half_y), part.cell(0.0, 0.0))
    corner_s, side_s, centre_s = _times(part, places, curve, steel, start_c)
    skin_mm = half_y - float(part.along_mm[-1])
    rim = bar.cell(like_mm / 2 - skin_mm)  # as deep as the section's outermost cell
    rim_s, core_s = _times(bar, (rim, bar.cell(0.0)), curve, steel, start_c)
    return SectionEffect(corner_s / rim_s, side_s / rim_s, centre_s / core_s)


def _times(
    grid: Grid, places: tuple[int, ...], curve: Floats, steel: SteelProperty, start_c: float
) -> list[float]:
    """Return the time from 700 to 500 °C at places, the last of them the slowest."""
    around = steady(grid, {str(face): curve for face in np.unique(grid.wall_face)})
    stop = Stop(places[-1], 480.0, "falling")
    history = conduct(grid, steel, around, start_c, Plan(86400.0, watch=places, stop=stop))
    return [float(t) for t in time_between(history.time_s, history.temperature_c)]
