"""The published or fitted range of each model, in one table.

A model answers outside its range where physics allows, but the answer is then marked and its
error is wider. `breaches` says in words which limits an input breaks.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import ArrayLike


@dataclass(frozen=True, slots=True)
class Limit:
    """The range of one input of one model, both ends included."""

    name: str
    low: float
    high: float
    unit: str
    source: str


# Keys are "<module>.<function>". One entry per public physics function; an empty tuple says
# that the function is an identity or holds everywhere.
LIMITS: Mapping[str, tuple[Limit, ...]] = MappingProxyType({})


def breaches(model: str, values: Mapping[str, ArrayLike]) -> tuple[str, ...]:
    """Return one sentence for each limit of `model` that `values` break.

    Parameters
    ----------
    model : str
        Key of `LIMITS`, "<module>.<function>".
    values : mapping of str to array_like
        Inputs by the names used in the limits; those without a limit are passed over.

    Returns
    -------
    tuple of str
        Empty when every value is inside.
    """
    sentences = []
    for limit in LIMITS[model]:
        if limit.name not in values:
            continue
        given = np.asarray(values[limit.name], dtype=float)
        low, high = float(np.nanmin(given)), float(np.nanmax(given))
        if low < limit.low or high > limit.high:
            worst = low if low < limit.low else high
            sentences.append(
                f"{limit.name} {worst:g} {limit.unit} is outside {limit.low:g} to "
                f"{limit.high:g} {limit.unit} ({limit.source})"
            )
    return tuple(sentences)
