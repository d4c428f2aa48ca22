"""F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine, Fundamentals of Heat and Mass
Transfer, 6th ed., 2007, Table 5.1: first eigenvalue and coefficient of one-dimensional
transient conduction with convection. From memory.
"""

import math

import numpy as np
import pytest

from selector.heat.conduction import Plan, conduct
from selector.heat.exchange import convection, steady
from selector.heat.grid import round_grid
from selector.heat.section_slice import plate_grid
from selector.heat.steel_property import SteelProperty
from tests.printed import agrees

K, C = 30.0, 4.68e6
GRID_C = np.linspace(-100.0, 1700.0, 3601)
STEEL = SteelProperty("constant", GRID_C, np.full_like(GRID_C, K), np.full_like(GRID_C, C))
HALF_MM = 10.0

CASES = [
    ("wall", 0.1, "0.3111", "1.0161"),
    ("wall", 1.0, "0.8603", "1.1191"),
    ("wall", 10.0, "1.4289", "1.2620"),
    ("cylinder", 0.1, "0.4417", "1.0246"),
    ("cylinder", 1.0, "1.2558", "1.2071"),
    ("cylinder", 10.0, "2.1795", "1.5677"),
]


@pytest.mark.parametrize(
    ("shape", "biot", "eigenvalue", "coefficient"),
    [pytest.param(*case, id=f"{case[0]}, Biot {case[1]:g}") for case in CASES],
)
def test_late_decay_of_the_centre(shape, biot, eigenvalue, coefficient):
    make = plate_grid if shape == "wall" else round_grid
    grid = make(2.0 * HALF_MM, fineness=20.0)
    h = biot * K / (HALF_MM * 1e-3)
    faces = {str(face): convection(h, 0.0) for face in np.unique(grid.wall_face)}
    scale_s = (HALF_MM * 1e-3) ** 2 * C / K
    seconds = scale_s * 4.0 / float(eigenvalue) ** 2
    watch = (grid.cell(0.0),)
    plan = Plan(seconds, watch=watch, tolerance_k=1e-4)
    history = conduct(grid, STEEL, steady(grid, faces), 1000.0, plan)
    left = history.temperature_c[0] / 1000.0
    late = history.time_s > 0.7 * seconds
    slope, start = np.polyfit(history.time_s[late] / scale_s, np.log(left[late]), 1)
    place = abs(grid.across_mm[watch[0]]) / HALF_MM  # cell beside the axis
    off_axis = 1.0 - 0.25 * (place * float(eigenvalue)) ** 2 * (2.0 if shape == "wall" else 1.0)
    assert agrees(math.sqrt(-slope), eigenvalue)
    assert agrees(math.exp(start) / off_axis, coefficient)
