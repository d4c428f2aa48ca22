"""Where two options change places: along quantity, bar price, hourly rate, crack rate, failure.

Each place is found by drawing up both bills, and scoring both, again along the axis.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr

from catalog.price import Prices
from selector.decision.judgement import judge
from selector.decision.option import Option, Scorer, scorer_of
from selector.figure import median
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.option.cost import Bill, bill, order_of
from selector.option.prediction import Prediction, mishaps
from selector.option.preparation import Prepared
from selector.option.reference_bar import reference_cost
from selector.option.temper_choice import Choice
from selector.versus import words
from selector.versus.record import Axis, Measure, SwapOut

Floats = NDArray[np.float64]
QUANTITIES = (1, 2, 3, 5, 7, 10, 15, 20, 30, 50, 70, 100, 150, 200, 300, 500)
# How far each axis is searched: the price ratio and the rate from nearly nothing to absurd.
_RATIO, _RATE_PER_H, _CRACK, _FAILURE = (0.05, 20.0), (1.0, 400.0), (0.001, 0.9), (1.0, 1e6)
_STEPS, _HALVINGS = 17, 30


@dataclass(frozen=True, slots=True, eq=False)
class Side:
    """One option, predicted once; what changes along an axis is worked out again."""

    ready: Prepared
    prediction: Prediction
    choice: Choice

    @property
    def treatment(self) -> Treatment:
        """What is done."""
        return self.ready.treatment

    def bill(self, job: Job) -> Bill:
        """Return the bill drawn up anew."""
        paths = mishaps(self.ready, self.prediction.surface_hrc, job)
        paths = replace(paths, crack_rate=self.prediction.crack.rate)
        return bill(self.treatment, self.choice.temper, order_of(job), paths)

    def cost(self, job: Job) -> Floats:
        """Return the cost of a good part, over the draws."""
        return self.bill(job).cost

    def option(self, job: Job, scorer: Scorer) -> Option:
        """Return the option judged and scored, its bill drawn up anew."""
        found = replace(self.prediction, bill=self.bill(job))
        return scorer.option(judge(found, self.choice.sensitivity_hrc, job), self.choice)

    def cracking(self, rate: float) -> "Side":
        """Return the same with another rate of cracking in every draw."""
        old = self.prediction.crack
        chance = ndtr(self.ready.normals["crack"])
        crack = replace(old, rate=np.full_like(old.rate, rate), cracked=chance < rate)
        return replace(self, prediction=replace(self.prediction, crack=crack))


Pair = tuple[Side, Side]
# At a place on an axis: both sides and the surroundings there.
Place = Callable[[float], tuple[Pair, Job]]


def both(pair: Pair, job: Job) -> tuple[Option, Option]:
    """Return both options judged and scored in the same surroundings.

    Parameters
    ----------
    pair : tuple of Side
        The two.
    job : Job
        Part, prices, draws.

    Returns
    -------
    tuple of Option
        In the same order.
    """
    scorer = scorer_of(job, reference_cost(job))
    return pair[0].option(job, scorer), pair[1].option(job, scorer)


# The axes


def of_quantity(job: Job, count: float) -> Job:
    """Return the surroundings for another number of parts.

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


def _at_prices(job: Job, changes: Mapping[str, object]) -> Job:
    """Return the surroundings under another price list."""
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
class _Line:
    """One axis: from where to where, where the part stands now, and what changes along it."""

    axis: Axis
    unit: str
    now: float
    ends: tuple[float, float]
    at: Place
    whole: bool = False


def _lines(pair: Pair, job: Job) -> tuple[_Line, ...]:
    """Return the axes that mean something for these two."""
    prices, count = job.catalog.prices, job.asked.part.quantity
    found = [
        _Line(
            "quantity",
            "pieces",
            float(count),
            (1.0, float(QUANTITIES[-1])),
            lambda x: (pair, of_quantity(job, x)),
            whole=True,
        ),
        _Line(
            "hourly rate",
            f"{prices.currency}/h",
            prices.labour_per_h,
            _RATE_PER_H,
            lambda x: (pair, _at_prices(job, {"labour_per_h": x})),
        ),
    ]
    ratio = _price_ratio(pair, prices)
    if ratio is not None:
        found.append(
            _Line(
                "bar price",
                "second bar over first, per kg",
                ratio,
                _RATIO,
                lambda x: (pair, _at_prices(job, _dearer(pair, prices, x / ratio))),
            )
        )
    if any(side.prediction.crack.risk for side in pair):
        found.append(_crack_line(pair, job))
    return tuple(found)


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


