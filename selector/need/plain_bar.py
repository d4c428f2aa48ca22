"""The bar that bears the load as bought: the rack first, then what is easily had."""

from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from catalog.route import Route
from catalog.steel import Steel
from selector.duty.contact import corner_factor
from selector.duty.strength import Bearing, section_factor
from selector.hardening.stock import supply_hrc
from selector.hardness_scale import hv_from_hrc
from selector.job.candidates import screened
from selector.job.job import Job
from selector.job.treatment import NO_TEMPER, Treatment
from selector.need.record import PlainBar, SectionNeed
from selector.need.span import HV, NINE_IN_TEN, over, spread
from selector.option.cost import bill, order_of
from selector.wording import shown

Floats = NDArray[np.float64]
# How easily a bar is come by.
_SELDOM = ("easy", "order", "rare")


def plain_bar(job: Job, bears: Bearing, needs: tuple[SectionNeed, ...]) -> PlainBar | None:
    """Return the bar nearest to hand that bears the load as bought.

    Parameters
    ----------
    job : Job
        Part, rack and catalogue.
    bears : Bearing
        What the part bears.
    needs : tuple of SectionNeed
        What that takes of each section.

    Returns
    -------
    PlainBar or None
        None where no bar bears it.
    """
    if any(item.least is None for item in needs):
        return None
    works = [
        item.treatment
        for item in screened(job.asked, job.catalog, job.bench, _untreated)
        if item.gate is None and item.treatment.condition.name != "hard-element"
    ]
    # Only among those that are as near to hand is it asked which serves, and for what price.
    by_hand = groupby(sorted(works, key=_far_to_seek), key=_far_to_seek)
    served = ([w for w in near if _serves(_hrc_as_sold(w, job), bears)] for _, near in by_hand)
    fit = next((near for near in served if near), [])
    work = min(fit, key=lambda work: _price(work, job), default=None)
    if work is None:
        return None
    sold_hrc = _hrc_as_sold(work, job)
    low, middle, high = (float(x) for x in np.quantile(sold_hrc, (0.05, 0.5, 0.95)))
    return PlainBar(
        steel=work.steel.name,
        condition=work.condition.name,
        hardness=spread((low, middle, high), "HRC", "hardness as sold", steel=work.steel.name),
        text=f"{work.steel.name}, {work.condition.name}, {shown(middle)} as sold",
    )


def _untreated(steel: Steel, route: Route) -> bool:
    """Return whether a route leaves any steel as bought."""
    del steel
    return route.process == "none"


def _far_to_seek(work: Treatment) -> tuple[bool, int]:
    """Return the rack before the shop, and what every shop has before the rest."""
    return work.stock is None, _SELDOM.index(work.condition.availability)


def _price(work: Treatment, job: Job) -> float:
    """Return what a bar costs that is left as bought."""
    return float(np.median(bill(work, NO_TEMPER, order_of(job)).cost))


def _hrc_as_sold(work: Treatment, job: Job) -> Floats:
    """Return the hardness of a bar as sold, over the sample. [HRC]."""
    return supply_hrc(work.condition, job.of_steel(work.steel.slug))


def _serves(sold_hrc: Floats, bears: Bearing) -> bool:
    """Return whether nine bars in ten bear nine loads in ten."""
    if np.isnan(sold_hrc).any():
        return False
    softest_hv = float(hv_from_hrc(np.quantile(sold_hrc, 0.1), outside="extend"))
    hv = np.array([max(softest_hv, HV[0])])
    load = over(NINE_IN_TEN)
    strong = not bears.is_known or all(
        float(section_factor(bears, n, hv)[0]) >= load for n in range(len(bears.stressed))
    )
    return strong and all(
        float(corner_factor(corner, hv)[0]) >= load for corner in bears.corners
    )
