"""What of a forecast's spread lasts and what changes from heat to heat, and whose it is.

A coupon tells of what lasts, its bar, torch, bath and oven; not of what the next heat will add.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.sampling import Normals

Floats = NDArray[np.float64]
Group = Literal["bar", "heat", "bath", "temper"]
# Whose each uncertainty is; those that move no hardness or depth are left out.
GROUPS: Mapping[Group, tuple[str, ...]] = {
    "bar": (
        "C", "Si", "Mn", "Cr", "Mo", "Ni", "V", "Cu", "W", "supply_hardness", "as_quenched",
        "hardenability", "hardenability_family", "section_limit", "depth", "core",
    ),
    "heat": ("eye_bias", "eye_scatter", "furnace_bias", "torch_bias"),
    "bath": ("bath_bias", "delay"),
    "temper": ("temper_bias", "temper_scatter", "tempering", "tempering_family"),
}  # fmt: skip
# What another heat of the same hand, bath and oven has anew.
SCATTER = frozenset({"eye_scatter", "delay", "temper_scatter"})


@dataclass(frozen=True, slots=True, eq=False)
class Parts:
    """A forecast taken apart.

    `centre` is what it would be without what changes from heat to heat, `scatter` the standard
    deviation of that; `share` is the part of the variance that each group explains. [-].
    """

    centre: Floats
    scatter: float
    share: Mapping[Group, float]


def taken_apart(value: Floats, normals: Normals) -> Parts:
    """Return a forecast taken apart by a fit of straight lines and parabolas.

    Parameters
    ----------
    value : ndarray
        What is forecast, over the samples.
    normals : mapping of str to ndarray
        Standard normal samples by dimension.

    Returns
    -------
    Parts
        What the fit does not reach is counted as lasting.
    """
    names = [name for group in GROUPS.values() for name in group if name in normals]
    # A straight line and a parabola each: too cold a heat and too hot a one both soften.
    columns = [f(normals[name]) for name in names for f in (_line, _parabola)]
    basis = np.column_stack(columns)
    basis = basis - basis.mean(axis=0)
    slope = np.linalg.lstsq(basis, value - value.mean(), rcond=None)[0]
    by_name = {
        name: basis[:, [2 * k, 2 * k + 1]] @ slope[[2 * k, 2 * k + 1]]
        for k, name in enumerate(names)
    }
    # So much of the variance any column explains by chance.
    chance = 2.0 * float(np.var(value)) / len(value)
    variance = {n: max(float(np.var(part)) - chance, 0.0) for n, part in by_name.items()}
    total = max(float(np.var(value)), 1e-12)
    passing = _sum((by_name[n] for n in names if n in SCATTER and variance[n] > 0), value)
    share = {
        group: sum(variance.get(name, 0.0) for name in members) / total
        for group, members in GROUPS.items()
    }
    return Parts(value - passing, float(np.std(passing)), share)


def _line(normal: Floats) -> Floats:
    """Return the term that goes straight."""
    return normal


def _parabola(normal: Floats) -> Floats:
    """Return the term that goes down at both ends."""
    return np.asarray(normal**2 - 1.0)


def _sum(parts: Iterable[Floats], like: Floats) -> Floats:
    """Return the sum of parts, zero of none."""
    return np.asarray(sum(parts, np.zeros_like(like)))
