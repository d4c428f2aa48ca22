"""Whether the workshop's bath takes what is hot: enough of it, and right under."""

import numpy as np

from selector.flame.outcome import Check
from selector.heat.grid import Grid
from selector.heat.operator import Heated
from selector.job.job import Job
from selector.job.process import OIL_L_PER_KG
from selector.job.treatment import Treatment
from selector.torch.flame_history import DENSITY_KG_PER_M3, FlameJob

# Heat of a part that such a rule is made for, over the bath. [K]
RULE_K = 800.0
# Steel as hot as this lights oil where it stands out of it, and hardens under a bath alone; so
# much deeper is the bath to be, to cover it and leave room to move it. Common practice, no
# source. [°C], [mm]
HOT_C, ROOM_MM = 400.0, 50.0
COLD_C = 50.0


def bath_check(
    torching: FlameJob, hot: tuple[Heated, Grid], work: Treatment, job: Job
) -> Check | None:
    """Return whether a bath of known volume takes the hot end of a part.

    Parameters
    ----------
    torching : FlameJob
        Volume of the bath, sections.
    hot : tuple of Heated and Grid
        The part as it leaves the flame.
    work : Treatment
        Its medium.
    job : Job
        The whole part.

    Returns
    -------
    Check or None
        None of air and of a bath whose volume is not known. A vessel is taken to be as deep as
        it is wide (common practice, no source).
    """
    if torching.bath_volume_l is None or work.medium is None or work.medium.kind == "air":
        return None
    heated, grid = hot
    name, volume_l = work.medium.name.lower(), torching.bath_volume_l
    if work.medium.is_oil:
        needed_l = OIL_L_PER_KG * _hot_kg(heated, grid)
        if volume_l < needed_l:
            text = f"{volume_l:g} l of {name} are too few for so much heat: {needed_l:.1f} l"
            return Check("bath", False, text)
    deep_mm, reach_mm = 100.0 * (4.0 * volume_l / np.pi) ** (1 / 3), _reach_mm(hot, job)
    if deep_mm < reach_mm + ROOM_MM:
        text = (
            f"{volume_l:g} l of {name} stand about {deep_mm:.0f} mm deep, and the hot "
            f"{reach_mm:.0f} mm must go right under"
        )
        return Check("bath", False, text)
    return Check("bath", True, f"{volume_l:g} l take it")


def _hot_kg(heated: Heated, grid: Grid) -> float:
    """Return how much steel at hardening heat holds as much heat as the part does. [kg]."""
    excess = np.where(grid.active, heated.end_c - COLD_C, 0.0)
    volume = np.where(grid.active, grid.mesh.volume, 0.0)
    return DENSITY_KG_PER_M3 * float((volume * np.maximum(excess, 0.0)).sum()) / RULE_K


def _reach_mm(hot: tuple[Heated, Grid], job: Job) -> float:
    """Return how far from the end that goes in first the part is hot."""
    heated, grid = hot
    warm = np.where(grid.active, heated.end_c, 0.0).max(axis=0) > HOT_C
    places = grid.along_mm[warm]
    if places.size == 0:
        return 0.0
    return float(min(places[-1], job.asked.part.length_mm - places[0]))
