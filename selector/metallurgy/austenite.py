"""The austenite a heating leaves: how much, what is dissolved in it, how coarse."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.metallurgy.transformation import (
    Composition,
    Structure,
    heating_lines,
    rapid_heating_shift,
)

Floats = NDArray[np.float64]

GAS_CONSTANT = 8.314
CEMENTITE_CARBON_WT_PCT = 6.69

# Ratio of an element's content in carbide to that in austenite at hardening heat.
CARBIDE_RATIO: Mapping[str, float] = {
    "Cr": 12.0,
    "Mn": 4.0,
    "Mo": 8.0,
    "V": 60.0,
    "W": 8.0,
    "Ni": 0.3,
    "Si": 0.1,
    "Cu": 0.1,
}

# Time for carbide to go about two thirds into solution at 800 °C [s], and how much each per
# cent of chromium adds to it: most where spheroidising has gathered it in the carbide.
DISSOLUTION_TIME_S: Mapping[str, tuple[float, float]] = {
    "quenched and tempered": (0.3, 1.0),
    "normalised": (0.6, 1.0),
    "ferrite-pearlite": (1.5, 1.0),
    "spheroidised": (3.5, 6.0),
}
DISSOLUTION_ENERGY = 200e3  # [J/mol]

# Manganese that sulphur binds, by atomic weights; sulphur that the bands hold anyway to which
# end-quench curves were fitted.
SULPHIDE_MN_PER_S, BAND_SULPHUR_WT_PCT = 1.71, 0.03

# Arriving at the peak and holding there count alike over this last stretch of heating. [°C]
ARRIVAL_C = 50.0
# Pearlite turns over this span, not at one temperature. [°C]
PEARLITE_SPAN_C = 15.0


@dataclass(frozen=True, slots=True, eq=False)
class Austenite:
    """State at the moment of quenching.

    `fraction` is the share of the matrix that is austenite, the rest is ferrite; carbide is
    counted apart, by weight. `dissolved_wt_pct` is the composition of the austenite.
    """

    fraction: Floats
    dissolved_wt_pct: Mapping[str, Floats]
    undissolved_carbide_fraction: Floats
    grain_size_astm: Floats


def free_manganese(manganese_wt_pct: ArrayLike, sulphur_wt_pct: ArrayLike) -> Floats:
    """Return the manganese that hardens: what sulphur binds as sulphide takes no part.

    Parameters
    ----------
    manganese_wt_pct : array_like
        Manganese in all. [wt %]
    sulphur_wt_pct : array_like
        Sulphur; 0.03 % counts for nothing, as end-quench curves were fitted to such bar. [wt %]

    Returns
    -------
    ndarray
        Manganese less 1.71 times the sulphur beyond. [wt %]

    References
    ----------
    .. [1] Atomic weights of manganese and sulphur, 54.94 and 32.06.

    Examples
    --------
    >>> float(free_manganese(1.37, 0.24).round(2))
    1.01
    """
    bound = np.maximum(np.asarray(sulphur_wt_pct, dtype=float) - BAND_SULPHUR_WT_PCT, 0.0)
    held = np.asarray(manganese_wt_pct, dtype=float)
    return np.asarray(np.maximum(held - SULPHIDE_MN_PER_S * bound, 0.0))


def austenite(
    composition_wt_pct: Composition,
    peak_c: ArrayLike,
    hold_s: ArrayLike,
    heating_rate_c_per_s: ArrayLike,
    structure: Structure,
) -> Austenite:
    """Return the austenite after heating to a peak and holding there.

    Ferrite goes by the lever rule between the critical lines, which quick heating raises and
    holding lets sink again; carbide goes by its solubility and by time.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]
    peak_c : array_like
        Highest temperature. [°C]
    hold_s : array_like
        Time at the peak. [s]
    heating_rate_c_per_s : array_like
        Heating rate through the critical range. [°C/s]
    structure : {"quenched and tempered", "normalised", "ferrite-pearlite", "spheroidised"}
        Structure before heating. [-]

    Returns
    -------
    Austenite
        Fraction [-], dissolved contents [wt %], carbide by weight [-] and grain size [ASTM].

    Raises
    ------
    OutOfRangeError
        For an unknown structure.

    Notes
    -----
    A stated estimate in physical form. A hold t after a rate r shifts the lines like the rate
    50/(50/r + t). Carbon in austenite is the lever-rule or solubility value times
    1 - exp(-sqrt(t/tau)), the early law of diffusion; tau is set by structure, grows with
    chromium and falls with 200 kJ/mol (estimated, so that spheroidised tool steel takes some
    minutes [1]_). Alloying elements share by a weight balance over the carbide left, with
    ratios from memory [2]_. Grain: ASTM 7.2 to start, so that common hardening gives the 7 that
    hardenability tables presume; growth by the fourth power, 400 kJ/mol, ASTM 5.6 after 1 h at
    950 °C, slowed by carbide left (estimated).
    Range: peaks of 700 to 1050 °C, rates of 0.01 to 50 °C/s (estimated).

    References
    ----------
    .. [1] G. Roberts, G. Krauss and R. Kennedy, Tool Steels, 5th ed., ASM, 1998 (from memory).
    .. [2] H. K. D. H. Bhadeshia and R. Honeycombe, Steels, 4th ed., 2017 (from memory).

    Examples
    --------
    >>> bar = {"C": 1.15, "Mn": 0.35, "Cr": 0.7, "V": 0.1}
    >>> short = austenite(bar, 790.0, 5.0, 10.0, "spheroidised").dissolved_wt_pct["C"]
    >>> soaked = austenite(bar, 790.0, 600.0, 10.0, "spheroidised").dissolved_wt_pct["C"]
    >>> bool(short < 0.5 * soaked)
    True
    """
    peak = np.asarray(peak_c, dtype=float)
    hold = np.asarray(hold_s, dtype=float)
    rate = np.asarray(heating_rate_c_per_s, dtype=float)
    share, lever, above = _lever(composition_wt_pct, peak, ARRIVAL_C / rate + hold, structure)
    spent = hold + bounded(above, 0.0, ARRIVAL_C) / rate
    gone = -np.expm1(-np.sqrt(spent / _dissolution_time_s(composition_wt_pct, peak, structure)))
    held = np.where(share > 0.0, gone * lever, 0.0)

    carbon = np.asarray(composition_wt_pct.get("C", 0.0), dtype=float)
    left = np.maximum(carbon - share * held, 0.0) / (CEMENTITE_CARBON_WT_PCT - held)
    dissolved = {
        element: _left_in_austenite(element, content, left)
        for element, content in composition_wt_pct.items()
    }
    grain = _grain_size_astm(peak, hold, left)
    share, held, left, grain = np.broadcast_arrays(share, held, left, grain)
    return Austenite(share, {**dissolved, "C": held}, left, grain)


def _lever(
    composition_wt_pct: Composition, peak_c: Floats, arrival_s: Floats, structure: Structure
) -> tuple[Floats, Floats, Floats]:
    """Return austenite share, the carbon it could hold, and the height above Ac1."""
    shift = rapid_heating_shift(ARRIVAL_C / arrival_s, structure)
    lines = heating_lines(composition_wt_pct)
    eutectoid = lines.eutectoid_wt_pct
    low, high = lines.ac1_c + shift.ac1_c, lines.ac3_c + shift.ac3_c
    above = peak_c - low
    progress = bounded(above / np.fmax(high - low, 1.0), 0.0, 1.0)

    carbon = np.asarray(composition_wt_pct.get("C", 0.0), dtype=float)
    # Austenite beside ferrite thins from the eutectoid at Ac1 to the steel's own carbon at Ac3.
    beside_ferrite = eutectoid - np.maximum(eutectoid - carbon, 0.0) * progress
    beside_carbide = np.minimum(carbon, lines.solubility_wt_pct(peak_c))
    lever = np.where(carbon < eutectoid, beside_ferrite, beside_carbide)
    share = np.minimum(carbon / np.maximum(lever, 1e-6), 1.0)
    share = np.where(progress < 1.0, share, 1.0) * bounded(above / PEARLITE_SPAN_C, 0.0, 1.0)
    return np.asarray(share), np.asarray(lever), np.asarray(above)


def _dissolution_time_s(
    composition_wt_pct: Composition, peak_c: Floats, structure: Structure
) -> Floats:
    """Return the time constant of carbide dissolution."""
    chromium = np.minimum(np.asarray(composition_wt_pct.get("Cr", 0.0), dtype=float), 3.0)
    hotter = 1.0 / (peak_c + 273.15) - 1.0 / 1073.15
    quickening = np.exp(DISSOLUTION_ENERGY / GAS_CONSTANT * hotter)
    time_s, slowing = DISSOLUTION_TIME_S[structure]
    return np.asarray(time_s * (1.0 + slowing * chromium) * quickening)


def _left_in_austenite(element: str, content_wt_pct: ArrayLike, carbide: Floats) -> Floats:
    """Return what carbide leaves of an element: a weight balance at a fixed ratio."""
    ratio = CARBIDE_RATIO.get(element, 1.0)
    if ratio == 1.0:
        return np.asarray(content_wt_pct, dtype=float)
    return np.asarray(np.asarray(content_wt_pct, dtype=float) / (1.0 + carbide * (ratio - 1.0)))


def _grain_size_astm(peak_c: Floats, hold_s: Floats, carbide: Floats) -> Floats:
    """Return the ASTM grain size number after growth that undissolved carbide slows."""
    hotter = 1.0 / (peak_c + 273.15) - 1.0 / 1223.15
    per_second = 8.0 / 3600.0 * np.exp(-400e3 / GAS_CONSTANT * hotter)
    growth = 0.25 * np.log1p(per_second * hold_s / (1.0 + 200.0 * carbide))
    return np.asarray(7.2 - 2.0 * growth / np.log(2.0))
