"""One measured figure beside what a model forecast for it, for the calibration report."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np


@dataclass(frozen=True)
class CalibrationReading:
    """A measured figure, the forecast over the samples, and the groups it is counted in.

    `group` holds what the report splits by, such as laboratory, class, steel, temperature or
    section. `fitted` says whether the model saw the figure, or its whole steel, in a fit.
    """

    model: str
    unit: str
    measured: float
    p05: float
    p25: float
    p50: float
    p75: float
    p95: float
    fitted: bool
    group: Mapping[str, str] = field(default_factory=dict)

    @classmethod
    def of_samples(cls, model, unit, measured, samples, *, fitted, group):
        """Return the reading of a forecast that is given by its samples."""
        ends = np.quantile(np.asarray(samples, float), (0.05, 0.25, 0.5, 0.75, 0.95))
        return cls(model, unit, float(measured), *map(float, ends), fitted, group)
