"""First estimate of how deep a local heat hardens; the transient solver will replace it."""

import numpy as np
from numpy.typing import NDArray

from selector.draws import Normals
from selector.heat.torch import TorchName, heating
from selector.surroundings import Surroundings
from selector.treatment import Treatment

Floats = NDArray[np.float64]
# Once the surface is at heat the operator lingers, and the heat soaks in: time at heat with its
# log sd (common practice), and the diffusivity of hot steel (mean of published figures).
LINGER_S, LINGER_LOG_SD = 20.0, 0.5
DIFFUSIVITY_MM2_PER_S = 6.0
_TORCH: dict[str, TorchName] = {
    "hand-torch": "hand-propane",
    "propylene-torch": "hand-propane",
    "oxy-propane": "oxy-propane",
    "oxy-acetylene": "oxy-acetylene",
}


def hardened_depth_mm(treatment: Treatment, around: Surroundings, normals: Normals) -> Floats:
    """Return the depth that a local heat brings to hardening temperature.

    Parameters
    ----------
    treatment : Treatment
        A local route.
    around : Surroundings
        Part and workshop.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    ndarray
        Depth; shape (draws,). A forge soaks the end through; induction goes as deep as its
        published range. [mm]
    """
    sections = around.asked.part.section
    thick = max((sections[i] for i in around.hard), key=lambda s: s.size)
    radius = 0.5 * thick.size
    spread = normals["depth"]
    source = treatment.source
    if source is not None and source.slug in _TORCH:
        length = sum(sections[i].length for i in around.hard)
        found = heating(_TORCH[source.slug], thick.size, length, 850.0, hearth=True)
        depth = np.asarray(found.hardened_depth_mm) * np.exp(found.log_sd_depth * spread)
        linger = LINGER_S * np.exp(LINGER_LOG_SD * normals["eye_scatter"])
        soaked = 2.0 * np.sqrt(DIFFUSIVITY_MM2_PER_S * linger)
        return np.asarray(np.minimum(depth + soaked, radius))
    span = treatment.route.depth_mm
    if source is None and span is not None:
        middle = np.sqrt(span.low * span.high)
        scatter = 0.25 * np.log(span.high / span.low)
        return np.asarray(np.minimum(middle * np.exp(scatter * spread), radius))
    return np.full(spread.shape, radius)
