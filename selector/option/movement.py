"""How far the part moves in the heat, and what this job permits."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.hazards.distortion import Heating, bow, size_change
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.sampling import Normals

Floats = NDArray[np.float64]
# What is permitted when the user names no limit: an ordinary hand-fitted part. Assumed. [mm]
USUAL_MM = 0.2
# Of the stock left for grinding or lapping, what may be used up by movement. [-]
GRINDABLE = 0.7

# What a patient hand leaves of a bow it straightens warm, after the temper. Common practice.
STRAIGHTENED = 0.4
# A thin flat is clamped between plates while it is drawn, and comes out straighter. Common
# practice.
CLAMPED = 0.2


@dataclass(frozen=True, slots=True, eq=False)
class Movement:
    """Bow over the draws, before and after straightening, growth, and what is permitted.

    `stated` is False for an assumed limit.
    """

    raw_mm: Floats
    moved_mm: Floats
    growth_mm: float
    permitted_mm: float
    stated: bool


def permitted_mm(job: Job) -> tuple[float, bool]:
    """Return the movement this job permits, and whether the user stated it.

    Parameters
    ----------
    job : Job
        Part and limits.

    Returns
    -------
    tuple
        Permitted movement [mm]; True when it was stated.
    """
    limit, part = job.asked.limit.runout, job.asked.part
    grinds = {"toolpost-grinder", "surface-grinder"} & set(part.finish_after)
    stock = GRINDABLE * (part.stock_removal or 0.25) if grinds else 0.0
    if limit is None:
        return max(USUAL_MM, stock), False
    return max(limit, stock), True


def movement(treatment: Treatment, job: Job, normals: Normals) -> Movement:
    """Return how far the part moves.

    Parameters
    ----------
    treatment : Treatment
        What is heated, how, in what quenched.
    job : Job
        Part and workshop.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    Movement
        Bow of the axis, and growth across the working section, which is apart from it.
    """
    route = treatment.route
    permitted, stated = permitted_mm(job)
    still = np.zeros(len(normals["movement"]))
    factor = route.movement_factor.value
    if factor == 0:
        return Movement(still, still, 0.0, permitted, stated)
    medium = treatment.medium.kind if treatment.medium else "air"
    heating, length = _heating(treatment, job)
    long, slim = _slenderness(job)
    bend = bow(
        long,
        slim,
        {"hot-salt": "oil"}.get(medium, medium),
        heating,
        length,
        stressed=treatment.condition.name == "cold-drawn",
    )
    share = factor if route.extent == "whole" else 1.0
    bent = bend.median_mm * share * np.exp(bend.log_sd * normals["movement"])
    # A bow beyond the limit is straightened warm after the temper, just far enough.
    flat = all(section.shape == "flat" for section in job.asked.part.section)
    left = (CLAMPED if flat else STRAIGHTENED) * bent
    straight = np.where(bent > permitted, np.maximum(left, permitted), bent)
    return Movement(np.asarray(bent), straight, _growth(treatment, job), permitted, stated)


def _slenderness(job: Job) -> tuple[float, float]:
    """Return the length that bows and the thickness that resists; a disc dishes. [mm]."""
    part = job.asked.part
    slim = min(s.size for s in part.section)
    broad = max(max(s.size, s.width or 0.0) for s in part.section)
    if part.length_mm < slim:
        return broad, part.length_mm
    return part.length_mm, slim


def _growth(treatment: Treatment, job: Job) -> float:
    """Return the growth of the working section across, at the middle. [mm]."""
    thick = max(job.asked.part.section[i].size for i in job.hard)
    hardened = treatment.steel.hardened
    if not treatment.hardens or hardened is None:
        return 0.0
    return float(size_change(hardened.quench).growth_pct) / 100 * thick


def _heating(treatment: Treatment, job: Job) -> tuple[Heating, float]:
    """Return the kind of heating and the length it hardens. [mm]."""
    part = job.asked.part
    if treatment.route.extent == "whole":
        return "through", part.length_mm
    length = sum(part.section[i].length for i in job.hard)
    turned = job.asked.workshop.turns_part or treatment.route.place == "subcontract"
    return ("local-turned" if turned else "local-still"), length
