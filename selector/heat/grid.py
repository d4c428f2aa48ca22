"""Cells of a stepped bar: fine at its surfaces and its working end, coarse far away."""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]

# The outermost cell is this part of the radius, within bounds; each next one is wider.
SURFACE_PART, THINNEST_MM, THICKEST_MM = 1 / 30, 0.03, 0.5
GROWTH = 1.2
WIDEST_PART = 1 / 10  # of the radius
# Along the bar: no cell wider than this within reach of the working end, then growing.
AXIAL_MM, REACH_MM, FAR_GROWTH = 2.0, 80.0, 1.15


class Wall(NamedTuple):
    """Walls of one face: the cells that have one, its area, and the gap to the cell's middle.

    `across` is True where they bound cells across the part. SI units.
    """

    on: NDArray[np.bool_]
    face: str
    area: Floats
    gap: Floats
    across: bool


class Mesh(NamedTuple):
    """Cells (across, along), the conductances between them, and the walls. SI units."""

    volume: Floats
    across: Floats
    along: Floats
    wall_row: Integers
    wall_column: Integers
    wall_area: Floats
    wall_gap: Floats
    wall_across: NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Section:
    """One cylindrical stretch of a bar, counted from the working end."""

    outer_mm: float
    length_mm: float
    bore_mm: float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Grid:
    """A part cut into cells: place of each, which are steel, and each wall's face and place."""

    mesh: Mesh
    across_mm: Floats
    along_mm: Floats
    active: NDArray[np.bool_]
    wall_face: NDArray[np.str_]

    @classmethod
    def of(
        cls,
        cells: tuple[Floats, Floats, Floats],
        centre_m: tuple[Floats, Floats],
        active: NDArray[np.bool_],
        walls: Sequence[Wall],
    ) -> "Grid":
        """Gather volumes, conductances across and along, centres and walls."""
        volume, across, along = (np.ascontiguousarray(part, dtype=float) for part in cells)
        places = [np.nonzero(wall.on) for wall in walls]
        placed = list(zip(walls, places, strict=True))
        mesh = Mesh(
            volume,
            across,
            along,
            np.concatenate([i for i, _ in places]),
            np.concatenate([j for _, j in places]),
            np.concatenate([wall.area[at] for wall, at in placed]),
            np.concatenate([wall.gap[at] for wall, at in placed]),
            np.concatenate([np.full(at[0].size, wall.across) for wall, at in placed]),
        )
        faces = [np.full(at[0].size, wall.face, "<U8") for wall, at in placed]
        x_mm, y_mm = (np.asarray(c * 1e3) for c in centre_m)
        return cls(mesh, x_mm, y_mm, active, np.concatenate(faces))

    def cell(self, across_mm: float, along_mm: float = 0.0) -> int:
        """Return the flat index of the steel cell nearest to a place."""
        away = np.hypot(self.across_mm[:, None] - across_mm, self.along_mm[None, :] - along_mm)
        return int(np.argmin(np.where(self.active, away, np.inf)))

    def wall_along_mm(self) -> Floats:
        """Return where along the part each wall lies."""
        return np.asarray(self.along_mm[self.mesh.wall_column])

    def cells(self) -> Integers:
        """Return the flat indices of all cells that are steel."""
        return np.flatnonzero(self.active.ravel())

    def field(self, values: Floats, outside: float = math.nan) -> Floats:
        """Return values of the steel cells as (across, along), another where there is none."""
        field = np.full(self.active.size, outside)
        field[self.cells()] = values
        return field.reshape(self.active.shape)


def widening_edges(
    low_mm: float, high_mm: float, first_mm: float, widest_mm: float, both: bool
) -> Floats:
    """Return the edges of cells that widen away from one end of a stretch, or from both.

    Parameters
    ----------
    low_mm, high_mm : float
        Ends of the stretch. [mm]
    first_mm : float
        About the cell at the upper end. [mm]
    widest_mm : float
        No cell is wider. [mm]
    both : bool
        Whether the lower end is as fine as the upper. [-]

    Returns
    -------
    ndarray
        Edges, ends included. [mm]

    References
    ----------
    .. [1] Geometric growth, no model.

    Examples
    --------
    >>> float(widening_edges(0.0, 1.0, 0.5, 0.5, both=False)[1])
    0.5
    """
    span = (high_mm - low_mm) / (2.0 if both else 1.0)
    sizes: list[float] = []
    while sum(sizes) < span:
        sizes.append(min(first_mm * GROWTH ** len(sizes), widest_mm))
    widths = np.array(sizes) * span / sum(sizes)
    halves = np.concatenate([widths, widths[::-1]]) if both else widths[::-1]
    return low_mm + np.concatenate([[0.0], np.cumsum(halves)])


