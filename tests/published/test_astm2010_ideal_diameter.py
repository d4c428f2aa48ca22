"""ASTM A255-10, Standard test methods for determining hardenability of steel, 2010: Jominy
distance for 50 % martensite against ideal diameter. From memory. Rows that the model does not
hold itself.
"""

import math

import pytest

from selector.heat.bar_equivalent import jominy_distance_mm
from tests.printed import agrees

CASES = [  # ideal diameter in inches, Jominy distance in sixteenths
    ("DI 0.73", 0.73, "1.5"),
    ("DI 1.57", 1.57, "3.5"),
    ("DI 2.29", 2.29, "5.5"),
    ("DI 2.58", 2.58, "6.5"),
    ("DI 3.20", 3.20, "9.0"),
    ("DI 3.64", 3.64, "11.0"),
    ("DI 4.22", 4.22, "14.0"),
    ("DI 4.72", 4.72, "17.0"),
]


@pytest.mark.parametrize(
    ("ideal_in", "printed"), [c[1:] for c in CASES], ids=[c[0] for c in CASES]
)
def test_centre_of_an_ideally_quenched_bar(ideal_in, printed):
    distance = float(jominy_distance_mm(ideal_in * 25.4, 0.0, math.inf))
    assert agrees(distance / (25.4 / 16), printed)
