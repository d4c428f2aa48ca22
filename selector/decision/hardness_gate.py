"""Whether the working zone is hard enough, not too hard, and hard deep enough."""

from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from selector.figure import median
from selector.gate import Gate, judged
from selector.job.demand import Demand
from selector.job.ready_hard import delivered_hrc
from selector.job.sold import is_used_as_sold
from selector.job.treatment import LAID_ON, Treatment
from selector.option.layer import LayerRun
from selector.option.skin import Skin
from selector.wording import shown

Floats = NDArray[np.float64]
# A smaller loss of hardness is not worth a word. [HRC]
FELT_HRC = 1.5
# What is sold for such parts is as hard as its makers found right; one sold so much softer than
# a zone needs has another duty under the same name. Estimate. [HRC]
SOLD_SOFTER_HRC = 10.0


class Hardened(Protocol):
    """What is judged: hardness under the surface and its depth, over the samples."""

    @property
    def treatment(self) -> Treatment:
        """What is done to which steel."""

    @property
    def surface_hrc(self) -> Floats:
        """Hardness where the working zone is judged. [HRC]."""

    @property
    def depth_mm(self) -> Floats:
        """How deep it is hard. [mm]."""

    @property
    def layer(self) -> LayerRun | None:
        """How its layer is grown, if it has one."""

    @property
    def skin(self) -> Skin | None:
        """The soft skin of its heat, if there is one."""


def hardness_gates(found: Hardened, demand: Demand) -> list[Gate]:
    """Judge floor, ceiling and depth of the leading zone."""
    gates, hrc = [], found.surface_hrc
    middle = median(hrc)
    floor = floor_hrc(found.treatment, demand)
    if floor is not None:
        text = f"needs {shown(floor)} or more; predicted {shown(middle)}"
        text += _skin_words(found)
        gates.append(judged("hard_enough", hrc >= floor, text))
    ceiling = ceiling_hrc(found.treatment, demand)
    if ceiling is not None:
        text = f"must not pass {shown(ceiling)}; predicted {shown(middle)}"
        gates.append(judged("not_too_hard", hrc <= ceiling, text))
    deep = depth_mm(found.treatment, demand)
    if deep > 0 and demand.floor_hrc is not None:
        text = f"needs {deep:g} mm deep; predicted {_depth_words(found)}"
        gates.append(judged("depth", found.depth_mm >= deep, text))
    return gates


def floor_hrc(work: Treatment, demand: Demand) -> float | None:
    """Return what a zone must reach: thick spring wire is right as soft as it is drawn."""
    if _is_as_its_makers_want(work, demand):
        return None
    return demand.bought_hrc if _is_bought(work, demand) else demand.floor_hrc


def _is_as_its_makers_want(work: Treatment, demand: Demand) -> bool:
    """Return whether a thing is used as it is sold for such a part, and about hard enough."""
    if not demand.derived or not is_used_as_sold(work):
        return False
    floor = demand.floor_hrc
    return floor is None or delivered_hrc(work.condition) >= floor - SOLD_SOFTER_HRC


def depth_mm(work: Treatment, demand: Demand) -> float:
    """Return how deep a zone must be hard: bar used as it comes is alike right through."""
    return 0.0 if _is_bought(work, demand) else demand.depth_mm


def _is_bought(work: Treatment, demand: Demand) -> bool:
    """Return whether a bar is used as it comes where less is asked of such."""
    return work.route.process == "none" and demand.bought_hrc is not None


def ceiling_hrc(work: Treatment, demand: Demand) -> float | None:
    """Return what a zone must not pass: skin and wire made for it are as hard as they come."""
    # A derived window is that of steel hard through; the core under a nitrided skin is soft,
    # and what is sold for such parts has the hardness that its makers found right.
    if demand.derived and (work.route.process in LAID_ON or is_used_as_sold(work)):
        return None
    return demand.ceiling_hrc


def off_window_hrc(work: Treatment, hrc: Floats, demand: Demand) -> Floats:
    """Return how far hardness lies outside the window of a zone, to either side. [HRC]."""
    asks = not _is_as_its_makers_want(work, demand)
    low = demand.low_hrc if asks and demand.low_hrc is not None else -np.inf
    capped = ceiling_hrc(work, demand) is not None
    high = demand.high_hrc if capped and demand.high_hrc is not None else np.inf
    return np.asarray(np.maximum(low - hrc, 0.0) + np.maximum(hrc - high, 0.0))


def _skin_words(found: Hardened) -> str:
    """Return what a heat takes off a surface and how to keep it, nothing where little."""
    skin = found.skin
    if skin is None or skin.loss_hrc < FELT_HRC:
        return ""
    heat = "the bare heat" if skin.is_bare else "the heat"
    return (
        f", {skin.loss_hrc:.0f} HRC of it lost to {heat}: {skin.remedy}"
        "leave 0.2 mm a side to grind"
    )


def _depth_words(found: Hardened) -> str:
    """Return the depth predicted, of a layer with how it is grown."""
    run, middle = found.layer, median(found.depth_mm)
    if run is None:
        return f"{middle:.1f} mm"
    longest = ", the longest this route goes" if run.falls_short else ""
    return f"{middle:.2f} mm after {run.words}{longest}"
