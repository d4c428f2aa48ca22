"""Temperatures at which a steel changes on heating and cooling: Ac1, Ac3, Ac_m, Ms and Mf."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.errors import OutOfRangeError, Problem
from selector.kept import per_record

Floats = NDArray[np.float64]
Composition = Mapping[str, ArrayLike]
Structure = Literal["quenched and tempered", "normalised", "ferrite-pearlite", "spheroidised"]

# Soft bar richer than this in carbon is spheroidised. Common practice, no source. [wt %]
SPHEROIDISED_ABOVE_WT_PCT = 0.7
# At most this much of the carbon of such a steel is dissolved at its hardening heat. [wt %]
MOST_DISSOLVED_WT_PCT = 0.75
# Plain Fe-C: eutectoid carbon, and the carbon that austenite beside cementite holds above it.
EUTECTOID_WT_PCT = 0.765
SOLUBILITY_SLOPE, SOLUBILITY_CURVE = 2.6e-3, 0.95e-6

# Rise of Ac1 and Ac3 for each tenfold heating rate above that of a furnace. [°C]
SHIFT_PER_DECADE: Mapping[str, tuple[float, float]] = {
    "quenched and tempered": (8.0, 12.0),
    "normalised": (12.0, 20.0),
    "ferrite-pearlite": (17.0, 32.0),
    "spheroidised": (26.0, 45.0),
}
FURNACE_RATE_C_PER_S = 0.5


@dataclass(frozen=True, slots=True, eq=False)
class CriticalTemperatures:
    """Critical temperatures at furnace rates; a line that does not exist is NaN."""

    ac1_c: Floats
    ac3_c: Floats
    accm_c: Floats
    ms_c: Floats
    mf_c: Floats
    sd_ac1_c: Floats
    sd_ac3_c: Floats
    sd_accm_c: Floats
    sd_ms_c: Floats
    sd_mf_c: Floats


@dataclass(frozen=True, slots=True, eq=False)
class HeatingLines:
    """Eutectoid carbon, Ac1 and Ac3 at furnace rates; Ac3 is NaN above the eutectoid."""

    eutectoid_wt_pct: Floats
    ac1_c: Floats
    ac3_c: Floats

    def solubility_wt_pct(self, temperature_c: ArrayLike) -> Floats:
        """Return the carbon that austenite can hold beside carbide, as `carbon_solubility`."""
        above = np.maximum(np.asarray(temperature_c, dtype=float) - self.ac1_c, 0.0)
        slope = SOLUBILITY_SLOPE + SOLUBILITY_CURVE * above
        return np.asarray(self.eutectoid_wt_pct + above * slope)


@dataclass(frozen=True, slots=True, eq=False)
class HardeningWindow:
    """The heat to quench from."""

    low_c: Floats
    high_c: Floats


@dataclass(frozen=True, slots=True, eq=False)
class HeatingShift:
    """How far quick heating raises Ac1 and Ac3; the error is a fraction of the shift."""

    ac1_c: Floats
    ac3_c: Floats
    sd_fraction: float


def _content(composition_wt_pct: Composition, *elements: str) -> tuple[Floats, ...]:
    """Return the contents of `elements`, 0 where the mapping has none."""
    return tuple(np.asarray(composition_wt_pct.get(e, 0.0), dtype=float) for e in elements)


def _effective_chromium(chromium: Floats, carbon: Floats) -> Floats:
    """Return the chromium that raises Ac1: a fifth above 3 %, less what is held in carbide."""
    counted = np.minimum(chromium, 3.0) + 0.2 * np.maximum(chromium - 3.0, 0.0)
    return np.asarray(counted * bounded(0.7 / np.maximum(carbon, 0.01), 0.5, 1.0))


def eutectoid_carbon(composition_wt_pct: Composition) -> Floats:
    """Return the carbon content of the eutectoid, which every alloying element lowers.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]

    Returns
    -------
    ndarray
        Eutectoid carbon. [wt %]

    Notes
    -----
    0.765 exp(-0.03 Mn - 0.08 Si - 0.065 Ni - 0.13 Cr - 0.25 Mo - 0.25 V - 0.1 W). The base is
    the Fe-C diagram; the slopes are from memory after [1]_, good to about 0.05 % C.

    References
    ----------
    .. [1] E. C. Bain and H. W. Paxton, Alloying Elements in Steel, 2nd ed., ASM, 1961, p. 112
       (from memory).

    Examples
    --------
    >>> round(float(eutectoid_carbon({"Cr": 1.45, "Mn": 0.35, "Si": 0.25})), 2)
    0.61
    """
    named = _content(composition_wt_pct, "Mn", "Si", "Ni", "Cr", "Mo", "V", "W")
    mn, si, ni, cr, mo, v, w = named
    pull = 0.03 * mn + 0.08 * si + 0.065 * ni + 0.13 * cr + 0.25 * (mo + v) + 0.1 * w
    return np.asarray(EUTECTOID_WT_PCT * np.exp(-pull))


def carbon_solubility(composition_wt_pct: Composition, temperature_c: ArrayLike) -> Floats:
    """Return the carbon that austenite can hold beside carbide, the Ac_m line read backwards.

    The line of the plain Fe-C diagram is moved so that it starts at the steel's own eutectoid.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; carbon itself plays no part. [wt %]
    temperature_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Carbon in austenite; below Ac1 the eutectoid carbon. [wt %]

    Notes
    -----
    Parabola through the cementite solubility of the CALPHAD assessment [1]_ (0.896 % at 780 °C,
    1.227 % at 900 °C), within 0.01 % from 730 to 1000 °C for plain Fe-C.

    References
    ----------
    .. [1] Y. Fei and E. Brosh, Experimental study and thermodynamic calculations of phase
       relations in the Fe-C system at high pressure, Earth and Planetary Science Letters 408,
       2014, 155-162: the database, evaluated at 1 bar with pycalphad 0.11.2.

    Examples
    --------
    >>> round(float(carbon_solubility({}, 900.0)), 2)
    1.23
    """
    return heating_lines(composition_wt_pct).solubility_wt_pct(temperature_c)


def _ac1(composition_wt_pct: Composition) -> Floats:
    """Return Ac1 by Grange's formula raised by 8 °C."""
    c, mn, si, ni, cr = _content(composition_wt_pct, "C", "Mn", "Si", "Ni", "Cr")
    chromium = _effective_chromium(cr, c)
    fahrenheit = 1333.0 - 25.0 * mn + 40.0 * si + 42.0 * chromium - 26.0 * ni
    return np.asarray((fahrenheit - 32.0) / 1.8 + 8.0)


