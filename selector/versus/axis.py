"""What two options are compared along: quantity, hourly rate, price of the bar, crack rate."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from catalog.price import Prices
from selector.figure import median
from selector.option.cost import bar_per_kg
from selector.versus.record import Axis
from selector.versus.side import Pair

QUANTITIES = (1, 2, 3, 5, 7, 10, 15, 20, 30, 50, 70, 100, 150, 200, 300, 500)
# How far each axis is searched: the price ratio and the rate from nearly nothing to absurd.
_RATIO, _RATE_PER_H, _CRACK = (0.05, 20.0), (1.0, 400.0), (0.001, 0.9)


def _dearer(pair: Pair, prices: Prices, times: float) -> dict[str, object]:
    """Return the changes to a price list that make the second's bar dearer, not the first's."""
    first, second = pair.first.treatment, pair.second.treatment
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
    """One axis: from where to where, where the part stands now, and the pair along it."""

    axis: Axis
    unit: str
    now: float
    ends: tuple[float, float]
    at: Callable[[float], Pair]
    whole: bool = False


def lines(pair: Pair) -> tuple[Line, ...]:
    """Return the axes that mean something for these two."""
    prices, count = pair.job.catalog.prices, float(pair.job.asked.part.quantity)
    most, hour = float(QUANTITIES[-1]), f"{prices.currency}/h"
    lines = [
        Line("quantity", "pieces", count, (1.0, most), pair.of_quantity, whole=True),
        Line(
            "hourly rate",
            hour,
            prices.labour_per_h,
            _RATE_PER_H,
            lambda x: pair.at_prices({"labour_per_h": x}),
        ),
    ]
    ratio = _price_ratio(pair, prices)
    if ratio is not None:
        lines.append(
            Line(
                "bar price",
                "second bar over first, per kg",
                ratio,
                _RATIO,
                lambda x: pair.at_prices(_dearer(pair, prices, x / ratio)),
            )
        )
    if any(side.prediction.crack.risk for side in pair.sides):
        lines.append(_crack_line(pair))
    return tuple(lines)


def _price_ratio(pair: Pair, prices: Prices) -> float | None:
    """Return the second's price per kg over the first's, None where it decides nothing."""
    works = [side.treatment for side in pair.sides]
    if any(work.stock is not None for work in works):
        return None
    if len({(work.steel.slug, work.condition.name) for work in works}) == 1:
        return None
    if all(work.condition.name == "hard-element" for work in works):
        return None
    first, second = (bar_per_kg(work, prices) for work in works)
    return second / first if first > 0 and second > 0 else None


def _crack_line(pair: Pair) -> Line:
    """Return the axis of the crack rate of the cheaper side, of the other if only it cracks."""
    rates = [float(np.mean(side.prediction.crack.rate)) for side in pair.sides]
    dear = [
        median(made_out.cost) * (1e9 if rate == 0 else 1.0)
        for made_out, rate in zip(pair.bills(), rates, strict=True)
    ]
    if dear[0] <= dear[1]:
        return Line("crack rate", "of the first", rates[0], _CRACK, pair.first_cracking)
    return Line("crack rate", "of the second", rates[1], _CRACK, pair.second_cracking)
