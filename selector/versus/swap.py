"""Where two options change places along an axis, by cost and by score.

Each place is found by drawing up both bills, and scoring both, again along the axis.
"""

from collections.abc import Callable

import numpy as np

from selector.figure import median
from selector.job.job import Job
from selector.versus import words
from selector.versus.axis import Line, Place, lines
from selector.versus.record import Measure, SwapOut
from selector.versus.side import Pair, both

# How dear a failure is tried: from nearly nothing to absurd.
_FAILURE = (1.0, 1e6)
_STEPS, _HALVINGS = 17, 30


def swaps(pair: Pair, job: Job) -> list[SwapOut]:
    """Return where the two change places, by cost and by score, along every axis.

    Parameters
    ----------
    pair : tuple of Side
        The two.
    job : Job
        Part, prices, samples.

    Returns
    -------
    list of SwapOut
        By cost and by score for each axis, and by cost for that of failure.
    """
    places = []
    measures: tuple[Measure, ...] = ("cost", "score")
    for line in lines(pair, job):
        for by in measures:
            gap = _cost_gap(line.at) if by == "cost" else _score_gap(line.at)
            places.append(_swap(line, by, gap, pair))
    return [*places, _failure_swap(pair, job)]


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


def _swap(line: Line, by: Measure, gap: Callable[[float], float], pair: Pair) -> SwapOut:
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


def _crossing(gap: Callable[[float], float], line: Line) -> float | None:
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
    line = Line("failure cost", currency, stated or 1.0, _FAILURE, lambda _: (pair, job))
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
