import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.mechanics.notch import (
    cross_hole_factor,
    fillet_factor,
    keyway_factor,
    plate_hole_factor,
)

LOADS = st.sampled_from(["torsion", "bending"])


@given(LOADS, st.floats(0.1, 5.0), st.floats(1.0, 8.0))
def test_a_sharper_fillet_never_helps(load, radius, step):
    blunt, sharp = fillet_factor(load, 20.0, 20.0 * step, [radius * 1.3, radius])
    assert 1 <= blunt <= sharp


@given(st.floats(0.1, 2.0), st.floats(1.0, 8.0))
def test_bending_concentrates_more_than_torsion(radius, step):
    bending, torsion = (
        float(fillet_factor(load, 20.0, 20.0 * step, radius)) for load in ("bending", "torsion")
    )
    assert bending >= torsion * 0.97


@pytest.mark.parametrize("load", ["torsion", "bending"])
def test_no_step_no_notch(load):
    assert float(fillet_factor(load, 20.0, 20.0, 0.5)) == 1.0


def test_fillets_broadcast():
    answer = fillet_factor("bending", 10.0, [[12.0], [20.0]], [0.2, 0.5, 1.0])
    assert answer.shape == (2, 3)
    assert np.all(np.diff(answer, axis=1) < 0)


@given(LOADS, st.floats(0.05, 0.9))
def test_a_wider_cross_hole_weakens_more(load, ratio):
    narrow, wide = cross_hole_factor(load, [ratio * 0.9, ratio], 1.0)
    assert wide >= narrow * 0.985


@given(st.floats(0.05, 0.9), st.floats(0.05, 20.0))
def test_a_wider_hole_weakens_a_flat_more_and_a_thinner_flat_no_more(ratio, deep):
    thick = ratio / deep
    narrow, wide = plate_hole_factor([ratio * 0.9, ratio], 1.0, thick * np.array([0.9, 1.0]))
    assert wide >= narrow * 0.985
    assert plate_hole_factor(ratio, 1.0, 0.5 * thick) <= 1.01 * plate_hole_factor(
        ratio, 1.0, thick
    )


def test_a_hole_nearly_as_wide_as_the_bar_leaves_nothing_to_bear():
    assert float(cross_hole_factor("torsion", 9.0, 10.0)) > 50
    assert float(cross_hole_factor("bending", 9.9, 10.0)) > 1000
    below, above = cross_hole_factor("bending", [2.4999, 2.5001], 10.0)
    assert below == pytest.approx(above, rel=1e-3)


def test_a_keyway_is_worst_in_torsion_under_its_key():
    assert keyway_factor("torsion") > keyway_factor("bending") > 2


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: fillet_factor("torsion", 10.0, 12.0, 0.0), "radius_mm must be above 0; got 0"),
        (lambda: fillet_factor("torsion", 10.0, 8.0, 1.0), "large_mm must be at least.*got 8"),
        (lambda: cross_hole_factor("torsion", 12.0, 10.0), "hole_mm / bar_mm.*got 1.2"),
        (lambda: plate_hole_factor(12.0, 10.0, 1.0), "hole_mm / width_mm.*got 1.2"),
    ],
)
def test_an_impossible_notch_is_refused(call, words):
    with pytest.raises(OutOfRangeError, match=words):
        call()