def _ac3(composition_wt_pct: Composition) -> Floats:
    """Return Ac3 by Grange's formula raised by 22.6 - 21.2 C."""
    c, mn, si, ni, cr = _content(composition_wt_pct, "C", "Mn", "Si", "Ni", "Cr")
    fahrenheit = 1570.0 - 323.0 * c - 25.0 * mn + 80.0 * si - 3.0 * cr - 32.0 * ni
    return np.asarray((fahrenheit - 32.0) / 1.8 + 22.6 - 21.2 * c)


@per_record(512, MappingProxyType)
def heating_lines(composition_wt_pct: Composition) -> HeatingLines:
    """Return eutectoid, Ac1 and Ac3; once for a composition that nobody can change.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]

    Returns
    -------
    HeatingLines
        Carbon of the eutectoid [wt %], Ac1 and Ac3 [°C].

    References
    ----------
    .. [1] As `critical_temperatures`.
    """
    (carbon,) = _content(composition_wt_pct, "C")
    eutectoid, ac1 = eutectoid_carbon(composition_wt_pct), _ac1(composition_wt_pct)
    ac3 = np.where(carbon <= eutectoid + 0.08, _ac3(composition_wt_pct), np.nan)
    return HeatingLines(eutectoid, ac1, np.maximum(ac3, ac1))


