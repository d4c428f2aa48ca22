from dataclasses import replace

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.conduction import History
from selector.heat.grid import Section, bar_grid
from selector.heat.operator import (
    FASTEST_C_PER_S,
    LIGHT,
    SEEN_C,
    TURNED_SHARE,
    Operator,
    Reading,
    heat_end,
    reading,
    seen_cell,
    side_difference_k,
)
from selector.heat.torch import torch


def bar(diameter, length=80.0):
    return bar_grid([Section(diameter, 25.0), Section(diameter, length)])


def heated(name, diameter, hand, watch=None):
    grid = bar(diameter)
    view = (seen_cell(grid, 12.0), (0.0, 30.0))
    return grid, heat_end(grid, torch(name), hand, view, watch=watch)


HAND = Operator(850.0, hold_s=20.0)


@pytest.mark.parametrize("name", ["hand-propane", "oxy-propane", "oxy-acetylene"])
def test_he_stops_near_the_heat_and_holds_it(name):
    grid, found = heated(name, 10.0, HAND)
    assert found.reached
    assert found.end_c.ravel()[seen_cell(grid, 12.0)] == pytest.approx(850.0, abs=20.0)
    assert found.time_s[-1] == pytest.approx(found.heat_s + HAND.hold_s, abs=2.0)
    assert np.all(np.diff(found.time_s) > 0.0)


@pytest.mark.parametrize("diameter", [3.0, 6.0, 10.0])
def test_a_strong_flame_on_a_thin_bar_is_drawn_back(diameter):
    _, found = heated("oxy-acetylene", diameter, HAND)
    assert found.level < 1.0
    assert 830.0 / found.heat_s < 1.15 * FASTEST_C_PER_S


def test_a_thick_bar_takes_the_whole_flame():
    assert heated("oxy-propane", 30.0, HAND)[1].level == 1.0


def test_a_torch_too_small_is_told_with_its_ceiling():
    _, found = heated("hand-propane", 40.0, HAND)
    assert not found.reached
    assert 300.0 < found.ceiling_c < 750.0
    assert found.heat_s == HAND.patience_s


def test_bricks_help_a_small_torch():
    """The same bar that stays below the heat in the open gets there on a hearth."""
    bare, bricked = (
        heated("hand-propane", 18.0, replace(HAND, hearth=hearth))[1]
        for hearth in (False, True)
    )
    assert not bare.reached
    assert bricked.reached


def test_the_thin_end_of_a_thick_body_is_as_even_as_a_thin_bar():
    """What stays cold behind the end takes no part in its side to side."""
    hand = replace(HAND, turns=False)
    flame, view = torch("oxy-propane"), (0.0, 25.0)
    stepped = bar_grid([Section(10.0, 25.0), Section(40.0, 60.0)])
    plain = bar_grid([Section(10.0, 25.0), Section(10.0, 60.0)])
    side = [
        heat_end(grid, flame, hand, (seen_cell(grid, 12.0), view)).uneven_k
        for grid in (stepped, plain)
    ]
    assert side[0] < 2.0 * side[1]


def test_a_still_part_is_uneven_and_a_turned_one_is_not():
    turned, still = (
        heated("oxy-propane", 25.0, replace(HAND, turns=turns))[1].uneven_k
        for turns in (True, False)
    )
    assert turned < SEEN_C < still


def test_a_thin_part_in_a_wide_flame_needs_no_turning():
    assert heated("hand-propane", 6.0, replace(HAND, turns=False))[1].uneven_k < 1.0


def test_who_lingers_heats_the_middle():
    grid = bar(25.0)
    core = grid.cell(0.0, 12.0)
    ends = [
        heated("oxy-propane", 25.0, replace(HAND, hold_s=hold))[1].end_c.ravel()[core]
        for hold in (0.0, 20.0, 80.0)
    ]
    assert ends == sorted(ends)
    assert ends[0] < 780.0 < 830.0 < ends[-1]


def test_the_efficiency_is_a_share():
    for name in ("hand-propane", "oxy-propane", "oxy-acetylene", "forge"):
        assert 0.0 < heated(name, 16.0, HAND)[1].efficiency_fraction < 1.0


def test_watched_cells_are_written_over_the_whole_heat():
    grid = bar(10.0)
    watch = (seen_cell(grid, 12.0), grid.cell(0.0, 12.0))
    _, found = heated("oxy-propane", 10.0, HAND, watch)
    assert found.temperature_c.shape == (2, found.time_s.size)
    assert found.temperature_c[:, 0].tolist() == [20.0, 20.0]


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


@pytest.mark.parametrize(
    ("hand", "words"),
    [
        (replace(HAND, stop_c=2000.0), "stop_c must be between 100 and 1400 °C; got 2000 °C"),
        (replace(HAND, stop_c=float("nan")), "stop_c must be .*; got nan °C"),
        (replace(HAND, hold_s=-1.0), "hold_s must be between 0 and 3600 s; got -1 s"),
        (replace(HAND, patience_s=0.0), "patience_s must be above 0.*; got 0 s"),
    ],
)
def test_what_cannot_be_done_is_refused(hand, words):
    with pytest.raises(OutOfRangeError, match=words):
        heated("oxy-propane", 10.0, hand)


def test_a_stretch_of_no_length_is_refused():
    grid = bar(10.0)
    view = (seen_cell(grid, 12.0), (30.0, 30.0))
    with pytest.raises(OutOfRangeError, match=r"heated_mm must be .* got 30 to 30 mm"):
        heat_end(grid, torch("oxy-propane"), HAND, view)


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
