"""Ranking by the Reference Ideal Method, over the whole sample at once.

The method weighs by (w·Δ)², so it is given the square roots of the weights. Its ranges are
fixed by the requirement, hence each option's score depends on that option alone.
"""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


def reference_ideal(merit: Floats, weights: Floats) -> Floats:
    """Return the relative index of the Reference Ideal Method.

    Parameters
    ----------
    merit : ndarray
        Merit of each criterion, between 0 and 1; criteria on the last axis. [-]
    weights : ndarray
        Weights that add up to 1; criteria on the last axis, others as those of merit or
        absent. [-]

    Returns
    -------
    ndarray
        Index between 0 and 1, higher is better; the last axis is gone. [-]

    Notes
    -----
    R = I⁻ / (I⁺ + I⁻), I⁺ the distance to the ideal and I⁻ that to the worst, in the weighted
    normal space. [1]_ scikit-criteria holds the same method, row by row in Python; a test
    compares the two. Here it runs over (samples, options) in one pass.

    References
    ----------
    .. [1] E. Cables, M. T. Lamata, J. L. Verdegay, RIM - reference ideal method in
       multicriteria decision making, Information Sciences 337-338, 2016, 1-10.
    """
    # A plain sum over each row: a matrix product may round by how many rows there are.
    to_ideal = np.sqrt(np.einsum("...k,...k->...", (1.0 - merit) ** 2, weights))
    to_worst = np.sqrt(np.einsum("...k,...k->...", merit**2, weights))
    index: Floats = to_worst / (to_ideal + to_worst)
    return index


def pairwise_share(first: Floats, second: Floats) -> float:
    """Return the share of the sample in which one option scores above another; ties count half.

    Parameters
    ----------
    first, second : ndarray
        Scores over the sample. [-]

    Returns
    -------
    float
        Share of the sample. [-]
    """
    return float(np.mean((first > second) + 0.5 * (first == second)))
