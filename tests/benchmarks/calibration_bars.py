"""Quenched bars: as-quenched hardness beside what was forecast, for the calibration report.

The forecast is that of the advice, for a furnace and a bath of the workshop and a steel of the
analysis that is listed.
Fitted on: rims, level in water, softer core, hardness of pearlite and the size of the error
were read off `ALLOY` and `PLAIN` of Bethlehem 3310. Kept aside: its case-hardening steels, bars
in still air, the producers' cards of bearing steel, silver steel in oil, a textbook's 1040.
"""

import numpy as np

from selector.hardness_scale import hrc_from_hb, hrc_from_hv
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.measured_bar import quenched_hrc
from tests.published.test_asm1990_normalised_bars import BARS as IN_AIR
from tests.published.test_bethlehem1980_as_quenched_bars import HEATS, HELD_OUT, INCHES
from tests.published.test_lucefin1999_quenched_bearing_steel import CARD, CARD_WT_PCT, HEAT_C
from tests.published.test_schmitz2026_quenched_silver_steel import BAR as SILVER

MODEL = "as-quenched bar"
PLACES = {"surface": 1.0, "half radius": 0.5, "centre": 0.0}
# Points of a normal error, which the stated sd stands for.
NORMAL = np.array([-1.6449, -0.6745, 0.0, 0.6745, 1.6449])
# Callister and Rethwisch, Materials Science and Engineering, 8th ed., 2010, p. 433 (read): the
# centre of a bar of 1040, 50 mm, water.
CALLISTER_1040 = ({"C": 0.40, "Mn": 0.75}, 50.0, "water", 845.0, 28.0)


def readings() -> list[CalibrationReading]:
    """Return every reading with its forecast."""
    return [*_bethlehem(), *_in_air(), *_cards(), *_others()]


def _reading(measured, samples, *, fitted, group):
    """Return one reading."""
    return CalibrationReading.of_samples(
        MODEL, "HRC", measured, samples, fitted=fitted, group=group
    )


def _group(laboratory, steel, composition, medium, diameter_mm, place):
    """Return the groups a reading is counted in."""
    alloy = sum(composition.get(e, 0.0) for e in ("Cr", "Ni", "Mo", "V")) > 0.25
    kind = "alloy" if alloy or composition.get("Si", 0.0) > 1.0 else "plain carbon"
    return {
        "laboratory": laboratory,
        "steel": steel,
        "class": "above 0.7 % C" if composition["C"] > 0.7 else kind,
        "medium": medium,
        "section": f"{diameter_mm:.0f} mm",
        "place": place,
    }


def _bethlehem():
    """Return the bars of the handbook, a heat of each grade."""
    for name, (composition, medium, heat_c, table) in {**HEATS, **HELD_OUT}.items():
        for inches, printed in zip(INCHES, table, strict=False):
            shares = tuple(PLACES.values())
            bar = quenched_hrc(composition, 25.4 * inches, medium, heat_c, shares)
            for place, samples, hrc in zip(PLACES, bar.T, printed, strict=True):
                if np.isfinite(hrc):
                    group = _group(
                        "Bethlehem", name.split()[0], composition, medium, 25.4 * inches, place
                    )
                    yield _reading(hrc, samples, fitted=name in HEATS, group=group)


def _in_air():
    """Return bars of 1 inch in still air."""
    for name, (composition, heat_c, hb) in IN_AIR.items():
        samples = quenched_hrc(composition, 25.4, "air", heat_c, (0.0,))[:, 0]
        group = _group("ASM", name, composition, "air", 25.4, "centre")
        hrc = float(hrc_from_hb(hb, outside="extend"))
        yield _reading(hrc, samples, fitted=False, group=group)


def _cards():
    """Return the bearing steel of the producer's card."""
    for diameter_mm, printed in CARD.items():
        shares = [2.0 * radius_mm / diameter_mm for radius_mm, _ in printed]
        bar = quenched_hrc(CARD_WT_PCT, diameter_mm, "oil", HEAT_C, shares)
        for share, samples, (_, hrc) in zip(shares, bar.T, printed, strict=True):
            place = "surface" if share == 1.0 else "centre" if share == 0.0 else "between"
            group = _group("Lucefin", "100Cr6", CARD_WT_PCT, "oil", diameter_mm, place)
            yield _reading(hrc, samples, fitted=False, group=group)


def _others():
    """Return single bars."""
    bar = quenched_hrc(SILVER, 30.0, "oil", 810.0, (1.0, 3.5 / 15.0))
    for place, samples, hv in zip(("surface", "between"), bar.T, (400.0, 336.0), strict=True):
        group = _group("Schmitz", "115CrV3", SILVER, "oil", 30.0, place)
        yield _reading(float(hrc_from_hv(hv)), samples, fitted=False, group=group)
    composition, diameter_mm, medium, heat_c, hrc = CALLISTER_1040
    samples = quenched_hrc(composition, diameter_mm, medium, heat_c, (0.0,))[:, 0]
    group = _group("Callister", "1040", composition, medium, diameter_mm, "centre")
    yield _reading(hrc, samples, fitted=False, group=group)
