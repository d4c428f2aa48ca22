"""Hardness of lower bainite by the temperature of the bath it forms in."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]

# Hardness of eutectoid steel held in the bath until all of it has turned. [°C], [HRC]
BATH_C = np.array([230.0, 260.0, 316.0, 371.0, 427.0])
EUTECTOID_HRC = np.array([58.5, 57.0, 53.0, 47.0, 42.0])
# Leaner steel is so much softer, up to the eutectoid. [wt %], [HRC/wt %]
EUTECTOID_WT_PCT, LEANER_HRC = 0.8, 15.0
# Charts, handbook tables and firms differ by this, standard deviation. [HRC]
BAINITE_SD_HRC = 2.0


def austempered_hardness(carbon_wt_pct: ArrayLike, bath_c: ArrayLike) -> Floats:
    """Return the hardness of steel that turned to bainite in a hot bath.

    All of it has turned there: the section was thin enough for the bath, the bath is above
    the martensite start, and the part stayed in it long enough.

    Parameters
    ----------
    carbon_wt_pct : array_like
        Carbon in the austenite. [wt %]
    bath_c : array_like
        Temperature of the bath. [°C]

    Returns
    -------
    ndarray
        Hardness, 230 to 427 °C; held at the ends beyond. [HRC]

    Notes
    -----
    Straight lines between readings of [1]_ for eutectoid steel, to which 1095 rod of [2]_
    agrees within 1 HRC; 15 HRC less for each per cent of carbon below 0.8, from 0.5 % carbon
    steel of [2]_. All from memory; differences between sources 2 HRC.

    References
    ----------
    .. [1] United States Steel, Atlas of Isothermal Transformation Diagrams, 1951, eutectoid
       steel (from memory).
    .. [2] ASM Handbook vol. 4, Heat Treating, 1991, austempering of steel (from memory).

    Examples
    --------
    >>> float(austempered_hardness(0.95, 316.0))
    53.0
    """
    full = np.interp(np.asarray(bath_c, dtype=float), BATH_C, EUTECTOID_HRC)
    short = np.maximum(EUTECTOID_WT_PCT - np.asarray(carbon_wt_pct, dtype=float), 0.0)
    return np.asarray(full - LEANER_HRC * short)
