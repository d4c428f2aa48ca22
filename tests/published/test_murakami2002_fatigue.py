"""Y. Murakami, Metal Fatigue: effects of small defects and nonmetallic inclusions, 2002:
rotating bending limit of 1.6 HV ± 0.1 HV up to 400 HV. From memory.
"""

import pytest

from selector.mechanics.strength import fatigue_limit
from tests.printed import agrees


@pytest.mark.parametrize("hardness_hv", [150.0, 300.0, 400.0])
def test_limit_over_hardness(hardness_hv):
    limit = fatigue_limit(hardness_hv)
    assert agrees(float(limit.limit_mpa) / hardness_hv, "1.6")
    assert agrees(float(limit.sd_mpa) / hardness_hv, "0.1")
