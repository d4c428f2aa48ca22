"""How firm a choice is: who is first over samples and weights, what a wrong choice costs."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.decision.near_tie import leaders
from selector.decision.standing import Standing, expected, outcomes

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
# How sure a user is of his weights: a weight of 0.2 then has an sd of 0.07. Estimate. [-]
CONCENTRATION = 30.0
# So many sets of weights go with each sample, and so many by themselves.
EACH, SETS = 2, 128
_SEED = 20_262


@dataclass(frozen=True, slots=True, eq=False)
class Firmness:
    """Shares of being first and what it costs not to be; arrays have shape (options,).

    `first` and `three` run over outcomes and weights at once, `by_outcome` over the samples at
    the user's weights, `by_weights` over the weights at the expected score, as the order goes.
    `regret` is in score, `regret_money` in currency, its mean and its 95th percentile.
    """

    first: Floats
    three: Floats
    by_outcome: Floats
    by_weights: Floats
    regret: Floats
    regret_money: Floats
    regret_money_p95: Floats


def dirichlet(weights: Floats, count: int, concentration: float = CONCENTRATION) -> Floats:
    """Return sets of weights scattered about given ones.

    Parameters
    ----------
    weights : ndarray
        Weights that add up to 1; shape (criteria,). A weight of 0 stays 0. [-]
    count : int
        How many sets.
    concentration : float
        How close they keep: the sd of a weight w is ``sqrt(w (1 - w) / (concentration + 1))``.

    Returns
    -------
    ndarray
        Sets that add up to 1 each, the same at every call; shape (count, criteria). [-]

    Notes
    -----
    Dirichlet with parameters ``concentration · w``, made of gamma variates, chapter 49 of [1]_.

    References
    ----------
    .. [1] S. Kotz, N. Balakrishnan, N. L. Johnson, Continuous Multivariate Distributions,
       volume 1, Wiley, 2000 (from memory).
    """
    dice = np.random.default_rng(_SEED)
    parts = dice.standard_gamma(concentration * weights, size=(count, len(weights)))
    # Weights of next to nothing alone can all come out as nothing.
    parts = np.where(parts.sum(axis=1, keepdims=True) > 0.0, parts, weights)
    return np.asarray(parts / parts.sum(axis=1, keepdims=True))


def firmness(standing: Standing, weights: Floats, *, each: int = EACH) -> Firmness:
    """Return how firm an order is.

    Parameters
    ----------
    standing : Standing
        What the order is made from.
    weights : ndarray
        The user's weights; shape (criteria,). [-]
    each : int
        How many sets of weights go with each sample.

    Returns
    -------
    Firmness
        First is who leads by the rule of the advice, near ties by ease included.
    """
    count = standing.merit.shape[1]
    scattered = dirichlet(weights, each * count).reshape(each, count, len(weights))
    scores = np.concatenate([outcomes(standing, part) for part in scattered], axis=1)
    lead = leaders(standing.claims, scores, 3)
    at_weights = leaders(standing.claims, outcomes(standing, weights))[0]
    by_weights = leaders(standing.claims, expected(standing, dirichlet(weights, SETS)))[0]
    money = _regret_money(standing, lead[0])
    return Firmness(
        first=_shares(lead[:1], len(standing.ids)),
        three=_shares(lead, len(standing.ids)),
        by_outcome=_shares(at_weights[None], len(standing.ids)),
        by_weights=_shares(by_weights[None], len(standing.ids)),
        regret=np.mean(scores.max(axis=0) - scores, axis=1),
        regret_money=money.mean(axis=1),
        regret_money_p95=np.quantile(money, 0.95, axis=1),
    )


def _shares(lead: Ints, count: int) -> Floats:
    """Return in which share of the cases each option is among those that lead. [-]."""
    return np.asarray(np.bincount(lead.ravel(), minlength=count) / lead.shape[1])


def _regret_money(standing: Standing, best: Ints) -> Floats:
    """Return what each option costs more than the one that leads a case; (options, cases)."""
    # What does not come out right is paid for and then made anew as the best one.
    times = len(best) // standing.cost.shape[1]
    cost, right = np.tile(standing.cost, times), np.tile(standing.right, times)
    cases = np.arange(len(best))
    least, mended = cost[best, cases], right[best, cases]
    lost = np.where(right | ~mended, cost - least, cost)
    lost[best, cases] = 0.0
    return np.maximum(lost, 0.0)
