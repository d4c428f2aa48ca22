import numpy as np
import pytest

from selector.mechanics.blade import slot_stress_mpa, slot_torque_nm
from selector.mechanics.section import torsion_stress_mpa
from selector.mechanics.strength import strength


def test_a_blade_of_the_least_hardness_just_bears_its_test_torque():
    torque = slot_torque_nm(1.0, 5.5)
    assert float(slot_stress_mpa(torque, 1.0, 5.5)) == pytest.approx(
        float(strength(484.0).shear_yield_mpa)
    )


@pytest.mark.parametrize(("thick", "wide"), [(0.4, 2.5), (1.0, 9.0), (2.5, 14.0)])
def test_a_blade_bears_more_than_a_long_strip_would(thick, wide):
    strip = float(torsion_stress_mpa(1.0, "flat", thick, wide))
    assert 2.0 < strip / float(slot_stress_mpa(1.0, thick, wide)) < 5.0


def test_stress_goes_with_the_torque():
    stress = slot_stress_mpa(np.array([1.0, 2.0, 4.0]), 1.0, 5.5)
    assert stress[1:] == pytest.approx(2 * stress[:-1])
