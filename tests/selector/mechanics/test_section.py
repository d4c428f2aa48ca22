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
        (lambda: section_modulus("tube", 10.0, bore_mm=12.0), "bore_mm must be.*got 12 mm"),
    ],
)
def test_an_impossible_section_is_refused(call, words):
    with pytest.raises(OutOfRangeError, match=words):
        call()
