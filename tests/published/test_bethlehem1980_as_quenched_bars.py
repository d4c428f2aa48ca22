"""Bethlehem Steel, Modern Steels and Their Properties, 7th ed. (Handbook 3310), 1980:
as-quenched hardness of rounds of 1/2, 1, 2 and 4 inches at surface, half radius and centre, one
heat of each grade, motion of the bath unstated. From memory.

Each heat is given as listed, with nothing added for residual elements. A steel is compared by
the mean error over its bars; the goal is 3 HRC over all. Readings below 20 HRC are left out.
Both rims, the level in water, the softer core of pearlite and its hardness above 0.7 % C were
read off these bars; the end-quench curve of a heat was fitted to hardenability bands alone.
Each grade left out in turn while level and rims are set, they are missed by 2.6 HRC, as when
it is not. `HELD_OUT`, case-hardening steels without their case, was recalled when the rules
stood and missed by 3.03 HRC then; nothing has been set on it, and it is missed by 2.94 now.
"""

import numpy as np
import pytest

from selector.hardening.quenched_bar import quenched_bar
from tests.measured_bar import quenched_hrc

INCHES = (0.5, 1.0, 2.0, 4.0)
NAN = float("nan")

# Surface, half radius, centre for each diameter.
ALLOY = {
    "4130 water": (
        {"C": 0.30, "Mn": 0.48, "Si": 0.20, "Cr": 0.91, "Mo": 0.20}, "water", 855.0,
        ((51, 50, 50), (51, 50, 44), (47, 32, 31), (45.5, 25.5, 24.5)),
    ),
    "8630 water": (
        {"C": 0.30, "Mn": 0.80, "Si": 0.29, "Ni": 0.54, "Cr": 0.47, "Mo": 0.20}, "water", 845.0,
        ((52, 50, 47), (52, 48, 43), (51, 31, 30), (47, 25, 22)),
    ),
    "4140 oil": (
        {"C": 0.40, "Mn": 0.83, "Si": 0.26, "Ni": 0.11, "Cr": 0.94, "Mo": 0.21}, "oil", 845.0,
        ((57, 56, 55), (55, 55, 50), (49, 43, 38), (36, 34.5, 34)),
    ),
    "4150 oil": (
        {"C": 0.50, "Mn": 0.76, "Si": 0.21, "Ni": 0.20, "Cr": 0.95, "Mo": 0.21}, "oil", 830.0,
        ((64, 64, 63), (62, 62, 62), (58, 57, 56), (47, 43, 42)),
    ),
    "4340 oil": (
        {"C": 0.40, "Mn": 0.68, "Si": 0.28, "Ni": 1.87, "Cr": 0.74, "Mo": 0.25}, "oil", 800.0,
        ((58, 58, 56), (57, 57, 56), (56, 55, 54), (53, 49, 47)),
    ),
    "5140 oil": (
        {"C": 0.43, "Mn": 0.78, "Si": 0.22, "Cr": 0.74}, "oil", 845.0,
        ((57, 57, 56), (53, 48, 45), (46, 38, 35), (35, 29, 20)),
    ),
    "5150 oil": (
        {"C": 0.49, "Mn": 0.75, "Si": 0.25, "Cr": 0.80}, "oil", 830.0,
        ((60, 60, 59), (59, 52, 50), (55, 44, 40), (37, 31, 29)),
    ),
    "5160 oil": (
        {"C": 0.62, "Mn": 0.84, "Si": 0.24, "Cr": 0.74}, "oil", 830.0,
        ((63, 62, 62), (62, 61, 60), (53, 46, 43), (40, 32, 29)),
    ),
    "6150 oil": (
        {"C": 0.51, "Mn": 0.80, "Si": 0.35, "Cr": 0.95, "V": 0.18}, "oil", 845.0,
        ((61, 60, 60), (60, 58, 57), (54, 47, 44), (42, 36, 35)),
    ),
    "8650 oil": (
        {"C": 0.48, "Mn": 0.86, "Si": 0.26, "Ni": 0.57, "Cr": 0.65, "Mo": 0.20}, "oil", 800.0,
        ((61, 61, 61), (58, 58, 57), (53, 53, 52), (42, 39, 38)),
    ),
    "8740 oil": (
        {"C": 0.41, "Mn": 0.90, "Si": 0.25, "Ni": 0.63, "Cr": 0.53, "Mo": 0.29}, "oil", 830.0,
        ((57, 56, 55), (56, 55, 54), (52, 49, 45), (42, 37, 36)),
    ),
    "9255 oil": (
        {"C": 0.52, "Mn": 0.75, "Si": 1.94}, "oil", 885.0,
        ((61, 60, 59), (57, 55, 50), (42, 36, 34), (36, 31, 29)),
    ),
    "1340 oil": (
        {"C": 0.43, "Mn": 1.77, "Si": 0.25}, "oil", 830.0,
        ((58, 57, 57), (57, 56, 50), (39, 34, 32), (32, 30, 26)),
    ),
}  # fmt: skip
PLAIN = {
    "1137 water": (
        {"C": 0.37, "Mn": 1.40, "Si": 0.17, "S": 0.12}, "water", 845.0,
        ((57, 53, 50), (56, 50, 45), (52, 35, 24), (48, 23, 20)),
    ),
    "1141 oil": (
        {"C": 0.39, "Mn": 1.58, "Si": 0.19, "S": 0.10}, "oil", 830.0,
        ((52, 49, 46), (48, 43, 38), (36, 28, 22), (27, 22, NAN)),
    ),
    "1040 oil": (
        {"C": 0.39, "Mn": 0.71, "Si": 0.15}, "oil", 845.0,
        ((28, 22, 21), (23, 21, NAN)),
    ),
    "1050 water": (
        {"C": 0.54, "Mn": 0.69, "Si": 0.19}, "water", 830.0,
        ((64, 59, 57), (60, 35, 33), (50, 32, 26), (33, 27, 20)),
    ),
    "1060 oil": (
        {"C": 0.60, "Mn": 0.66, "Si": 0.17}, "oil", 845.0,
        ((59, 37, 35), (34, 32, 30), (30.5, 27.5, 25), (29, 26, 24)),
    ),
    "1080 oil": (
        {"C": 0.79, "Mn": 0.76, "Si": 0.16}, "oil", 815.0,
        ((60, 43, 40), (45, 42, 39), (43, 40, 37), (39, 37, 32)),
    ),
    "1095 oil": (
        {"C": 0.96, "Mn": 0.40, "Si": 0.20}, "oil", 800.0,
        ((60, 44, 41), (46, 42, 40), (43, 40, 37), (40, 37, 30)),
    ),
    "1095 water": (
        {"C": 0.96, "Mn": 0.40, "Si": 0.20}, "water", 800.0,
        ((65, 55, 48), (64, 46, 44), (63, 43, 40), (63, 38, 30)),
    ),
    "1020 water": (
        {"C": 0.19, "Mn": 0.48, "Si": 0.18}, "water", 915.0,
        ((40.5, 30, 28), (29.5, NAN, NAN)),
    ),
    "1022 water": (
        {"C": 0.22, "Mn": 0.82, "Si": 0.17}, "water", 915.0,
        ((45, 29, 27), (41, NAN, NAN), (38, NAN, NAN), (34, NAN, NAN)),
    ),
    "1118 water": (
        {"C": 0.20, "Mn": 1.34, "Si": 0.09, "S": 0.08}, "water", 915.0,
        ((43, 36, 33), (36, NAN, NAN), (34, NAN, NAN), (32, NAN, NAN)),
    ),
    "1030 water": (
        {"C": 0.31, "Mn": 0.65, "Si": 0.14}, "water", 870.0,
        ((50, 50, 23), (46, 23, 21), (30, NAN, NAN)),
    ),
    "1040 water": (
        {"C": 0.39, "Mn": 0.71, "Si": 0.15}, "water", 845.0,
        ((54, 53, 53), (50, 22, NAN), (50, NAN, NAN)),
    ),
    "1050 oil": (
        {"C": 0.54, "Mn": 0.69, "Si": 0.19}, "oil", 845.0,
        ((57, 37, 34), (33, 30, 26), (27, 25, 21)),
    ),
    "1137 oil": (
        {"C": 0.37, "Mn": 1.40, "Si": 0.17, "S": 0.12}, "oil", 855.0,
        ((48, 43, 42), (34, 28, 23), (28, 22, NAN), (21, NAN, NAN)),
    ),
    "1144 oil": (
        {"C": 0.46, "Mn": 1.37, "Si": 0.05, "S": 0.24}, "oil", 845.0,
        ((39, 32, 28), (36, 29, 24), (30, 27, 22), (27, NAN, NAN)),
    ),
}  # fmt: skip
# Quenched from the heat of carburising; the heat of the listing is not remembered.
HELD_OUT = {
    "8620 oil": (
        {"C": 0.23, "Mn": 0.81, "Si": 0.28, "Ni": 0.56, "Cr": 0.43, "Mo": 0.19}, "oil", 925.0,
        ((43, 43, 43), (29, 27, 25), (23, 22, 22), (22, NAN, NAN)),
    ),
    "4320 oil": (
        {"C": 0.20, "Mn": 0.59, "Si": 0.25, "Ni": 1.77, "Cr": 0.47, "Mo": 0.23}, "oil", 925.0,
        ((44.5, 44.5, 44.5), (39, 37, 36), (35, 30, 27), (25, 24, 24)),
    ),
    "4820 oil": (
        {"C": 0.20, "Mn": 0.61, "Si": 0.29, "Ni": 3.47, "Cr": 0.07, "Mo": 0.22}, "oil", 925.0,
        ((45, 45, 44), (43, 39, 37), (36, 31, 27), (27, 24, 24)),
    ),
    "4620 oil": (
        {"C": 0.17, "Mn": 0.52, "Si": 0.26, "Ni": 1.81, "Cr": 0.10, "Mo": 0.21}, "oil", 925.0,
        ((40, 32, 31), (27, NAN, NAN), (24, NAN, NAN)),
    ),
    "9310 oil": (
        {"C": 0.09, "Mn": 0.57, "Si": 0.32, "Ni": 3.11, "Cr": 1.23, "Mo": 0.13}, "oil", 925.0,
        ((40, 40, 38), (40, 38, 37), (38, 32, 31), (31, 30, 29)),
    ),
    "4118 oil": (
        {"C": 0.21, "Mn": 0.80, "Si": 0.27, "Ni": 0.16, "Cr": 0.52, "Mo": 0.08}, "oil", 925.0,
        ((33, 33, 33), (22, 20, 20)),
    ),
    "1117 water": (
        {"C": 0.19, "Mn": 1.10, "Si": 0.11, "S": 0.084}, "water", 915.0,
        ((42, 34.5, 29.5), (37, NAN, NAN), (33, NAN, NAN), (32, NAN, NAN)),
    ),
    "1015 water": (
        {"C": 0.15, "Mn": 0.53, "Si": 0.17}, "water", 915.0,
        ((36.5, 23, 22),),
    ),
}  # fmt: skip
HEATS = {**ALLOY, **PLAIN}


