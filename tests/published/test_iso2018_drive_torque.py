"""ISO 3315:2018, Driving parts for hand-operated square drive socket wrenches: driving
squares of at least 39 HRC (clause 5), minimum test torques (Table 1, torques from memory), on
the male squares of ISO 1174-1.
"""

import pytest

from selector.hardness_scale import hv_from_hrc
from selector.mechanics.section import section_modulus
from selector.mechanics.strength import strength

SQUARES = [(6.3, 6.35, 62.0), (10, 9.53, 202.0), (12.5, 12.7, 512.0), (20, 19.05, 1412.0)]


@pytest.mark.parametrize(
    ("flats_mm", "torque_nm"),
    [s[1:] for s in SQUARES],
    ids=[f"Table 1, {s[0]}" for s in SQUARES],
)
def test_a_square_of_39_hrc_reaches_its_test_torque_only_when_fully_plastic(
    flats_mm, torque_nm
):
    modulus = section_modulus("square", flats_mm)
    bearing = strength(hv_from_hrc(39.0))
    scatter = float(bearing.sd_tensile_mpa / bearing.tensile_mpa)
    first_yield = float(bearing.shear_yield_mpa * modulus.torsion_mm3) * 1e-3
    ultimate = float(bearing.shear_ultimate_mpa * modulus.torsion_plastic_mm3) * 1e-3
    assert first_yield < torque_nm <= ultimate * (1 + scatter)
