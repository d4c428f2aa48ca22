"""SAE J1268, Hardenability Bands for Carbon and Alloy H Steels, 1998, and ASTM A304,
hardenability limits in sixteenths of an inch: both edges of a band (from memory).

Each edge is taken as one heat: carbon nine tenths of the way to the grade's limit, manganese so
far off the middle that the factor product is higher or lower by 0.27 in its logarithm, and the
reading 1.25 HRC out, the means found for all bands. The curve was fitted to these edges among
others; a grade left out, it misses an edge by 1.8 HRC on average.
"""

import numpy as np
import pytest

from selector.metallurgy.band_curve import heat_coefficients
from selector.metallurgy.hardenability import PRESUMED_WT_PCT
from selector.metallurgy.ideal_diameter import corrected_factors

OFF_THE_MIDDLE, TOWARD_THE_LIMIT, SCATTER_HRC = 0.27, 0.9, 1.25
GRADES = {
    "1045H": (
        {"C": 0.465, "Mn": 0.75, "Si": 0.25}, 0.045,
        "1: 55-62 2: 42-59 3: 31-52 4: 28-38 5: 26-33 6: 25-32 8: 24-30 12: 21-28",
    ),
    "1541H": (
        {"C": 0.40, "Mn": 1.50, "Si": 0.25}, 0.05,
        "1: 53-60 2: 50-59 3: 44-57 4: 38-55 5: 32-52 6: 27-48 8: 23-39 10: 22-33 12: 21-32",
    ),
    "4130H": (
        {"C": 0.30, "Mn": 0.50, "Si": 0.25, "Cr": 0.975, "Mo": 0.2}, 0.03,
        "1: 49-56 2: 46-55 3: 42-53 4: 38-51 5: 34-49 6: 31-47 8: 27-42 12: 25-35 16: 23-33",
    ),
}  # fmt: skip


def hrc_of(curve, carbon, product, distance_mm):
    return curve.initial_hrc(carbon) * curve.kept(product, distance_mm)


def lines(text):
    words = text.replace(":", "").split()
    limits = [tuple(map(float, band.split("-"))) for band in words[1::2]]
    return np.array([float(j) for j in words[::2]]) * 25.4 / 16.0, *np.array(limits).T


@pytest.mark.parametrize("grade", GRADES)
@pytest.mark.parametrize("edge", ["lower", "upper"])
def test_edge_of_the_band(grade, edge):
    steel, half_c, text = GRADES[grade]
    distance_mm, low, high = lines(text)
    curve, sign = heat_coefficients(), 1.0 if edge == "upper" else -1.0
    product = curve.log_product(corrected_factors({**PRESUMED_WT_PCT, **steel}))
    carbon = np.array(steel["C"] + sign * TOWARD_THE_LIMIT * half_c)
    hrc = (
        hrc_of(curve, carbon, product + sign * OFF_THE_MIDDLE, distance_mm) + sign * SCATTER_HRC
    )
    assert np.abs(hrc - (high if sign > 0 else low)).mean() < 3.0
