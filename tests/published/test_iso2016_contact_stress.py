"""ISO 6336-5:2016, Calculation of load capacity of spur and helical gears, part 5: allowable
contact stress numbers, quality MQ. From memory.
"""

import pytest

from selector.mechanics.contact import allowable_contact_mpa, rolling_contact_limit_mpa
from tests.printed import agrees


@pytest.mark.parametrize(
    ("surface", "hardness_hv", "printed"),
    [
        pytest.param("through-hardened", 200.0, "636", id="alloy, 200 HV"),
        pytest.param("through-hardened", 360.0, "846", id="alloy, 360 HV"),
        pytest.param("flame-hardened", 615.0, "1215", id="flame, 615 HV"),
        pytest.param("case-hardened", 660.0, "1500", id="case, 660 HV"),
        pytest.param("case-hardened", 800.0, "1500", id="case, 800 HV"),
    ],
)
def test_allowable_contact_stress(surface, hardness_hv, printed):
    assert agrees(float(allowable_contact_mpa(hardness_hv, surface)), printed)


@pytest.mark.parametrize(
    ("hardness_hv", "printed"),
    [
        pytest.param(200.0, "636", id="alloy, 200 HV"),
        pytest.param(360.0, "846", id="alloy, 360 HV"),
        pytest.param(500.0, "1152", id="flame, 500 HV"),
        pytest.param(615.0, "1215", id="flame, 615 HV"),
        pytest.param(720.0, "1500", id="case, 720 HV"),
    ],
)
def test_whatever_the_surface_the_limit_is_that_of_its_hardness(hardness_hv, printed):
    assert agrees(float(rolling_contact_limit_mpa(hardness_hv)), printed, scatter=0.6)
