"""Buffalo Precision Products, technical data sheets O1, A2 and S7, undated (checked 2026):
growth on hardening in inches per inch; bow, twist and geometry add to it.
"""

import pytest

from selector.hazards.distortion import size_change
from tests.printed import agrees


def test_growth_of_an_oil_hardening_steel():
    assert agrees(float(size_change("oil").growth_pct) / 100, ".0015")


@pytest.mark.parametrize("steel", ["A2", "S7"])
def test_growth_of_an_air_hardening_steel_lies_within_the_stated_error(steel):
    growth = size_change("air")
    assert agrees(float(growth.growth_pct) / 100, ".001", scatter=float(growth.sd_pct) / 100), (
        steel
    )
