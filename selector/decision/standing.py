"""What the order is made from, kept so that it can be made again: merits, chances, costs.

Nothing here is simulated. Other weights, other prices or a part of the samples give another
order from the same arrays, by the rule of `preference.in_order`.
"""

from collections.abc import Collection
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.decision.criteria import Range
from selector.decision.near_tie import Claims
from selector.decision.option import Option
from selector.decision.preference import claims_of
from selector.decision.ranking import reference_ideal
from selector.requirement import Requirement
from selector.requirement.priority import CRITERIA

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
COST = CRITERIA.index("cost")


@dataclass(frozen=True, slots=True, eq=False)
class Standing:
    """Options in the order of the advice, with all that their order is made from.

    Shapes: `merit` (options, samples, criteria), `right` and `cost` (options, samples). `cost`
    is in currency; `claims` are what else gives options their places.
    """

    ids: tuple[str, ...]
    merit: Floats
    right: Bools
    cost: Floats
    claims: Claims
    budget: float | None
    scale: Range

    @property
    def passing(self) -> Bools:
        """Which samples come out right and inside the budget, if one is given."""
        return self.right if self.budget is None else self.right & (self.cost <= self.budget)

    def of(self, places: Collection[int]) -> "Standing":
        """Return the same for some of the options, counted from 0."""
        at = list(places)
        ids = tuple(self.ids[k] for k in at)
        rows = {name: getattr(self, name)[at] for name in ("merit", "right", "cost")}
        return replace(self, ids=ids, claims=self.claims.of(at), **rows)

    def priced(self, place: int, factor: float) -> "Standing":
        """Return the same with the cost of one option multiplied."""
        cost, merit = self.cost.copy(), self.merit.copy()
        cost[place] *= factor
        merit[place, :, COST] = self.scale.merit(cost[place])
        return replace(self, merit=merit, cost=cost)


def standing_of(
    options: tuple[Option, ...], asked: Requirement, ranges: tuple[Range, ...]
) -> Standing:
    """Return what the order of options is made from.

    Parameters
    ----------
    options : tuple of Option
        At least one, in the order of the advice.
    asked : Requirement
        What is asked.
    ranges : tuple of Range
        The range table of the criteria.

    Returns
    -------
    Standing
        Arrays alone: it holds on to no simulation.
    """
    return Standing(
        ids=tuple(option.id for option in options),
        merit=np.stack([option.merit for option in options]),
        right=np.stack([option.judged.right for option in options]),
        cost=np.stack([option.judged.values[:, COST] for option in options]),
        claims=claims_of(options, asked),
        budget=asked.limit.budget,
        scale=ranges[COST],
    )


def outcomes(standing: Standing, weights: Floats) -> Floats:
    """Return the score of each option in each sample, one that fails a gate counting nothing.

    Parameters
    ----------
    standing : Standing
        What the order is made from.
    weights : ndarray
        Weights that add up to 1; shape (criteria,), or (samples, criteria) for a set of weights
        of its own for each sample. [-]

    Returns
    -------
    ndarray
        Shape (options, samples). [-]
    """
    index = reference_ideal(standing.merit, weights)
    return np.where(standing.passing & np.isfinite(index), index, 0.0)


def expected(standing: Standing, weights: Floats) -> Floats:
    """Return the expected score of each option by many sets of weights.

    Parameters
    ----------
    standing : Standing
        What the order is made from.
    weights : ndarray
        Sets of weights that add up to 1; shape (sets, criteria). [-]

    Returns
    -------
    ndarray
        Mean over the samples; shape (options, sets). [-]
    """
    scores = np.zeros((len(standing.ids), len(weights)))
    passing, count = standing.passing, standing.merit.shape[1]
    # Seven digits are enough for a mean of hundreds, and take half the time.
    columns = np.ascontiguousarray(weights.T, dtype=np.float32)
    for k, merit in enumerate(standing.merit):
        rows = merit[passing[k] & np.isfinite(merit).all(axis=1)].astype(np.float32)
        to_worst = np.sqrt(rows**2 @ columns)
        to_ideal = np.sqrt((1.0 - rows) ** 2 @ columns)
        to_ideal += to_worst
        to_worst /= to_ideal
        scores[k] = to_worst.sum(axis=0) / count
    return scores
