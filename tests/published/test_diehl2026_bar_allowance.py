"""Diehl Steel (distributor of tool steels), minimum allowances for machining before heat
treatment, hot-rolled squares and flats, sheet read in 2026; the positions of the rows are
inferred.
"""

import pytest

from selector.hazards.decarburisation import bar_allowance_mm
from tests.printed import agrees

# Thickness in mm inside each block, and inches printed.
BLOCKS = [
    (10.0, "0.025", "to 1/2 in"),
    (20.0, "0.045", "1/2 to 1 in"),
    (40.0, "0.065", "1 to 2 in"),
    (60.0, "0.085", "2 to 3 in"),
    (90.0, "0.115", "3 to 4 in"),
    (120.0, "0.150", "4 to 5 in"),
]


@pytest.mark.parametrize(
    ("thickness_mm", "printed"), [b[:2] for b in BLOCKS], ids=[f"row A, {b[2]}" for b in BLOCKS]
)
def test_allowance_a_side(thickness_mm, printed):
    assert agrees(float(bar_allowance_mm(thickness_mm)) / 25.4, printed)
