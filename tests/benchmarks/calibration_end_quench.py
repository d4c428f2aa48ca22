"""End-quench curves beside hardenability bands that took no part in the fit.

A band holds nine heats in ten or more of a grade; its two limits are taken as the 5 and 95 %
ends. Forecast is the middle of the band, by mid composition.
"""

from selector.metallurgy.hardenability import jominy_curve
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.benchmarks.calibration_tempering import QUANTILES, band
from tests.published import test_cen2006_hardenability_bands as cen
from tests.published import test_sae1998_hardenability_bands as sae


def _reading(grade, composition, distance_mm, limits, laboratory):
    curve = jominy_curve(sae.RESIDUAL | composition, distance_mm)
    low, high = limits
    ends = float(curve.hrc) + float(curve.sd_hrc) * QUANTILES
    group = {
        "laboratory": laboratory,
        "distance": band(distance_mm, (3, 7, 15, 30), "mm"),
        "grade": grade,
    }
    return CalibrationReading(
        "end quench, middle of a band", "HRC", 0.5 * (low + high), *map(float, ends), False,
        group,
    )  # fmt: skip


def readings():
    """Return the middle of every unseen band beside the forecast."""
    found = []
    for grade, text in sae.UNSEEN.items():
        words = text.replace(":", "").split()
        for place, limits in zip(words[::2], words[1::2], strict=True):
            edges = tuple(map(float, limits.split("-")))
            distance_mm = float(place) * 25.4 / 16.0
            composition = sae.UNSEEN_STEELS[grade]
            found.append(_reading(grade, composition, distance_mm, edges, "SAE J1268"))
    for grade, distance_mm, low, high in cen.BANDS:
        edges = (float(low), float(high))
        found.append(_reading(grade, cen.STEELS[grade], distance_mm, edges, "EN 10083, 10084"))
    return found
