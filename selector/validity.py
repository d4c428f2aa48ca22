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


_TEMPERING = "24 steels of Grange and Baughman 1956, Hollomon and Jaffe 1945, Penha 2010"
_BANDS = "32 hardenability bands"

# Keys are "<module>.<function>". Only ranges that something reads stand here: those whose
# breach an answer names or widens its error by. Other published ranges stand in the Notes of
# their functions.
LIMITS: Mapping[str, tuple[Limit, ...]] = MappingProxyType(
    {
        "hardenability.heat_curve": (
            Limit("C", 0.10, 0.65, "wt %", _BANDS),
            Limit("Mn", 0.0, 1.7, "wt %", _BANDS),
            Limit("Si", 0.0, 2.0, "wt %", _BANDS),
            Limit("Ni", 0.0, 4.0, "wt %", _BANDS),
            Limit("Cr", 0.0, 2.0, "wt %", _BANDS),
            Limit("Mo", 0.0, 0.6, "wt %", _BANDS),
        ),
        "tempering.tempered_hardness": (
            Limit("C", 0.25, 0.98, "wt %", _TEMPERING),
            Limit("Mn", 0.3, 1.85, "wt %", _TEMPERING),
            Limit("Si", 0.06, 1.62, "wt %", _TEMPERING),
            Limit("Ni", 0.0, 3.41, "wt %", _TEMPERING),
            Limit("Cr", 0.0, 1.57, "wt %", _TEMPERING),
            Limit("Mo", 0.0, 0.36, "wt %", _TEMPERING),
            Limit("V", 0.0, 0.16, "wt %", _TEMPERING),
            Limit("temperature_c", 100.0, 704.4, "°C", _TEMPERING),
            Limit("time_s", 10.0, 115200.0, "s", _TEMPERING),
        ),
    }
)


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
