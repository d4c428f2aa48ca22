"""Study on decarburization mechanism and law of GCr15 bearing steel during heat treatment,
journal abstract of about 2022 (read in 2026, authors not given there): total depth in
proportion to the square root of holding time.
"""

import pytest

from selector.hazards.decarburisation import soft_skin


@pytest.mark.parametrize("heat_c", [850.0, 950.0, 1050.0])
def test_depth_goes_with_the_root_of_holding_time(heat_c):
    depths = [float(soft_skin(heat_c, 60.0 * minutes).soft_mm) for minutes in (15, 60, 240)]
    assert depths[1] / depths[0] == pytest.approx(2.0, rel=1e-6)
    assert depths[2] / depths[1] == pytest.approx(2.0, rel=1e-6)
