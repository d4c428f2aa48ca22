"""Where two options change places along an axis, by cost and by score.

Both bills are made out, and both options scored, again along each axis.
"""

from collections.abc import Callable
from functools import cache, lru_cache

import numpy as np

from selector.decision.option import Scorer, scorer_of
from selector.figure import median
from selector.job.job import Job
from selector.option.reference_bar import reference_cost
from selector.versus import words
from selector.versus.axis import Line, lines
from selector.versus.record import Measure, SwapOut
from selector.versus.side import Pair

# How dear a failure is tried: from nearly nothing to absurd.
_FAILURE = (1.0, 1e6)
_STEPS, _HALVINGS = 17, 30


def swaps(pair: Pair) -> list[SwapOut]:
    """Return where the two change places by cost and by score, and the cost of a failure."""
    out = []
    for line in lines(pair):
        out.append(_swap(line, "cost", _cost_gap(line), pair))
        out.append(_swap(line, "score", _score_gap(line), pair))
    return [*out, _failure_swap(pair)]


def _cost_gap(line: Line) -> Callable[[float], float]:
    """Return how much more the first costs than the second, along an axis."""

    def gap(x: float) -> float:
        first, second = line.at(x).bills()
        return median(first.cost) - median(second.cost)

    return gap


def _score_gap(line: Line) -> Callable[[float], float]:
    """Return how far the second scores above the first, along an axis."""

    @lru_cache(maxsize=1)
    def scorer(job: Job) -> Scorer:
        return scorer_of(job, reference_cost(job))

    def gap(x: float) -> float:
        pair = line.at(x)
        first, second = pair.scores(scorer(pair.job))
        return second - first

    return gap


def _swap(line: Line, by: Measure, gap: Callable[[float], float], pair: Pair) -> SwapOut:
    """Return where the gap changes its sign nearest to where the part stands now."""
    low, high = line.ends
    leads = gap(line.now) <= 0
    ahead = (pair.first if leads else pair.second).treatment.steel.spoken
    course = words.Course(line.now, _crossing(gap, line), low, high)
    return SwapOut(
        axis=line.axis,
        by=by,
        unit=line.unit,
        now=round(line.now, 4),
        at=course.at,
        low=low,
        high=high,
        ahead_now="first" if leads else "second",
        text=words.swapped(line.axis, by, line.unit, course, ahead),
    )


def _crossing(gap: Callable[[float], float], line: Line) -> float | None:
    """Return the nearest place where a gap changes its sign, None where it never does."""
    low, high = line.ends
    steps = np.geomspace(low, high, _STEPS)
    places = np.unique(np.append(np.round(steps) if line.whole else steps, line.now))
    away = np.abs(np.log(np.sqrt(places[:-1] * places[1:]) / line.now))

    @cache
    def leads(k: int) -> bool:
        return gap(float(places[k])) <= 0

    # Looked for from where the part stands outwards: the first turn met is the nearest.
    outwards = map(int, np.argsort(away, kind="stable"))
    turn = next((k for k in outwards if leads(k) != leads(k + 1)), None)
    if turn is None:
        return None
    left, right, sign = float(places[turn]), float(places[turn + 1]), leads(turn)
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


def _failure_swap(pair: Pair) -> SwapOut:
    """Return what a failure in service would have to cost to change the cheaper one."""
    first, second = (option.judged for option in pair.options())
    chances = (first.failing_all, second.failing_all)
    apart = median(first.prediction.bill.cost) - median(second.prediction.bill.cost)

    def gap(x: float) -> float:
        return apart + x * (first.failing_all - second.failing_all)

    currency, stated = pair.job.catalog.prices.currency, pair.job.asked.load.failure_cost
    line = Line("failure cost", currency, stated or 1.0, _FAILURE, lambda _: pair)
    known = not any(np.isnan(chances))
    at = _crossing(gap, line) if known else None
    leads = gap(line.now) <= 0 or not known
    low, high = _FAILURE
    ahead = (pair.first if leads else pair.second).treatment.steel.spoken
    return SwapOut(
        axis="failure cost",
        by="cost",
        unit=currency,
        now=stated,
        at=at,
        low=low,
        high=high,
        ahead_now="first" if leads else "second",
        text=words.failing(ahead, at, chances, currency),
    )
