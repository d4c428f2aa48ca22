"""R. van Leeuwen, M. Ferrell, sectionproperties: a Python package for the analysis of
arbitrary cross-sections using the finite element method, Journal of Open Source Software 9(96),
6105, 2024 (from memory). The library itself is run: its moduli are not ours.
"""

from functools import cache

import pytest

from selector.mechanics.section import section_modulus

# A mesh this fine gives the torsion constant to a part in a thousand. [mm²]
MESH_MM2 = 2.0
SHAPES = ("round", "square", "hexagon", "flat", "tube")
# Our constants are printed to three digits, and the round of the mesh is a polygon.
WITHIN = 0.01


@cache
def meshed(shape):
    # Two seconds to load, which other tests need not wait for.
    from sectionproperties.analysis import Section  # noqa: PLC0415
    from sectionproperties.pre.library import (  # noqa: PLC0415
        circular_hollow_section,
        circular_section,
        rectangular_section,
    )

    geometry = {
        "round": lambda: circular_section(d=20, n=96),
        "square": lambda: rectangular_section(d=20, b=20),
        # Six corners; 20 mm across flats.
        "hexagon": lambda: circular_section(d=20 * 2 / 3**0.5, n=6),
        "flat": lambda: rectangular_section(d=10, b=30),
        "tube": lambda: circular_hollow_section(d=20, t=5, n=96),
    }[shape]()
    section = Section(geometry.create_mesh(mesh_sizes=[MESH_MM2]))
    section.calculate_geometric_properties()
    section.calculate_plastic_properties()
    section.calculate_warping_properties()
    return section


def ours(shape):
    size, width, bore = {"flat": (10, 30, None), "tube": (20, None, 10)}.get(
        shape, (20, None, None)
    )
    return section_modulus(shape, size, width, bore)


@pytest.mark.parametrize("shape", SHAPES)
def test_torsion_constant(shape):
    assert float(ours(shape).torsion_constant_mm4) == pytest.approx(
        meshed(shape).get_j(), rel=WITHIN
    )


@pytest.mark.parametrize("shape", SHAPES)
def test_largest_shear_stress_in_torsion(shape):
    section = meshed(shape)
    stress = section.calculate_stress(mzz=1e5).get_stress()[0]["sig_zxy"].max()
    assert 1e5 / float(ours(shape).torsion_mm3) == pytest.approx(stress, rel=0.02)


@pytest.mark.parametrize("shape", SHAPES)
def test_bending_moduli_about_the_weaker_axis(shape):
    section = meshed(shape)
    elastic = min(section.get_z()[:1] + section.get_z()[2:3])
    plastic = min(section.get_s())
    assert float(ours(shape).bending_mm3) == pytest.approx(elastic, rel=WITHIN)
    assert float(ours(shape).bending_plastic_mm3) == pytest.approx(plastic, rel=WITHIN)


BORED = [("square", None, 0.7), ("hexagon", None, 0.6), ("flat", 30, 0.5)]


@cache
def bored(shape, width, share):
    from sectionproperties.analysis import Section  # noqa: PLC0415
    from sectionproperties.pre.library import (  # noqa: PLC0415
        circular_section,
        rectangular_section,
    )

    outline = (
        circular_section(d=20 * 2 / 3**0.5, n=6)
        if shape == "hexagon"
        else rectangular_section(d=20, b=width or 20).shift_section(-(width or 20) / 2, -10)
    )
    geometry = outline - circular_section(d=20 * share, n=96)
    section = Section(geometry.create_mesh(mesh_sizes=[MESH_MM2 / 2]))
    section.calculate_geometric_properties()
    section.calculate_plastic_properties()
    section.calculate_warping_properties()
    return section


@pytest.mark.parametrize(("shape", "width", "share"), BORED)
def test_bending_moduli_of_a_bored_section(shape, width, share):
    section, modulus = bored(shape, width, share), section_modulus(shape, 20, width, 20 * share)
    elastic = min(section.get_z()[:1] + section.get_z()[2:3])
    assert float(modulus.bending_mm3) == pytest.approx(elastic, rel=WITHIN)
    assert float(modulus.bending_plastic_mm3) == pytest.approx(min(section.get_s()), rel=WITHIN)


@pytest.mark.parametrize(("shape", "width", "share"), BORED)
def test_torsion_of_a_bored_section_is_on_the_safe_side(shape, width, share):
    """Our share is an estimate from below: by a tenth of the modulus at most."""
    section, modulus = bored(shape, width, share), section_modulus(shape, 20, width, 20 * share)
    stress = section.calculate_stress(mzz=1e5).get_stress()[0]["sig_zxy"].max()
    assert 0.9 < float(modulus.torsion_mm3) / (1e5 / stress) < 1.01
    assert float(modulus.torsion_constant_mm4) < 1.01 * section.get_j()