def martensite_start(dissolved_wt_pct: Composition) -> Floats:
    """Return the temperature at which martensite begins to form from austenite.

    Takes what is dissolved: carbide left in the structure counts for nothing.

    Parameters
    ----------
    dissolved_wt_pct : mapping of str to array_like
        Element to content in the austenite; a missing element is 0. [wt %]

    Returns
    -------
    ndarray
        Ms. [°C]

    Notes
    -----
    482 - 278 C - 30.4 Mn - 17.7 Ni - 12.1 Cr - 7.5 Mo: the alloy slopes of [1]_; constant and
    carbon slope fitted to 14 published values for 0.16 to 0.9 % C [2]_, since the carbon slope
    of [1]_ (423) runs 86 °C low at 0.9 % C. Leaving one steel out: mean absolute error 13 °C
    for the handbook table and 14 °C for the cards; [1]_ itself: 25 and 22 °C. A trade table
    that took no part has 0.75 and 1.1 % C 34 and 40 °C lower.
    Range: 0.16 to 0.92 % C, to 1.75 % Mn, 1.85 % Ni and 5.2 % Cr.

    References
    ----------
    .. [1] K. W. Andrews, Empirical formulae for the calculation of some transformation
       temperatures, Journal of the Iron and Steel Institute 203, 1965, 721-727.
    .. [2] R. A. Grange and H. M. Stewart, Trans. AIME 167, 1946, 467-490, as tabled in Metals
       Handbook (from memory); Lucefin Group technical cards C45E, 42CrMo4, 16MnCr5 (core and
       carburised surface), 1.2344; a vendor sheet of H13.

    Examples
    --------
    >>> float(martensite_start({"C": 0.40, "Mn": 0.80, "Cr": 0.80}).round())
    337.0
    """
    c, mn, ni, cr, mo = _content(dissolved_wt_pct, "C", "Mn", "Ni", "Cr", "Mo")
    return np.asarray(482.0 - 278.0 * c - 30.4 * mn - 17.7 * ni - 12.1 * cr - 7.5 * mo)


def critical_temperatures(
    composition_wt_pct: Composition, austenitise_c: ArrayLike | None = None
) -> CriticalTemperatures:
    """Return Ac1, Ac3, Ac_m, Ms and Mf at furnace heating rates, each with its error.

    Ac3 is NaN for a hypereutectoid steel and Ac_m for a hypoeutectoid one. Ms is that of the
    austenite held at `austenitise_c`: carbon above the solubility there stays in carbide.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]
    austenitise_c : array_like, optional
        Hardening heat; the middle of `hardening_window` if absent. [°C]

    Returns
    -------
    CriticalTemperatures
        Temperatures and model errors at known composition. [°C]

    Notes
    -----
    Ac1 and Ac3 are the formulas of [1]_ raised by 8 °C and by 22.6 - 21.2 C, three constants
    fitted to 25 published pairs ([2]_ at 28 °C/h, and cards). Leaving one steel out: mean
    absolute error 7 °C for Ac1 and 9 °C for Ac3; the 1965 formula of Andrews runs 25 °C low in
    Ac3. Sources differ by some 15 °C for one grade (42CrMo4: Ac1 730 and 745), and `sd_*` holds
    that scatter. From memory of tool-steel sheets, chromium above 3 % counts a fifth for Ac1,
    and above 0.7 % C part of it sits in carbide; there the error grows. Tables still give an
    Ac3 up to 0.08 % C above the eutectoid: there it is Ac1. Mf is Ms - 215 [3]_.
    Range: 0.1 to 1.2 % C, to 1.8 % Mn and to 2 % of Si, Ni and Cr.

    References
    ----------
    .. [1] R. A. Grange, Metal Progress 79, April 1961, p. 73 (from memory).
    .. [2] ASM Handbook vol. 4, Heat Treating, 1991, table of approximate critical temperatures
       (from memory); Lucefin Group technical cards C45E, 42CrMo4, 16MnCr5.
    .. [3] W. Steven and A. G. Haynes, The temperature of formation of martensite and bainite in
       low-alloy steels, Journal of the Iron and Steel Institute 183, 1956, 349-359.

    Examples
    --------
    >>> lines = critical_temperatures({"C": 0.40, "Mn": 0.80, "Si": 0.25, "Cr": 0.80})
    >>> float(lines.ac3_c.round()), float(lines.accm_c)
    (795.0, nan)
    """
    carbon, chromium = _content(composition_wt_pct, "C", "Cr")
    at = heating_lines(composition_wt_pct)
    ac1, ac3, missing = at.ac1_c, at.ac3_c, carbon - at.eutectoid_wt_pct
    root = SOLUBILITY_SLOPE**2 + 4.0 * SOLUBILITY_CURVE * np.maximum(missing, 0.0)
    above = (np.sqrt(root) - SOLUBILITY_SLOPE) / (2.0 * SOLUBILITY_CURVE)
    accm = np.where(missing > 0.0, ac1 + above, np.nan)
    if austenitise_c is None:
        window = hardening_window(composition_wt_pct)
        austenitise_c = 0.5 * (window.low_c + window.high_c)
    held = at.solubility_wt_pct(austenitise_c)
    ms = martensite_start({**composition_wt_pct, "C": np.minimum(carbon, held)})
    wider = np.hypot(1.0, 0.3 * np.maximum(chromium - 2.0, 0.0))
    lines = (ac1, ac3, accm, ms, ms - 215.0)
    errors = (10.0 * wider, 12.0 * wider, 25.0 * wider, 18.0 * wider, 27.0 * wider)
    return CriticalTemperatures(*np.broadcast_arrays(*lines, *errors))


