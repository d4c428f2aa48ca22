"""A part laid out for the compiled loop: its cells in one line, a row for each quantity.

The line runs through the part, row after row of cells, between two borders of a row each that
conduct nothing; so no cell is a special case. Few arrays of few kinds keep the compiler quick.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from selector.heat.grid import Mesh

Floats = NDArray[np.float64]
Indices = NDArray[np.uint64]  # an index that could be negative costs a test each time

ACROSS, ALONG = range(2)
# Rows of `cell`: enthalpy before the step and after it, its Kirchhoff integral theta, the
# slopes of theta and temperature with it, heat flowing in through walls, what each stage adds,
# one over the volume.
BEFORE, AFTER, THETA, SLOPE, WARMING, INFLOW, FIRST, SECOND, PER_VOLUME = range(9)
# Rows of `matrix`, one for each direction: conductance to the next cell, conductance through
# walls, and the elimination.
LINK, BOND, INVERSE, BELOW, ABOVE = range(5)
# Rows of `wall`: its area, gap to the cell's middle, surface temperature and heat given off
# until now; then of the trial step: surface temperature, flux, slope of flux with theta in each
# stage, heat that the sweeps account for, heat given off.
AREA, GAP, SURFACE, GIVEN, TRIAL, FLUX, STIFF, STIFF_AFTER, SWEPT, LOST = range(10)
# Rows of `place`: the cell of each wall, the direction that the wall bounds, and the walls
# whose surface is still sought.
CELL, DIRECTION, WAITING = range(3)
# What the clock begins with: time, next step, the time for which the walls' curves are mixed,
# and until when they stay so; the times of the records come behind.
NOW, NEXT, MIXED, KEEPS, WRITTEN = range(5)


class Layout(NamedTuple):
    """A part, its state and the scratch numbers of a step. SI units."""

    rows: np.uint64
    columns: np.uint64
    cell: Floats
    matrix: Floats
    wall: Floats
    place: Indices
    mix: Floats

    def inside(self, row: int) -> Floats:
        """Return a view of a quantity of the cells, with the shape of the part."""
        rows, columns = int(self.rows), int(self.columns)
        return self.cell[row, columns:-columns].reshape(rows, columns)

    def number(self, cells: NDArray[np.int64]) -> Indices:
        """Return where cells of the part, counted row after row, lie in the line."""
        return (cells + int(self.columns)).astype(np.uint64)


def lay_out(mesh: Mesh, enthalpy: Floats, surface_c: Floats, curves: int) -> Layout:
    """Return a part laid out for the compiled loop.

    Parameters
    ----------
    mesh : Mesh
        Cells and walls. [-]
    enthalpy : ndarray
        Enthalpy of each cell at the start, J/m³. [-]
    surface_c : ndarray
        Temperature of each wall at the start. [°C]
    curves : int
        Number of curves that the boundary is mixed of. [-]

    Returns
    -------
    Layout
        The part. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    rows, columns = enthalpy.shape
    part = Layout(
        np.uint64(rows),
        np.uint64(columns),
        np.zeros((9, (rows + 2) * columns)),
        np.zeros((2, 5, (rows + 2) * columns)),
        np.zeros((10, surface_c.size)),
        np.empty((3, surface_c.size), dtype=np.uint64),
        np.zeros((surface_c.size, curves)),
    )
    part.inside(PER_VOLUME)[:] = 1.0 / mesh.volume
    part.inside(BEFORE)[:] = enthalpy
    link = np.zeros((2, rows, columns))
    link[ACROSS, :-1], link[ALONG, :, :-1] = mesh.across, mesh.along
    part.matrix[:, LINK, columns:-columns] = link.reshape(2, -1)
    part.wall[[AREA, GAP, SURFACE]] = mesh.wall_area, mesh.wall_gap, surface_c
    part.place[CELL] = part.number(mesh.wall_row * columns + mesh.wall_column)
    part.place[DIRECTION] = np.where(mesh.wall_across, ACROSS, ALONG)
    return part
