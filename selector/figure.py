"""A predicted number with its range, and where it comes from."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Figure:
    """Median and 90 % range of one predicted quantity.

    `relation` names what computed it, `inputs` what went in, `source` where the relation or
    the value was published, and `validity` says in words which limits were left, if any.
    """

    value: float
    p05: float
    p95: float
    unit: str
    relation: str
    inputs: Mapping[str, float | str] = field(default_factory=dict)
    source: str = ""
    validity: tuple[str, ...] = ()


def median(draws: NDArray[np.float64]) -> float:
    """Return the upper middle value of draws: enough for a sentence, and quicker than a sort.

    Parameters
    ----------
    draws : ndarray
        One axis.

    Returns
    -------
    float
        Middle value; NaN where any draw is.
    """
    place = len(draws) // 2
    found = np.partition(draws, (place, -1))  # a NaN comes last
    return float("nan") if np.isnan(found[-1]) else float(found[place])


@dataclass(frozen=True, slots=True)
class Provenance:
    """What a figure is computed by, told apart from the numbers so that it is said once."""

    unit: str
    relation: str
    source: str
    inputs: Mapping[str, float | str] = field(default_factory=dict)
    validity: tuple[str, ...] = ()


def figure(draws: NDArray[np.float64], told: Provenance) -> Figure:
    """Return the figure of one quantity from its draws.

    Parameters
    ----------
    draws : ndarray
        Values over the draws; NaN where the quantity does not exist.
    told : Provenance
        Unit, relation, source, inputs and left limits.

    Returns
    -------
    Figure
        Median and 5 and 95 percent points.
    """
    if np.isnan(draws).any():
        low = middle = high = float("nan")
    else:
        # A sort and three readings: np.quantile does the same in ten times as long.
        at = np.array((0.05, 0.5, 0.95)) * (len(draws) - 1)
        low, middle, high = np.interp(at, np.arange(len(draws)), np.sort(draws)).tolist()
    return Figure(
        middle, low, high, told.unit, told.relation, told.inputs, told.source, told.validity
    )
