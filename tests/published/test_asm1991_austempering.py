"""ASM Handbook vol. 4, Heat Treating, 1991, Austempering of Steel (from memory): 1095
rod, 1050 and 5160 parts. The range one page gives for 1045 to 1095 and 4130 to 6150 over
230 to 400 °C was read.
"""

import pytest

from selector.metallurgy.bainite import austempered_hardness
from tests.printed import agrees


@pytest.mark.parametrize(
    ("carbon", "salt_c", "printed", "scatter"),
    [
        pytest.param(0.95, 316.0, "52.0", 2.0, id="1095 rod, austempered"),
        pytest.param(0.95, 316.0, "53.6", 2.0, id="1095 rod, austempered, second lot"),
        pytest.param(0.50, 343.0, "44", 3.0, id="1050, 41 to 47 HRC"),
        pytest.param(0.60, 343.0, "47", 3.0, id="5160, 46 to 48 HRC"),
    ],
)
def test_hardness_of_austempered_parts(carbon, salt_c, printed, scatter):
    assert agrees(float(austempered_hardness(carbon, salt_c)), printed, scatter)


@pytest.mark.parametrize("carbon", [0.45, 0.60, 0.95])
def test_lies_in_the_range_of_the_trade_but_for_the_coolest_salt(carbon):
    assert 36.0 <= float(austempered_hardness(carbon, 400.0)) <= 52.0
    assert 38.0 <= float(austempered_hardness(carbon, 320.0)) <= 54.0
