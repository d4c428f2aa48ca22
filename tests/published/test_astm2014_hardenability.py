"""ASTM A255-10 (reapproved 2014), Standard Test Methods for Determining Hardenability of
Steel.

Worked example "SAE 4118 modified", 0.22 C, 0.80 Mn, 0.18 Si, 0.10 Ni, 0.43 Cr, 0.25 Mo, 0.10
Cu, 0.05 V, grain size 7; and the table of initial hardness by carbon (from memory).
"""

import pytest

from selector.metallurgy.ideal_diameter import ideal_diameter, multiplying_factors
from selector.metallurgy.martensite import hardness
from tests.printed import agrees

SAE_4118_MODIFIED = {
    "C": 0.22,
    "Mn": 0.80,
    "Si": 0.18,
    "Ni": 0.10,
    "Cr": 0.43,
    "Mo": 0.25,
    "Cu": 0.10,
    "V": 0.05,
}


@pytest.mark.parametrize(
    ("element", "printed"),
    [
        pytest.param("C", "0.119", id="example row C"),
        pytest.param("Mn", "3.667", id="example row Mn"),
        pytest.param("Si", "1.126", id="example row Si"),
        pytest.param("Ni", "1.036", id="example row Ni"),
        pytest.param("Cr", "1.929", id="example row Cr"),
        pytest.param("Mo", "1.75", id="example row Mo"),
        pytest.param("Cu", "1.04", id="example row Cu"),
        pytest.param("V", "1.09", id="example row V"),
    ],
)
def test_factor(element, printed):
    assert agrees(float(multiplying_factors(SAE_4118_MODIFIED)[element]), printed)


def test_ideal_diameter():
    """The standard multiplies rounded factors; unrounded ones give 0.018 in less."""
    assert agrees(float(ideal_diameter(SAE_4118_MODIFIED)) / 25.4, "1.95", scatter=0.02)


@pytest.mark.parametrize(
    ("carbon", "martensite", "printed"),
    [
        pytest.param(0.36, 1.0, "54", id="initial hardness 0.36 C"),
        pytest.param(0.40, 1.0, "56", id="initial hardness 0.40 C"),
        pytest.param(0.45, 1.0, "59", id="initial hardness 0.45 C"),
        pytest.param(0.50, 1.0, "61", id="initial hardness 0.50 C"),
        pytest.param(0.60, 1.0, "64", id="initial hardness 0.60 C"),
        pytest.param(0.69, 1.0, "65", id="initial hardness 0.69 C"),
        pytest.param(
            0.38,
            0.5,
            "42",
            id="half martensite 0.38 C",
            marks=pytest.mark.xfail(
                strict=True,
                reason="the standard rounds 41.5 up, Hodge and Orehoski have 41.4",
            ),
        ),
        pytest.param(0.50, 0.5, "47", id="half martensite 0.50 C"),
    ],
)
def test_hardness_by_carbon(carbon, martensite, printed):
    assert agrees(float(hardness(carbon, martensite)), printed)
