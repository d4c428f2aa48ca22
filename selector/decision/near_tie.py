"""The one rule of near ties: of options that score about alike, the easiest had stands first.

Whatever orders options asks here: the advice itself, other weights and prices, the one that
speaks for its family, and the sentences that say why one stands before another.
"""

from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
Ints = NDArray[np.int64]
# Scores nearer than this are a tie: weights and ranges are not known better. Estimate. [-]
NEAR = 0.05
# What costs so many times as much is no tie: nobody pays it to save an errand. Estimate. [-]
DEARER = 2.0
# Scores lie between 0 and 1: what is taken stands so far below all others. [-]
_TAKEN = 9.0


@dataclass(frozen=True, slots=True, eq=False)
class Claims:
    """What besides its score gives an option its place; each of shape (options,).

    `back` is taken off a score. `ease` is a rank, least first. `enough` is how often what an
    option ties with may come right, `mark` how sure an option asks what ties with it to be,
    `cost` what it costs and `dear` what that which ties with it may cost, in any currency.
    """

    back: Floats
    ease: Ints
    enough: Floats
    mark: Floats
    cost: Floats
    dear: Floats

    def of(self, places: list[int]) -> "Claims":
        """Return the same for some of the options, counted from 0."""
        return Claims(*(getattr(self, field.name)[places] for field in fields(self)))


def standings(claims: Claims, scores: Floats) -> Floats:
    """Return scores less what options are set back by; shape (options, cases). [-]."""
    return np.asarray(np.asarray(scores, dtype=float) - claims.back[:, None])


def tied(claims: Claims, standing: Floats, best: Ints) -> Bools:
    """Return which options tie with one of them.

    Parameters
    ----------
    claims : Claims
        What besides their scores gives options their place.
    standing : ndarray
        Scores less what options are set back by; shape (options, cases). [-]
    best : ndarray
        Which option each is held against; shape (cases,).

    Returns
    -------
    ndarray
        True where an option stands near it or above, is sure enough and not much dearer;
        shape as `standing`.
    """
    near = standing >= np.take_along_axis(standing, best[None], axis=0) - NEAR
    sure = claims.enough[:, None] >= claims.mark[best]
    return np.asarray(near & sure & (claims.cost[:, None] <= claims.dear[best]))


def leaders(claims: Claims, scores: Floats, places: int = 1) -> Ints:
    """Return which options lead.

    Parameters
    ----------
    claims : Claims
        What besides their scores gives options their place.
    scores : ndarray
        Scores; shape (options, cases). [-]
    places : int
        How many places are filled; the rest is not ordered.

    Returns
    -------
    ndarray
        Places of the options as given, the first in row 0; shape (places, cases).
    """
    left = standings(claims, scores)
    cases = np.arange(left.shape[1])
    filled = []
    for _ in range(min(places, len(left))):
        tie = tied(claims, left, left.argmax(axis=0))
        # Among near ties the easiest, of equals the better.
        key = np.where(tie, _TAKEN * claims.ease[:, None] - left, np.inf)
        first = key.argmin(axis=0)
        filled.append(first)
        left[first, cases] = -_TAKEN
    return np.array(filled, dtype=np.int64).reshape(len(filled), left.shape[1])


def by_ease(claims: Claims, scores: Floats) -> bool:
    """Return whether ease alone puts the first of two before the second.

    Parameters
    ----------
    claims : Claims
        What besides their scores gives two options their place, in the order they stand.
    scores : ndarray
        Their scores; shape (2,). [-]

    Returns
    -------
    bool
        True where the first scores no better, is near, not much dearer, and is easier had or
        less work. Whether it is as sure is not asked again: what stands lower comes first by
        a tie alone, be it with a third.
    """
    first, second = standings(claims, scores[:, None])[:, 0]
    near = first <= second <= first + NEAR and claims.cost[0] <= claims.dear[1]
    return bool(near and claims.ease[0] < claims.ease[1])
