"""EN 10089, Hot-rolled steels for quenched and tempered springs, 2002, table of reference test
pieces of 10 mm (from memory): tensile strength after quenching in oil and the temper named, of
which the time is not said, 1 h taken. Compositions are the middle of the grades.

None of it was used in a fit.
"""

import numpy as np
import pytest

from selector.hardness_scale import hrc_from_hv, hv_from_tensile_mpa
from selector.metallurgy.tempering import tempered_hardness

# Contents in wt %, °C, MPa from and to.
PRINTED = {
    "38Si7": ({"C": 0.385, "Si": 1.65, "Mn": 0.65}, 450, "1300 1600"),
    "46Si7": ({"C": 0.46, "Si": 1.75, "Mn": 0.65}, 450, "1400 1700"),
    "56Si7": ({"C": 0.56, "Si": 1.80, "Mn": 0.85}, 450, "1450 1750"),
    "55Cr3": ({"C": 0.555, "Si": 0.3, "Mn": 0.85, "Cr": 0.85}, 400, "1400 1700"),
    "60Cr3": ({"C": 0.60, "Si": 0.3, "Mn": 0.85, "Cr": 0.85}, 400, "1450 1750"),
    "54SiCr6": ({"C": 0.55, "Si": 1.4, "Mn": 0.65, "Cr": 0.65}, 450, "1450 1750"),
    "61SiCr7": ({"C": 0.61, "Si": 1.8, "Mn": 0.85, "Cr": 0.325}, 450, "1550 1850"),
    "51CrV4": ({"C": 0.51, "Si": 0.25, "Mn": 0.9, "Cr": 1.05, "V": 0.175}, 450, "1400 1700"),
    "45SiCrV6-2": (
        {"C": 0.445, "Si": 1.65, "Mn": 0.75, "Cr": 0.65, "V": 0.15},
        400,
        "1550 1850",
    ),
    "54SiCrV6": ({"C": 0.55, "Si": 1.5, "Mn": 0.7, "Cr": 0.65, "V": 0.15}, 400, "1600 1900"),
    "60CrMo3-1": ({"C": 0.6, "Si": 0.25, "Mn": 0.85, "Cr": 0.85, "Mo": 0.09}, 450, "1450 1750"),
    "52CrMoV4": (
        {"C": 0.52, "Si": 0.25, "Mn": 0.9, "Cr": 1.05, "Mo": 0.225, "V": 0.15},
        450,
        "1450 1750",
    ),
}


def forecast_and_limits(steel):
    """Return the hardness forecast, its error, and the printed strengths as hardness."""
    composition, temper_c, printed = PRINTED[steel]
    strengths_mpa = [float(text) for text in printed.split()]
    limits = hrc_from_hv(hv_from_tensile_mpa(strengths_mpa))
    found = tempered_hardness(composition, float(temper_c), 3600.0)
    return float(found.hrc), float(found.sd_hrc), limits


@pytest.mark.parametrize("steel", PRINTED)
def test_a_test_piece_is_as_strong_as_the_standard_asks(steel):
    hrc, _, (low, high) = forecast_and_limits(steel)
    assert low <= hrc <= high


def test_the_middle_of_each_lies_in_nine_tenths_of_the_forecast():
    for steel in PRINTED:
        hrc, sd, limits = forecast_and_limits(steel)
        assert abs(hrc - np.mean(limits)) <= 1.645 * sd, steel