def readings(case):
    """Return hardness less the printed figure, and the stated error, at each printed figure."""
    composition, medium, heat_c, table = case
    off, sd = [], []
    for inches, printed in zip(INCHES, table, strict=False):
        bar = quenched_bar(composition, 25.4 * inches, medium, heat_c)
        place = bar.radius_mm / bar.radius_mm[-1]
        off.append(np.interp([1.0, 0.5, 0.0], place, bar.hrc) - np.array(printed))
        sd.append(np.interp([1.0, 0.5, 0.0], place, bar.sd_hrc))
    read = np.isfinite(np.ravel(off))
    return np.ravel(off)[read], np.ravel(sd)[read]


@pytest.fixture(scope="module")
def errors_hrc():
    """Return the readings of every heat, quenched once."""
    return {name: readings(case) for name, case in {**HEATS, **HELD_OUT}.items()}


def together(errors_hrc, names):
    return np.concatenate([errors_hrc[name][0] for name in names])


def test_all_steels_within_3_hrc_on_average(errors_hrc):
    every = together(errors_hrc, HEATS)
    assert every.size == 301
    assert np.abs(every).mean() < 2.7
    assert abs(every.mean()) < 1.0


def test_alloy_steels_within_3_hrc_on_average(errors_hrc):
    every = together(errors_hrc, ALLOY)
    assert np.abs(every).mean() < 2.2
    assert abs(every.mean()) < 1.0


