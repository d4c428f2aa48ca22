"""The temper of a flame-hardened end: the one that comes nearest to the hardness asked for."""

import numpy as np

from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.treatment import NO_TEMPER, Means, Temper, Treatment, temper_ceilings, tempers
from selector.metallurgy.temper_curve import parameter_k
from selector.option.prediction import embrittled
from selector.torch.hardness_map import Hardened, draw, drawn_hrc
from selector.torch.reading import within

# Drawn below this, nobody knows how tough hardened steel is. Common practice. [°C]
LEAST_DRAW_C = 175.0
# What heats evenly and for long enough; a flame draws by the eye, in minutes.
EVEN: frozenset[Means] = frozenset({"oven", "furnace", "plate"})
# A demand without a top is aimed at this far above its least; without any, at this. [HRC]
ABOVE_LEAST_HRC, USUAL_AIM_HRC = 2.0, 52.0


def chosen_temper(
    work: Treatment,
    job: Job,
    hardened: Hardened,
    demand: Demand,
    zone_mm: tuple[float, float],
) -> Temper:
    """Return the temper that comes nearest to the hardness asked for.

    Where a most is asked it is the rim that is drawn to the middle of the window, else the
    softest place of the zone that is drawn to a little above the least.

    Parameters
    ----------
    work : Treatment
        Steel and route.
    job : Job
        The workshop's means.
    hardened : Hardened
        As quenched.
    demand : Demand
        What the leading zone asks.
    zone_mm : tuple of float
        Where along the part that zone lies. [mm]

    Returns
    -------
    Temper
        By even means where any of theirs lies inside the window; none where there are none.
    """
    ceilings = temper_ceilings(job.asked.workshop, job.bench.sources)
    offered = [t for t in tempers(work, ceilings) if t.temperature_c >= LEAST_DRAW_C]
    clear = [t for t in offered if not embrittled(work, t)] or [
        t for t in offered if not _embrittles(work, t.temperature_c)
    ]
    if not clear:
        return NO_TEMPER
    low = demand.low_hrc if demand.low_hrc is not None else demand.floor_hrc
    high = demand.high_hrc if demand.high_hrc is not None else demand.ceiling_hrc
    fresh = _rim_hrc(hardened) if high is not None else _softest_hrc(hardened, zone_mm)
    at_k = [parameter_k(t.temperature_c, t.time_s * t.cycles) for t in clear]
    found = drawn_hrc(hardened.stock, np.full(len(clear), fresh), np.array(at_k))
    inside = (found >= (-np.inf if demand.floor_hrc is None else demand.floor_hrc)) & (
        found <= (np.inf if high is None else high)
    )
    even = inside & np.array([t.means in EVEN for t in clear])
    off = np.abs(found - _aim_hrc(low, high))
    return clear[int(np.argmin(np.where(even, off, np.inf) if even.any() else off))]


def _rim_hrc(hardened: Hardened) -> float:
    """Return about the hardest that came out of the quench. [HRC]."""
    full = hardened.turned_hrc[hardened.share > 0.99]
    return float(np.quantile(full, 0.9)) if full.size else 40.0


def _softest_hrc(hardened: Hardened, zone_mm: tuple[float, float]) -> float:
    """Return the softest place of the zone's surface as quenched. [HRC]."""
    found = draw(hardened)
    return float(found.surface()[within(found.along_mm, zone_mm)].min())


def _aim_hrc(low: float | None, high: float | None) -> float:
    """Return what hardness is aimed at in a window."""
    known = [v for v in (low, high) if v is not None]
    if not known:
        return USUAL_AIM_HRC
    return sum(known) / len(known) + (ABOVE_LEAST_HRC if high is None else 0.0)


def _embrittles(work: Treatment, temperature_c: float) -> bool:
    """Return whether a temper lies in a window the catalogue warns of."""
    return any(s.low <= temperature_c <= s.high for s in work.steel.embrittlement_c)
