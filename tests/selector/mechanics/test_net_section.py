import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.mechanics.net_section import across_mm, hole_share, keyway_share, slot_share
from tests.examples import few

SHAPES = ("round", "square", "hexagon", "flat", "tube")
CUT = pytest.mark.parametrize("cut", [hole_share, slot_share])


def bored(shape, bore):
    return (
        shape,
        10.0,
        25.0 if shape == "flat" else None,
        bore or (2.0 if shape == "tube" else None),
    )


@CUT
@pytest.mark.parametrize("bore", [None, 6.0])
@pytest.mark.parametrize("shape", SHAPES)
@given(st.floats(0.01, 0.9), st.floats(1.01, 1.1))
@settings(max_examples=few(20))
def test_a_wider_hole_leaves_less(cut, bore, shape, share, times):
    section = bored(shape, bore)
    wide = across_mm(*section[:3])
    small, large = (cut(share * wide * t, *section) for t in (1.0, times))
    for name in ("torsion", "bending", "axial"):
        assert 0 < getattr(large, name) <= getattr(small, name) <= 1


@pytest.mark.parametrize("shape", SHAPES)
def test_a_pin_prick_leaves_all_and_a_slit_opens_the_section(shape):
    section = bored(shape, None)
    prick = hole_share(1e-6, *section)
    assert (prick.torsion, prick.bending, prick.axial) == pytest.approx((1, 1, 1), abs=1e-5)
    slit = slot_share(1e-6, *section)
    assert slit.bending == pytest.approx(1, abs=1e-5)
    assert slit.torsion < 0.9


@pytest.mark.parametrize(("size", "width"), [(8.0, 40.0), (40.0, 40.0)])
def test_the_limbs_beside_a_slot_twist_as_rectangles(size, width):
    """t² (3 b - t) / 6 each, whichever way the limb lies, over the same of the whole."""

    def sand_heap(one, other):
        thin, long = sorted((one, other))
        return thin**2 * (3.0 * long - thin) / 6.0

    slot = 2.0
    limbs = 2.0 * sand_heap((width - slot) / 2.0, size)
    torsion = slot_share(slot, "flat", size, width).torsion
    assert torsion == pytest.approx(limbs / sand_heap(size, width))


@given(st.floats(0.01, 0.99))
def test_a_round_by_closed_integrals(share):
    """Strips of a circle: 1 - 3 u / 2 + u³ / 2 of the moment, and the area of two segments."""
    computed, angle = hole_share(10 * share, "round", 10.0), math.asin(share)
    assert computed.bending == pytest.approx(
        max(1 - 1.5 * share + 0.5 * share**3, 0.001), rel=1e-4
    )
    area = 1 - 2 / math.pi * (angle + share * math.sqrt(1 - share**2))
    assert computed.axial == pytest.approx(max(area, 0.001), rel=0.01)


@pytest.mark.parametrize("bore", [0.0, 6.0])
@pytest.mark.parametrize("shape", ["round", "square", "hexagon"])
def test_in_torsion_a_hole_leaves_less_than_the_bound_from_above(shape, bore):
    """Turning the ends against each other in the plane of the hole costs all of its area."""
    x = (np.arange(600) + 0.5) / 600 * 12 - 6
    along, across = np.meshgrid(x, x)
    radius = np.hypot(along, across)
    inside = radius > bore / 2
    if shape == "round":
        inside &= radius < 5
    elif shape == "square":
        inside &= np.maximum(abs(along), abs(across)) < 5
    else:
        turned = [abs(along * c + across * 3**0.5 / 2) for c in (0.5, -0.5)]
        inside &= np.maximum(abs(along), np.maximum(*turned)) < 5
    for hole in (0.5, 2.5, 5.0, 7.0, 9.0):
        net = inside & (abs(along) > hole / 2)
        computed = hole_share(hole, shape, 10.0, None, bore or None).torsion
        assert computed < radius[net].sum() / radius[inside].sum()
        if hole >= 7.0:
            assert computed < abs(along)[net].sum() / radius[inside].sum()


def test_a_keyway_takes_more_of_a_thin_wall():
    solid, tube = keyway_share(5.0, 20.0), keyway_share(5.0, 20.0, 12.0)
    assert tube.torsion < solid.torsion < 1
    assert tube.bending < solid.bending < 1
    assert tube.axial < solid.axial < 1
    assert keyway_share(5.0, 20.0, 19.0).torsion < 0.01


def test_a_flat_is_drilled_through_its_thickness():
    assert across_mm("flat", 8.0, 40.0) == across_mm("flat", 40.0, 8.0) == 40.0
    computed = hole_share(12.0, "flat", 8.0, 40.0)
    assert (computed.bending, computed.axial) == pytest.approx((0.7, 0.7))


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: hole_share(10.0, "round", 10.0), "hole_mm must be below.*got 10 mm"),
        (lambda: slot_share(41.0, "flat", 8.0, 40.0), "hole_mm must be below.*got 41 mm"),
        (lambda: keyway_share(20.0, 20.0), "keyway_mm must be below.*got 20 mm"),
    ],
)
def test_what_cuts_a_bar_in_two_is_refused(call, words):
    with pytest.raises(OutOfRangeError, match=words):
        call()
