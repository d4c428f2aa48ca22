"""SAE J1268, Hardenability bands for carbon and alloy H steels, 1995: diameters of rounds
with the same as-quenched hardness, printed on each band chart; mild agitation. From memory.
"""

import pytest

from selector.heat.bar_equivalent import jominy_distance_mm
from tests.printed import agrees

SIXTEENTH_MM, INCH_MM = 25.4 / 16, 25.4
MILD_WATER, MILD_OIL = 1.05, 0.32  # middle of the published severity bands

CASES = [
    ("water surface 3.8 in", MILD_WATER, 1.0, 3.8, "2"),
    ("water three-quarter radius 1.1 in", MILD_WATER, 0.75, 1.1, "2"),
    ("water three-quarter radius 2.9 in", MILD_WATER, 0.75, 2.9, "6"),
    ("water three-quarter radius 5.8 in", MILD_WATER, 0.75, 5.8, "12"),
    ("water centre 0.7 in", MILD_WATER, 0.0, 0.7, "2"),
    ("water centre 2.0 in", MILD_WATER, 0.0, 2.0, "8"),
    ("water centre 3.9 in", MILD_WATER, 0.0, 3.9, "18"),
    ("oil surface 1.8 in", MILD_OIL, 1.0, 1.8, "4"),
    ("oil surface 3.8 in", MILD_OIL, 1.0, 3.8, "12"),
    ("oil three-quarter radius 1.0 in", MILD_OIL, 0.75, 1.0, "4"),
    ("oil three-quarter radius 4.0 in", MILD_OIL, 0.75, 4.0, "18"),
    ("oil centre 0.6 in", MILD_OIL, 0.0, 0.6, "4"),
    ("oil centre 2.0 in", MILD_OIL, 0.0, 2.0, "12"),
    ("oil centre 3.1 in", MILD_OIL, 0.0, 3.1, "18"),
]


@pytest.mark.parametrize(
    ("severity", "position", "bar_in", "printed"),
    [c[1:] for c in CASES],
    ids=[c[0] for c in CASES],
)
def test_bar_cools_like_the_printed_jominy_distance(severity, position, bar_in, printed):
    distance = float(jominy_distance_mm(bar_in * INCH_MM, position, severity))
    assert agrees(distance / SIXTEENTH_MM, printed)
