"""Which uncertainty decides between two options: what is worth measuring before choosing."""

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


def explained(gap: Floats, causes: Sequence[Floats]) -> float:
    """Return which share of the variance of a gap goes with some uncertainties.

    Parameters
    ----------
    gap : ndarray
        What is explained: for instance the score of one option above another; (samples,). [-]
    causes : sequence of ndarray
        Standard normal samples of the uncertainties; (samples,) each. [-]

    Returns
    -------
    float
        Between 0 and 1: R² of a parabola in each cause, adjusted for how many terms it has, so
        that a cause that has nothing to do with it comes out near 0. [-]

    Notes
    -----
    ``R²adj = 1 - (1 - R²) (n - 1) / (n - p - 1)``. [1]_ With independent causes it is the
    first-order share of the variance, as far as a parabola follows it.

    References
    ----------
    .. [1] M. Ezekiel, Methods of Correlation Analysis, Wiley, 1930 (from memory).
    """
    spread = float(np.var(gap))
    if spread == 0.0 or not causes:
        return 0.0
    columns = [term for z in causes for term in (z, z**2 - 1.0)]
    moving = [column for column in columns if np.ptp(column) > 0.0]
    if not moving:
        return 0.0
    terms = np.column_stack([np.ones(len(gap)), *moving])
    fitted = terms @ np.linalg.lstsq(terms, gap, rcond=None)[0]
    r2 = 1.0 - float(np.mean((gap - fitted) ** 2)) / spread
    n, p = len(gap), len(moving)
    return max(0.0, 1.0 - (1.0 - r2) * (n - 1) / (n - p - 1))


def ranked(gap: Floats, causes: Mapping[str, Sequence[Floats]]) -> list[tuple[str, float]]:
    """Return named groups of uncertainties with the share of a gap's variance each explains.

    Parameters
    ----------
    gap : ndarray
        What is explained; shape (samples,). [-]
    causes : mapping of str to sequence of ndarray
        Samples of each group. [-]

    Returns
    -------
    list of tuple
        Name and share, the largest first. [-]
    """
    rows = [(name, explained(gap, group)) for name, group in causes.items()]
    return sorted(rows, key=lambda row: -row[1])
