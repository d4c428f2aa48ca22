"""How far into a section a local heat goes, by what is known of its source."""

import numpy as np
from numpy.typing import NDArray

from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.sampling import Normals
from selector.torch.part import is_torched
from selector.torch.response import heated_share

Floats = NDArray[np.float64]


def _radius_mm(job: Job) -> float:
    """Return half the thickest hard section. [mm]."""
    return 0.5 * max(job.asked.part.section[i].size for i in job.hard)


def layer_mm(treatment: Treatment, job: Job, normals: Normals) -> Floats:
    """Return the depth that a local heat brings to hardening temperature, where no torch does.

    Parameters
    ----------
    treatment : Treatment
        A local route.
    job : Job
        Part and workshop.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    ndarray
        Shape (draws,). Induction goes as deep as its published range, a fire soaks the end
        through. [mm]
    """
    radius, span = _radius_mm(job), treatment.route.depth_mm
    if treatment.source is not None or span is None:
        return np.full(normals["depth"].shape, radius)
    middle, scatter = np.sqrt(span.low * span.high), 0.25 * np.log(span.high / span.low)
    return np.asarray(np.minimum(middle * np.exp(scatter * normals["depth"]), radius))


def local_share(treatment: Treatment, job: Job) -> float:
    """Return the share of the radius that a local heat brings to hardening temperature.

    Parameters
    ----------
    treatment : Treatment
        A local route.
    job : Job
        Part and workshop.

    Returns
    -------
    float
        At the middle; 1 where the section is heated through. [-]
    """
    if is_torched(treatment):
        return heated_share(treatment, job)
    (middle,) = layer_mm(treatment, job, {"depth": np.zeros(1)})
    return float(middle) / _radius_mm(job)
