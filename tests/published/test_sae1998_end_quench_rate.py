"""SAE J406, Methods of determining hardenability of steels, 1998: cooling rate at 1300 °F by
position on the end-quench bar. From memory.
"""

import math

import pytest

from selector.heat.bar_equivalent import cooling_time_700_500_s
from tests.printed import agrees


@pytest.mark.parametrize(
    ("sixteenths", "printed"),
    [(1, "490"), (4, "125"), (8, "33"), (12, "16.3"), (16, "10.0")],
    ids=lambda value: f"{value}",
)
def test_cooling_rate_behind_the_time(sixteenths, printed):
    time = float(cooling_time_700_500_s(sixteenths * 25.4 / 16))
    rate_c_per_s = (704 - 20) * math.log((700 - 20) / (500 - 20)) / time
    assert agrees(rate_c_per_s * 1.8, printed)
