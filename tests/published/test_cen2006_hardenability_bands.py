"""EN 10083-2:2006 and EN 10083-3:2006, Steels for quenching and tempering, and EN 10084:2008,
Case hardening steels: hardness limits of the +H grades (from memory; 16MnCr5 and 18CrMo4
read).

Every point must lie inside the printed band at mid composition, with the elements the grade
does not limit at residual practice and with them left to be presumed.
"""

import pytest

from selector.metallurgy.hardenability import jominy_curve

RESIDUAL = {"Cr": 0.1, "Ni": 0.1, "Mo": 0.02, "Cu": 0.2}
STEELS = {
    "C45E": {"C": 0.46, "Mn": 0.65, "Si": 0.25},
    "C60E": {"C": 0.61, "Mn": 0.75, "Si": 0.25},
    "41Cr4": {"C": 0.415, "Mn": 0.75, "Si": 0.25, "Cr": 1.05},
    "42CrMo4": {"C": 0.415, "Mn": 0.75, "Si": 0.25, "Cr": 1.05, "Mo": 0.225},
    "34CrNiMo6": {"C": 0.34, "Mn": 0.65, "Si": 0.25, "Ni": 1.5, "Cr": 1.5, "Mo": 0.225},
    "51CrV4": {"C": 0.51, "Mn": 0.90, "Si": 0.25, "Cr": 1.05, "V": 0.175},
    "16MnCr5": {"C": 0.165, "Mn": 1.15, "Si": 0.25, "Cr": 0.95},
    "18CrMo4": {"C": 0.18, "Mn": 0.75, "Si": 0.25, "Cr": 1.05, "Mo": 0.2},
}
BANDS = [
    ("C45E", 1, "55", "62"), ("C45E", 5, "28", "57"), ("C45E", 15, "20", "30"),
    ("C60E", 2, "57", "66"), ("C60E", 20, "25", "33"), ("41Cr4", 7, "47", "59"),
    ("41Cr4", 30, "23", "40"), ("42CrMo4", 1.5, "53", "61"), ("42CrMo4", 15, "37", "58"),
    ("42CrMo4", 50, "29", "45"), ("34CrNiMo6", 1.5, "50", "58"), ("34CrNiMo6", 50, "44", "57"),
    ("51CrV4", 15, "48", "62"), ("51CrV4", 50, "32", "58"), ("16MnCr5", 1.5, "39", "47"),
    ("16MnCr5", 9, "24", "39"), ("18CrMo4", 5, "34", "45"), ("18CrMo4", 15, "21", "34"),
]  # fmt: skip


@pytest.mark.parametrize("others", [RESIDUAL, {}], ids=["residuals named", "presumed"])
@pytest.mark.parametrize(
    ("grade", "distance_mm", "low", "high"),
    [pytest.param(*row, id=f"{row[0]}+H J{row[1]} mm") for row in BANDS],
)
def test_inside_the_band(grade, distance_mm, low, high, others):
    curve = jominy_curve(others | STEELS[grade], distance_mm)
    assert float(low) <= float(curve.hrc) <= float(high)
