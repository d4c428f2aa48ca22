"""Parts at a torch to test with: the dog's end, at any source and of any size."""

import numpy as np

from catalog import load_catalog
from selector.job.job import resolved
from selector.torch.course import MIDDLE_FLAME
from selector.torch.heating import Heatings
from selector.torch.part import torching
from tests.dog import asked

CATALOG = load_catalog()


def task(source="oxy-propane", changes=None):
    """Return the dog at a heat source."""
    job = resolved(asked(changes), CATALOG)
    return torching(job.asked, job.hard, 0, CATALOG.heat_sources[source], "low-alloy")


def size(mm):
    """Return the change that makes the dog so thick."""
    return {"part.section.0.size": mm, "part.section.1.size": mm}


def is_reached(found: Heatings, heat_c: float) -> bool:
    """Return whether the flame at its usual strength brings the watched place to a heat."""
    stops = found.torching.stops_c
    return bool(found.reached[MIDDLE_FLAME, int(np.searchsorted(stops, heat_c))])
