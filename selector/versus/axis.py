"""What two options are compared along: quantity, hourly rate, price of the bar, crack rate."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

import numpy as np

from catalog.price import Prices
from selector.figure import median
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.versus.record import Axis
from selector.versus.side import Pair

QUANTITIES = (1, 2, 3, 5, 7, 10, 15, 20, 30, 50, 70, 100, 150, 200, 300, 500)
# How far each axis is searched: the price ratio and the rate from nearly nothing to absurd.
_RATIO, _RATE_PER_H, _CRACK = (0.05, 20.0), (1.0, 400.0), (0.001, 0.9)
# At a place on an axis: both sides and the job there.
Place = Callable[[float], tuple[Pair, Job]]


def of_quantity(job: Job, count: float) -> Job:
    """Return the job for another number of parts.

    Its memo is shared, because nothing that is kept there reads the quantity.

    Parameters
    ----------
    job : Job
        As asked.
    count : float
        Pieces.

    Returns
    -------
    Job
        All else the same.
    """
    part = job.asked.part.model_copy(update={"quantity": round(count)})
    return replace(job, asked=job.asked.model_copy(update={"part": part}))


def at_prices(job: Job, changes: Mapping[str, object]) -> Job:
    """Return the job under another price list.

    Its memo is shared, because nothing that is kept there reads a price.

    Parameters
    ----------
    job : Job
        As asked.
    changes : mapping of str to object
        Fields of the price list with their new values.

    Returns
    -------
    Job
        All else the same.
    """
    prices = job.catalog.prices.model_copy(update=dict(changes))
    return replace(job, catalog=replace(job.catalog, prices=prices))


def bar_per_kg(treatment: Treatment, prices: Prices) -> float:
    """Return the price of a treatment's bar.

    Parameters
    ----------
    treatment : Treatment
        Steel and condition.
    prices : Prices
        The price list.

    Returns
    -------
    float
        Per kg, in the currency of the list.
    """
    if treatment.condition.name == "hard-element":
        return prices.hard_element_per_kg
    factor = prices.condition_factor.get(treatment.condition.name, 1.0)
    return prices.steel_per_kg.get(treatment.steel.slug, prices.default_per_kg) * factor


def _dearer(pair: Pair, prices: Prices, times: float) -> dict[str, object]:
    """Return the changes to a price list that make the second's bar dearer, not the first's."""
    first, second = pair[0].treatment, pair[1].treatment
    name, slug = second.condition.name, second.steel.slug
    if name == "hard-element":
        return {"hard_element_per_kg": times * prices.hard_element_per_kg}
    if slug == first.steel.slug:
        factor = times * prices.condition_factor.get(name, 1.0)
        return {"condition_factor": {**prices.condition_factor, name: factor}}
    own = prices.steel_per_kg.get(slug, prices.default_per_kg)
    return {"steel_per_kg": {**prices.steel_per_kg, slug: times * own}}


@dataclass(frozen=True, slots=True, eq=False)
class Line:
    """One axis: from where to where, where the part stands now, and what changes along it."""

    axis: Axis
    unit: str
    now: float
    ends: tuple[float, float]
    at: Place
    whole: bool = False


def lines(pair: Pair, job: Job) -> tuple[Line, ...]:
    """Return the axes that mean something for these two.

    Parameters
    ----------
    pair : tuple of Side
        The two.
    job : Job
        Part, prices, samples.

    Returns
    -------
    tuple of Line
        Quantity and hourly rate always; bar price and crack rate where they decide anything.
    """
    prices, count = job.catalog.prices, job.asked.part.quantity
    known = [
        Line(
            "quantity",
            "pieces",
            float(count),
            (1.0, float(QUANTITIES[-1])),
            lambda x: (pair, of_quantity(job, x)),
            whole=True,
        ),
        Line(
            "hourly rate",
            f"{prices.currency}/h",
            prices.labour_per_h,
            _RATE_PER_H,
            lambda x: (pair, at_prices(job, {"labour_per_h": x})),
        ),
    ]
    ratio = _price_ratio(pair, prices)
    if ratio is not None:
        known.append(
            Line(
                "bar price",
                "second bar over first, per kg",
                ratio,
                _RATIO,
                lambda x: (pair, at_prices(job, _dearer(pair, prices, x / ratio))),
            )
        )
    if any(side.prediction.crack.risk for side in pair):
        known.append(_crack_line(pair, job))
    return tuple(known)


def _price_ratio(pair: Pair, prices: Prices) -> float | None:
    """Return the second's price per kg over the first's, None where it decides nothing."""
    works = [side.treatment for side in pair]
    if any(work.stock is not None for work in works):
        return None
    if len({(work.steel.slug, work.condition.name) for work in works}) == 1:
        return None
    if all(work.condition.name == "hard-element" for work in works):
        return None
    first, second = (bar_per_kg(work, prices) for work in works)
    return second / first if first > 0 and second > 0 else None


def _crack_line(pair: Pair, job: Job) -> Line:
    """Return the axis of the crack rate of the cheaper side, of the other if only it cracks."""
    rates = [float(np.mean(side.prediction.crack.rate)) for side in pair]
    dear = [
        median(side.cost(job)) * (1e9 if rate == 0 else 1.0)
        for side, rate in zip(pair, rates, strict=True)
    ]
    worse = int(np.argmin(dear))

    def at(rate: float) -> tuple[Pair, Job]:
        sides = list(pair)
        sides[worse] = pair[worse].cracking(rate)
        return (sides[0], sides[1]), job

    which = ("first", "second")[worse]
    return Line("crack rate", f"of the {which}", rates[worse], _CRACK, at)
