"""The coefficients of hardenability.toml, fitted to published bands and written out.

The form is fixed by `band_curve`: five powers of the A255 factors and nine numbers of shape,
fitted by least squares to the midlines of the bands, each held to a starting value by a prior.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.errors import Problem, SelectorError
from selector.metallurgy.band_curve import Coefficients, Floats, coefficients
from selector.metallurgy.fitting.left_out import leave_one_out
from selector.metallurgy.fitting.table import rows_of
from selector.metallurgy.hardenability import PRESUMED_WT_PCT
from selector.metallurgy.ideal_diameter import corrected_factors

NUMBERS: Mapping[str, tuple[float, float]] = {
    "distance_mm": (1.0, 100.0),
    "hrc_min": (0.0, 70.0),
    "hrc_max": (0.0, 70.0),
    "c_wt": (0.05, 0.7),
}
ELEMENTS = ("C", "Mn", "Si", "Ni", "Cr", "Mo", "V", "Cu")

# Where each coefficient starts, and how far it is let go.
POWER: Mapping[str, tuple[float, float]] = {
    "C": (1.0, 0.3),
    "Ni": (1.0, 0.3),
    "Cr": (1.0, 0.15),
    "Mo": (1.0, 0.15),
    "V": (1.0, 0.3),
}
SHAPE: Mapping[str, tuple[float, float]] = {
    "initial": (0.5, 1.0),
    "initial_per_c": (0.0, 3.0),
    "knee": (2.0, 0.5),
    "knee_per_l": (1.2, 0.5),
    "steepness": (0.8, 0.5),
    "bluntness": (0.0, 0.7),
    "tail": (-0.3, 0.7),
    "tail_per_l": (0.5, 0.5),
    "tail_fall": (0.3, 0.5),
}
# Kept above nothing: their logarithm is fitted.
BY_LOG = ("steepness", "bluntness")
# Weight of a point: how far a midline may lie off. [HRC]
POINT_SD_HRC = 2.0


@dataclass(frozen=True, slots=True, eq=False)
class Bands:
    """Published hardenability bands: one array element a point."""

    grade: NDArray[np.str_]
    composition_wt_pct: Mapping[str, Floats]
    distance_mm: Floats
    low_hrc: Floats
    high_hrc: Floats

    @property
    def middle_hrc(self) -> Floats:
        """The midline."""
        return np.asarray(0.5 * (self.low_hrc + self.high_hrc))

    def where(self, chosen: NDArray[np.bool_ | np.intp]) -> "Bands":
        """Return the chosen points."""
        return Bands(
            grade=self.grade[chosen],
            composition_wt_pct={e: v[chosen] for e, v in self.composition_wt_pct.items()},
            distance_mm=self.distance_mm[chosen],
            low_hrc=self.low_hrc[chosen],
            high_hrc=self.high_hrc[chosen],
        )


def bands(lines: Iterable[str]) -> Bands:
    """Return the bands in lines of comma-separated text with a heading.

    Columns: grade, distance_mm, hrc_min, hrc_max, c_wt, and for each further element its symbol
    in lower case with `_wt`: the middle of what the grade allows, empty where it says nothing
    and the curve presumes it.

    Parameters
    ----------
    lines : iterable of str
        Text, heading first. [-]

    Returns
    -------
    Bands
        The points in their order. [-]

    Raises
    ------
    SelectorError
        If a column is missing, a cell is no figure in its range or a grade stands alone.

    References
    ----------
    .. [1] SAE J1268, Hardenability Bands for Carbon and Alloy H Steels, the source of many.
    """
    alloy = {f"{element.lower()}_wt": (0.0, 5.0) for element in ELEMENTS[1:]}
    rows = rows_of(lines, ("grade",), NUMBERS, alloy)
    grade = np.array([row["grade"] for row in rows])
    if np.unique(grade).size < 2:
        got = f"{np.unique(grade).size}"
        raise SelectorError(Problem("grades", "two or more", got, "Add published bands."))

    def column(name: str, absent: float = 0.0) -> Floats:
        return np.array([float(row.get(name) or absent) for row in rows])

    return Bands(
        grade=grade,
        composition_wt_pct={
            e: column(f"{e.lower()}_wt", PRESUMED_WT_PCT.get(e, 0.0)) for e in ELEMENTS
        },
        distance_mm=column("distance_mm"),
        low_hrc=column("hrc_min"),
        high_hrc=column("hrc_max"),
    )


def _coefficients_from(place: Floats) -> Coefficients:
    """Return the coefficients at a place of the fit; what is not fitted stays as shipped."""
    names = (*POWER, *SHAPE)
    value = dict(zip(names, map(float, place), strict=True))
    value |= {name: float(np.exp(value[name])) for name in BY_LOG}
    power = {**coefficients().power, **{name: value[name] for name in POWER}}
    return Coefficients(power, {name: value[name] for name in SHAPE})


def miss_hrc(given: Bands, by: Coefficients) -> Floats:
    """Return the predicted hardness less the midline at each point.

    Parameters
    ----------
    given : Bands
        Published bands. [-]
    by : Coefficients
        Coefficients to predict with. [-]

    Returns
    -------
    ndarray
        Positive where the prediction is harder. [HRC]

    References
    ----------
    .. [1] SAE J1268, Hardenability Bands for Carbon and Alloy H Steels.
    """
    product = by.log_product(corrected_factors(given.composition_wt_pct))
    carbon = given.composition_wt_pct["C"]
    hrc = by.initial_hrc(carbon) * by.kept(product, given.distance_mm)
    return np.asarray(hrc - given.middle_hrc)


def fit_bands(given: Bands) -> Coefficients:
    """Return the coefficients whose curves keep closest to the midlines.

    Parameters
    ----------
    given : Bands
        Published bands. [-]

    Returns
    -------
    Coefficients
        Powers and shape; the power of boron as shipped. [-]

    Notes
    -----
    Least squares: misses over 2 HRC, and departures from the starting values over the spreads
    of this module.

    References
    ----------
    .. [1] SAE J1268, Hardenability Bands for Carbon and Alloy H Steels.
    """
    from scipy.optimize import least_squares  # noqa: PLC0415

    start, spread = np.array([*POWER.values(), *SHAPE.values()]).T

    def unrest(place: Floats) -> Floats:
        misses = miss_hrc(given, _coefficients_from(place)) / POINT_SD_HRC
        return np.concatenate([misses, (place - start) / spread])

    return _coefficients_from(least_squares(unrest, start).x)


def leave_one_grade_out_hrc(
    given: Bands, progress: Callable[[str, float], None] | None = None
) -> Floats:
    """Return the miss at each point, its whole grade left out of the fit.

    Parameters
    ----------
    given : Bands
        Published bands of two grades or more. [-]
    progress : callable, optional
        Called with what is left out, and the share done so far. [-]

    Returns
    -------
    ndarray
        Predicted hardness less midline. [HRC]

    References
    ----------
    .. [1] M. Stone, Cross-validatory choice and assessment of statistical predictions, J. Royal
       Statistical Society B 36, 1974, 111-147.
    """
    return leave_one_out(
        given.grade,
        lambda out: miss_hrc(given.where(out), fit_bands(given.where(~out))),
        progress,
    )


def hardenability_toml(given: Bands) -> str:
    """Return the tables of hardenability.toml as fitted to `given`.

    Parameters
    ----------
    given : Bands
        Published bands. [-]

    Returns
    -------
    str
        The `[power]` and `[shape]` tables. [-]

    References
    ----------
    .. [1] TOML version 1.0.0, toml.io.
    """
    fitted = fit_bands(given)
    lines = [f"# Fitted to {given.grade.size} points of {np.unique(given.grade).size} bands."]
    for name, table in (("power", fitted.power), ("shape", fitted.shape)):
        lines += ["", f"[{name}]", *(f"{key} = {value:.4f}" for key, value in table.items())]
    return "\n".join(lines) + "\n"
