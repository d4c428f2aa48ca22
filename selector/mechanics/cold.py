"""Brittle in the cold: where the Charpy V energy of a ferritic–pearlitic bar falls away."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
# Carbon of steel that is pearlite throughout. [wt %]
_EUTECTOID_WT_PCT = 0.8
# Scatter about the relation. Estimate. [°C]
TRANSITION_SD_C = 20.0


def pearlitic_transition_c(
    carbon_wt_pct: ArrayLike,
    silicon_wt_pct: ArrayLike = 0.25,
    free_nitrogen_wt_pct: ArrayLike = 0.004,
    grain_mm: ArrayLike = 0.02,
) -> FloatArray:
    """Return the impact transition temperature of a bar of ferrite and pearlite.

    As rolled, normalised or annealed plain carbon steel. Hardened and tempered steel follows
    other laws, and cold drawing moves the transition up.

    Parameters
    ----------
    carbon_wt_pct : array_like
        Carbon; 0.8 % is pearlite throughout. [wt %]
    silicon_wt_pct : array_like, optional
        Silicon. [wt %]
    free_nitrogen_wt_pct : array_like, optional
        Nitrogen not bound by aluminium. [wt %]
    grain_mm : array_like, optional
        Ferrite grain; 0.02 is ordinary hot-rolled bar. [mm]

    Returns
    -------
    ndarray
        Temperature at which Charpy V-notch energy is about 27 J. [°C]

    Notes
    -----
    ``-19 + 44 Si + 700 sqrt(N) + 2.2 pearlite_pct - 11.5 / sqrt(d)`` [1]_, pearlite by the
    lever rule as 125 % a percent of carbon. Fitted to 0.25 % C; beyond, it is carried on. A
    scatter of 20 °C is estimated.

    References
    ----------
    .. [1] F. B. Pickering, Physical Metallurgy and the Design of Steels, Applied Science, 1978,
       chapter 4, after F. B. Pickering and T. Gladman 1963 (from memory).

    Examples
    --------
    >>> round(float(pearlitic_transition_c(0.2)))
    10
    """
    pearlite = 100.0 * np.clip(np.asarray(carbon_wt_pct, float) / _EUTECTOID_WT_PCT, 0.0, 1.0)
    nitrogen = np.sqrt(np.asarray(free_nitrogen_wt_pct, dtype=float))
    silicon = np.asarray(silicon_wt_pct, dtype=float)
    grain = 11.5 / np.sqrt(np.asarray(grain_mm, dtype=float))
    return np.asarray(-19.0 + 44.0 * silicon + 700.0 * nitrogen + 2.2 * pearlite - grain)
