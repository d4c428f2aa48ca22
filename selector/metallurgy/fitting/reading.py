"""Published tempered hardness, as read from a table."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.errors import Problem, SelectorError
from selector.metallurgy.fitting.table import rows_of
from selector.metallurgy.temper_curve import ELEMENTS, Floats

# What a column may hold: the least and the most that can be meant. Elements may be left empty.
NUMBERS: Mapping[str, tuple[float, float]] = {
    "tempering_time_s": (0.1, 1e8),
    "tempering_temperature_c": (20.0, 800.0),
    "tempered_hrc": (-30.0, 70.0),
    "c_wt": (0.01, 2.5),
}
TEXTS = ("source", "steel")
# Least readings worth a fit: one for each of its coefficients.
LEAST_READINGS = 24


@dataclass(frozen=True, slots=True, eq=False)
class Readings:
    """Published tempered hardness: one array element a reading."""

    source: NDArray[np.str_]
    steel: NDArray[np.str_]
    composition_wt_pct: Mapping[str, Floats]
    temperature_c: Floats
    time_s: Floats
    hrc: Floats

    def where(self, chosen: NDArray[np.bool_]) -> "Readings":
        """Return the chosen readings."""
        return Readings(
            source=self.source[chosen],
            steel=self.steel[chosen],
            composition_wt_pct={e: v[chosen] for e, v in self.composition_wt_pct.items()},
            temperature_c=self.temperature_c[chosen],
            time_s=self.time_s[chosen],
            hrc=self.hrc[chosen],
        )


def readings(lines: Iterable[str]) -> Readings:
    """Return the readings in lines of comma-separated text with a heading.

    Columns: source, steel, tempering_time_s, tempering_temperature_c, tempered_hrc, and for
    each element its symbol in lower case with `_wt`; an element without a column is absent.

    Parameters
    ----------
    lines : iterable of str
        Text, heading first. [-]

    Returns
    -------
    Readings
        The readings in their order. [-]

    Raises
    ------
    SelectorError
        If a column is missing or a cell is no figure in its range; up to ten faults are listed.

    References
    ----------
    .. [1] R. A. Grange and R. W. Baughman, Trans. ASM 48, 1956, 165-197, the source of most.
    """
    elements = ("C", *ELEMENTS)
    alloy = {f"{element.lower()}_wt": (0.0, 30.0) for element in ELEMENTS}
    rows = rows_of(lines, TEXTS, NUMBERS, alloy)

    def column(name: str) -> Floats:
        return np.array([float(row.get(name) or 0.0) for row in rows])

    return Readings(
        source=np.array([row["source"] for row in rows]),
        steel=np.array([row["steel"] for row in rows]),
        composition_wt_pct={e: column(f"{e.lower()}_wt") for e in elements},
        temperature_c=column("tempering_temperature_c"),
        time_s=column("tempering_time_s"),
        hrc=column("tempered_hrc"),
    )


def enough(given: Readings) -> Readings:
    """Return readings that suffice for a fit.

    Parameters
    ----------
    given : Readings
        Published readings. [-]

    Returns
    -------
    Readings
        The same. [-]

    Raises
    ------
    SelectorError
        If there are fewer readings than coefficients, or but one steel.

    References
    ----------
    .. [1] Common practice.
    """
    steels = np.unique(given.steel).size
    if given.hrc.size < LEAST_READINGS or steels < 2:
        rule = f"{LEAST_READINGS} or more, of two steels or more"
        got = f"{given.hrc.size} of {steels}"
        raise SelectorError(Problem("readings", rule, got, "Add published readings."))
    return given
