import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.errors import OutOfRangeError
from selector.mechanics.section import bending_stress_mpa, section_modulus, torsion_stress_mpa


def saint_venant(aspect):
    """Stiffness and strength of a rectangle in torsion, from the series of Saint-Venant."""
    odd = np.arange(1, 41, 2)
    half = odd * math.pi * aspect / 2
    stiffness = (1 - 192 / (math.pi**5 * aspect) * np.sum(np.tanh(half) / odd**5)) / 3
    peak = 1 - 8 / math.pi**2 * np.sum(1 / (odd**2 * np.cosh(np.minimum(half, 300))))
    return stiffness, stiffness / peak


@given(st.floats(1.0, 40.0))
def test_a_rectangle_follows_the_series_of_saint_venant(aspect):
    stiffness, strength = saint_venant(aspect)
    flat = section_modulus("flat", 10.0, 10.0 * aspect)
    assert float(flat.torsion_constant_mm4) / (1e4 * aspect) == pytest.approx(
        stiffness, rel=0.015
    )
    assert float(flat.torsion_mm3) / (1e3 * aspect) == pytest.approx(strength, rel=0.015)


@pytest.mark.parametrize("shape", ["round", "square", "hexagon"])
def test_a_section_yields_throughout_at_more_than_first_yield(shape):
    modulus = section_modulus(shape, 12.0)
    assert 1.2 < modulus.torsion_plastic_mm3 / modulus.torsion_mm3 < 1.7
    assert 1.4 < modulus.bending_plastic_mm3 / modulus.bending_mm3 < 1.9


def test_round_lies_between_hexagon_and_square_of_the_same_area_in_torsion():
    area = math.pi / 4 * 20**2
    square = section_modulus("square", math.sqrt(area)).torsion_constant_mm4
    hexagon = section_modulus(
        "hexagon", math.sqrt(area * 2 / math.sqrt(3))
    ).torsion_constant_mm4
    assert square < hexagon < section_modulus("round", 20.0).torsion_constant_mm4


def test_a_tube_is_the_bar_less_its_bore():
    bar, core, tube = (
        section_modulus("round", 20.0),
        section_modulus("round", 12.0),
        section_modulus("tube", 20.0, bore_mm=12.0),
    )
    assert tube.torsion_constant_mm4 == pytest.approx(
        float(bar.torsion_constant_mm4 - core.torsion_constant_mm4)
    )
    assert tube.torsion_plastic_mm3 == pytest.approx(
        float(bar.torsion_plastic_mm3 - core.torsion_plastic_mm3)
    )


MODULI = (
    "torsion_constant_mm4", "torsion_mm3", "torsion_plastic_mm3", "bending_mm3",
    "bending_plastic_mm3",
)  # fmt: skip


def test_a_bored_round_is_a_tube():
    round_bar, tube = (section_modulus(s, 20.0, bore_mm=19.0) for s in ("round", "tube"))
    for name in MODULI:
        assert getattr(round_bar, name) == getattr(tube, name)


@pytest.mark.parametrize("shape", ["square", "hexagon", "flat"])
@given(st.floats(0.05, 0.9), st.floats(1.02, 1.1))
def test_a_wider_bore_takes_more_and_none_takes_nothing(shape, share, times):
    width = 30.0 if shape == "flat" else None
    whole, narrow, wide = (
        section_modulus(shape, 20.0, width, bore)
        for bore in (None, 20 * share, 20 * share * times)
    )
    for name in MODULI:
        assert 0 < getattr(wide, name) < getattr(narrow, name) < getattr(whole, name)
    least = section_modulus(shape, 20.0, width, 1e-6)
    assert least.torsion_mm3 == pytest.approx(float(whole.torsion_mm3))


@pytest.mark.parametrize("shape", ["square", "hexagon", "flat"])
@pytest.mark.parametrize("bore", [0.3, 0.6, 0.9])
def test_the_sand_heap_of_a_bored_section_has_a_plateau_over_the_hole(shape, bore):
    """Twice the volume of the heap, whose hole is as high as the wall beside it is wide."""
    x = (np.arange(800) + 0.5) / 800 * 4 - 2
    along, across = np.meshgrid(x, x)
    rim = 0.5 - abs(across)
    if shape == "hexagon":
        turned = [abs(along * s + across / 2) for s in (3**0.5 / 2, -(3**0.5) / 2)]
        rim = np.minimum(rim, 0.5 - np.maximum(*turned))
    else:
        rim = np.minimum(rim, (0.5 if shape == "square" else 1.5) - abs(along))
    from_hole = np.maximum(np.hypot(along, across) - bore / 2, 0)
    heap = np.maximum(np.minimum(rim, (1 - bore) / 2 + from_hole), 0)
    # Over the hole itself the sand lies level.
    heap[np.hypot(along, across) < bore / 2] = (1 - bore) / 2
    modulus = section_modulus(shape, 1.0, 3.0 if shape == "flat" else None, bore)
    assert 2 * heap.sum() * (x[1] - x[0]) ** 2 == pytest.approx(
        float(modulus.torsion_plastic_mm3), rel=0.005
    )


def test_hexagon_bending_matches_its_area_integral():
    # Strips of a hexagon standing on a corner, side 10 mm.
    y = np.linspace(0, 10, 200_001)
    width = np.where(y < 5, 10 * math.sqrt(3), 2 * math.sqrt(3) * (10 - y))
    modulus = section_modulus("hexagon", 10 * math.sqrt(3))
    assert 2 * np.trapezoid(y**2 * width, y) / 10 == pytest.approx(
        float(modulus.bending_mm3), rel=1e-6
    )


@given(st.floats(1.0, 60.0), st.floats(1.0, 3.0))
def test_stress_falls_with_the_cube_of_size(size, times):
    before, after = torsion_stress_mpa(10.0, "square", [size, size * times])
    assert before / after == pytest.approx(times**3)


def test_moment_over_modulus():
    assert float(bending_stress_mpa(100.0, "square", 10.0)) == pytest.approx(600.0)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: section_modulus("round", -1.0), "size_mm must be above 0; got -1 mm"),
        (lambda: section_modulus("flat", 5.0), "width_mm must be given, and above 0; got nan"),
        (lambda: section_modulus("tube", 10.0), "bore_mm must be given.*got nan"),
        (lambda: section_modulus("round", 10.0, bore_mm=10.0), "bore_mm must be.*got 10 mm"),
        (lambda: section_modulus("flat", 10.0, 6.0, 7.0), "bore_mm must be below.*got 7 mm"),
        (lambda: section_modulus("tube", 10.0, bore_mm=12.0), "bore_mm must be.*got 12 mm"),
    ],
)
def test_an_impossible_section_is_refused(call, words):
    with pytest.raises(OutOfRangeError, match=words):
        call()
