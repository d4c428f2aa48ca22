"""What other plain methods say of the same options: a check on the reference ideal.

Merits are the expected ones, between 0 and 1 on ranges fixed by the requirement. SPOTIS on the
same ranges (distance to the ideal, the weighted sum of 1 - merit) is 1 minus the weighted sum
and so gives its order by algebra: it is left out, as its agreement would prove nothing. Methods
of other families are in `second_opinion`.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.decision.ranking import reference_ideal

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Comparison:
    """The order another method gives to the same options; places count from 1, ties share."""

    method: str
    places: tuple[int, ...]


def weighted_sum(merit: Floats, weights: Floats) -> Floats:
    """Return the score of the weighted sum.

    Parameters
    ----------
    merit : ndarray
        Merits; shape (options, criteria). [-]
    weights : ndarray
        Weights that add up to 1; shape (criteria,). [-]

    Returns
    -------
    ndarray
        Score between 0 and 1, higher is better; shape (options,). [-]

    Notes
    -----
    ``S = Σ w m``, eq. 1 of [1]_ with additive values.

    References
    ----------
    .. [1] P. C. Fishburn, Additive utilities with incomplete product sets, Operations Research
       15, 1967, 537-542 (from memory).

    Examples
    --------
    >>> weighted_sum(np.array([[1.0, 0.5]]), np.array([0.25, 0.75]))
    array([0.625])
    """
    # A plain sum over each row: a matrix product may round by how many rows there are.
    return np.asarray(np.einsum("ik,k->i", merit, weights))


def topsis(merit: Floats, weights: Floats) -> Floats:
    """Return the relative closeness of TOPSIS to the best of what is offered.

    Unlike the reference ideal it measures from the best and worst values among the options, so
    an also-ran can change the order of the others.

    Parameters
    ----------
    merit : ndarray
        Merits, all on one scale; shape (options, criteria). [-]
    weights : ndarray
        Weights; shape (criteria,). [-]

    Returns
    -------
    ndarray
        Closeness between 0 and 1, higher is better; shape (options,). NaN where nothing that
        carries weight sets the options apart. [-]

    Notes
    -----
    ``C = D⁻ / (D⁺ + D⁻)``, D⁺ and D⁻ the distances of w m from its best and worst value by
    criterion. [1]_ Its vector normalisation is left out, as merits share one scale.

    References
    ----------
    .. [1] C. L. Hwang, K. Yoon, Multiple Attribute Decision Making, Springer, 1981, section
       TOPSIS (from memory).

    Examples
    --------
    >>> topsis(np.array([[1.0, 0.0], [0.0, 1.0]]), np.array([0.75, 0.25]))
    array([0.75, 0.25])
    """
    weighted = merit * weights
    to_best = np.sqrt(((weighted.max(axis=0) - weighted) ** 2).sum(axis=1))
    to_worst = np.sqrt(((weighted - weighted.min(axis=0)) ** 2).sum(axis=1))
    apart = to_best + to_worst
    closeness = np.full(len(merit), np.nan)
    np.divide(to_worst, apart, out=closeness, where=apart > 0.0)
    return closeness


def places(score: Floats) -> tuple[int, ...]:
    """Return the place of each score, the highest first; equal scores share a place.

    Parameters
    ----------
    score : ndarray
        Scores, none of them NaN; shape (options,). [-]

    Returns
    -------
    tuple of int
        Places from 1, without gaps. [-]

    Examples
    --------
    >>> places(np.array([0.2, 0.9, 0.2]))
    (2, 1, 2)
    """
    return tuple((np.unique(-score, return_inverse=True)[1] + 1).tolist())


def set_apart(merit: Floats, weights: Floats) -> bool:
    """Return whether anything that carries weight sets the options apart."""
    # False also where there are fewer than two options.
    return len(merit) > 1 and bool(np.ptp(merit[:, weights > 0.0], axis=0).any())


def other_methods(merit: Floats, weights: Floats) -> tuple[Comparison, ...]:
    """Return the order of the same options by other plain methods."""
    # Weighted sum, TOPSIS and the reference ideal of the expected merits, which ranks without
    # the spread of the samples; empty where nothing sets the options apart.
    if not set_apart(merit, weights):
        return ()
    scores = {
        "weighted sum": weighted_sum(merit, weights),
        "TOPSIS": topsis(merit, weights),
        "reference ideal at the expected values": reference_ideal(merit, weights),
    }
    return tuple(Comparison(method, places(score)) for method, score in scores.items())
