"""What an option leaves in the working zone: the record that every route fills."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.job.job import Job

Floats = NDArray[np.float64]


def working_radius_mm(job: Job) -> float:
    """Return half the thickness of the working zone's thickest section, or its wall. [mm]."""
    sections = [job.asked.part.section[i] for i in job.leading.sections]
    thickest = max(sections, key=lambda section: section.size)
    return 0.5 * (thickest.size - (thickest.bore or 0.0))


@dataclass(frozen=True, slots=True, eq=False)
class ZoneHardness:
    """Hardness of the working zone, its core, the shank and every section. [HRC]."""

    surface: Floats
    core: Floats
    shank: Floats
    depth_mm: Floats
    sections: Floats
    relation: str
    source: str
    validity: tuple[str, ...] = ()
