"""W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed., 2002, Tables
10.1 and 14.1. From memory.
"""

import pytest

from selector.mechanics.contact import hertz_line, hertz_point
from selector.mechanics.section import section_modulus
from tests.printed import agrees

TORSION = [
    ("round J / d4", "round", "torsion_constant_mm4", 4, "0.098175"),
    ("round T / d3", "round", "torsion_mm3", 3, "0.19635"),
    ("square J / a4", "square", "torsion_constant_mm4", 4, "0.1406"),
    ("square T / a3", "square", "torsion_mm3", 3, "0.2082"),
    ("hexagon J / s4", "hexagon", "torsion_constant_mm4", 4, "0.115"),
    ("hexagon T / s3", "hexagon", "torsion_mm3", 3, "0.188"),
    ("round plastic", "round", "torsion_plastic_mm3", 3, "0.2618"),
    ("square plastic", "square", "torsion_plastic_mm3", 3, "0.3333"),
]


@pytest.mark.parametrize(
    ("shape", "field", "power", "printed"),
    [c[1:] for c in TORSION],
    ids=[c[0] for c in TORSION],
)
def test_torsion_coefficient(shape, field, power, printed):
    assert agrees(float(getattr(section_modulus(shape, 10.0), field)) / 10**power, printed)


LOAD, YOUNG, BALL = 1000.0, 206_000.0, 20.0


def test_line_contact_on_a_flat_of_the_same_steel():
    contact = hertz_line(LOAD, BALL / 2)
    assert agrees(float(contact.pressure_mpa) / (LOAD * YOUNG / BALL) ** 0.5, "0.591")
    assert agrees(2 * float(contact.half_width_mm) / (LOAD * BALL / YOUNG) ** 0.5, "2.15")


def test_ball_on_a_flat_of_the_same_steel():
    contact = hertz_point(LOAD, BALL / 2)
    assert agrees(float(contact.pressure_mpa) / (LOAD * YOUNG**2 / BALL**2) ** (1 / 3), "0.616")
    compliance = 2 * (1 - 0.3**2) / YOUNG
    assert agrees(float(contact.half_width_mm) / (LOAD * BALL * compliance) ** (1 / 3), "0.721")
