"""R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., 2011: Table
7-1 (stress concentration for shafts, after Peterson), Table A-16 (round bar with a transverse
hole), section 6-7 (endurance limit), Example 6-3. From memory.
"""

import pytest

from selector.mechanics.net_section import hole_share
from selector.mechanics.notch import cross_hole_factor, fillet_factor, keyway_factor
from selector.mechanics.strength import fatigue_limit, strength, surface_factor
from tests.printed import agrees


@pytest.mark.parametrize(
    ("load", "step", "radius", "printed"),
    [
        pytest.param("bending", 1.5, 0.1, "1.7", id="Table 7-1 well-rounded, bending, D/d 1.5"),
        pytest.param("torsion", 1.5, 0.1, "1.5", id="Table 7-1 well-rounded, torsion, D/d 1.5"),
        pytest.param("torsion", 2.0, 0.02, "2.2", id="Table 7-1 sharp, torsion, D/d 2"),
    ],
)
def test_shoulder_fillet(load, step, radius, printed):
    assert agrees(float(fillet_factor(load, 1.0, step, radius)), printed)


@pytest.mark.parametrize(
    ("load", "printed"),
    [("bending", "2.14"), ("torsion", "3.0")],
    ids=["Table 7-1 end-mill keyseat, bending", "Table 7-1 end-mill keyseat, torsion"],
)
def test_keyway(load, printed):
    assert agrees(keyway_factor(load), printed)


HOLES = [  # rows the model does not hold itself: hole/bar, section left, K on it
    ("bending", 0.075, 0.89, "2.55"),
    ("bending", 0.125, 0.82, "2.41"),
    ("bending", 0.175, 0.76, "2.38"),
    ("torsion", 0.075, 0.93, "1.71"),
    ("torsion", 0.125, 0.89, "1.64"),
    ("torsion", 0.175, 0.85, "1.60"),
]


@pytest.mark.parametrize(
    ("load", "ratio", "area", "printed"),
    HOLES,
    ids=[f"Table A-16 {h[0]} {h[1]}" for h in HOLES],
)
def test_transverse_hole(load, ratio, area, printed):
    whole = float(cross_hole_factor(load, ratio, 1.0))
    rounding = 0.005 * whole + 0.005  # half a digit of the area and of K
    assert agrees(whole * area, printed, scatter=rounding)


LEFT = [("bending", 0.05, 0.92), ("bending", 0.10, 0.86), ("bending", 0.20, 0.73),
        ("torsion", 0.05, 0.95), ("torsion", 0.10, 0.92), ("torsion", 0.20, 0.83)]  # fmt: skip


@pytest.mark.parametrize(
    ("load", "ratio", "printed"), LEFT, ids=[f"Table A-16, A in {h[0]} {h[1]}" for h in LEFT]
)
def test_section_left_beside_a_hole_is_the_printed_one_or_less(load, ratio, printed):
    """Ours is of a bar that yields throughout; in torsion an estimate on the safe side."""
    computed = getattr(hole_share(ratio, "round", 1.0), load)
    safe = 0.95 if load == "bending" else 0.84
    assert safe * printed < computed <= printed + 0.006


@pytest.mark.parametrize("hardness_hv", [200.0, 300.0, 400.0])
def test_endurance_limit_over_tensile_strength(hardness_hv):
    ratio = fatigue_limit(hardness_hv).limit_mpa / strength(hardness_hv).tensile_mpa
    assert agrees(float(ratio), "0.5")


def test_example_6_3_machined_surface():
    assert agrees(float(surface_factor("machined", 520.0)), "0.860")
