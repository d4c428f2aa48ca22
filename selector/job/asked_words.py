"""The hardness that a zone asks for in words, and what still passes."""

from selector.job.demand import Demand
from selector.wording import shown


def asked_words(demand: Demand) -> str:
    """Return the hardness asked for, as the user wrote it, and what still passes.

    Parameters
    ----------
    demand : Demand
        What the zone asks.

    Returns
    -------
    str
        For instance "50 HRC (48 with slack)"; what was derived has a floor under its window.
    """
    low, floor = demand.low_hrc, demand.floor_hrc
    if floor is None:
        return "no hardness"
    if low is None or round(low) == round(floor):
        return shown(floor)
    return f"{shown(low)} ({floor:.0f} {'at least' if demand.derived else 'with slack'})"


def most_words(demand: Demand) -> str | None:
    """Return the most hardness that is wanted, and what still passes; none where all is.

    Parameters
    ----------
    demand : Demand
        What the zone asks.

    Returns
    -------
    str or None
        For instance "56 HRC (59 with slack)".
    """
    high, ceiling = demand.high_hrc, demand.ceiling_hrc
    if ceiling is None:
        return None
    if high is None or round(high) == round(ceiling):
        return shown(ceiling)
    return f"{shown(high)} ({ceiling:.0f} with slack)"
