"""BS 970, Part 1, 1991 (from memory): 722M24 in condition T, 850 to 1000 MPa, tempered at 570
to 700 °C. Plastic mould steel sheets of three houses, read 2026: 1.2311, 1.2312 and 1.2738
tempered at 500, 600 and 700 °C, 2 h. Steels of more chromium than the fit has; not used in it.
"""

import numpy as np
import pytest

from selector.hardness_scale import hrc_from_hv, hv_from_tensile_mpa
from selector.metallurgy.tempering import tempered_hardness
from tests.tempered_by_composition import SCATTER_HRC, miss_and_sd_hrc

EN40B = {"C": 0.24, "Si": 0.25, "Mn": 0.55, "Cr": 3.25, "Mo": 0.55}
T_MPA, T_C = (850.0, 1000.0), 650.0
MOULD = {"C": 0.40, "Si": 0.30, "Mn": 1.45, "Cr": 1.95, "Mo": 0.20}
MOULD_C, MOULD_HRC = (500, 600, 700), "42 36 28"


def test_three_per_cent_chromium_is_tempered_to_condition_t():
    low, high = hrc_from_hv(hv_from_tensile_mpa(T_MPA))
    hrc = float(tempered_hardness(EN40B, T_C, 3600.0).hrc)
    assert low - SCATTER_HRC <= hrc <= high + SCATTER_HRC


@pytest.mark.parametrize("nickel", [0.0, 1.05], ids=["1.2311", "1.2738"])
def test_mould_steel_by_composition(nickel):
    miss, sd = miss_and_sd_hrc({**MOULD, "Ni": nickel}, MOULD_C, 2.0, MOULD_HRC)
    assert np.abs(miss).mean() <= SCATTER_HRC
    assert (np.abs(miss) <= 1.645 * sd).all()
