"""The hardness map of a part: every place, as quenched and as tempered, and how hot it was."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.torch.part import Stretch

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class HardnessMap:
    """Hardness of every place, HRC carried on below 20; shape (across, along), NaN outside."""

    across_mm: Floats
    along_mm: Floats
    hrc: Floats
    quenched_hrc: Floats
    austenite_fraction: Floats
    peak_c: Floats

    def surface(self, what: Floats | None = None) -> Floats:
        """Return hardness (or another field) at the surface, along the bar."""
        field = self.hrc if what is None else what
        rows = self.hrc.shape[0] - 1 - np.argmax(np.isfinite(self.hrc[::-1]), axis=0)
        return np.asarray(field[rows, np.arange(field.shape[1])])

    def core(self) -> Floats:
        """Return hardness at the innermost steel, along the bar."""
        rows = np.argmax(np.isfinite(self.hrc), axis=0)
        return np.asarray(self.hrc[rows, np.arange(self.hrc.shape[1])])

    def mean(self) -> Floats:
        """Return the hardness of the outer fibres along the bar, from 0.6 of the radius."""
        outer = np.nanmax(np.where(np.isfinite(self.hrc), self.across_mm[:, None], 0.0), axis=0)
        kept = self.across_mm[:, None] >= 0.6 * outer
        return np.asarray(np.nanmean(np.where(kept, self.hrc, np.nan), axis=0))

    def column(self, along_mm: float) -> Floats:
        """Return hardness across, at a distance from the end."""
        return np.asarray(self.hrc[:, int(np.argmin(np.abs(self.along_mm - along_mm)))])

    def ground(self, part: Stretch, removed_mm: float) -> "HardnessMap":
        """Return a map whose surface is that of the finished face, ground so far a side."""
        if removed_mm <= 0.0:
            return self
        ends = part.edges_mm[1:]
        face = self.hrc.copy()
        for column, place in enumerate(self.along_mm):
            section = part.sections[min(int(np.searchsorted(ends, place)), len(ends) - 1)]
            rows = np.flatnonzero(np.isfinite(self.hrc[:, column]))
            at_mm = 0.5 * section.outer_mm - removed_mm
            face[rows[-1], column] = np.interp(at_mm, self.across_mm[rows], face[rows, column])
        return replace(self, hrc=face)
