import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.hazards.decarburisation import bar_allowance_mm, soft_skin


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
