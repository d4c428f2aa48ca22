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
from selector.heat.torch import AMBIENT_C, torch


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


def _side_k(stored_j, *, turns):
    grid, flame = bar(20.0), torch("oxy-propane")
    end_c = np.full(grid.active.shape, 850.0)
    times = np.array([0.0, 60.0])
    heating = History(times, end_c[:1], end_c, np.zeros(1), stored_j, stopped=True)
    return side_difference_k(grid, heating, flame, turns=turns)


def test_the_flames_side_is_hotter_by_the_flux_and_turning_leaves_a_share_of_it():
    turned = {stored_j: _side_k(stored_j, turns=True) for stored_j in (3e4, 6e4)}
    assert 0.0 < turned[3e4] == pytest.approx(0.5 * turned[6e4])
    for stored_j, left in turned.items():
        full, rise = left / TURNED_SHARE, 850.0 - AMBIENT_C
        still = _side_k(stored_j, turns=False)
        # The flame's side is stopped at its heat, and the mean is behind by half of it.
        assert still == pytest.approx(full * rise / (rise + 0.5 * full))


def test_the_back_of_a_bar_is_never_colder_than_the_air():
    assert _side_k(6e6, turns=False) == pytest.approx(850.0 - AMBIENT_C)
