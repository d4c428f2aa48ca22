import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.duty.contact import corner_factor, corners, pressings
from tests.dog import GONE, asked

PRESSED = {"load.contact": "2 kN"}
SQUARE = {
    "part.section.0.shape": "square",
    "part.section.0.size": 12.7,
    "part.section.0.length": 15,
    "load.torque": "150 N m",
}
FORCES = st.floats(10.0, 1e5)


def pressing(**changes):
    (pressed,) = pressings(asked({**PRESSED, **changes}))
    return pressed


def test_only_a_stated_force_on_a_round_wearing_zone_presses():
    assert pressings(asked()) == ()
    assert pressings(asked({**PRESSED, "zone.0.wear": "none"})) == ()
    flat = {"part.section.0": {"shape": "flat", "size": 8, "width": 25, "length": 30}}
    assert pressings(asked({**PRESSED, **flat})) == ()
    assert pressing().zone == 0


def test_the_pressure_by_hand():
    # w = 2000/30 N/mm, R = 12.5 mm, E* = 113.2 GPa: p0 = sqrt(w E*/(pi R)) = 438 MPa.
    assert pressing().pressure_mpa == pytest.approx(
        math.sqrt(2000 / 30 * 206_000 / (2 * 0.91) / (math.pi * 12.5))
    )


def test_rolling_for_long_bears_less_than_pressing_now_and_then():
    rolled = pressing(**{"zone.0.wear": "rolling-contact", "load.cycles": "fatigue"})
    assert rolled.rolling
    assert rolled.bears_mpa(700.0) < pressing().bears_mpa(700.0)


@given(FORCES, st.floats(1.1, 5.0))
def test_a_heavier_force_asks_for_more_depth(force, times):
    light, heavy = (pressing(**{"load.contact": f * 1.0}) for f in (force, force * times))
    assert heavy.depth_mm(200.0) >= light.depth_mm(200.0)


@given(FORCES, st.floats(150.0, 700.0), st.floats(1.0, 200.0))
def test_a_harder_core_needs_no_deeper_layer(force, core, more):
    pressed = pressing(**{"load.contact": force})
    assert pressed.depth_mm(core + more) <= pressed.depth_mm(core)


def test_a_core_that_bears_the_pressure_needs_no_layer():
    pressed = pressing(**{"load.contact": "100 N"})
    assert pressed.bears_mpa(200.0) > pressed.pressure_mpa
    assert pressed.depth_mm(200.0) == 0


def test_a_drive_end_is_a_square_or_hexagon_that_carries_torque():
    (corner,) = corners(asked(SQUARE))
    assert corner.section == 0
    assert corners(asked({**SQUARE, "load.torque": GONE})) == ()
    assert corners(asked()) == ()


def test_a_drive_end_knows_what_it_runs_in():
    mate = {"zone.0.mate": {"material": "socket", "hardness": "45 HRC"}}
    (corner,) = corners(asked({**SQUARE, **mate}))
    assert corner.mate_hv == pytest.approx(446, abs=3)


def test_corners_round_at_half_as_much_again_as_yield():
    (corner,) = corners(asked(SQUARE))
    assert corner.pressure_mpa == pytest.approx(344.4, abs=1)
    factor = corner_factor(corner, np.array([150.0, 400.0]))
    assert factor[0] < factor[1]
    assert corner.yield_mpa == pytest.approx(corner.pressure_mpa / 1.5)
