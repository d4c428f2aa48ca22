"""How far into a section a local heat goes, by what is known of its source."""

import numpy as np
from numpy.typing import NDArray

from selector.job.treatment import Treatment
from selector.sampling import Normals

Floats = NDArray[np.float64]

# A heated layer below this share of the radius counts as a skin. Estimate. [-]
SKIN_SHARE = 0.6


def layer_mm(work: Treatment, radius_mm: float, normals: Normals) -> Floats:
    """Return how deep a local heat goes that no torch gives, over the samples. [mm]."""
    # Induction goes as deep as its published range, any other source through the section.
    span = work.route.depth_mm
    if work.source is not None or span is None:
        return np.full(normals["depth"].shape, radius_mm)
    middle, scatter = np.sqrt(span.low * span.high), 0.25 * np.log(span.high / span.low)
    return np.asarray(np.minimum(middle * np.exp(scatter * normals["depth"]), radius_mm))


def is_skin(work: Treatment, heated_share: float) -> bool:
    """Return whether a local heat and water meet in a layer thin against its section."""
    watery = work.medium is not None and work.medium.severity_class == "water"
    return watery and work.route.extent == "local" and heated_share < SKIN_SHARE