def _crack_line(pair: Pair, job: Job) -> _Line:
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
    return _Line("crack rate", f"of the {which}", rates[worse], _CRACK, at)


# Where they swap


def swaps(pair: Pair, job: Job) -> list[SwapOut]:
    """Return where the two change places, by cost and by score, along every axis.

    Parameters
    ----------
    pair : tuple of Side
        The two.
    job : Job
        Part, prices, draws.

    Returns
    -------
    list of SwapOut
        By cost and by score for each axis, and by cost for that of failure.
    """
    found = []
    measures: tuple[Measure, ...] = ("cost", "score")
    for line in _lines(pair, job):
        for by in measures:
            gap = _cost_gap(line.at) if by == "cost" else _score_gap(line.at)
            found.append(_swap(line, by, gap, pair))
    return [*found, _failure_swap(pair, job)]


def _cost_gap(at: Place) -> Callable[[float], float]:
    """Return how much more the first costs than the second, along an axis."""

    def gap(x: float) -> float:
        pair, there = at(x)
        first, second = (median(side.cost(there)) for side in pair)
        return first - second

    return gap


def _score_gap(at: Place) -> Callable[[float], float]:
    """Return how far the second scores above the first, along an axis."""

    def gap(x: float) -> float:
        pair, there = at(x)
        first, second = both(pair, there)
        return second.score - first.score

    return gap


def _swap(line: _Line, by: Measure, gap: Callable[[float], float], pair: Pair) -> SwapOut:
    """Return where the gap changes its sign nearest to where the part stands now."""
    low, high = line.ends
    at = _crossing(gap, line)
    ahead = pair[0 if gap(line.now) <= 0 else 1].treatment.steel.name
    return SwapOut(
        axis=line.axis,
        by=by,
        unit=line.unit,
        now=round(line.now, 4),
        at=at,
        low=low,
        high=high,
        ahead_now="first" if gap(line.now) <= 0 else "second",
        text=words.swapped(line.axis, by, line.unit, (line.now, at, low, high), ahead),
    )


def _crossing(gap: Callable[[float], float], line: _Line) -> float | None:
    """Return the nearest place where a gap changes its sign, None where it never does."""
    low, high = line.ends
    steps = np.geomspace(low, high, _STEPS)
    places = np.unique(np.append(np.round(steps) if line.whole else steps, line.now))
    signs = np.array([gap(float(x)) <= 0 for x in places])
    turns = np.flatnonzero(signs[1:] != signs[:-1])
    if not turns.size:
        return None
    away = np.abs(np.log(np.sqrt(places[turns] * places[turns + 1]) / line.now))
    turn = int(turns[np.argmin(away)])
    left, right, sign = float(places[turn]), float(places[turn + 1]), bool(signs[turn])
    for _ in range(_HALVINGS):
        if (line.whole and right - left <= 1) or right / left < 1.001:
            break
        middle = (left * right) ** 0.5
        middle = float(np.clip(round(middle), left + 1, right - 1)) if line.whole else middle
        if (gap(middle) <= 0) == sign:
            left = middle
        else:
            right = middle
    return right if line.whole else float(f"{(left * right) ** 0.5:.3g}")


def _failure_swap(pair: Pair, job: Job) -> SwapOut:
    """Return what a failure in service would have to cost to change the cheaper one."""
    options = both(pair, job)
    chances = [option.judged.failing_all for option in options]
    cost = [median(option.judged.prediction.bill.cost) for option in options]

    def gap(x: float) -> float:
        return cost[0] + x * chances[0] - cost[1] - x * chances[1]

    currency = job.catalog.prices.currency
    stated = job.asked.load.failure_cost
    line = _Line("failure cost", currency, stated or 1.0, _FAILURE, lambda _: (pair, job))
    known = not any(np.isnan(chances))
    at = _crossing(gap, line) if known else None
    ahead = 0 if gap(line.now) <= 0 or not known else 1
    names = [side.treatment.steel.name for side in pair]
    return SwapOut(
        axis="failure cost",
        by="cost",
        unit=currency,
        now=stated,
        at=at,
        low=_FAILURE[0],
        high=_FAILURE[1],
        ahead_now=("first", "second")[ahead],
        text=words.failing(names[ahead], at, chances, currency),
    )
