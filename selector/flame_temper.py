"""The temper of a flame-hardened end: the one that comes nearest to the hardness asked for."""

import numpy as np

from selector.duty import Demand
from selector.flame_map import Hardened, drawn_hrc
from selector.metallurgy.temper_curve import parameter_k
from selector.surroundings import Surroundings
from selector.treatment import NO_TEMPER, Means, Temper, Treatment, temper_ceilings, tempers

# Drawn below this, nobody knows how tough hardened steel is. Common practice. [°C]
LEAST_DRAW_C = 175.0
# What heats evenly and for long enough; a flame draws by the eye, in minutes.
EVEN: frozenset[Means] = frozenset({"oven", "furnace", "plate"})
# A demand without a top is aimed at this far above its least; without any, at this. [HRC]
ABOVE_LEAST_HRC, USUAL_AIM_HRC = 2.0, 52.0


def chosen_temper(
    work: Treatment, around: Surroundings, hardened: Hardened, demand: Demand
) -> Temper:
    """Return the temper that comes nearest to the middle of the hardness asked for.

    Parameters
    ----------
    work : Treatment
        Steel and route.
    around : Surroundings
        The workshop's means.
    hardened : Hardened
        As quenched.
    demand : Demand
        What the leading zone asks.

    Returns
    -------
    Temper
        By even means where any of theirs lies inside the window; none where there are none.
    """
    ceilings = temper_ceilings(around.asked.workshop, around.bench.sources)
    offered = [t for t in tempers(work, ceilings) if t.temperature_c >= LEAST_DRAW_C]
    clear = [t for t in offered if not _embrittles(work, t.temperature_c)]
    if not clear:
        return NO_TEMPER
    low = demand.low_hrc if demand.low_hrc is not None else demand.floor_hrc
    high = demand.high_hrc if demand.high_hrc is not None else demand.ceiling_hrc
    full = hardened.turned_hrc[hardened.share > 0.99]
    rim = np.array([np.quantile(full, 0.9) if full.size else 40.0])
    at_k = [parameter_k(t.temperature_c, t.time_s * t.cycles) for t in clear]
    found = drawn_hrc(hardened.stock, np.repeat(rim, len(clear)), np.array(at_k))
    inside = (found >= (-np.inf if low is None else low)) & (
        found <= (np.inf if high is None else high)
    )
    even = inside & np.array([t.means in EVEN for t in clear])
    off = np.abs(found - _aim_hrc(low, high))
    return clear[int(np.argmin(np.where(even, off, np.inf) if even.any() else off))]


def _aim_hrc(low: float | None, high: float | None) -> float:
    """Return what hardness is aimed at in a window."""
    known = [v for v in (low, high) if v is not None]
    if not known:
        return USUAL_AIM_HRC
    return sum(known) / len(known) + (ABOVE_LEAST_HRC if high is None else 0.0)


def _embrittles(work: Treatment, temperature_c: float) -> bool:
    """Return whether a temper lies in a window the catalogue warns of."""
    return any(s.low <= temperature_c <= s.high for s in work.steel.embrittlement_c)
