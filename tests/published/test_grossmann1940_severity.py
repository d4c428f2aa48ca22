"""Metals Handbook, ASM: severity of quench H by agitation, after M. A. Grossmann and M.
Asimow, Hardenability and quenching, Iron Age, 1940. From memory.
"""

import pytest

from catalog import load_catalog
from tests.printed import agrees

CASES = [
    ("oil", "none", "0.25", "0.30"),
    ("oil", "moderate", "0.35", "0.40"),
    ("oil", "violent", "0.80", "1.10"),
    ("water", "none", "0.90", "1.00"),
    ("water", "strong", "1.60", "2.00"),
    ("water", "violent", "4.00", "4.00"),
    ("brine", "none", "2.00", "2.00"),
    ("brine", "violent", "5.00", "5.00"),
]


@pytest.mark.parametrize(
    ("medium", "agitation", "low", "high"), CASES, ids=[f"{c[0]} {c[1]}" for c in CASES]
)
def test_severity_band(medium, agitation, low, high):
    band = load_catalog().media[medium].severity_per_in[agitation]
    assert agrees(band.low, low)
    assert agrees(band.high, high)


def test_still_air_begins_at_the_printed_value():
    assert agrees(load_catalog().media["air"].severity_per_in["none"].low, "0.02")
