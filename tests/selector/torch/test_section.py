import numpy as np
import pytest

from selector.heat.boiling import Bath
from selector.heat.grid import Section, bar_grid
from selector.heat.section_slice import Outline
from selector.torch.section import hole_lead_k, place_in_radius, section_factors, start_bin_c

SECTIONS = (Section(12.0, 20.0), Section(12.0, 60.0))
GRID = bar_grid(SECTIONS)
WATER = (Bath("water"), 840.0, "low-alloy")


def factors(*outlines):
    return section_factors(GRID, (0.0, 20.0, 80.0), outlines, WATER)


@pytest.mark.parametrize(("start", "bin_c"), [(700.0, 760.0), (835.0, 840.0), (1200.0, 1000.0)])
def test_heats_share_their_starts(start, bin_c):
    assert start_bin_c(start) == bin_c


def test_places_run_from_the_axis_to_the_rim():
    place = place_in_radius(GRID)
    assert 0.0 <= place.min() < 0.2
    assert place.max() == 1.0


def test_a_round_needs_no_factor():
    slower, corner = factors(None, None)
    assert np.all(slower == 1.0)
    assert np.all(corner == 1.0)


def test_a_square_holds_more_steel_than_its_round_and_its_corner_cools_first():
    slower, corner = factors(Outline("square", 12.0, round_mm=12.0), None)
    along = GRID.along_mm[GRID.cells() % GRID.along_mm.size]
    assert np.all(slower[along < 20.0] > 1.0)
    assert np.all(corner[along < 20.0] < 0.6)
    assert np.all(slower[along > 20.0] == 1.0)


def test_a_flat_cools_about_as_the_round_with_as_much_steel_for_its_surface():
    """Four times the section over its girth: what is left is small."""
    slower, _ = factors(Outline("flat", 8.0, 24.0, 12.0), None)
    along = GRID.along_mm[GRID.cells() % GRID.along_mm.size]
    assert np.all((slower[along < 20.0] > 0.6) & (slower[along < 20.0] < 1.6))


def test_the_web_beside_a_hole_runs_ahead_the_thinner_it_is():
    """Common practice, no source: steel between a hole and an edge burns first."""
    flame = (700.0, 2526.0)
    thin, thick = (hole_lead_k(25.0, at, 6.0, flame, 840.0) for at in (5.0, 15.0))
    assert thin > 2.0 * thick > 20.0
    assert hole_lead_k(25.0, 2.0, 6.0, flame, 840.0) == 0.0  # it breaks through the end
