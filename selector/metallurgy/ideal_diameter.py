"""The factors whose product is the ideal diameter, and that behind the end-quench curve."""

from collections.abc import Mapping
from functools import reduce

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded

Floats = NDArray[np.float64]
Composition = Mapping[str, ArrayLike]

MM_PER_IN = 25.4
# Base diameter grows by this for each ASTM grain size number coarser.
GRAIN_RATIO = 1.08
# The logarithm of the product gains this much more for each per cent of manganese over the
# least, up to the most: by SAE bands of 1330H to 1340H, 1524H and 1541H (from memory). [wt %]
RICH_MN_WT_PCT, RICH_MN_GAIN = (1.2, 2.0), 0.5
# Boron counts from here on, as much more does no more. [wt %]
LEAST_BORON_WT_PCT = 0.0005


def content(composition_wt_pct: Composition, element: str) -> Floats:
    """Return the content of an element, 0 if the mapping has none.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content. [wt %]
    element : str
        Its symbol. [-]

    Returns
    -------
    ndarray
        Content. [wt %]

    References
    ----------
    .. [1] ASTM A255-10(2014): an element that is not given does not count.
    """
    return np.asarray(composition_wt_pct.get(element, 0.0), dtype=float)


def _base_diameter_in(carbon: Floats) -> Floats:
    """Return the ideal diameter of carbon alone at grain size 7, held above 0.9 % C."""
    c = np.minimum(carbon, 0.9)
    pieces = [
        0.54 * c,
        0.171 + 0.001 * c + 0.265 * c**2,
        0.115 + 0.268 * c - 0.038 * c**2,
        0.143 + 0.2 * c,
    ]
    high = 0.062 + 0.409 * c - 0.135 * c**2
    return np.asarray(np.select([c <= 0.39, c <= 0.55, c <= 0.65, c <= 0.75], pieces, high))


def multiplying_factors(composition_wt_pct: Composition) -> dict[str, Floats]:
    """Return the factors of ASTM A255 whose product is the ideal diameter.

    "C" is the base diameter in inches at grain size 7; the others are pure numbers.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]

    Returns
    -------
    dict of str to ndarray
        Base diameter by "C", and factors by element. [-]

    Notes
    -----
    Factors of [1]_; range C 0.10-0.70, Mn 0.50-1.65, Si 0.15-0.60, Ni to 1.5, Cr to 1.35, Mo
    to 0.55, Cu to 0.35, V to 0.2 %. Beyond it the same lines go on; the base is held above
    0.9 % C and the nickel cubic above 4 %. The boron factor 1 + 2.7 (0.85 - C) is the textbook
    line; at 0.29 % C it gives 2.51, the table of [1]_ 2.47 (both from memory). Tungsten is not
    in [1]_: 1 + 0.4 W is set so that O1 hardens through its 50 to 60 mm in oil.

    References
    ----------
    .. [1] ASTM A255-10(2014), Standard Test Methods for Determining Hardenability of Steel.

    Examples
    --------
    >>> round(float(multiplying_factors({"C": 0.22, "Mn": 0.80})["Mn"]), 3)
    3.667
    """
    base_in = _base_diameter_in(content(composition_wt_pct, "C"))
    return {"C": base_in, **_alloy_factors(composition_wt_pct)}


def _alloy_factors(composition_wt_pct: Composition) -> dict[str, Floats]:
    """Return the factors of ASTM A255 but for its base diameter."""
    mn, si, ni, cr, mo, cu, v, w = (
        content(composition_wt_pct, e) for e in ("Mn", "Si", "Ni", "Cr", "Mo", "Cu", "V", "W")
    )
    return {
        "Mn": np.where(mn <= 1.2, 1.0 + 3.3333 * mn, 5.1 * mn - 1.12),
        "Si": 1.0 + 0.7 * si,
        "Ni": _nickel_factor(ni),
        "Cr": 1.0 + 2.16 * cr,
        "Mo": 1.0 + 3.0 * mo,
        "Cu": 1.0 + 0.365 * cu,
        "V": 1.0 + 1.73 * v,
        "W": 1.0 + 0.4 * w,
        "B": _boron_factor(composition_wt_pct),
    }


