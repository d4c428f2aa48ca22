"""How far into a section a local heat goes, by what is known of its source."""

import numpy as np
from numpy.typing import NDArray

from selector.job.treatment import Treatment
from selector.sampling import Normals

Floats = NDArray[np.float64]

# A heated layer below this share of the radius counts as a skin. Estimate. [-]
SKIN_SHARE = 0.6


# A firm aims this far past the depth that is ordered, which is tolerated to about twice itself
# (ISO 15787, from memory), and strays so far about it, in the logarithm. Estimates. [-]
PAST_ORDER, STRAY_LOG_SD = 1.4, 0.2


def aimed_mm(work: Treatment, radius_mm: float, asked_mm: float) -> float | None:
    """Return how deep a firm heats that is told a depth, None at a source at hand. [mm]."""
    span = work.route.depth_mm
    if work.source is not None or span is None:
        return None
    usual_mm = float(np.sqrt(span.low * span.high))
    return min(max(usual_mm, PAST_ORDER * asked_mm), span.high, radius_mm)


def layer_mm(work: Treatment, radius_mm: float, asked_mm: float, normals: Normals) -> Floats:
    """Return how deep a local heat goes that no torch gives, over the samples. [mm]."""
    # Induction goes as deep as it is ordered, any other source through the section.
    aim_mm = aimed_mm(work, radius_mm, asked_mm)
    if aim_mm is None:
        return np.full(normals["depth"].shape, radius_mm)
    return np.asarray(np.minimum(aim_mm * np.exp(STRAY_LOG_SD * normals["depth"]), radius_mm))


def is_skin(work: Treatment, heated_share: float) -> bool:
    """Return whether a local heat and water meet in a layer thin against its section."""
    watery = work.medium is not None and work.medium.severity_class == "water"
    return watery and work.route.extent == "local" and heated_share < SKIN_SHARE
