"""Weights from comparisons of criteria two at a time, and how far these contradict each other.

Published worked examples are in `tests/published`.
"""

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
# Mean consistency index of random matrices by size, from 1; Saaty 1980 (from memory). [-]
RANDOM_INDEX = (0.0, 0.0, 0.58, 0.90, 1.12, 1.24, 1.32, 1.41, 1.45)
# A ratio above this is to be looked into; Saaty 1980. [-]
CONSISTENT = 0.10
_ROUNDS = 200


def matrix_of(ratios: Mapping[tuple[str, str], float], names: Sequence[str]) -> Floats:
    """Return the reciprocal matrix of comparisons.

    Parameters
    ----------
    ratios : mapping of (str, str) to float
        How many times as important the first is as the second; each pair once. [-]
    names : sequence of str
        Of rows and columns.

    Returns
    -------
    ndarray
        Ones on the diagonal; shape (names, names). [-]
    """
    matrix = np.ones((len(names), len(names)))
    for (first, second), ratio in ratios.items():
        j, k = names.index(first), names.index(second)
        matrix[j, k], matrix[k, j] = ratio, 1.0 / ratio
    return matrix


def principal(matrix: Floats) -> tuple[Floats, float]:
    """Return the weights of a reciprocal matrix and its largest eigenvalue.

    Parameters
    ----------
    matrix : ndarray
        Comparisons; shape (n, n). [-]

    Returns
    -------
    tuple of ndarray and float
        Principal eigenvector adding up to 1, and its eigenvalue. [-]

    Notes
    -----
    ``A w = λmax w`` of [1]_, by repeated multiplication, which converges as all entries are
    above 0.

    References
    ----------
    .. [1] T. L. Saaty, The Analytic Hierarchy Process, McGraw-Hill, 1980 (from memory).

    Examples
    --------
    >>> weights, largest = principal(np.array([[1.0, 3.0], [1 / 3, 1.0]]))
    >>> weights.round(2).tolist(), round(largest, 6)
    ([0.75, 0.25], 2.0)
    """
    weights = np.full(len(matrix), 1.0 / len(matrix))
    largest = float(len(matrix))
    for _ in range(_ROUNDS):
        after = matrix @ weights
        largest = float(after.sum())
        weights = after / largest
    return weights, largest


def consistency_ratio(matrix: Floats) -> float:
    """Return how far comparisons contradict each other, against random ones.

    Parameters
    ----------
    matrix : ndarray
        Comparisons; shape (n, n), n up to 9. [-]

    Returns
    -------
    float
        0 where they agree, 1 where they are as good as random. [-]

    Notes
    -----
    ``CI = (λmax - n) / (n - 1)``, ``CR = CI / RI``. [1]_ Two criteria cannot contradict.

    References
    ----------
    .. [1] T. L. Saaty, The Analytic Hierarchy Process, McGraw-Hill, 1980 (from memory).
    """
    n = len(matrix)
    if n < 3:
        return 0.0
    index = (principal(matrix)[1] - n) / (n - 1)
    return max(0.0, index / RANDOM_INDEX[n - 1])


def oddest(matrix: Floats) -> tuple[int, int]:
    """Return the rows of the comparison that agrees least with the weights of all."""
    weights, _ = principal(matrix)
    off = np.abs(np.log(matrix * weights[None, :] / weights[:, None]))
    j, k = np.unravel_index(int(np.triu(off).argmax()), off.shape)
    return int(j), int(k)
