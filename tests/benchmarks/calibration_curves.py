"""Published tempering curves of the catalogue beside the tables of other producers.

The tables are those of the published checks; none is the source of the curve that it is held
against.
"""

import importlib
from pathlib import Path

from catalog import load_catalog
from selector.hardening.kind import is_high_alloy
from selector.hardening.tempered import hardened_from, whole_curve
from selector.metallurgy.published_curve import (
    SD_HIGH_ALLOY_HRC,
    SD_HRC,
    curve_sd_hrc,
    tempered_from_curve,
)
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.benchmarks.calibration_tempering import QUANTILES, band

PUBLISHED = Path(__file__).parents[1] / "published"


def tables():
    """Yield steel, producer, time in h, hardening temperature and printed table."""
    for path in sorted(PUBLISHED.glob("test_*.py")):
        if "catalogued import" not in path.read_text(encoding="utf-8"):
            continue
        module = importlib.import_module(f"tests.published.{path.stem}")
        producer = path.stem.removeprefix("test_").split("_", maxsplit=1)[0]
        printed = getattr(module, "TABLES", {})
        for name, (time_h, *heat, table) in printed.items():
            yield name.split()[0], producer, time_h, heat[0] if heat else None, table


def readings():
    """Return each printed hardness after a temper beside the catalogue's."""
    steels = load_catalog().steels
    found = []
    for slug, producer, time_h, heat_c, table in tables():
        steel = steels[slug] if heat_c is None else hardened_from(steels[slug], heat_c)
        points_c, points_hrc = whole_curve(steel).T
        for temper_c, printed in table.items():
            if isinstance(temper_c, str):
                continue
            place = (steel.tempered.time_h.value * 3600, temper_c, time_h * 3600)
            hrc = tempered_from_curve(points_c, points_hrc, *place)
            level_hrc = SD_HIGH_ALLOY_HRC if is_high_alloy(steel) else SD_HRC
            sd = curve_sd_hrc(points_c, points_hrc, *place, level_hrc)
            group = {
                "laboratory": producer,
                "class": steel.kind,
                "steel": slug,
                "temperature": band(temper_c, (180, 280, 380, 480, 580), "°C"),
            }
            found.append(
                CalibrationReading(
                    "tempering, published curves", "HRC", float(printed),
                    *map(float, hrc + sd * QUANTILES), False, group,
                )
            )  # fmt: skip
    return found