def hardening_window(composition_wt_pct: Composition) -> HardeningWindow:
    """Return the heat to harden from.

    Ac3 + 30 to 50 °C or, above the eutectoid, Ac1 + 30 to 60 °C. A hypereutectoid steel is
    never taken to Ac_m: it would keep austenite and coarsen.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]

    Returns
    -------
    HardeningWindow
        Lower and upper hardening heat at furnace rates. [°C]

    Notes
    -----
    Rule of practice for carbon and low-alloy steels. High-alloy tool and stainless steels
    dissolve their carbides far above this; their own sheet overrides it.

    References
    ----------
    .. [1] Common practice, as in K.-E. Thelning, Steel and its Heat Treatment, 2nd ed., 1984.

    Examples
    --------
    >>> window = hardening_window({"C": 1.15, "Mn": 0.35, "Si": 0.2, "Cr": 0.4})
    >>> float(window.low_c.round()), float(window.high_c.round())
    (766.0, 796.0)
    """
    (carbon,) = _content(composition_wt_pct, "C")
    hyper = carbon > eutectoid_carbon(composition_wt_pct)
    ac1 = _ac1(composition_wt_pct)
    line = np.where(hyper, ac1, np.maximum(_ac3(composition_wt_pct), ac1))
    return HardeningWindow(
        np.asarray(line + 30.0), np.asarray(line + np.where(hyper, 60.0, 50.0))
    )


def rapid_heating_shift(heating_rate_c_per_s: ArrayLike, structure: Structure) -> HeatingShift:
    """Return how far heating faster than a furnace raises Ac1 and Ac3.

    Fine structures transform almost at once; coarse carbide and ferrite take longer.

    Parameters
    ----------
    heating_rate_c_per_s : array_like
        Heating rate through the critical range. [°C/s]
    structure : {"quenched and tempered", "normalised", "ferrite-pearlite", "spheroidised"}
        Structure before heating. [-]

    Returns
    -------
    HeatingShift
        Rise of Ac1 and Ac3, 0 up to 0.5 °C/s. [°C]

    Raises
    ------
    OutOfRangeError
        For an unknown structure.

    Notes
    -----
    A slope for each tenfold rate above 0.5 °C/s. The Ac3 slopes are set, from memory, to the
    spread that [1]_ found for a 0.42 % C steel at induction rates (about 35 °C for quenched and
    tempered, 55 °C for normalised, 90 °C for annealed bar at 300 °C/s); a torch (5 to 30 °C/s)
    lies well inside. Stated error: 40 % of the shift.

    References
    ----------
    .. [1] W. J. Feuerstein and W. K. Smith, Trans. ASM 46, 1954, 1270-1281, as quoted in ASM
       Handbook vol. 4, Induction Heat Treatment of Steel (from memory).

    Examples
    --------
    >>> float(rapid_heating_shift(10.0, "spheroidised").ac3_c.round())
    59.0
    """
    if structure not in SHIFT_PER_DECADE:
        rule = f"one of {', '.join(SHIFT_PER_DECADE)}"
        step = "Name the structure the bar has before heating."
        raise OutOfRangeError(Problem("structure", rule, repr(structure), step))
    rate = np.asarray(heating_rate_c_per_s, dtype=float)
    decades = np.log10(np.maximum(rate / FURNACE_RATE_C_PER_S, 1.0))
    ac1, ac3 = SHIFT_PER_DECADE[structure]
    return HeatingShift(np.asarray(ac1 * decades), np.asarray(ac3 * decades), 0.4)
