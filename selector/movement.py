"""How far the part moves in the heat, and what this job permits."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.draws import Normals
from selector.hazards.distortion import Heating, bow, size_change
from selector.surroundings import Surroundings
from selector.treatment import Treatment

Floats = NDArray[np.float64]
# What is permitted when the user names no limit: an ordinary hand-fitted part. Assumed. [mm]
USUAL_MM = 0.2
# Of the stock left for grinding or lapping, what may be used up by movement. [-]
GRINDABLE = 0.7

# What a patient hand leaves of a bow it straightens warm, after the temper. Common practice.
STRAIGHTENED = 0.4


@dataclass(frozen=True, slots=True, eq=False)
class Movement:
    """Movement over the draws, before and after straightening, and what is permitted.

    `stated` is False for an assumed limit.
    """

    raw_mm: Floats
    moved_mm: Floats
    permitted_mm: float
    stated: bool


def permitted_mm(around: Surroundings) -> tuple[float, bool]:
    """Return the movement this job permits, and whether the user stated it.

    Parameters
    ----------
    around : Surroundings
        Part and limits.

    Returns
    -------
    tuple
        Permitted movement [mm]; True when it was stated.
    """
    limit, part = around.asked.limit.runout, around.asked.part
    grinds = {"toolpost-grinder", "surface-grinder"} & set(part.finish_after)
    stock = GRINDABLE * (part.stock_removal or 0.25) if grinds else 0.0
    if limit is None:
        return max(USUAL_MM, stock), False
    return max(limit, stock), True


def movement(treatment: Treatment, around: Surroundings, normals: Normals) -> Movement:
    """Return how far the part moves.

    Parameters
    ----------
    treatment : Treatment
        What is heated, how, in what quenched.
    around : Surroundings
        Part and workshop.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    Movement
        The larger of bow and growth of the working section.
    """
    part, route = around.asked.part, treatment.route
    permitted, stated = permitted_mm(around)
    still = np.zeros(len(normals["movement"]))
    factor = route.movement_factor.value
    if factor == 0:
        return Movement(still, still, permitted, stated)
    medium = treatment.medium.kind if treatment.medium else "air"
    heating, length = _heating(treatment, around)
    slim = min(s.size for s in part.section)
    bend = bow(
        part.length_mm,
        slim,
        {"hot-salt": "oil"}.get(medium, medium),
        heating,
        length,
        stressed=treatment.condition.name == "cold-drawn",
    )
    share = factor if route.extent == "whole" else 1.0
    bent = bend.median_mm * share * np.exp(bend.log_sd * normals["movement"])
    hardened = treatment.steel.hardened
    thick = max(part.section[i].size for i in around.hard)
    growth = size_change(hardened.quench if hardened else "oil", min(share, 1.0))
    grown = (growth.growth_pct + growth.sd_pct * normals["movement"]) / 100 * thick
    # A bow beyond the limit is straightened warm after the temper; growth stays.
    straight = np.where(bent > permitted, STRAIGHTENED * bent, bent)
    return Movement(
        np.maximum(bent, np.abs(grown)),
        np.maximum(straight, np.abs(grown)),
        permitted,
        stated,
    )


def _heating(treatment: Treatment, around: Surroundings) -> tuple[Heating, float]:
    """Return the kind of heating and the length it hardens. [mm]."""
    part = around.asked.part
    if treatment.route.extent == "whole":
        return "through", part.length_mm
    length = sum(part.section[i].length for i in around.hard)
    turned = around.asked.workshop.turns_part or treatment.route.place == "subcontract"
    return ("local-turned" if turned else "local-still"), length
