"""Curves and surroundings."""

import math

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.exchange import SURFACE_C, convection, held_end, mixed, steady
from selector.heat.grid import Section, bar_grid, round_grid


def at(curve, temperature_c):
    return float(np.interp(temperature_c, SURFACE_C, curve))


def test_convection_and_radiation_add():
    curve = convection(10.0, 20.0, 0.8)
    black = 0.8 * 5.670374e-8 * (1073.15**4 - 293.15**4)
    assert at(curve, 800.0) == pytest.approx(7800.0 + black, rel=1e-6)
    assert at(curve, 20.0) == pytest.approx(0.0, abs=1e-6)


def test_radiation_of_a_bar_at_850_is_that_of_published_still_air():
    """Still air at 850 °C: 60 to 110 W/(m² K) in all (from memory)."""
    assert 60.0 < at(convection(8.0, 20.0, 0.8), 850.0) / 830.0 < 110.0


def test_faces_left_out_are_insulated():
    grid = bar_grid([Section(10.0, 20.0)])
    boundary = steady(grid, {"side": convection(100.0, 20.0)})
    kept = boundary.share[:, 0].sum(axis=-1)
    assert np.array_equal(kept, 1.0 * (grid.wall_face == "side"))


def test_unknown_face_is_refused():
    with pytest.raises(OutOfRangeError, match=r"curve_by_face must be one of side; got roof"):
        steady(round_grid(10.0), {"roof": convection(100.0, 20.0)})


@pytest.mark.parametrize(
    ("coefficient", "ambient", "message"),
    [
        (-1.0, 20.0, "coefficient_w_per_m2_k must be 0 or above; got -1"),
        (math.nan, 20.0, "coefficient_w_per_m2_k must be 0 or above; got nan"),
        (5.0, math.nan, "ambient_c must be a number; got nan"),
    ],
)
def test_bad_curves_are_refused(coefficient, ambient, message):
    with pytest.raises(OutOfRangeError, match=message):
        convection(coefficient, ambient)


def test_times_that_run_back_are_refused():
    with pytest.raises(
        OutOfRangeError, match=r"knot_s must be finite and ascending; got a num"
    ):
        mixed([convection(5.0, 20.0)], np.ones((1, 2, 1)), [1.0, 0.0])


def test_a_chuck_takes_more_than_tongs_and_these_more_than_nothing():
    lost = [at(held_end(holder), 700.0) for holder in ("insulated", "tongs", "chuck")]
    assert lost[0] == 0.0
    assert np.all(np.diff(lost) > 0.0)


def test_unknown_holder_is_refused():
    with pytest.raises(OutOfRangeError, match=r"holder must be one of insulated.*got 'string'"):
        held_end("string")
