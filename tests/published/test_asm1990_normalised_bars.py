"""ASM Handbook vol. 1, Properties and Selection: Irons, Steels, and High-Performance Alloys,
1990, mechanical properties of selected carbon and alloy steels, normalised: Brinell hardness of
rounds of 1 in (from memory; analyses those of the handbook's as-quenched bars, from memory).

A bar in still air; nothing of the air path was set on these. Grades below 20 HRC left out.
"""

import numpy as np

from selector.hardening.quenched_bar import quenched_bar
from selector.hardness_scale import hrc_from_hb

BARS = {
    "1060": ({"C": 0.60, "Mn": 0.66, "Si": 0.17}, 900.0, 229.0),
    "1080": ({"C": 0.79, "Mn": 0.76, "Si": 0.16}, 900.0, 293.0),
    "1095": ({"C": 0.96, "Mn": 0.40, "Si": 0.20}, 900.0, 293.0),
    "1340": ({"C": 0.43, "Mn": 1.77, "Si": 0.25}, 870.0, 248.0),
    "4140": (
        {"C": 0.40, "Mn": 0.83, "Si": 0.26, "Ni": 0.11, "Cr": 0.94, "Mo": 0.21}, 870.0, 302.0,
    ),
    "4150": (
        {"C": 0.50, "Mn": 0.76, "Si": 0.21, "Ni": 0.20, "Cr": 0.95, "Mo": 0.21}, 870.0, 321.0,
    ),
    "4340": (
        {"C": 0.40, "Mn": 0.68, "Si": 0.28, "Ni": 1.87, "Cr": 0.74, "Mo": 0.25}, 870.0, 363.0,
    ),
    "5140": ({"C": 0.43, "Mn": 0.78, "Si": 0.22, "Cr": 0.74}, 870.0, 229.0),
    "5150": ({"C": 0.49, "Mn": 0.75, "Si": 0.25, "Cr": 0.80}, 870.0, 255.0),
    "5160": ({"C": 0.62, "Mn": 0.84, "Si": 0.24, "Cr": 0.74}, 857.0, 269.0),
    "6150": ({"C": 0.51, "Mn": 0.80, "Si": 0.35, "Cr": 0.95, "V": 0.18}, 870.0, 269.0),
    "8650": (
        {"C": 0.48, "Mn": 0.86, "Si": 0.26, "Ni": 0.57, "Cr": 0.65, "Mo": 0.20}, 870.0, 302.0,
    ),
    "8740": (
        {"C": 0.41, "Mn": 0.90, "Si": 0.25, "Ni": 0.63, "Cr": 0.53, "Mo": 0.29}, 870.0, 269.0,
    ),
    "9255": ({"C": 0.52, "Mn": 0.75, "Si": 1.94}, 900.0, 269.0),
}  # fmt: skip


def test_bars_cooled_in_still_air():
    off = []
    for steel, heat_c, hb in BARS.values():
        bar = quenched_bar(steel, 25.4, "air", heat_c, agitation="none")
        off.append(float(bar.hrc[0]) - float(hrc_from_hb(hb, outside="extend")))
    assert np.abs(off).mean() < 3.0
    assert abs(np.mean(off)) < 1.5
