"""ASM Handbook, vol. 4, Heat Treating, 1991, Flame Hardening: response of steels to flame
hardening, typical hardness with a water quench (from memory).

Compositions are the middle of the grades named. The skin under a spray cools like the
end-quench bar 1.6 mm from its end. Nothing was fitted to these.
"""

import numpy as np
import pytest

from selector.metallurgy.hardenability import heat_hardness

TABLE = {
    "1025 to 1035": ({"C": 0.30, "Mn": 0.75}, (33, 50)),
    "1040 to 1050": ({"C": 0.45, "Mn": 0.75}, (55, 60)),
    "1055 to 1075": ({"C": 0.65, "Mn": 0.75}, (60, 63)),
    "1125 to 1137": ({"C": 0.31, "Mn": 1.50}, (45, 55)),
    "1138 to 1144": ({"C": 0.41, "Mn": 1.50}, (55, 62)),
    "1146 to 1151": ({"C": 0.48, "Mn": 0.85}, (58, 64)),
    "1340 to 1345": ({"C": 0.425, "Mn": 1.75}, (55, 62)),
    "3140 to 3145": ({"C": 0.425, "Mn": 0.80, "Ni": 1.25, "Cr": 0.65}, (60, 64)),
    "4130 to 4135": ({"C": 0.325, "Mn": 0.60, "Cr": 0.95, "Mo": 0.20}, (55, 60)),
    "4140 to 4145": ({"C": 0.425, "Mn": 0.875, "Cr": 0.95, "Mo": 0.20}, (55, 60)),
    "4147 to 4150": ({"C": 0.485, "Mn": 0.875, "Cr": 0.95, "Mo": 0.20}, (62, 65)),
    "4337 to 4340": ({"C": 0.40, "Mn": 0.70, "Ni": 1.8, "Cr": 0.80, "Mo": 0.25}, (60, 63)),
    "4640": ({"C": 0.40, "Mn": 0.70, "Ni": 1.8, "Mo": 0.25}, (60, 63)),
    "6150": ({"C": 0.50, "Mn": 0.80, "Cr": 0.95, "V": 0.15}, (55, 60)),
    "8630 to 8640": ({"C": 0.355, "Mn": 0.875, "Ni": 0.55, "Cr": 0.5, "Mo": 0.2}, (58, 62)),
    "8642 to 8660": ({"C": 0.50, "Mn": 0.875, "Ni": 0.55, "Cr": 0.5, "Mo": 0.2}, (62, 64)),
}
SKIN_MM = 1.6


def off_hrc():
    """Return hardness less the middle of the range, grade by grade."""
    return [
        float(heat_hardness(steel, SKIN_MM)) - 0.5 * (low + high)
        for steel, (low, high) in TABLE.values()
    ]


def test_surfaces_lean_neither_way():
    assert abs(np.mean(off_hrc())) < 1.0


@pytest.mark.xfail(
    strict=True,
    reason="the table has 0.4 % carbon with nickel 60 to 63 HRC, above what such martensite "
    "is, and 6150 under 4150: ranges of practice, not of carbon",
)
def test_surfaces_are_within_2_5_hrc_on_average():
    assert np.abs(off_hrc()).mean() < 2.5
