import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.conduction import History
from selector.heat.grid import Section, bar_grid
from selector.heat.operator import (
    LIGHT,
    TURNED_SHARE,
    Reading,
    reading,
    seen_cell,
    side_difference_k,
)
from selector.heat.torch import torch


def bar(diameter, length=80.0):
    return bar_grid([Section(diameter, 25.0), Section(diameter, length)])


def test_the_cell_that_is_seen_is_the_outermost_steel_at_its_place():
    grid = bar_grid([Section(10.0, 25.0), Section(40.0, 60.0)])
    for along_mm, radius_mm in ((12.0, 5.0), (60.0, 20.0)):
        row, column = divmod(seen_cell(grid, along_mm), grid.along_mm.size)
        assert abs(grid.along_mm[column] - along_mm) < 3.0
        assert 0.8 * radius_mm < grid.across_mm[row] < radius_mm


def test_the_best_instrument_reads():
    assert reading(["eye", "crayon"], "sun") == Reading(6.0, 10.0, 0.0)
    assert reading([], "dim") == reading(["eye"], "dim")


def test_bright_light_makes_the_eye_read_low():
    found = [reading(["eye"], light) for light in LIGHT]
    assert [r.bias_c for r in found] == sorted(r.bias_c for r in found)
    assert found[-1].truly_c(800.0, 0.0, 0.0) == 850.0
    assert found[1].truly_c(800.0, 1.0, -1.0) == 808.0


def test_an_unknown_light_is_refused():
    with pytest.raises(OutOfRangeError, match=r"light must be one of dim.*'moon'"):
        reading(["eye"], "moon")


def test_the_flames_side_is_hotter_by_the_flux_and_turning_leaves_a_share_of_it():
    grid, flame = bar(20.0), torch("oxy-propane")
    end_c = np.full(grid.active.shape, 850.0)
    still = {
        stored_j: side_difference_k(
            grid,
            History(
                np.array([0.0, 60.0]), end_c[:1], end_c, np.zeros(1), stored_j, stopped=True
            ),
            flame,
            turns=False,
        )
        for stored_j in (3e4, 6e4)
    }
    assert 0.0 < still[3e4] == pytest.approx(0.5 * still[6e4])
    heating = History(np.array([0.0, 60.0]), end_c[:1], end_c, np.zeros(1), 3e4, stopped=True)
    turned = side_difference_k(grid, heating, flame, turns=True)
    assert turned == pytest.approx(TURNED_SHARE * still[3e4])
