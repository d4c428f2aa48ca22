"""K. W. Andrews, Empirical formulae for the calculation of some transformation temperatures,
Journal of the Iron and Steel Institute 203, 1965, 721-727 (from memory).

The linear formula 539 - 423 C - 30.4 Mn - 17.7 Ni - 12.1 Cr - 7.5 Mo: its alloy slopes are
kept.
"""

import pytest

from selector.metallurgy.transformation import martensite_start
from tests.printed import agrees


@pytest.mark.parametrize(
    ("element", "printed"),
    [
        pytest.param("Mn", "30.4", id="linear formula, Mn"),
        pytest.param("Ni", "17.7", id="linear formula, Ni"),
        pytest.param("Cr", "12.1", id="linear formula, Cr"),
        pytest.param("Mo", "7.5", id="linear formula, Mo"),
    ],
)
def test_slope_per_cent(element, printed):
    plain, alloyed = martensite_start({"C": 0.4, element: [0.0, 1.0]})
    assert agrees(float(plain - alloyed), printed)
