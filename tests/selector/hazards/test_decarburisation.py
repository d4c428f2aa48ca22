import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.hazards.decarburisation import (
    SKIN_LEFT_FRACTION,
    bar_allowance_mm,
    carbon_left_fraction,
    carbon_loss_diffusivity,
    metal_lost,
    soft_skin,
)


@given(st.floats(720.0, 1200.0), st.floats(10.0, 7200.0))
def test_skin_and_scale_grow_with_heat_and_the_root_of_time(peak, time):
    here, hotter, longer = (
        soft_skin(peak, time),
        soft_skin(peak + 20, time),
        soft_skin(peak, 4 * time),
    )
    assert hotter.soft_mm > here.soft_mm
    assert hotter.scale_mm > here.scale_mm
    assert float(longer.soft_mm) == pytest.approx(2 * float(here.soft_mm))


def test_foil_or_pack_keeps_the_carbon():
    bare, packed = soft_skin(850.0, 3600.0), soft_skin(850.0, 3600.0, "pack")
    assert packed.soft_mm < 0.25 * bare.soft_mm
    assert packed.scale_mm < 0.1 * bare.scale_mm


def test_minutes_in_a_flame_leave_less_than_an_hour_in_an_open_furnace():
    flame, furnace = soft_skin(850.0, 180.0, "flame"), soft_skin(850.0, 3600.0)
    assert flame.soft_mm < furnace.soft_mm
    assert 0.1 < float(furnace.soft_mm) < 0.4


@given(st.floats(1.0, 300.0), st.floats(0.0, 100.0))
def test_thicker_bar_never_has_a_thinner_bark(thickness, more):
    assert bar_allowance_mm(thickness + more) >= bar_allowance_mm(thickness)


@given(st.floats(720.0, 1200.0), st.floats(10.0, 7200.0), st.sampled_from(["flame", "pack"]))
def test_carbon_rises_from_none_at_the_surface_to_all_in_the_depth(peak, time, atmosphere):
    skin = float(soft_skin(peak, time, atmosphere).soft_mm)
    depths = skin * np.array([0.0, 0.3, 1.0, 2.0, 8.0])
    left = carbon_left_fraction(depths, peak, time, atmosphere)
    assert (np.diff(left) > 0).all()
    assert left[0] == pytest.approx(0.0, abs=1e-6)
    assert left[2] == pytest.approx(SKIN_LEFT_FRACTION, abs=2e-3)
    assert left[-1] == pytest.approx(1.0, abs=1e-3)


@given(st.floats(720.0, 1200.0), st.floats(10.0, 7200.0))
def test_metal_is_lost_with_the_root_of_time_and_less_than_carbon_leaves(peak, time):
    lost = float(metal_lost(peak, time))
    assert float(metal_lost(peak, 4 * time)) == pytest.approx(2 * lost)
    assert lost < np.sqrt(float(carbon_loss_diffusivity(peak)) * time)
