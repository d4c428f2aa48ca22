"""Cells of a bar: volume, walls, names of faces, and parts that cannot be."""

import math

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.grid import Section, bar_grid, round_grid, widening_edges

STEPPED = (Section(20.0, 30.0), Section(32.0, 15.0, 10.0), Section(12.0, 60.0))


def volume_mm3(grid):
    return float(grid.mesh.volume[grid.active].sum()) * 1e9


def wall_mm2(grid, face):
    return float(grid.mesh.wall_area[grid.wall_face == face].sum()) * 1e6


@pytest.mark.parametrize("fineness", [0.5, 1.0, 2.0])
def test_stepped_bar_keeps_its_volume_and_walls(fineness):
    grid = bar_grid(STEPPED, fineness)
    true = sum(math.pi / 4 * (s.outer_mm**2 - s.bore_mm**2) * s.length_mm for s in STEPPED)
    assert volume_mm3(grid) == pytest.approx(true)
    sides = sum(math.pi * s.outer_mm * s.length_mm for s in STEPPED)
    assert wall_mm2(grid, "side") == pytest.approx(sides)
    assert wall_mm2(grid, "bore") == pytest.approx(math.pi * 10.0 * 15.0)
    assert wall_mm2(grid, "end") == pytest.approx(math.pi / 4 * 400.0)
    assert wall_mm2(grid, "held") == pytest.approx(math.pi / 4 * 144.0)
    rings = (32**2 - 20**2) + (32**2 - 12**2) + 2 * 10**2
    assert wall_mm2(grid, "shoulder") == pytest.approx(math.pi / 4 * rings)


def test_bore_through_the_whole_part_has_no_core():
    grid = bar_grid([Section(20.0, 30.0, 8.0)])
    assert volume_mm3(grid) == pytest.approx(math.pi / 4 * (400.0 - 64.0) * 30.0)
    assert grid.active.all()
    assert grid.across_mm[0] > 4.0


def test_even_heating_of_a_solid_bar_is_exact():
    """Under steady flux the profile is a parabola: every cell gains heat at one rate."""
    mesh, r_m = (grid := round_grid(30.0)).mesh, round_grid(30.0).across_mm * 1e-3
    theta = 7.0e6 * r_m**2
    flow = np.zeros(theta.size + 1)
    flow[1:-1] = mesh.across[:, 0] * np.diff(theta)
    flow[-1] = (7.0e6 * 0.015**2 - theta[-1]) / mesh.wall_gap[0] * mesh.wall_area[0]
    gain = np.diff(flow) / grid.mesh.volume[:, 0]
    assert gain == pytest.approx(np.full(gain.size, 4 * 7.0e6))


def test_steady_heat_through_a_tube_wall():
    grid = round_grid(30.0, 10.0)
    theta = np.log(grid.across_mm)  # the steady profile
    flow = grid.mesh.across[:, 0] * np.diff(theta)
    assert flow == pytest.approx(np.full(flow.size, 2.0 * math.pi), rel=0.015)


def test_cells_are_finest_at_the_surface_and_few():
    for diameter in (4.0, 16.0, 60.0):
        width = np.diff(round_grid(diameter).across_mm)
        assert width[-1] < 0.5 * width[0]
        assert 8 <= width.size <= 25


def test_long_bar_has_coarse_cells_far_from_its_end():
    grid = bar_grid([Section(16.0, 600.0)])
    width = np.diff(grid.along_mm)
    assert width[-1] > 3.0 * width[20]
    assert grid.along_mm.size < 90
    assert volume_mm3(grid) == pytest.approx(math.pi * 64.0 * 600.0)


def test_one_cell_stands_for_a_thin_bar():
    assert round_grid(3.0, fineness=0.0).active.shape == (1, 1)


def test_cell_finds_the_place_in_the_steel():
    grid = bar_grid(STEPPED)
    row, column = divmod(grid.cell(15.9, 40.0), grid.along_mm.size)
    assert grid.across_mm[row] == pytest.approx(15.9, abs=0.5)
    assert grid.along_mm[column] == pytest.approx(40.0, abs=1.2)
    assert grid.cell(15.9, 5.0) in grid.cells()


def test_widening_edges_end_where_asked():
    edges = widening_edges(2.0, 9.0, 0.1, 1.0, both=True)
    assert (edges[0], edges[-1]) == pytest.approx((2.0, 9.0))
    assert np.all(np.diff(edges) > 0.0)
    assert np.diff(edges) == pytest.approx(np.diff(edges)[::-1])


@pytest.mark.parametrize(
    ("sections", "message"),
    [
        ([], "sections must be at least one; got none"),
        ([Section(20.0, 0.0)], r"sections\[0\].length_mm must be above 0 mm; got 0 mm"),
        ([Section(-1.0, 5.0)], r"sections\[0\].outer_mm must be above 0 mm; got -1 mm"),
        ([Section(math.nan, 5.0)], r"sections\[0\].outer_mm must be above 0 mm; got nan mm"),
        (
            [Section(20.0, 5.0, 20.0)],
            r"sections\[0\].bore_mm must be .*leave a wall; got 20 mm",
        ),
    ],
)
def test_part_that_cannot_be_is_refused(sections, message):
    with pytest.raises(OutOfRangeError, match=message):
        bar_grid(sections)


def test_round_without_a_wall_is_refused():
    with pytest.raises(OutOfRangeError, match=r"bore_mm must be .*leave a wall; got 12 mm"):
        round_grid(10.0, 12.0)


def test_values_of_the_steel_cells_lie_where_the_steel_is():
    grid = round_grid(20.0, bore_mm=8.0)
    field = grid.field(np.arange(grid.cells().size, dtype=float), outside=-1.0)
    np.testing.assert_array_equal(field >= 0.0, grid.active)
    np.testing.assert_array_equal(field[grid.active], np.arange(grid.cells().size))
