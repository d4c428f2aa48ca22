"""End-quench midlines beside what was forecast, for the calibration report.

Grades of SAE J1268 from memory: those of the fit, and seven that took no part. A midline is the
middle of the band at the middle of the analysis, residuals named at usual practice or presumed.
"""

from selector.metallurgy.hardenability import jominy_curve
from tests.benchmarks.calibration_bars import NORMAL
from tests.benchmarks.calibration_reading import CalibrationReading
from tests.published.test_sae1998_hardenability_bands import (
    FITTED,
    FITTED_STEELS,
    MANGANESE,
    MANGANESE_STEELS,
    RESIDUAL,
    UNSEEN,
    UNSEEN_STEELS,
    points,
)

SETS = [
    (FITTED_STEELS, FITTED, True),
    (MANGANESE_STEELS, MANGANESE, True),
    (UNSEEN_STEELS, UNSEEN, False),
]


def readings() -> list[CalibrationReading]:
    """Return every point of the bands with its forecast."""
    found = []
    for steels, bands, fitted in SETS:
        for grade, band in bands.items():
            distance_mm, low, high = points(band)
            for named, others in (("named", RESIDUAL), ("presumed", {})):
                curve = jominy_curve(others | steels[grade], distance_mm)
                for x, middle, hrc, sd in zip(
                    distance_mm, 0.5 * (low + high), curve.hrc, curve.sd_hrc, strict=True
                ):
                    group = {
                        "steel": grade,
                        "residuals": named,
                        "distance": "to 10 mm" if x <= 10.0 else "beyond 10 mm",
                    }
                    ends = map(float, hrc + sd * NORMAL)
                    found.append(
                        CalibrationReading(
                            "end-quench midline", "HRC", float(middle), *ends, fitted, group
                        )
                    )
    return found