def _join(parts: Sequence[Floats]) -> Floats:
    """Join edges of neighbouring intervals."""
    return np.concatenate([parts[0], *(part[1:] for part in parts[1:])])


def _radial_edges(sections: Sequence[Section], fineness: float) -> Floats:
    """Return the edges of the cells across, with one at every radius of the part."""
    marks = sorted(
        {0.0} | {s.outer_mm / 2 for s in sections} | {s.bore_mm / 2 for s in sections}
    )
    marks = marks[1:] if min(s.bore_mm for s in sections) > 0.0 else marks
    widest = max(s.outer_mm for s in sections) / 2
    bores = {s.bore_mm / 2 for s in sections if s.bore_mm > 0.0}
    first = min(max(widest * SURFACE_PART, THINNEST_MM), THICKEST_MM) / fineness
    return _join(
        [
            widening_edges(
                low, high, min(first, high - low), widest * WIDEST_PART / fineness, low in bores
            )
            for low, high in itertools.pairwise(marks)
        ]
    )


def _axial_edges(sections: Sequence[Section], fineness: float) -> Floats:
    """Return the edges of the cells along: fine at every step and near the working end."""
    thin = min(s.outer_mm for s in sections) / 2
    first = min(max(2 * thin * SURFACE_PART, 0.2), 1.0) / fineness
    place, parts = 0.0, []
    for section in sections:
        end = place + section.length_mm
        near = widening_edges(
            place, end, min(first, section.length_mm), AXIAL_MM / fineness, both=True
        )
        parts.append(near)
        place = end
    edges = _join(parts)
    if edges[-1] <= 1.5 * REACH_MM:
        return edges
    kept = [e for e in edges if e <= REACH_MM]
    steps = {float(e) for e in np.cumsum([s.length_mm for s in sections])}
    for edge in edges[len(kept) :]:
        width = (AXIAL_MM + (FAR_GROWTH - 1) * (edge - REACH_MM)) / fineness
        if edge - kept[-1] >= width or any(math.isclose(edge, s) for s in steps):
            kept.append(float(edge))
    return np.array(kept)


def _problems(sections: Sequence[Section]) -> list[Problem]:
    """Return what is wrong with the sections."""
    problems = []
    if not sections:
        problems.append(Problem("sections", "at least one", "none", "Describe the part."))
    for n, s in enumerate(sections):
        where = f"sections[{n}]"
        for field, value in (("outer_mm", s.outer_mm), ("length_mm", s.length_mm)):
            if not 0.0 < value < 1e5:
                step = "Give the real size."
                problems.append(
                    Problem(f"{where}.{field}", "above 0 mm", f"{value:g} mm", step)
                )
        if not 0.0 <= s.bore_mm < s.outer_mm:
            rule = f"0 or more and below the outside, {s.outer_mm:g} mm, to leave a wall"
            step = "Give a smaller bore or a larger outside."
            problems.append(Problem(f"{where}.bore_mm", rule, f"{s.bore_mm:g} mm", step))
    return problems


def bar_grid(sections: Sequence[Section], fineness: float = 1.0) -> Grid:
    """Return the cells of a stepped round bar, from its working end to its held end.

    Faces are "end" (working end), "side", "bore", "shoulder" and "held" (the far end). A bore
    may begin or end at a step.

    Parameters
    ----------
    sections : sequence of Section
        Stretches from the working end. [-]
    fineness : float, optional
        2 halves every cell, to see what the grid does to a result. [-]

    Returns
    -------
    Grid
        For the solver; across is the radius, along the distance from the working end. [-]

    Raises
    ------
    OutOfRangeError
        There is no section, a size is not above 0, or a bore leaves no wall.

    Notes
    -----
    Finite volumes; a cell's mean temperature stands at its root-mean-square radius, and radial
    conductances are those of a parabola about the axis, so that even heating or cooling is
    exact, in one cell as in many.

    References
    ----------
    .. [1] S. V. Patankar, Numerical Heat Transfer and Fluid Flow, 1980, chapter 4
       (from memory).

    Examples
    --------
    >>> grid = bar_grid([Section(16.0, 40.0)])
    >>> float((grid.mesh.volume.sum() * 1e9).round()), sorted({str(f) for f in grid.wall_face})
    (8042.0, ['end', 'held', 'side'])
    """
    problems = _problems(sections)
    if problems:
        raise OutOfRangeError(*problems)
    r, z = _radial_edges(sections, fineness), _axial_edges(sections, fineness)
    middle = 0.5 * (z[1:] + z[:-1])
    index = np.searchsorted(np.cumsum([s.length_mm for s in sections]), middle)
    index = np.minimum(index, len(sections) - 1)
    outer = np.array([s.outer_mm / 2 for s in sections])[index]
    bore = np.array([s.bore_mm / 2 for s in sections])[index]
    tiny = 1e-9 * r[-1]
    active = (r[1:, None] <= outer + tiny) & (r[:-1, None] >= bore - tiny)
    return _cylinder(r, z, active)


