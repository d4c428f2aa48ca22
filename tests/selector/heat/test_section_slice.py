"""Sections: area and outline, corners, one-sided heat, holes, plates."""

import math

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.conduction import Plan, conduct
from selector.heat.exchange import SURFACE_C, convection, steady
from selector.heat.section_slice import Hole, Outline, plate_grid, section_effect, slice_grid
from selector.heat.steel_property import SteelProperty, cooling_steel, heating_steel

GRID_C = np.linspace(-100.0, 1700.0, 3601)
PLAIN = SteelProperty(
    "constant", GRID_C, np.full_like(GRID_C, 30.0), np.full_like(GRID_C, 4.68e6)
)


def area_mm2(grid):
    return float(grid.mesh.volume[grid.active].sum()) * 1e6


def end_row(grid):
    return grid.across_mm.size // 2


def outline_mm(grid, *faces):
    return float(grid.mesh.wall_area[np.isin(grid.wall_face, faces)].sum()) * 1e3


@pytest.mark.parametrize(
    ("shape", "area", "outline"),
    [
        ("round", math.pi * 100.0, math.pi * 20.0),
        ("square", 400.0, 80.0),
        ("hexagon", 400.0 * math.sqrt(3.0) / 2, 120.0 / math.sqrt(3.0)),
    ],
)
def test_section_keeps_its_area_and_outline(shape, area, outline):
    grid = slice_grid(shape, 20.0)
    assert area_mm2(grid) == pytest.approx(area, rel=0.003)
    assert outline_mm(grid, "left", "right", "top", "bottom") == pytest.approx(
        outline, rel=0.006
    )


def test_hole_takes_its_area_and_has_its_own_wall():
    grid = slice_grid("square", 20.0, holes=[Hole(3.0, -2.0, 6.0)])
    assert area_mm2(grid) == pytest.approx(400.0 - math.pi * 9.0, rel=0.003)
    assert outline_mm(grid, "hole") == pytest.approx(math.pi * 6.0, rel=0.04)


def test_round_slice_cools_like_the_round_bar():
    effect = section_effect(
        Outline("round", 20.0), convection(3000.0, 20.0), cooling_steel(), 850.0
    )
    for fraction in (effect.corner_fraction, effect.side_fraction, effect.centre_fraction):
        assert fraction == pytest.approx(1.0, abs=0.02)


def test_energy_closes_in_a_cut_section():
    grid = slice_grid("hexagon", 19.0, holes=[Hole(0.0, 5.0, 4.0)])
    around = steady(grid, {str(f): convection(3000.0, 20.0) for f in np.unique(grid.wall_face)})
    history = conduct(grid, cooling_steel(), around, 850.0, Plan(10.0))
    assert -history.wall_heat_j.sum() == pytest.approx(history.stored_j, rel=1e-6)


def test_square_centre_against_the_product_of_two_plates():
    """Carslaw and Jaeger 1959, section 5.6: the square is the product of its strips."""
    h, seconds = 3000.0, 6.0
    plate = plate_grid(20.0)
    both = steady(plate, {f: convection(h, 0.0) for f in ("left", "right")})
    square = slice_grid("square", 20.0)
    around = steady(square, {str(f): convection(h, 0.0) for f in np.unique(square.wall_face)})
    plan = Plan(seconds, tolerance_k=0.1)
    strip = conduct(plate, PLAIN, both, 800.0, plan).end_c[:, 0] / 800.0
    field = conduct(square, PLAIN, around, 800.0, plan).end_c / 800.0
    assert field == pytest.approx(strip[:, None] * strip[None, :], abs=0.003)


def test_corners_cool_first_and_sharper_ones_more():
    square, hexagon = (
        section_effect(Outline(shape, 20.0), convection(4000.0, 20.0), cooling_steel(), 850.0)
        for shape in ("square", "hexagon")
    )
    assert square.corner_fraction < hexagon.corner_fraction < 1.0
    assert square.centre_fraction > hexagon.centre_fraction > 1.0


def test_slow_cooling_knows_no_corners():
    air = section_effect(
        Outline("square", 12.0), convection(60.0, 20.0), cooling_steel(), 850.0
    )
    assert air.corner_fraction == pytest.approx(1.0, abs=0.03)
    assert air.centre_fraction == pytest.approx(1.0, abs=0.03)


def test_corner_burns_first_in_a_flame_from_all_sides():
    grid = slice_grid("square", 16.0)
    flame = np.full(SURFACE_C.size, -1.0e6)
    around = steady(grid, {str(f): flame for f in np.unique(grid.wall_face)})
    end = conduct(grid, heating_steel(), around, 20.0, Plan(8.0)).end_c
    assert end.max() == end[0, 0] or end.max() == pytest.approx(end[0, 0], abs=1.0)
    assert end[0, 0] > end[0, end.shape[1] // 2] + 50.0


def test_flame_from_one_side_leaves_the_other_cooler_by_flux_and_thickness():
    """q s / 2 k once the profile is a parabola: Carslaw and Jaeger 1959, section 3.8."""
    grid = slice_grid("flat", 12.0, 30.0)
    around = steady(grid, {"top": np.full(SURFACE_C.size, -1.0e6)})
    end = conduct(grid, PLAIN, around, 20.0, Plan(12.0)).end_c[end_row(grid)]
    depth = 12e-3 - 2 * (6.0 - grid.along_mm[-1]) * 1e-3
    assert end[-1] - end[0] == pytest.approx(1.0e6 * depth / 60.0, rel=0.03)


def test_thin_wall_beside_a_hole_heats_first():
    grid = slice_grid("square", 20.0, holes=[Hole(0.0, 6.5, 5.0)])
    around = steady(grid, {f: np.full(SURFACE_C.size, -3e6) for f in ("top", "bottom")})
    end = conduct(grid, heating_steel(), around, 20.0, Plan(1.0)).end_c
    top, bottom = grid.cell(0.0, 10.0), grid.cell(0.0, -10.0)
    assert end.ravel()[top] > end.ravel()[bottom] + 30.0


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("star", 20.0), "shape must be round, square, hexagon or flat; got 'star'"),
        (("square", math.nan), "size_mm must be above 0 .*got nan mm"),
        (("flat", 5.0), "width_mm must be above 0 .*got nan mm"),
    ],
)
def test_section_that_cannot_be_is_refused(arguments, message):
    with pytest.raises(OutOfRangeError, match=message):
        slice_grid(*arguments)


def test_hole_that_leaves_nothing_is_refused():
    with pytest.raises(OutOfRangeError, match=r"holes must be .*got no steel left"):
        slice_grid("round", 10.0, holes=[Hole(0.0, 0.0, 30.0)])
    with pytest.raises(OutOfRangeError, match=r"holes\[0\].diameter_mm must be .*got 0 mm"):
        slice_grid("round", 10.0, holes=[Hole(0.0, 0.0, 0.0)])


def test_plate_without_thickness_and_cold_start_are_refused():
    with pytest.raises(OutOfRangeError, match=r"thickness_mm must be .*got -2 mm"):
        plate_grid(-2.0)
    with pytest.raises(OutOfRangeError, match=r"start_c must be above 705 °C; got 650 °C"):
        section_effect(Outline("square", 10.0), convection(50.0, 20.0), cooling_steel(), 650.0)
