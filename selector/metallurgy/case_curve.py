"""Hardness of a carburised case by the carbon that is left where it is looked at."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.metallurgy.hardenability import heat_curve
from selector.metallurgy.ideal_diameter import Composition

Floats = NDArray[np.float64]

# Case depth ends here (ISO 18203). [HV]
CASE_LIMIT_HV = 550.0
# Carbons the case is read at; the bands end at the last one. [wt %]
_CASE_WT_PCT = np.array([0.15, 0.20, 0.25, 0.30, 0.35, 0.40, 0.45, 0.50, 0.55, 0.60, 0.65])


@dataclass(frozen=True, slots=True, eq=False)
class CaseCurve:
    """Hardness of a carburised steel by its local carbon, at one distance. [wt %], [HRC]."""

    carbon_wt_pct: Floats
    hrc: Floats

    def at(self, carbon_wt_pct: ArrayLike) -> Floats:
        """Return the hardness where carbon is so much; beyond the curve that of its end."""
        return np.asarray(
            np.interp(np.asarray(carbon_wt_pct, float), self.carbon_wt_pct, self.hrc)
        )

    def carbon_for(self, hrc: float) -> float | None:
        """Return the least carbon that gives a hardness, None where none does."""
        if hrc > self.hrc[-1]:
            return None
        return float(np.interp([hrc], self.hrc, self.carbon_wt_pct)[0])


def case_curve(composition_wt_pct: Composition, distance_mm: float) -> CaseCurve:
    """Return the hardness of a case by its carbon, where it cools like an end-quench distance.

    Carbon hardens the martensite and the steel around it; above what the bands hold the curve
    stays level, as austenite begins to be retained.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content of the core; its carbon is replaced. [wt %]
    distance_mm : float
        Equivalent distance on the end-quench bar. [mm]

    Returns
    -------
    CaseCurve
        As quenched, rising with carbon. [HRC]

    Notes
    -----
    `hardenability.heat_curve` [1]_ at 0.15 to 0.65 % C.

    References
    ----------
    .. [1] SAE J1268 and EN 10083, hardenability bands, as fitted there.

    Examples
    --------
    >>> round(case_curve({"Mn": 1.15, "Cr": 0.95, "Si": 0.25}, 3.0).carbon_for(52.3), 2)
    0.33
    """
    local = {**composition_wt_pct, "C": _CASE_WT_PCT}
    hrc = np.maximum.accumulate(heat_curve(local, distance_mm).hrc.ravel())
    return CaseCurve(_CASE_WT_PCT, hrc)
