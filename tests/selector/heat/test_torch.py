import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.heat.conduction import Plan, conduct
from selector.heat.grid import Section, bar_grid
from selector.heat.steel_property import heating_steel
from selector.heat.torch import (
    TORCHES,
    ceiling_c,
    flame_boundary,
    swept_share,
    torch,
    wrap_fraction,
)

BAR = bar_grid([Section(12.0, 25.0), Section(12.0, 60.0)])


@pytest.mark.parametrize("name", TORCHES)
def test_a_flame_as_usual_is_the_catalogued_one(name):
    usual = torch(name)
    assert usual.cold_flux_mw_per_m2 == pytest.approx(TORCHES[name].cold_flux_mw_per_m2)
    assert usual.width_mm == TORCHES[name].width_mm


def test_more_gas_through_the_same_tip_is_a_faster_flame():
    usual, rich = torch("oxy-propane"), torch("oxy-propane", 16.0, tip_mm=10.0)
    assert rich.exchange == pytest.approx(2**0.5 * usual.exchange)
    assert rich.width_mm == usual.width_mm


def test_a_flame_held_off_is_wider_and_cooler():
    usual, off = torch("oxy-acetylene"), torch("oxy-acetylene", stand_off_mm=45.0)
    assert off.flame_c < 0.5 * usual.flame_c
    assert off.width_mm == 3.0 * usual.width_mm


def test_nothing_is_gained_nearer_than_usual():
    assert torch("hand-propane", stand_off_mm=5.0).flame_c == torch("hand-propane").flame_c


@pytest.mark.parametrize(
    ("setting", "words"),
    [
        ({"gas_flow_l_per_min": 0.0}, r"gas_flow_l_per_min must be above 0; got 0 l/min"),
        ({"tip_mm": -1.0}, r"tip_mm must be above 0; got -1 mm"),
        ({"stand_off_mm": float("nan")}, r"stand_off_mm must be above 0; got nan mm"),
    ],
)
def test_a_setting_that_is_none_is_refused(setting, words):
    with pytest.raises(OutOfRangeError, match=words):
        torch("oxy-propane", **setting)


def test_an_unknown_flame_is_refused():
    with pytest.raises(OutOfRangeError, match=r"name must be one of hand-propane.*'candle'"):
        torch("candle")


@given(st.floats(5.0, 60.0), st.floats(5.0, 60.0))
def test_the_washed_girth_grows_with_the_flame_and_is_never_more_than_all(width, diameter):
    narrow, wide = wrap_fraction([width, 1.1 * width], diameter)
    assert 0.0 < narrow <= wide <= 1.0


@given(st.floats(5.0, 60.0), st.floats(10.0, 120.0))
def test_a_sweep_brings_the_same_flame_over_any_length(width, length):
    z = np.linspace(-300.0, 500.0, 8001)
    total = np.trapezoid(swept_share(z, width, 0.0, length), z)
    assert total == pytest.approx(0.5 * width * (2.0 * np.pi) ** 0.5, rel=1e-6)


@pytest.mark.parametrize("name", ["hand-propane", "blown-propane", "oxy-propane"])
def test_every_flame_has_a_ceiling_that_bricks_raise(name):
    bare, bricked = (ceiling_c(torch(name), 25.0, hearth) for hearth in (False, True))
    assert bare < bricked < torch(name).flame_c


def test_a_small_torch_never_hardens_a_thick_bar_in_the_open():
    """A torch for any size."""
    sizes = [6.0, 10.0, 25.0, 76.0]
    ceilings = [ceiling_c(torch("hand-propane"), size) for size in sizes]
    assert ceilings == sorted(ceilings, reverse=True)
    assert ceilings[0] > 900.0
    assert ceilings[-1] < 750.0


def test_the_history_levels_out_below_the_ceiling():
    flame = torch("hand-propane")
    boundary = flame_boundary(BAR, flame, (0.0, 30.0))
    end = conduct(BAR, heating_steel(), boundary, 20.0, Plan(1200.0)).end_c
    assert 600.0 < end[BAR.active].max() < ceiling_c(flame, 12.0)


def test_a_corner_washed_on_two_faces_runs_ahead():
    thick = bar_grid([Section(40.0, 60.0)])
    flame = torch("oxy-acetylene", 30.0)
    boundary = flame_boundary(thick, flame, (0.0, 30.0))
    end = conduct(thick, heating_steel(), boundary, 20.0, Plan(20.0)).end_c.ravel()
    assert end[thick.cell(20.0, 0.0)] > 40.0 + end[thick.cell(20.0, 15.0)]


def test_a_held_place_settles_at_its_heat():
    boundary = flame_boundary(BAR, torch("oxy-propane"), (0.0, 40.0), hold_c=850.0)
    end = conduct(BAR, heating_steel(), boundary, 20.0, Plan(300.0)).end_c.ravel()
    assert end[BAR.cell(6.0, 12.0)] == pytest.approx(850.0, abs=15.0)


def test_a_forge_heats_by_its_walls():
    assert 1100.0 < ceiling_c(torch("forge"), 30.0) < 1250.0
