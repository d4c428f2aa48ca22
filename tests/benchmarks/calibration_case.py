"""Calibration readings of case depth, nitriding depth and decarburised depth.

Case depth rests on published diffusion data and estimates of each medium; no depth was fitted
but that of plain charcoal. Two figures of the nitriding depth are fitted to `FITTED_NITRIDING`.
Of decarburised depth no table was found to read: one figure is recalled, its share fitted, and
one of an abstract was not seen in it.
"""

from collections.abc import Iterator

from tests.benchmarks.calibration_reading import CalibrationReading
from tests.layer_forecast import case_samples, celsius, nitride_samples, skin_samples
from tests.published.test_arain1999_decarburisation import DEEPEST_MM, HOTTEST_C, HOURS
from tests.published.test_asm1982_carbonitrided_case import CHART
from tests.published.test_colvin1921_case_hardening import DEPTHS as SELLECK
from tests.published.test_harris1943_case_depth import TABLE
from tests.published.test_lucefin2013_hot_work import NITRIDED_C, NITRIDED_MM
from tests.published.test_lucefin2013_hot_work import STEEL_WT_PCT as LUCEFIN_H13
from tests.published.test_practice2026_nitriding import DEPTHS as TRADE
from tests.published.test_practice2026_nitriding import STEELS as TRADE_STEELS

# Contents in wt %, at the middle of the grade.
STEELS = {
    "42CrMo4": {"C": 0.42, "Cr": 1.05, "Mo": 0.22},
    "4140": {"C": 0.40, "Cr": 0.95, "Mo": 0.20},
    "135M": {"C": 0.41, "Cr": 1.6, "Al": 1.0, "Mo": 0.35},
    "34CrAlMo5": {"C": 0.34, "Cr": 1.15, "Al": 1.0, "Mo": 0.2},
    "31CrMoV9": {"C": 0.30, "Cr": 2.5, "Mo": 0.2, "V": 0.15},
    "H13": {"C": 0.39, "Cr": 5.2, "Mo": 1.35, "V": 1.0},
    "P20": {"C": 0.37, "Cr": 2.0, "Mo": 0.2},
    "A2": {"C": 1.0, "Cr": 5.2, "Mo": 1.1, "V": 0.2},
    "D2": {"C": 1.55, "Cr": 11.8, "Mo": 0.8, "V": 0.8},
}
# Laboratory, steel, °C, h, mm; all from memory of data sheets and handbooks.
UDDEHOLM, LATROBE, GERMAN, ASM = "Uddeholm", "Latrobe", "German handbooks", "ASM handbooks"
FITTED_NITRIDING = [
    (UDDEHOLM, "H13", 510, 10, 0.12), (UDDEHOLM, "H13", 510, 30, 0.20),
    (UDDEHOLM, "H13", 580, 2.5, 0.11), (UDDEHOLM, "H13", 580, 1, 0.06),
    (LATROBE, "H13", 524, 11, 0.114), (LATROBE, "H13", 524, 45, 0.28),
    (UDDEHOLM, "P20", 525, 20, 0.30), (UDDEHOLM, "P20", 525, 30, 0.35),
    (UDDEHOLM, "P20", 525, 60, 0.50), (UDDEHOLM, "P20", 570, 2, 0.10),
    (UDDEHOLM, "A2", 525, 20, 0.20), (UDDEHOLM, "A2", 525, 30, 0.30),
    (UDDEHOLM, "A2", 525, 60, 0.40),
    (UDDEHOLM, "D2", 525, 20, 0.25), (UDDEHOLM, "D2", 525, 30, 0.30),
    (UDDEHOLM, "D2", 525, 60, 0.35),
    (ASM, "135M", 525, 24, 0.28), (ASM, "135M", 525, 48, 0.43),
    (ASM, "135M", 525, 72, 0.53), (ASM, "135M", 525, 96, 0.63),
    (GERMAN, "34CrAlMo5", 520, 36, 0.30), (GERMAN, "34CrAlMo5", 520, 64, 0.40),
    (GERMAN, "42CrMo4", 520, 36, 0.39), (GERMAN, "42CrMo4", 520, 16, 0.28),
    (GERMAN, "31CrMoV9", 520, 28, 0.30), (GERMAN, "31CrMoV9", 520, 75, 0.50),
    (ASM, "4140", 524, 24, 0.30), (ASM, "4140", 524, 48, 0.45),
]  # fmt: skip
# Skin of bare steel, and whether its share of free diffusion was set by it: knife makers' two
# to three thousandths of an inch after ten minutes at 1500 °F, from memory; D2 and H13 in an
# open furnace, in a thesis.
SKINS = [
    ("knife makers", 815.6, 1 / 6, 0.064, True),
    ("Arain", HOTTEST_C, HOURS, DEEPEST_MM, False),
]


