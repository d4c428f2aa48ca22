"""The same options by other weights: nothing is simulated again."""

import numpy as np

from selector.advice.firm import turns_out
from selector.advice.record import ReweighedOut
from selector.decision.firmness import firmness
from selector.decision.near_tie import leaders
from selector.decision.standing import Standing, outcomes
from selector.requirement.priority import CRITERIA, Priorities
from selector.undisturbed import undisturbed


@undisturbed()
def reweighed(standing: Standing, priorities: Priorities) -> ReweighedOut:
    """Return the order of the options of an advice by other weights.

    Each option keeps the temper, and each family its steel, that were best by the weights the
    advice was made with.

    Parameters
    ----------
    standing : Standing
        What the order is made from (`standing_of`), without the simulation.
    priorities : Priorities
        The other weights.

    Returns
    -------
    ReweighedOut
        Order, scores, shares, and between which weights the first stays first.
    """
    given = priorities.weights()
    weights = np.array([given[name] for name in CRITERIA])
    scores = outcomes(standing, weights).mean(axis=1)
    order = [int(k) for k in leaders(standing.claims, scores[:, None], len(scores))[:, 0]]
    shares = firmness(standing, weights).first
    return ReweighedOut(
        weights={name: round(given[name], 4) for name in CRITERIA},
        order=tuple(standing.ids[k] for k in order),
        scores={standing.ids[k]: round(float(scores[k]), 4) for k in order},
        first={standing.ids[k]: round(float(shares[k]), 4) for k in order},
        turns=turns_out(standing, weights),
    )
