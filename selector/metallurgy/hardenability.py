"""How deep a steel hardens: ideal diameter, end-quench curve, critical cooling time."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import reduce

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.metallurgy import martensite
from selector.metallurgy.band_curve import Curve, coefficients, heat_coefficients
from selector.validity import LIMITS

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
# What ordinary bar holds of an element that its standard only limits or does not name:
# residual practice of scrap-based steelmaking, from memory. [wt %]
USUAL_WT_PCT: Mapping[str, float] = {"Si": 0.22, "Cr": 0.1, "Ni": 0.1, "Mo": 0.02, "Cu": 0.2}
# The end-quench curve presumes three quarters of it where an element is not named. [wt %]
PRESUMED_WT_PCT = {name: round(0.75 * usual, 3) for name, usual in USUAL_WT_PCT.items()}


@dataclass(frozen=True, slots=True, eq=False)
class JominyCurve:
    """End-quench hardness with the error of one heat of known composition."""

    hrc: Floats
    sd_hrc: Floats
    model: str


def _content(composition_wt_pct: Composition, element: str) -> Floats:
    """Return the content of an element, 0 if the mapping has none."""
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
    base_in = _base_diameter_in(_content(composition_wt_pct, "C"))
    return {"C": base_in, **_alloy_factors(composition_wt_pct)}


def _alloy_factors(composition_wt_pct: Composition) -> dict[str, Floats]:
    """Return the factors of ASTM A255 but for its base diameter."""
    mn, si, ni, cr, mo, cu, v, w = (
        _content(composition_wt_pct, e) for e in ("Mn", "Si", "Ni", "Cr", "Mo", "Cu", "V", "W")
    )
    much_ni = np.minimum(ni, 4.0)
    carbon, added = (_content(composition_wt_pct, e) for e in ("C", "B"))
    boron = np.maximum(1.0 + 2.7 * (0.85 - carbon), 1.0)
    cubic = 0.3211 + 1.4501 * much_ni - 0.6119 * much_ni**2 + 0.1253 * much_ni**3
    return {
        "Mn": np.where(mn <= 1.2, 1.0 + 3.3333 * mn, 5.1 * mn - 1.12),
        "Si": 1.0 + 0.7 * si,
        "Ni": np.where(ni <= 1.5, 1.0 + 0.363 * ni, cubic),
        "Cr": 1.0 + 2.16 * cr,
        "Mo": 1.0 + 3.0 * mo,
        "Cu": 1.0 + 0.365 * cu,
        "V": 1.0 + 1.73 * v,
        "W": 1.0 + 0.4 * w,
        "B": np.where(added >= LEAST_BORON_WT_PCT, boron, 1.0),
    }


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
    base_mm = MM_PER_IN * 0.337 * np.sqrt(np.maximum(_content(composition_wt_pct, "C"), 0.02))
    factors = _alloy_factors(composition_wt_pct)
    rich = np.clip(_content(composition_wt_pct, "Mn"), *RICH_MN_WT_PCT) - RICH_MN_WT_PCT[0]
    mn = factors["Mn"] * np.exp(RICH_MN_GAIN * rich)
    return {"C": base_mm, **factors, "Mn": mn, "grain": _grain_factor(grain_size_astm)}


def jominy_curve(
    composition_wt_pct: Composition,
    distance_mm: ArrayLike,
    grain_size_astm: ArrayLike = 7.0,
) -> JominyCurve:
    """Return the end-quench curve of a carbon or low-alloy steel by a corrected factor product.

    The factor product of ASTM A255 with some powers corrected, and a smooth curve in place of
    its tables of dividing factors, fitted to published hardenability bands. Residual elements
    count: one that is named counts as given, 0 included; one that is not named is presumed.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content in solution. Missing Si, Cr, Ni, Mo and Cu are presumed at three
        quarters of what ordinary bar holds; any other missing element is 0. [wt %]
    distance_mm : array_like
        Distance from the quenched end; nearer than 1 mm counts as 1 mm. [mm]
    grain_size_astm : array_like
        Grain size number of the austenite. [ASTM]

    Returns
    -------
    JominyCurve
        Hardness and its error at known composition, broadcast. [HRC]

    Notes
    -----
    A fit, not a published formula: form, coefficients and provenance are in hardenability.toml
    (14 coefficients, 32 bands, 477 points; boron apart). A family of grades left out, at mid
    composition, it misses the band midline by 1.25 HRC on average and leaves the band at 0 %
    of the points with residuals at usual practice (Cr 0.1, Ni 0.1, Mo 0.02, Cu 0.2 %), by 1.25
    HRC and at 2 % where they are presumed, by 2.5 HRC and at 5 % where they are given as 0.
    Eleven SAE bands from memory that took no part: 1.6 HRC, 1 %. Factors and dividers of [1]_
    miss by 2.4 HRC and leave the band at 7 %. The error is 1 HRC, joined by what 12 % of the
    product ([2]_: 10 to 15 %) makes at that place; it doubles outside C 0.1-0.65, Mn 1.7, Si 2,
    Ni 4, Cr 2, Mo 0.6 %. Hardness rises with every element and falls with distance by form.

    References
    ----------
    .. [1] ASTM A255-10(2014), Standard Test Methods for Determining Hardenability of Steel.
    .. [2] M. A. Grossmann, AIME Technical Publication 1437, 1942.

    Examples
    --------
    >>> steel = {"C": 0.405, "Mn": 0.875, "Si": 0.25, "Cr": 0.975, "Mo": 0.2}
    >>> jominy_curve(steel, [1.6, 12.7, 50.8]).hrc.round()
    array([57., 51., 37.])
    """
    boron = bool(np.any(_content(composition_wt_pct, "B") >= LEAST_BORON_WT_PCT))
    model = "corrected ASTM A255" + (" with boron factor" if boron else "")
    curve = _curve(coefficients(), composition_wt_pct, distance_mm, grain_size_astm)
    return JominyCurve(*curve, model)


def heat_curve(
    composition_wt_pct: Composition,
    distance_mm: ArrayLike,
    grain_size_astm: ArrayLike = 7.0,
) -> JominyCurve:
    """Return the end-quench curve of one heat, steeper than the midline of its grade's band.

    The product is that of `jominy_curve`, the shape fitted to both edges of the bands.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content in solution, presumed where missing as in `jominy_curve`. [wt %]
    distance_mm : array_like
        Distance from the quenched end; nearer than 1 mm counts as 1 mm. [mm]
    grain_size_astm : array_like
        Grain size number of the austenite. [ASTM]

    Returns
    -------
    JominyCurve
        Hardness and its error at known composition, broadcast. [HRC]

    Notes
    -----
    A fit of Avrami's law [2]_: `[heat]` in hardenability.toml (10 coefficients, 1147 points). A
    grade left out, it misses the edges by 1.8 and 1.7 HRC; the error is that of `jominy_curve`.

    References
    ----------
    .. [1] SAE J1268 and EN 10083, hardenability bands.
    .. [2] M. Avrami, Kinetics of phase change II, J. Chemical Physics 8, 1940, 212-224.

    Examples
    --------
    >>> heat_curve({"C": 0.45, "Mn": 0.75, "Si": 0.25}, [1.6, 6.4, 12.7]).hrc.round()
    array([59., 30., 26.])
    """
    curve = _curve(heat_coefficients(), composition_wt_pct, distance_mm, grain_size_astm)
    return JominyCurve(*curve, "end-quench curve of one heat")


def _curve(
    by: Curve,
    composition_wt_pct: Composition,
    distance_mm: ArrayLike,
    grain_size_astm: ArrayLike,
) -> tuple[Floats, Floats]:
    """Return hardness and error of a curve, unnamed residuals presumed."""
    carbon = _content(composition_wt_pct, "C")
    distance = np.maximum(np.asarray(distance_mm, dtype=float), 1.0)
    steel = {**PRESUMED_WT_PCT, **composition_wt_pct}
    product = by.log_product(corrected_factors(steel, grain_size_astm))
    initial = by.initial_hrc(carbon)
    hrc, reach = (initial * by.kept(product + more, distance) for more in (0.0, 0.12))
    widening = np.where(_outside_range(composition_wt_pct), 2.0, 1.0)
    hrc, sd = np.broadcast_arrays(hrc, widening * np.hypot(1.0, reach - hrc))
    return hrc, sd


def _outside_range(composition_wt_pct: Composition) -> NDArray[np.bool_]:
    """Return whether any element lies outside the range of the fitted bands."""
    outside = np.zeros((), dtype=bool)
    for limit in LIMITS["hardenability.heat_curve"]:
        content = _content(composition_wt_pct, limit.name)
        outside = outside | (content < limit.low) | (content > limit.high)
    return np.asarray(outside)


def martensite_fraction_at(
    composition_wt_pct: Composition,
    distance_mm: ArrayLike,
    grain_size_astm: ArrayLike = 7.0,
) -> Floats:
    """Return the martensite fraction at a distance from the quenched end.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content in solution, presumed where missing as in `jominy_curve`. [wt %]
    distance_mm : array_like
        Distance from the quenched end. [mm]
    grain_size_astm : array_like
        Grain size number of the austenite. [ASTM]

    Returns
    -------
    ndarray
        Martensite, retained austenite counted in. [-]

    Notes
    -----
    `martensite.fraction_from_hardness` of `jominy_curve`.

    References
    ----------
    .. [1] J. M. Hodge and M. A. Orehoski, Trans. AIME 167, 1946, 627-642.

    Examples
    --------
    >>> bool(martensite_fraction_at({"C": 0.4, "Mn": 0.7, "Si": 0.2}, 25.0) < 0.5)
    True
    """
    carbon = _content(composition_wt_pct, "C")
    hrc = jominy_curve(composition_wt_pct, distance_mm, grain_size_astm).hrc
    return martensite.fraction_from_hardness(carbon, hrc)


def critical_cooling_time(
    dissolved_wt_pct: Composition, grain_size_astm: ArrayLike = 7.0
) -> Floats:
    """Return the longest time from 700 to 500 °C that still hardens a steel.

    Meant above 0.7 % C, where end-quench bands say little and undissolved carbide takes alloy
    out of play: give what is dissolved.

    Parameters
    ----------
    dissolved_wt_pct : mapping of str to array_like
        Element to content in the austenite; a missing element is 0. [wt %]
    grain_size_astm : array_like
        Grain size number of the austenite. [ASTM]

    Returns
    -------
    ndarray
        Critical time from 700 to 500 °C; true within a factor of 1.4 (one sd). [s]

    Notes
    -----
    The centre of a round bar of diameter D whose surface is held at the bath cools from 700 to
    500 °C in 0.0604 R²/a (first term of the series, 800 °C to 20 °C) = 0.0027 D² with a = 5.6
    mm²/s, the diffusivity of austenite (from memory). The ideal diameter is that bar; published
    section limits (silver steel 8 mm in oil and 22 mm in water, 2.0 s; W1 13 mm in water, 1.2
    s; O1 55 mm in oil, 28 s, by bar charts and SAE J406) call for a tenth less on the geometric
    mean, hence 0.0024 DI²; each is met within a factor of 1.5.

    References
    ----------
    .. [1] H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., Oxford, 1959,
       p. 199.
    .. [2] G. Roberts, G. Krauss and R. Kennedy, Tool Steels, 5th ed., ASM, 1998, Table 7-3.

    Examples
    --------
    >>> float(critical_cooling_time({"C": 0.77, "Mn": 0.29, "Cr": 0.42}).round(1))
    1.9
    """
    return np.asarray(0.0024 * ideal_diameter(dissolved_wt_pct, grain_size_astm) ** 2)
