"""Saarstahl, material specification sheets of 55Cr3 and 52CrMoV4, 2016 (read): tempered at 430
to 500 °C to a tensile strength, time not stated, 1 h taken; and hardness at the centre of flats
of 16 mm and rounds of 25 mm in oil. Not used in a fit.
"""

import numpy as np
import pytest

from selector.hardening.quenched_bar import quenched_bar
from selector.hardness_scale import hrc_from_hv, hv_from_tensile_mpa
from selector.metallurgy.tempering import tempered_hardness
from tests.tempered_by_composition import SCATTER_HRC

SHEETS = {
    "55Cr3": ({"C": 0.57, "Si": 0.30, "Mn": 0.85, "Cr": 0.80}, 1400.0, 1650.0),
    "52CrMoV4": (
        {"C": 0.50, "Si": 0.25, "Mn": 0.90, "Cr": 1.10, "Mo": 0.25, "V": 0.10},
        1400.0,
        1700.0,
    ),
}
TEMPERED_C, CORE_HRC, HEAT_C = (430.0, 500.0), "54", 845.0


@pytest.mark.parametrize("steel", SHEETS)
def test_tempered_to_the_strength_of_a_spring(steel):
    composition, low_mpa, high_mpa = SHEETS[steel]
    low, high = hrc_from_hv(hv_from_tensile_mpa([low_mpa, high_mpa]))
    middle = tempered_hardness(composition, np.mean(TEMPERED_C), 3600.0).hrc
    assert low - SCATTER_HRC <= middle <= high + SCATTER_HRC


@pytest.mark.parametrize("steel", SHEETS)
def test_a_round_of_25_mm_is_hard_at_its_centre(steel):
    assert quenched_bar(SHEETS[steel][0], 25.0, "oil", HEAT_C).hrc[0] >= float(CORE_HRC)
