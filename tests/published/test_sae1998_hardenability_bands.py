"""SAE J1268, Hardenability Bands for Carbon and Alloy H Steels, 1998, and ASTM A304,
hardenability limits in sixteenths of an inch (from memory).

Every point must lie inside the printed band at mid composition; elements the grade does not
limit are at residual practice.
"""

import pytest

from selector.metallurgy.hardenability import jominy_curve

RESIDUAL = {"Cr": 0.1, "Ni": 0.1, "Mo": 0.02, "Cu": 0.2}
STEELS = {
    "4130H": {"C": 0.30, "Mn": 0.50, "Si": 0.25, "Cr": 0.975, "Mo": 0.2},
    "4140H": {"C": 0.405, "Mn": 0.875, "Si": 0.25, "Cr": 0.975, "Mo": 0.2},
    "4340H": {"C": 0.405, "Mn": 0.725, "Si": 0.25, "Ni": 1.775, "Cr": 0.8, "Mo": 0.25},
    "5140H": {"C": 0.405, "Mn": 0.80, "Si": 0.25, "Cr": 0.8},
    "5160H": {"C": 0.60, "Mn": 0.875, "Si": 0.25, "Cr": 0.8},
    "8620H": {"C": 0.20, "Mn": 0.775, "Si": 0.25, "Ni": 0.55, "Cr": 0.5, "Mo": 0.2},
    "9310H": {"C": 0.10, "Mn": 0.55, "Si": 0.25, "Ni": 3.25, "Cr": 1.225, "Mo": 0.115},
}
BANDS = [
    ("4130H", 1, "49", "56"), ("4130H", 8, "27", "42"), ("4130H", 16, "23", "33"),
    ("4140H", 1, "53", "60"), ("4140H", 8, "47", "57"), ("4140H", 16, "35", "53"),
    ("4140H", 32, "30", "44"), ("4340H", 1, "53", "60"), ("4340H", 16, "48", "58"),
    ("4340H", 32, "40", "56"), ("5140H", 4, "48", "57"), ("5140H", 12, "28", "43"),
    ("5160H", 8, "47", "63"), ("5160H", 20, "32", "47"), ("8620H", 1, "41", "48"),
    ("8620H", 5, "23", "37"), ("9310H", 4, "34", "42"), ("9310H", 24, "25", "34"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("grade", "sixteenths", "low", "high"),
    [pytest.param(*row, id=f"{row[0]} J{row[1]}") for row in BANDS],
)
def test_inside_the_band(grade, sixteenths, low, high):
    curve = jominy_curve(RESIDUAL | STEELS[grade], sixteenths * 25.4 / 16.0)
    assert float(low) <= float(curve.hrc) <= float(high)