def _nickel_factor(nickel: Floats) -> Floats:
    """Return the factor of nickel: a line, from 1.5 % on a cubic, held above 4 %."""
    line = 1.0 + 0.363 * nickel
    if not (nickel > 1.5).any():
        return np.asarray(line)
    much = np.minimum(nickel, 4.0)
    cubic = 0.3211 + much * (1.4501 + much * (-0.6119 + 0.1253 * much))
    return np.where(nickel <= 1.5, line, cubic)


def _boron_factor(composition_wt_pct: Composition) -> Floats:
    """Return the factor of boron, 1 where there is too little of it to count."""
    added = content(composition_wt_pct, "B")
    if not (added >= LEAST_BORON_WT_PCT).any():
        return np.ones(())
    boron = np.maximum(1.0 + 2.7 * (0.85 - content(composition_wt_pct, "C")), 1.0)
    return np.where(added >= LEAST_BORON_WT_PCT, boron, 1.0)


def _grain_factor(grain_size_astm: ArrayLike) -> Floats:
    """Return the base diameter over that at grain size 7."""
    return np.asarray(GRAIN_RATIO ** (7.0 - np.asarray(grain_size_astm, dtype=float)))


def ideal_diameter(composition_wt_pct: Composition, grain_size_astm: ArrayLike = 7.0) -> Floats:
    """Return the bar that just hardens to half martensite at its centre in an ideal quench.

    Takes the composition in solution; residual chromium, nickel, molybdenum and copper count.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]
    grain_size_astm : array_like
        Grain size number of the austenite. [ASTM]

    Returns
    -------
    ndarray
        Ideal diameter. [mm]

    Notes
    -----
    Product of `multiplying_factors`, and 8 % for each grain size number coarser than 7 (base
    tables for sizes 6, 7 and 8 after [2]_, from memory). Stated accuracy: 10 to 15 %.

    References
    ----------
    .. [1] ASTM A255-10(2014), Standard Test Methods for Determining Hardenability of Steel.
    .. [2] M. A. Grossmann, AIME Technical Publication 1437, 1942.

    Examples
    --------
    >>> round(float(ideal_diameter({"C": 0.40, "Mn": 0.75, "Si": 0.2, "Cr": 0.1, "Ni": 0.1})))
    27
    """
    product = reduce(np.multiply, multiplying_factors(composition_wt_pct).values())
    return np.asarray(MM_PER_IN * product * _grain_factor(grain_size_astm))


def corrected_factors(
    composition_wt_pct: Composition, grain_size_astm: ArrayLike = 7.0
) -> dict[str, Floats]:
    """Return the factors whose powers multiply to the product behind the end-quench curve.

    Those of ASTM A255, but a smooth base, more for rich manganese, and the grain.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content in solution; a missing element is 0. [wt %]
    grain_size_astm : array_like
        Grain size number of the austenite. [ASTM]

    Returns
    -------
    dict of str to ndarray
        Base diameter in mm by "C", factors by element, and "grain". [-]

    Notes
    -----
    Base 0.337 sqrt(C) in, within 1 % of the table of [1]_ from 0.4 to 0.5 % C. From 1.2 to 2 %
    Mn its factor grows by exp(0.5 (Mn - 1.2)), else manganese steels are 3 HRC too soft.

    References
    ----------
    .. [1] ASTM A255-10(2014), Standard Test Methods for Determining Hardenability of Steel.
    """
    base_mm = MM_PER_IN * 0.337 * np.sqrt(np.maximum(content(composition_wt_pct, "C"), 0.02))
    factors = _alloy_factors(composition_wt_pct)
    rich = bounded(content(composition_wt_pct, "Mn"), *RICH_MN_WT_PCT) - RICH_MN_WT_PCT[0]
    mn = factors["Mn"] * np.exp(RICH_MN_GAIN * rich)
    return {"C": base_mm, **factors, "Mn": mn, "grain": _grain_factor(grain_size_astm)}