def _case(medium, laboratory, heat_c, hours, depth_mm, *, core=0.18, total=True, fitted=False):
    """Return the reading of one case depth, in mm."""
    return CalibrationReading.of_samples(
        "case depth",
        "mm",
        depth_mm,
        case_samples(medium, heat_c, hours, core=core, total=total),
        fitted=fitted,
        group={
            "laboratory": laboratory,
            "medium": medium,
            "temperature": f"{round(heat_c, -1):.0f} °C",
            "time": "to 2 h" if hours <= 2 else "to 8 h" if hours <= 8 else "over 8 h",
        },
    )


def _cases() -> Iterator[CalibrationReading]:
    """Yield the readings of case depth."""
    for fahrenheit, hours, inches in TABLE:
        depth = 25.4 * float(inches)
        yield _case("energised", "Harris", celsius(fahrenheit), hours, depth)
    for fahrenheit, hours, inches in SELLECK:
        depth = 25.4 * float(inches)
        yield _case("energised", "Selleck", celsius(fahrenheit), hours, depth)
    for fahrenheit, hours, inches in CHART:
        depth = 25.4 * float(inches)
        yield _case("liquid", "ASM chart", celsius(fahrenheit), hours, depth, core=0.08)
    yield _case("liquid", "Mechinopedia", 850.0, 0.25, 0.125, core=0.15)
    yield _case("gas", "Giesserei-Lexikon", 930.0, 4.0, 1.0, total=False)
    yield _case("charcoal", "model engineers", 900.0, 4.0, 0.51, total=False, fitted=True)


def _nitrided(laboratory, name, steel, heat_c, hours, depth_mm, *, fitted):
    """Return the reading of one nitriding depth, in mm."""
    return CalibrationReading.of_samples(
        "nitriding depth",
        "mm",
        float(depth_mm),
        nitride_samples(steel, heat_c, hours),
        fitted=fitted,
        group={
            "laboratory": laboratory,
            "steel": name,
            "temperature": f"{round(heat_c, -1):.0f} °C",
            "time": "to 12 h" if hours <= 12 else "to 40 h" if hours <= 40 else "over 40 h",
        },
    )


def readings() -> list[CalibrationReading]:
    """Return every reading of case, nitriding and decarburised depth."""
    return [
        *_cases(),
        *(
            _nitrided(laboratory, name, STEELS[name], *rest, fitted=True)
            for laboratory, name, *rest in FITTED_NITRIDING
        ),
        *(
            _nitrided("trade", name, TRADE_STEELS[name], *rest, fitted=False)
            for name, *rest in TRADE
        ),
        *(
            _nitrided("Lucefin", "H13", LUCEFIN_H13, NITRIDED_C, hours, depth, fitted=False)
            for hours, depth in NITRIDED_MM.items()
        ),
        *(
            CalibrationReading.of_samples(
                "decarburised depth",
                "mm",
                depth,
                skin_samples(heat_c, hours),
                fitted=fitted,
                group={"laboratory": who, "temperature": f"{round(heat_c, -1):.0f} °C"},
            )
            for who, heat_c, hours, depth, fitted in SKINS
        ),
    ]
