"""The two sweeps solve what a dense solver solves, and account for the heat of the walls."""

import numpy as np
from numba import njit

from selector.heat.grid import Section, bar_grid
from selector.heat.layout import FIRST, SLOPE, STIFF, SWEPT, lay_out
from selector.heat.sweep import factor, solve


@njit
def run(part, scale):
    for direction in range(2):
        factor(part, direction, scale)
        solve(part, direction, scale, 0)


def one_direction(grid, slope, stiff, across):
    """Return the dense matrix of one direction on enthalpy, walls included."""
    mesh, (rows, columns) = grid.mesh, grid.active.shape
    n = rows * columns
    flow = np.zeros((n, n))
    for i in range(rows):
        for j in range(columns):
            k = i * columns + j
            step, g = (columns, mesh.across) if across else (1, mesh.along)
            if (i < rows - 1) if across else (j < columns - 1):
                flow[k, k] -= g[i, j]
                flow[k, k + step] += g[i, j]
                flow[k + step, k + step] -= g[i, j]
                flow[k + step, k] += g[i, j]
    for w in range(stiff.size):
        if mesh.wall_across[w] == across:
            k = mesh.wall_row[w] * columns + mesh.wall_column[w]
            flow[k, k] -= mesh.wall_area[w] * stiff[w]
    return flow * slope.ravel() / mesh.volume.ravel()[:, None]


def test_sweeps_against_a_dense_solver():
    rng = np.random.default_rng(5)
    grid = bar_grid([Section(10.0, 8.0), Section(14.0, 6.0, 4.0)], fineness=0.3)
    shape, walls = grid.active.shape, grid.wall_face.size
    slope, scale = rng.uniform(4e-6, 1e-5, shape), 0.7
    right = rng.normal(size=shape) * grid.active
    part = lay_out(grid.mesh, np.zeros(shape), np.zeros(walls), 1)
    part.wall[STIFF] = rng.uniform(10.0, 400.0, walls)
    part.cell[SLOPE] = 6e-6  # of the borders
    part.inside(SLOPE)[:] = slope
    part.inside(FIRST)[:] = right
    run(part, scale)
    x = part.inside(FIRST)

    unit = np.eye(right.size)
    first = unit - scale * one_direction(grid, slope, part.wall[STIFF], across=True)
    second = unit - scale * one_direction(grid, slope, part.wall[STIFF], across=False)
    expected = np.linalg.solve(second, np.linalg.solve(first, right.ravel()))
    assert np.allclose(x.ravel(), expected, rtol=1e-10, atol=1e-14)

    lost = np.sum(grid.mesh.volume * (right - x) * grid.active)
    assert np.isclose(part.wall[SWEPT].sum(), lost, rtol=1e-10)