@lru_cache(maxsize=256)
def round_grid(diameter_mm: float, bore_mm: float = 0.0, fineness: float = 1.0) -> Grid:
    """Return the cells across a long round bar or tube: heat moves along the radius only.

    Parameters
    ----------
    diameter_mm : float
        Outside. [mm]
    bore_mm : float, optional
        Inside; 0 is solid. [mm]
    fineness : float, optional
        2 halves every cell; 0 makes one cell of the section, enough below Biot 0.1. [-]

    Returns
    -------
    Grid
        One metre of bar, with faces "side" and, for a tube, "bore". [-]

    Raises
    ------
    OutOfRangeError
        A size is not above 0, or the bore leaves no wall.

    References
    ----------
    .. [1] As `bar_grid`.
    """
    section = Section(diameter_mm, 1000.0, bore_mm)
    problems = _problems([section])
    if problems:
        raise OutOfRangeError(*problems)
    if fineness <= 0.0:
        r = np.array([bore_mm / 2, diameter_mm / 2])
    else:
        r = _radial_edges([section], fineness)
    active = np.ones((r.size - 1, 1), dtype=bool)
    return _cylinder(r, np.array([0.0, 1000.0]), active, ends=False)


def _cylinder(r_mm: Floats, z_mm: Floats, active: NDArray[np.bool_], ends: bool = True) -> Grid:
    """Return volumes, conductances and walls of rings between edges across and along."""
    r, z = r_mm * 1e-3, z_mm * 1e-3
    height, area = np.diff(z), math.pi * (r[1:] ** 2 - r[:-1] ** 2)
    centre = np.sqrt(0.5 * (r[1:] ** 2 + r[:-1] ** 2))
    volume = np.where(active, area[:, None] * height, 1.0)
    both = active[1:] & active[:-1]
    spread = np.diff(centre**2) / r[1:-1] ** 2
    across = both * 4.0 * math.pi * height / spread[:, None]
    middle = 0.5 * (z[1:] + z[:-1])
    both = active[:, 1:] & active[:, :-1]
    along = both * area[:, None] / np.diff(middle)

    walls: list[Wall] = []
    outside = active & ~np.vstack([active[1:], np.zeros_like(active[:1])])
    inside = active & ~np.vstack([np.zeros_like(active[:1]), active[:-1]])
    inside &= (r[:-1] > 0.0)[:, None]
    for on, face, edge in ((outside, "side", r[1:]), (inside, "bore", r[:-1])):
        at = np.maximum(edge, 1e-12)
        gap = (np.abs(at**2 - centre**2) / (2.0 * at))[:, None] + np.zeros_like(height)
        walls.append(Wall(on, face, 2.0 * math.pi * at[:, None] * height, gap, across=True))
    if ends:
        none = np.zeros_like(active[:, :1])
        first = active & ~np.hstack([none, active[:, :-1]])
        last = active & ~np.hstack([active[:, 1:], none])
        size = area[:, None] + np.zeros_like(height)
        gap = 0.5 * height + np.zeros_like(size)
        at_end = np.arange(height.size) == 0
        at_held = np.arange(height.size) == height.size - 1
        for on, name, there in ((first, "end", at_end), (last, "held", at_held)):
            walls.append(Wall(on & there, name, size, gap, across=False))
            walls.append(Wall(on & ~there, "shoulder", size, gap, across=False))
    return Grid.of((volume, across, along), (centre, middle), active, walls)
