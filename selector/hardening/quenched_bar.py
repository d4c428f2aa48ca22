"""Hardness across a long round bar as quenched, from its composition and its bath.

The bar's own cooling is simulated; each point is carried to the end-quench bar by its time from
700 to 500 °C. What that equivalence misses (a rim that keeps boiling, bainite below 500 °C) is
put right by the published bar charts, as a factor on the distance that is 1 in air. Above 0.7 %
carbon, where end-quench bands end, the time stands against a critical one instead.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.polynomial.hermite_e import hermegauss
from numpy.typing import NDArray

from selector.hardening.bar_cooling import (
    BarCooling,
    bar_cooling,
    rim_as_simulated,
    time_on_bar_s,
)
from selector.hardening.bar_limit import alloy_wt_pct, check_bar
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.heat.boiling import Bath, bath_temperature_c
from selector.heat.quench import Agitation, Medium
from selector.heat.steel_property import SteelClass
from selector.metallurgy.austenite import Austenite, austenite, free_manganese
from selector.metallurgy.band_curve import heat_coefficients
from selector.metallurgy.hardenability import (
    PRESUMED_WT_PCT,
    critical_cooling_time,
    heat_hardness,
    range_widening,
)
from selector.metallurgy.martensite import as_quenched, fraction_from_hardness
from selector.metallurgy.transformation import SPHEROIDISED_ABOVE_WT_PCT, Structure

Floats = NDArray[np.float64]
Composition = Mapping[str, float]

SOAK_S, FURNACE_C_PER_S = 1800.0, 0.2
# The two ways to hardness are blended over these carbon contents. [wt %]
BLEND_WT_PCT = (0.65, 0.75)
HIGH_ALLOY_WT_PCT = 5.0

# How far one bar lies along the end-quench bar from where it is put, its heat and its bath
# together: charts differ by 0.15, factor products by 0.12, and a bath called moderate is not
# two days the same. As a logarithm; and the scatter of hardness itself, flat places included.
# The likeliest by the as-quenched readings of the 26 leaner heats that the rims were set on are
# 0.25 and 1.6 to 1.8; another laboratory is taken to scatter by the larger.
BAR_LOG_SD, LEVEL_SD_HRC = 0.25, 1.8

# Above 0.7 % C: how steeply martensite gives way to pearlite about the critical time, and the
# hardness of the pearlite: 45 HRC at its finest, in a second, and less with the square of the
# logarithm of the time; read off as-quenched 1080 and 1095 in water and oil (from memory),
# whose critical time is about 2.5 s. Pearlite is as fine as it is undercooled, so what takes
# longer to form is as hard after a time as many times longer. Steel that hardens deeper falls
# off by degrees, up to where the order of a heat's end-quench curve is held, an ideal diameter
# of 180 mm.
STEEPNESS, STEEP_FROM_TO_S = 6.0, (2.5, 80.0)
PEARLITE_HRC, PEARLITE_FALL_HRC, COARSEST_HRC = 45.0, 0.6, 8.0  # annealed 1080: 174 HB
CRITICAL_LOG_SD = 0.34  # stated with the critical time
# A bath called moderate is not two days the same, and charts differ: of the time. [-]
BATH_LOG_SD = 0.2
# Points and weights that stand for a normal error.
NODES, _WEIGHTS = hermegauss(9)
WEIGHTS = _WEIGHTS / _WEIGHTS.sum()
SHORTEST_S = 1e-3
# Turned to pearlite, a quenched bar of any size falls by some 3 HRC from half radius to its
# centre, where it cools little slower: the heat of transformation keeps the core. This much
# from skin to centre beyond what the curve gives, the best of a grid whichever steel is left
# out; with the cube of the pearlite, and less where skin and core cool alike, as in air.
CORE_HRC, CORE_POWER = 3.0, 3.0
FERRITE_HV = 180.0
ROOM_C = 20.0


@dataclass(frozen=True, slots=True, eq=False)
class QuenchedBar:
    """Hardness by radius, centre first, with its error at known composition."""

    radius_mm: Floats
    hrc: Floats
    sd_hrc: Floats


def quenched_bar(
    composition_wt_pct: Composition,
    diameter_mm: float,
    medium: Medium,
    austenitise_c: float,
    bath_temperature_c: float | None = None,
    agitation: Agitation = "moderate",
) -> QuenchedBar:
    """Return the as-quenched hardness across a long round bar.

    Soaked half an hour, from a spheroidised structure above 0.7 % C and a normalised one below,
    and quenched without delay.

    Parameters
    ----------
    composition_wt_pct : mapping of str to float
        Element to content. Missing Si, Cr, Ni, Mo and Cu are presumed as in `heat_curve`; any
        other missing element is 0. [wt %]
    diameter_mm : float
        Diameter. [mm]
    medium : str
        Water, warm-water, brine, oil, fast-oil, vegetable-oil, polymer or air. [-]
    austenitise_c : float
        Hardening heat. [°C]
    bath_temperature_c : float, optional
        Bath; left out, the usual of the medium. [°C]
    agitation : str, optional
        None, mild, moderate, good, strong or violent. [-]

    Returns
    -------
    QuenchedBar
        Radius from 0 to the surface, hardness and its error. [HRC]

    Raises
    ------
    OutOfRangeError
        The diameter, heat, composition, medium or bath is outside what can be answered.
    """
    check_bar(composition_wt_pct, diameter_mm, austenitise_c)
    bath = Bath(medium, bath_temperature_c, agitation)
    alloy = alloy_wt_pct(composition_wt_pct)
    kind: SteelClass = "high-alloy" if alloy > HIGH_ALLOY_WT_PCT else "low-alloy"
    cooling = bar_cooling(diameter_mm, bath, austenitise_c, kind)
    state = _austenite(composition_wt_pct, austenitise_c)
    carbon = composition_wt_pct["C"]
    rich = float(np.clip((carbon - BLEND_WT_PCT[0]) / np.diff(BLEND_WT_PCT)[0], 0.0, 1.0))
    hrc, variance = np.zeros_like(cooling.radius_mm), np.zeros_like(cooling.radius_mm)
    if rich < 1.0:
        lean_hrc, lean_sd = _by_curve(state, cooling)
        hrc, variance = hrc + (1.0 - rich) * lean_hrc, variance + (1.0 - rich) * lean_sd**2
    if rich > 0.0:
        place = cooling.radius_mm / cooling.radius_mm[-1]
        nearer = rim_as_simulated(cooling.jominy_mm, cooling.time_700_500_s, place)
        simulated = replace(cooling, jominy_mm=np.minimum.accumulate(nearer))
        rich_hrc, rich_sd = _by_critical_time(state, simulated, bath)
        hrc, variance = hrc + rich * rich_hrc, variance + rich * rich_sd**2
    place = cooling.radius_mm / cooling.radius_mm[-1]
    hrc = hrc + softer_core(state.dissolved_wt_pct["C"], hrc, place, cooling.uneven)
    return QuenchedBar(cooling.radius_mm, hrc, np.sqrt(variance))


def softer_core(
    carbon_wt_pct: Floats, hrc: Floats, place: Floats, uneven: Floats | float
) -> Floats:
    """Return by how much pearlite is softer in the core than under the skin.

    Parameters
    ----------
    carbon_wt_pct : ndarray
        Carbon in solution. [wt %]
    hrc : ndarray
        Hardness by the end-quench curve. [HRC]
    place : ndarray
        Share of the radius, 1 at the surface. [-]
    uneven : ndarray or float
        How unevenly the section cools, as `bar_cooling.unevenness` has it. [-]

    Returns
    -------
    ndarray
        What is to be added: half of `CORE_HRC` at most, less in the core. [HRC]
    """
    pearlite = 1.0 - fraction_from_hardness(carbon_wt_pct, hrc)
    return np.asarray(CORE_HRC * uneven * pearlite**CORE_POWER * (place - 0.5))


def _austenite(composition_wt_pct: Composition, austenitise_c: float) -> Austenite:
    """Return the austenite after the soak."""
    held = composition_wt_pct.get("Mn", 0.0), composition_wt_pct.get("S", 0.0)
    manganese = float(free_manganese(*held))
    effective = {**PRESUMED_WT_PCT, **composition_wt_pct, "Mn": manganese}
    rich = composition_wt_pct["C"] > SPHEROIDISED_ABOVE_WT_PCT
    structure: Structure = "spheroidised" if rich else "normalised"
    return austenite(effective, austenitise_c, SOAK_S, FURNACE_C_PER_S, structure)


def _by_curve(state: Austenite, cooling: BarCooling) -> tuple[Floats, Floats]:
    """Return hardness by the end-quench curve of what is dissolved, ferrite left mixed in."""
    grain = state.grain_size_astm
    dissolved = state.dissolved_wt_pct
    hardness = heat_hardness(dissolved, cooling.jominy_mm, grain)
    hv = hv_from_hrc(hardness, outside="extend")
    hrc = mixed_hrc(state.fraction, hv, np.minimum(FERRITE_HV, hv))
    off = np.exp(BAR_LOG_SD * NODES)[:, None]
    reach = _spread(heat_hardness(dissolved, cooling.jominy_mm * off, grain), hardness)
    return hrc, range_widening(dissolved) * np.hypot(LEVEL_SD_HRC, reach)


def _spread(off_hrc: Floats, hrc: Floats) -> Floats:
    """Return the standard deviation about the middle, of hardness at `NODES`."""
    return np.asarray(np.sqrt(WEIGHTS @ (off_hrc - hrc) ** 2))


def mixed_hrc(share: Floats, hard_hv: Floats, soft_hv: Floats) -> Floats:
    """Return the hardness of a mixture: the softer gives way first, so logarithms mix.

    Parameters
    ----------
    share : ndarray
        Share of the harder. [-]
    hard_hv, soft_hv : ndarray
        Hardness of either. [HV]

    Returns
    -------
    ndarray
        Hardness of both together. [HRC]
    """
    if (share == 1.0).all():
        return np.asarray(hrc_from_hv(hard_hv, outside="extend"))
    log_hv = share * np.log(hard_hv) + (1.0 - share) * np.log(soft_hv)
    return np.asarray(hrc_from_hv(np.exp(log_hv), outside="extend"))


def pearlite_hrc(time_s: Floats, critical_s: Floats) -> Floats:
    """Return the hardness of pearlite; the quickest is finest and hardest.

    Parameters
    ----------
    time_s : ndarray
        Time from 700 to 500 °C. [s]
    critical_s : ndarray
        Time at which half the structure hardens. [s]

    Returns
    -------
    ndarray
        Hardness. [HRC]

    Notes
    -----
    45 - 0.6 ln² t, t the time as in steel of 2.5 s critical time, at least 1 s.
    """
    as_read = time_s * (STEEP_FROM_TO_S[0] / critical_s)
    fall = PEARLITE_FALL_HRC * np.log(np.maximum(as_read, 1.0)) ** 2
    return np.asarray(np.maximum(PEARLITE_HRC - fall, COARSEST_HRC))


def _by_critical_time(
    state: Austenite, cooling: BarCooling, bath: Bath
) -> tuple[Floats, Floats]:
    """Return hardness by the point's time over the critical time of what is dissolved."""
    # Too cold a heat dissolves no carbon, and nothing hardens in any time.
    critical = critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm)
    critical = np.maximum(critical, SHORTEST_S)
    spent = time_on_bar_s(cooling.jominy_mm, cooling.time_700_500_s)
    # Whatever the bath, hardness is read in the room.
    end_c = min(bath_temperature_c(bath), ROOM_C)
    full = as_quenched(state.dissolved_wt_pct, end_c)
    full_hv = hv_from_hrc(full.hrc, outside="extend")
    # What the heat left untransformed stays the annealed bar it was.
    annealed_hv = hv_from_hrc(COARSEST_HRC, outside="extend")

    def mixed(time_s: Floats) -> Floats:
        share = 1.0 / (1.0 + (time_s / critical) ** steepness(critical))
        soft = np.minimum(pearlite_hrc(time_s, critical), full.hrc)
        soft_hv = hv_from_hrc(soft, outside="extend")
        hv = share * full_hv + (1.0 - share) * soft_hv
        return mixed_hrc(state.fraction, hv, np.minimum(annealed_hv, hv))

    off = np.exp(np.hypot(CRITICAL_LOG_SD, BATH_LOG_SD) * NODES)[:, None]
    hrc, level = mixed(spent), np.maximum(full.sd_hrc, LEVEL_SD_HRC)
    return hrc, np.hypot(level, _spread(mixed(spent * off), hrc))


def steepness(critical_s: Floats) -> Floats:
    """Return how steeply martensite gives way about a critical time, as a power of the time.

    Parameters
    ----------
    critical_s : ndarray
        Time from 700 to 500 °C at which half the structure hardens. [s]

    Returns
    -------
    ndarray
        Power. [-]

    Notes
    -----
    As read off where steel hardens shallow. It falls as Avrami's order in a heat's end-quench
    curve does with the logarithm of the ideal diameter, which goes with the root of the time.
    """
    fall = 0.5 * heat_coefficients().shape["order_per_l"]
    held = np.clip(critical_s, *STEEP_FROM_TO_S)
    return np.asarray(STEEPNESS * (held / STEEP_FROM_TO_S[0]) ** fall)
