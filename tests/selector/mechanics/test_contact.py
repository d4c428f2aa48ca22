import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.mechanics.contact import (
    allowable_contact_mpa,
    corner_bearing_mpa,
    hertz_line,
    hertz_point,
    line_shear_mpa,
    rolling_contact_limit_mpa,
    static_contact_limit_mpa,
)

LOAD, RADIUS = st.floats(1.0, 5000.0), st.floats(1.0, 200.0)


@given(LOAD, RADIUS)
def test_the_pressure_of_a_line_carries_its_load(load, radius):
    contact = hertz_line(load, radius)
    carried = math.pi / 2 * contact.pressure_mpa * contact.half_width_mm
    assert float(carried) == pytest.approx(load)


@given(LOAD, RADIUS)
def test_the_pressure_of_a_point_carries_its_load(load, radius):
    contact = hertz_point(load, radius, 2 * radius)
    carried = 2 / 3 * math.pi * contact.pressure_mpa * contact.half_width_mm**2
    assert float(carried) == pytest.approx(load)


@given(LOAD, RADIUS)
def test_pressure_grows_with_root_and_cube_root(load, radius):
    line, point = hertz_line([load, 8 * load], radius), hertz_point([load, 8 * load], radius)
    assert line.pressure_mpa[1] / line.pressure_mpa[0] == pytest.approx(math.sqrt(8))
    assert point.pressure_mpa[1] / point.pressure_mpa[0] == pytest.approx(2)


def test_a_hollow_seat_lowers_the_pressure():
    assert hertz_line(100.0, 10.0, -12.0).pressure_mpa < hertz_line(100.0, 10.0).pressure_mpa


@pytest.mark.parametrize("surface", ["through-hardened", "flame-hardened", "case-hardened"])
def test_what_steel_bears_never_falls_with_hardness(surface):
    ladder = allowable_contact_mpa([150.0, 300.0, 500.0, 600.0, 700.0, 900.0], surface)
    assert (ladder[1:] >= ladder[:-1]).all()


@pytest.mark.parametrize(("body", "power"), [("ball", 3), ("roller", 2)])
def test_the_static_load_falls_with_the_square_of_hardness(body, power):
    soft, full = static_contact_limit_mpa([400.0, 800.0], body)
    assert (soft / full) ** power == pytest.approx(0.25)
    assert static_contact_limit_mpa(900.0, body) == full


def test_a_hexagon_spreads_the_corner_load_of_a_square_drive():
    square, hexagon = (corner_bearing_mpa(100.0, 12.0, 12.0, sides) for sides in (4, 6))
    assert hexagon > square  # its flats are shorter
    assert corner_bearing_mpa(100.0, 12.0, 24.0) == pytest.approx(float(square) / 2)


@given(LOAD, RADIUS)
def test_the_shear_below_a_line_peaks_where_the_contact_says(load, radius):
    contact = hertz_line(load, radius)
    depths = np.linspace(0.0, 6.0, 1201) * float(contact.half_width_mm)
    shear = line_shear_mpa(contact, depths)
    assert shear[0] == 0
    assert shear.max() == pytest.approx(float(contact.shear_mpa), rel=2e-3)
    at = float(depths[np.argmax(shear)])
    assert at == pytest.approx(float(contact.shear_depth_mm), rel=0.02)


def test_what_rolls_bears_never_less_when_harder():
    ladder = rolling_contact_limit_mpa(np.linspace(100.0, 900.0, 81))
    assert (np.diff(ladder) >= 0).all()


@pytest.mark.parametrize(
    ("hardness", "surface"),
    [(300.0, "through-hardened"), (560.0, "flame-hardened"), (700.0, "case-hardened")],
)
def test_what_rolls_bears_what_the_standard_gives_its_own_surface(hardness, surface):
    assert float(rolling_contact_limit_mpa(hardness)) == pytest.approx(
        float(allowable_contact_mpa(hardness, surface))
    )


def test_below_the_standard_the_allowable_stress_goes_by_hardness():
    soft, least = allowable_contact_mpa([100.0, 200.0], "through-hardened")
    assert soft == pytest.approx(least / 2.0)