def test_bars_held_out_within_3_hrc_on_average(errors_hrc):
    """8620 and 4118 come out 5 and 7 HRC too hard, 4620 3 too soft: heats not remembered."""
    every = together(errors_hrc, HELD_OUT)
    assert every.size == 66
    assert np.abs(every).mean() < 3.0
    assert abs(every.mean()) < 1.0


@pytest.mark.parametrize("name", ALLOY)
def test_alloy_steel(errors_hrc, name):
    assert np.abs(errors_hrc[name][0]).mean() < 4.0


@pytest.mark.xfail(
    strict=True,
    reason="heats of plain carbon steel differ more than their analyses: 1030 and 1050 lose "
    "the skin of a thick bar in water and 1095 keeps it; 1040 and 1144 hardly harden in oil, "
    "though 1040 hardens through in water",
)
def test_plain_carbon_steels_within_3_hrc_on_average(errors_hrc):
    assert np.abs(together(errors_hrc, PLAIN)).mean() < 3.0


def test_plain_carbon_steels_lean_neither_way(errors_hrc):
    every = together(errors_hrc, PLAIN)
    assert np.abs(every).mean() < 3.4
    assert abs(every.mean()) < 1.0


def test_the_stated_error_covers_the_readings(errors_hrc):
    off, sd = np.concatenate([np.array(pair) for pair in errors_hrc.values()], axis=1)
    assert 0.84 < np.mean(np.abs(off) < 1.645 * sd) < 0.95


@pytest.fixture(scope="module")
def advised():
    """Return low end, middle and high end of the advice, less the figure, of every reading."""
    found = []
    for composition, medium, heat_c, table in {**HEATS, **HELD_OUT}.values():
        for inches, printed in zip(INCHES, table, strict=False):
            hrc = quenched_hrc(composition, 25.4 * inches, medium, heat_c, (1.0, 0.5, 0.0))
            ends = np.quantile(hrc, (0.05, 0.5, 0.95), axis=0) - np.array(printed)
            found.append(ends[:, np.isfinite(printed)])
    return np.concatenate(found, axis=1)


def test_the_advice_is_as_near_as_the_bars_by_themselves(advised, errors_hrc):
    bars = np.abs(together(errors_hrc, errors_hrc))
    assert advised.shape == (3, bars.size)
    assert np.abs(advised[1]).mean() < bars.mean() + 0.1
    assert abs(advised[1].mean()) < 1.0


def test_the_ends_of_the_advice_hold_nine_in_ten(advised):
    low, _, high = advised
    assert 0.85 < np.mean((low <= 0.0) & (high >= 0.0)) < 0.95
