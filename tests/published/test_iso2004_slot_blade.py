"""ISO 2380-1:2004, Assembly tools for screws and nuts, Screwdrivers for slotted-head screws,
Part 1: Tips, table of nominal sizes and test torques (from memory)."""

import pytest

from selector.mechanics.blade import slot_torque_nm
from tests.printed import agrees

# Thickness and width in mm, test torque in N m.
ROWS = [
    pytest.param(0.4, 2.5, "0.4", id="0.4 x 2.5"),
    pytest.param(0.6, 3.5, "1.3", id="0.6 x 3.5"),
    pytest.param(0.8, 4.0, "2.6", id="0.8 x 4"),
    pytest.param(1.0, 5.5, "5.5", id="1 x 5.5"),
    pytest.param(1.2, 6.5, "9.4", id="1.2 x 6.5"),
    pytest.param(1.2, 8.0, "11.5", id="1.2 x 8"),
    pytest.param(1.6, 8.0, "20.5", id="1.6 x 8"),
    pytest.param(1.6, 10.0, "25.6", id="1.6 x 10"),
    pytest.param(2.0, 12.0, "48", id="2 x 12"),
    pytest.param(2.5, 14.0, "87.5", id="2.5 x 14"),
]


@pytest.mark.parametrize(("thick", "wide", "torque"), ROWS)
def test_torque_of_a_size(thick, wide, torque):
    assert agrees(float(slot_torque_nm(thick, wide)), torque)
