"""ASM Handbook, Volume 1, 1990: Brinell hardness after tempering (from memory), converted by
ASTM E140. Ultrahigh-strength steels 4130, 4140 and 4340, 2 h; and the table of selected carbon
and alloy steels quenched as bars of 25 mm, averages, time not stated, 1 h taken.

None of it was used in a fit. Nominal compositions of SAE J404, fully hardened; 2.7 HRC is the
scatter between two laboratories.
"""

import numpy as np
import pytest

from tests.tempered_by_composition import SCATTER_HRC, miss_and_sd_hrc, share_inside
from tests.unexplained import marked

STRONG = {
    "4130": ({"C": 0.30, "Mn": 0.50, "Si": 0.25, "Cr": 0.95, "Mo": 0.20},
             (205, 260, 315, 370, 425, 540, 650), "49.5 48.0 45.4 43.0 40.4 34.8 27.9"),
    "4140": ({"C": 0.40, "Mn": 0.87, "Si": 0.25, "Cr": 0.95, "Mo": 0.20},
             (205, 260, 315, 370, 425, 480, 540, 595, 650, 705),
             "56.1 53.5 50.9 48.4 45.7 41.8 36.6 33.0 28.8 21.7"),
    "4340": ({"C": 0.40, "Mn": 0.70, "Si": 0.25, "Ni": 1.82, "Cr": 0.80, "Mo": 0.25},
             (205, 315, 425, 540, 650, 705), "52.6 50.6 46.7 38.8 30.5 24.5"),
}  # fmt: skip
BAR_C = (205, 315, 425, 540, 650)
BARS = {
    "1030 in water": ({"C": 0.31, "Mn": 0.75, "Si": 0.2}, "50.9 43.1 32.1 25.4"),
    "1095 in water": ({"C": 0.95, "Mn": 0.40, "Si": 0.2}, "57.3 53.5 41.8 30.9 21.7"),
    "4130 in water": (STRONG["4130"][0], "48.9 46.3 40.9 33.5 23.5"),
    "4340 in oil": (STRONG["4340"][0], "52.6 50.3 45.8 38.8 29.1"),
    "5150 in oil": ({"C": 0.50, "Mn": 0.80, "Si": 0.25, "Cr": 0.80},
                    "53.0 49.5 44.1 36.5 27.9"),
    "5160 in oil": ({"C": 0.60, "Mn": 0.87, "Si": 0.25, "Cr": 0.80},
                    "58.6 54.7 48.4 36.6 27.7"),
    "6150 in oil": ({"C": 0.50, "Mn": 0.80, "Si": 0.25, "Cr": 0.95, "V": 0.17},
                    "53.7 50.1 44.9 37.1 29.4"),
    "8630 in water": ({"C": 0.30, "Mn": 0.80, "Si": 0.25, "Ni": 0.55, "Cr": 0.50, "Mo": 0.20},
                      "48.7 45.8 40.4 32.9 22.5"),
    "8640 in oil": ({"C": 0.40, "Mn": 0.87, "Si": 0.25, "Ni": 0.55, "Cr": 0.50, "Mo": 0.20},
                    "51.6 48.4 43.0 36.5 29.1"),
    "9260 in oil": ({"C": 0.60, "Mn": 0.87, "Si": 2.00}, "57.2 53.8 49.1 42.0 31.1"),
    "4140 in oil": (STRONG["4140"][0], "51.9 47.2 39.9 29.9 20.8"),
    "5140 in oil": ({"C": 0.40, "Mn": 0.80, "Si": 0.25, "Cr": 0.80},
                    "50.6 47.6 39.3 29.1 21.7"),
}  # fmt: skip
SLACK = "Softer than its own 2 h table: a bar of 25 mm is not fully hardened in oil."
UNEXPLAINED = {
    "4140 in oil": SLACK,
    "5140 in oil": SLACK,
    "1095 in water": "57 HRC at 205 °C, where sheets of W1 have 62: 12 % of retained "
    "austenite, which no temper has turned yet, is half of that.",
}


def bar(name):
    composition, printed = BARS[name]
    return miss_and_sd_hrc(composition, BAR_C[: len(printed.split())], 1.0, printed)


@pytest.mark.parametrize("steel", STRONG)
def test_ultrahigh_strength_steel(steel):
    composition, temperature_c, printed = STRONG[steel]
    miss, _ = miss_and_sd_hrc(composition, temperature_c, 2.0, printed)
    assert np.abs(miss).mean() <= SCATTER_HRC


@pytest.mark.parametrize(
    "name",
    marked(BARS, UNEXPLAINED),
)
def test_bar_of_25_mm(name):
    miss, _ = bar(name)
    assert np.abs(miss).mean() <= SCATTER_HRC


def test_interval_holds_ultrahigh_strength_steel():
    pairs = [miss_and_sd_hrc(c, at, 2.0, printed) for c, at, printed in STRONG.values()]
    assert share_inside(pairs) >= 0.85


def test_interval_holds_fully_hardened_bars():
    assert share_inside([bar(name) for name in BARS if name not in UNEXPLAINED]) >= 0.85
