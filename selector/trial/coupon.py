"""The coupons of a trial: off which bar, and how large."""

import numpy as np
from numpy.typing import NDArray

from selector.procedure.doing import Doing
from selector.record import SetUpOut
from selector.trial.record import CouponOut, Subject

# A coupon shorter than this cannot be held or snapped. Common practice. [mm]
SHORTEST_MM, TO_FIVE_MM = 40.0, 5.0


def length_mm(do: Doing) -> float:
    """Return how long a coupon is: twice as long as thick; of a zone, with steel behind it.

    Parameters
    ----------
    do : Doing
        The option as it is done.

    Returns
    -------
    float
        To five millimetres, no longer than the part or the least that can be held. [mm]
    """
    section = do.part.section[do.job.lead_section]
    thick = section.narrowest_mm
    wanted = 2.0 * thick
    if do.is_local:
        # The heat flows off into what lies behind the zone, as it does in the part.
        wanted = do.zone_end_mm - do.zone_start_mm + past_mm(do.set_up) + 2.0 * thick
    return to_five(max(min(wanted, do.part.length_mm), SHORTEST_MM))


def to_five(size_mm: float) -> float:
    """Return a length rounded up to five millimetres, as it is sawn. [mm]."""
    return float(TO_FIVE_MM * np.ceil(size_mm / TO_FIVE_MM - 1e-9))


def past_mm(set_up: SetUpOut | None) -> float:
    """Return how far past the zone it is heated. [mm]."""
    return (set_up.past_zone_mm if set_up is not None else None) or 0.0


def bar_words(do: Doing) -> str:
    """Return which bar a coupon comes off: the rack's by its name, or the one to buy."""
    stock, steel = do.work.stock, do.steel
    if stock is None:
        return f"the same bar as the part: {steel.spoken}, {do.work.condition.name}"
    size = "" if stock.size is None else f", {stock.size:g} mm"
    return f"the bar in the rack: {stock.steel}{size}"


def expected(sample: NDArray[np.float64], digits: int = 3) -> tuple[float, float, float]:
    """Return what a coupon is expected to read: 5, 50 and 95 in 100 of a sample, rounded."""
    low, middle, high = (
        round(float(q), digits) for q in np.quantile(sample, (0.05, 0.5, 0.95))
    )
    return low, middle, high


def coupons(do: Doing, subject: Subject, count: int) -> tuple[CouponOut, ...]:
    """Return the coupons of a trial, numbered.

    Parameters
    ----------
    do : Doing
        The option as it is done.
    subject : str
        What the trial is to settle.
    count : int
        How many.

    Returns
    -------
    tuple of CouponOut
        Each treated as the part will be.
    """
    section = do.part.section[do.job.lead_section]
    note = "with the holes, steps and corners of the part" if subject == "crack" else ""
    return tuple(
        CouponOut(
            number=number,
            steel=do.steel.name,
            steel_slug=do.steel.slug,
            condition=do.work.condition.name,
            bar=bar_words(do),
            shape=section.shape,
            size_mm=round(section.size, 2),
            width_mm=None if section.width is None else round(section.width, 2),
            bore_mm=None if section.bore is None else round(section.bore, 2),
            length_mm=length_mm(do),
            note=note or "as the part",
        )
        for number in range(1, count + 1)
    )
