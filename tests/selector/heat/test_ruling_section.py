import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.heat.ruling_section import round_equivalent_mm


def test_a_round_is_its_own_equivalent():
    assert np.all(round_equivalent_mm("round", [10.0, 20.0], 0.3) == [10.0, 20.0])


@pytest.mark.parametrize(
    ("shape", "by_area"), [("square", 1.0), ("hexagon", 1.0), ("flat", 2.0)]
)
def test_a_slow_quench_goes_by_area_over_edge(shape, by_area):
    assert float(round_equivalent_mm(shape, 20.0, 1e-4)) == pytest.approx(
        20 * by_area, rel=1e-3
    )


def test_a_severe_quench_goes_by_the_slowest_mode():
    square = float(round_equivalent_mm("square", 20.0, 1e9))
    plate = float(round_equivalent_mm("flat", 20.0, 1e9))
    assert square == pytest.approx(20 * 1.08, rel=0.01)
    assert plate == pytest.approx(20 * 1.37, rel=0.01)


@given(st.floats(2.0, 50.0), st.floats(1.0, 4.0), st.floats(0.02, 5.0))
def test_a_flat_lies_between_its_square_and_the_wide_plate(thickness, aspect, severity):
    flat = round_equivalent_mm("flat", thickness, severity, thickness * aspect)
    assert round_equivalent_mm("square", thickness, severity) <= flat * 1.0001
    assert flat <= round_equivalent_mm("flat", thickness, severity) * 1.02
    assert flat == pytest.approx(
        round_equivalent_mm("flat", thickness * aspect, severity, thickness)
    )


def test_a_tube_open_at_both_ends_cools_like_a_plate_of_its_wall():
    tube = round_equivalent_mm("tube", 30.0, 0.3, bore_mm=20.0)
    assert tube == pytest.approx(float(round_equivalent_mm("flat", 5.0, 0.3)))


@pytest.mark.parametrize("bore", [30.0, None])
def test_a_tube_without_a_wall_is_refused(bore):
    got = "nan" if bore is None else "30"
    with pytest.raises(OutOfRangeError, match=rf"bore_mm must be given.*got {got}"):
        round_equivalent_mm("tube", 30.0, 0.3, bore_mm=bore)


def test_a_flat_without_thickness_is_refused():
    with pytest.raises(OutOfRangeError, match="size_mm must be above 0; got 0"):
        round_equivalent_mm("flat", 0.0)
    assert math.isfinite(float(round_equivalent_mm("flat", 1.0)))
