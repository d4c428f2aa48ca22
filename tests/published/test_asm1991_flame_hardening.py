"""ASM Handbook, vol. 4, Heat Treating, 1991, Flame Hardening: hardened depths of 0.8 to 6.4
mm.
"""

import pytest

from selector.heat.torch import heating


@pytest.mark.parametrize("diameter_mm", [20.0, 30.0, 40.0, 50.0])
@pytest.mark.parametrize("source", ["oxy-acetylene", "oxy-propane"])
def test_depth_of_a_flame_hardened_bar(source, diameter_mm):
    answer = heating(source, diameter_mm, 25.0, 850.0)
    assert answer.reachable
    assert 0.8 <= float(answer.hardened_depth_mm) <= 6.4
