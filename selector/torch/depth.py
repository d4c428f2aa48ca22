"""How far into a section a local heat goes, by what is known of its source."""

import numpy as np
from numpy.typing import NDArray

from selector.job.job import Job
from selector.job.treatment import Treatment, is_torched
from selector.sampling import Normals
from selector.torch.response import heated_share

Floats = NDArray[np.float64]


# A heated layer below this share of the radius counts as a skin. Estimate. [-]
SKIN_SHARE = 0.6


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


def is_skin(treatment: Treatment, job: Job) -> bool:
    """Return whether a local heat and a watery bath meet in a layer thin against its section.

    Parameters
    ----------
    treatment : Treatment
        What is heated how, and quenched in what.
    job : Job
        Part and workshop.

    Returns
    -------
    bool
        At the middle; False for a whole heat and for any other bath.
    """
    medium = treatment.medium
    if treatment.route.extent != "local" or medium is None or medium.severity_class != "water":
        return False
    return local_share(treatment, job) < SKIN_SHARE
