"""A part laid out for the compiled loop keeps its cells, walls and conductances."""

import numpy as np

from selector.heat.grid import Section, bar_grid
from selector.heat.layout import (
    ACROSS,
    ALONG,
    AREA,
    BEFORE,
    CELL,
    DIRECTION,
    LINK,
    PER_VOLUME,
    SURFACE,
    lay_out,
)

GRID = bar_grid([Section(10.0, 8.0), Section(14.0, 6.0, 4.0)], fineness=0.3)
ROWS, COLUMNS = GRID.active.shape
ENTHALPY = np.arange(1.0, GRID.active.size + 1).reshape(ROWS, COLUMNS)
PART = lay_out(GRID.mesh, ENTHALPY, np.full(GRID.wall_face.size, 20.0), 3)


def test_cells_keep_their_shape_and_order():
    assert np.array_equal(PART.inside(BEFORE), ENTHALPY)
    assert np.array_equal(PART.inside(PER_VOLUME), 1.0 / GRID.mesh.volume)
    numbers = PART.number(np.arange(GRID.active.size))
    assert np.array_equal(PART.cell[BEFORE][numbers], ENTHALPY.ravel())


def test_conductances_lead_to_the_next_cell_and_nowhere_beyond():
    line = PART.matrix[:, LINK]
    across, along = line[:, COLUMNS:-COLUMNS].reshape(2, ROWS, COLUMNS)
    assert np.array_equal(across[:-1], GRID.mesh.across)
    assert np.array_equal(along[:, :-1], GRID.mesh.along)
    assert not across[-1].any()
    assert not along[:, -1].any()
    assert not line[:, :COLUMNS].any()
    assert not line[:, -COLUMNS:].any()


def test_walls_lie_at_their_cells():
    of_wall = PART.cell[BEFORE][PART.place[CELL]]
    assert np.array_equal(of_wall, ENTHALPY[GRID.mesh.wall_row, GRID.mesh.wall_column])
    assert np.array_equal(PART.place[DIRECTION] == ACROSS, GRID.mesh.wall_across)
    assert np.array_equal(PART.place[DIRECTION] == ALONG, ~GRID.mesh.wall_across)
    assert np.array_equal(PART.wall[AREA], GRID.mesh.wall_area)
    assert set(PART.wall[SURFACE]) == {20.0}
    assert PART.mix.shape == (GRID.wall_face.size, 3)
