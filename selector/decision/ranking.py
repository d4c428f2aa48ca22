"""Ranking by the Reference Ideal Method, over all draws at once.

The method weighs by (w·Δ)², so it is given the square roots of the weights. Its ranges are
fixed by the requirement, hence each option's score depends on that option alone.
"""

from dataclasses import dataclass
from typing import Any

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
        Weights that add up to 1; shape (criteria,). [-]

    Returns
    -------
    ndarray
        Index between 0 and 1, higher is better; the last axis is gone. [-]

    Notes
    -----
    R = I⁻ / (I⁺ + I⁻), I⁺ the distance to the ideal and I⁻ that to the worst, in the weighted
    normal space. [1]_ scikit-criteria holds the same method, row by row in Python; a test
    compares the two. Here it runs over (draws, options) in one pass.

    References
    ----------
    .. [1] E. Cables, M. T. Lamata, J. L. Verdegay, RIM - reference ideal method in
       multicriteria decision making, Information Sciences 337-338, 2016, 1-10.
    """
    # A plain sum over each row: a matrix product may round by how many rows there are.
    to_ideal = np.sqrt(np.einsum("...k,k->...", (1.0 - merit) ** 2, weights))
    to_worst = np.sqrt(np.einsum("...k,k->...", merit**2, weights))
    index: Floats = to_worst / (to_ideal + to_worst)
    return index


def pairwise_share(first: Floats, second: Floats) -> float:
    """Return the share of draws in which one option scores above another; ties count half.

    Parameters
    ----------
    first, second : ndarray
        Scores over the draws. [-]

    Returns
    -------
    float
        Share of draws. [-]
    """
    return float(np.mean((first > second) + 0.5 * (first == second)))


@dataclass(frozen=True, slots=True)
class Comparison:
    """The order other methods give to the same options; places count from 1."""

    method: str
    places: tuple[int, ...]


def other_methods(merit: Floats, weights: Floats) -> tuple[Comparison, ...]:
    """Return the order by other methods of the same options, as a check on the method.

    Parameters
    ----------
    merit : ndarray
        Expected merits; shape (options, criteria). [-]
    weights : ndarray
        Weights; shape (criteria,). [-]

    Returns
    -------
    tuple of Comparison
        Weighted sum, TOPSIS and SPOTIS by scikit-criteria; empty where there is no order.
    """
    # scikit-criteria takes two seconds to import, so only a ranking pays for it.
    import skcriteria  # noqa: PLC0415
    from skcriteria.agg.rim import RIM  # noqa: PLC0415
    from skcriteria.agg.simple import WeightedSumModel  # noqa: PLC0415
    from skcriteria.agg.spotis import SPOTIS  # noqa: PLC0415
    from skcriteria.agg.topsis import TOPSIS  # noqa: PLC0415

    # A tiny floor keeps the weighted sum's demand for positive values.
    floor = 1e-6
    merit = np.clip(merit, floor, 1)
    # Where nothing that carries weight sets them apart there is no order: TOPSIS divides by it.
    if len(merit) < 2 or not np.ptp(merit[:, weights > 0], axis=0).any():
        return ()
    count = merit.shape[1]
    matrix = skcriteria.mkdm(merit, [max] * count, weights=weights)
    unit = [(floor, 1.0)] * count
    results: tuple[tuple[str, Any], ...] = (
        ("weighted sum", WeightedSumModel().evaluate(matrix)),
        ("TOPSIS", TOPSIS().evaluate(matrix)),
        ("SPOTIS", SPOTIS().evaluate(matrix, bounds=np.array(unit))),
        (
            "reference ideal at the expected values",
            RIM().evaluate(
                skcriteria.mkdm(matrix.matrix, [max] * count, weights=np.sqrt(weights)),
                ref_ideals=[(1.0, 1.0)] * count,
                ranges=[(0.0, 1.0)] * count,
            ),
        ),
    )
    return tuple(
        Comparison(name, tuple(int(place) for place in result.rank_))
        for name, result in results
    )
