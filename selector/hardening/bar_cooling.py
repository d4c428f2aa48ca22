"""How a long round bar cools in its bath, on the scale of the end-quench bar.

The bar's own cooling is simulated; each point is carried to the end-quench bar by its time from
700 to 500 °C. What that equivalence misses (a rim that keeps boiling, bainite below 500 °C) is
put right by the published bar charts, as a factor on the distance that is 1 in air.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.heat.bar_equivalent import jominy_distance_mm
from selector.heat.boiling import Bath
from selector.heat.conduction import Plan, Stop
from selector.heat.end_quench import (
    NEAREST_MM,
    end_quench_time_s,
    equivalent_distance_mm,
    time_between,
)
from selector.heat.grid import round_grid
from selector.heat.immersion import quench_boundary, quench_history
from selector.heat.steel_property import SteelClass, cooling_steel
from selector.kept import kept_on_disk

Floats = NDArray[np.float64]
Chart = Literal["water", "oil"]

# The bar charts are taken to show our moderate motion: SAE J1268 says mild (H 0.32 and 1.05),
# published as-quenched tables, motion unstated, lie some 10 % milder still (from memory).
CHART_SEVERITY: Mapping[Chart, float] = {"oil": 0.30, "water": 1.0}
# How much of the water chart a bath's charts hold, the rest of the oil chart. Polymer, between
# the two, takes half of either (estimated).
WATER_SHARE = {
    "water": 1.0,
    "warm-water": 1.0,
    "brine": 1.0,
    "oil": 0.0,
    "fast-oil": 0.0,
    "vegetable-oil": 0.0,
    "polymer": 0.5,
}
# So far outside their own bath the charts of oil and water can cross: there none hardens more
# than water in the same motion.
CHARTS_CROSS = ("strong", "violent")
CHART_BOUNDS = (0.4, 2.5)
# Rims of bars measured as quenched in oil lie farther along the end-quench bar than the charts
# have them, by a factor of 1.3 to 1.45 at 25 and 50 mm, by little at 13 and 100 mm and by none
# at half radius (25 heats from memory): one factor for all sizes, the best of a grid of tenths,
# as the advice quenches them, whichever of 19 steels is left out. [-]
RIM_IN_OIL = 1.35
# For the rim in water the charts have two points, 50 and 96 mm, that fit no one exchange. Rims
# measured lie no nearer than simulated (1020 to 1050, 25 and 50 mm) and, in 100 mm, now there,
# now where charted (1095, 1050): farther out half of the chart, in the logarithm. Steel too
# rich for bainite, whose pearlite has come by 500 °C, keeps its rim as simulated (1095). [-]
CHARTED_RIM_IN_WATER = 0.5
# Of the way from the very end: bars measured in water, motion unstated, lie farther throughout
# (10 heats from memory): the best is 1.3 whichever is left out, but then the charts are left by
# more than their own scatter. [-]
IN_WATER = 1.2
# The skin of a bar that is quenched lies so much nearer than its core, or more. [-]
QUENCHED_UNEVEN = 0.3
RIM_BEGINS = 0.75  # up to here the charts have lines of many points


@dataclass(frozen=True, slots=True, eq=False)
class BarCooling:
    """How a bar cools: by radius, time from 700 to 500 °C and equivalent distance."""

    radius_mm: Floats
    time_700_500_s: Floats
    jominy_mm: Floats

    @property
    def uneven(self) -> float:
        """How unevenly it cools: 0 where skin and core cool alike, as in air, to 1."""
        return float(unevenness(self.jominy_mm[-1], self.jominy_mm[0]))


def bar_cooling(
    diameter_mm: float, bath: Bath, start_c: float, steel_class: SteelClass = "low-alloy"
) -> BarCooling:
    """Return how each radius of a long bar cools in a bath, on the scale of the end-quench bar.

    Parameters
    ----------
    diameter_mm : float
        Diameter. [mm]
    bath : Bath
        The bath.
    start_c : float
        Hardening heat. [°C]
    steel_class : {"low-alloy", "high-alloy"}
        Property set of the austenite.

    Returns
    -------
    BarCooling
        Time as simulated; distance corrected by the published bar charts, and at the rim by
        bars measured as quenched.
    """
    radius, time_s = _simulated(diameter_mm, bath, start_c, steel_class)
    bare, place = equivalent_distance_mm(time_s), radius / radius[-1]

    def factor(chart: Chart) -> Floats:
        """Return the distance by the published charts over that simulated, in their bath."""
        own = Bath(chart)
        same = own == bath
        anchor_s = time_s if same else _simulated(diameter_mm, own, start_c, steel_class)[1]
        anchor = equivalent_distance_mm(anchor_s)
        charted = jominy_distance_mm(diameter_mm, place, CHART_SEVERITY[chart])
        found = _put_right(chart, place, charted / anchor)
        # A keener bath than the chart's goes the same share of the way on to the very end.
        way = np.maximum(anchor - NEAREST_MM, 1e-9)
        left = np.maximum(found * anchor - NEAREST_MM, 0.0) / way
        nearer = (NEAREST_MM + (bare - NEAREST_MM) * left) / bare
        found = np.where((found < 1.0) & (bare < anchor), nearer, found)
        # No rim measured in water lies nearer than simulated there.
        return np.maximum(found, np.minimum(anchor / bare, 1.0)) if chart == "water" else found

    distance, share = bare, WATER_SHARE.get(bath.medium)
    if share is not None:
        if share > 0.0:
            distance = distance * factor("water") ** share
        if share < 1.0:
            distance = distance * factor("oil") ** (1.0 - share)
        beyond = np.maximum(distance - NEAREST_MM, 0.0)
        distance = NEAREST_MM + (IN_WATER if share > 0.0 else 1.0) * beyond
        if share < 1.0 and bath.agitation in CHARTS_CROSS:
            water = Bath("water", None, bath.agitation, max(1.0, bath.keenness))
            most = bar_cooling(diameter_mm, water, start_c, steel_class)
            distance = np.maximum(distance, most.jominy_mm)
    # Nor does a bar ever harden less nearer its surface.
    return BarCooling(radius, time_s, np.minimum.accumulate(distance))


def _put_right(chart: Chart, place: Floats, factor: Floats) -> Floats:
    """Return a chart's factor, its rim as bars measured as quenched have it."""
    factor = np.clip(factor, *CHART_BOUNDS)
    if chart == "oil":
        return np.asarray(factor * RIM_IN_OIL ** _outward(place))
    trusted = 1.0 - (1.0 - CHARTED_RIM_IN_WATER) * _outward(place)
    return np.where(factor > 1.0, factor**trusted, factor)


def rim_as_simulated(distance_mm: Floats, time_s: Floats, place: Floats) -> Floats:
    """Return the distance as rich steel sees it, whose pearlite has come by 500 °C.

    Parameters
    ----------
    distance_mm : ndarray
        Equivalent distance as charts and measured bars have it. [mm]
    time_s : ndarray
        Time from 700 to 500 °C as simulated. [s]
    place : ndarray
        Share of the radius, 1 at the surface. [-]

    Returns
    -------
    ndarray
        Distance. [mm]
    """
    farther = np.maximum(distance_mm / equivalent_distance_mm(time_s), 1.0)
    return np.asarray(distance_mm / farther ** _outward(place))


def unevenness(skin_mm: Floats, core_mm: Floats) -> Floats:
    """Return how unevenly a bar cools, from the equivalent distance of its skin and its core.

    Parameters
    ----------
    skin_mm, core_mm : ndarray
        Equivalent distance. [mm]

    Returns
    -------
    ndarray
        From 0 where both cool alike, as in air, to 1 where it is quenched. [-]
    """
    return np.asarray(np.clip((1.0 - skin_mm / core_mm) / QUENCHED_UNEVEN, 0.0, 1.0))


def _outward(place: Floats) -> Floats:
    """Return how far out a place lies: 0 up to where the rim begins, 1 at the surface."""
    return np.asarray(np.maximum(place**2 - RIM_BEGINS**2, 0.0) / (1.0 - RIM_BEGINS**2))


@lru_cache(maxsize=1024)
@kept_on_disk
def _simulated(
    diameter_mm: float, bath: Bath, start_c: float, steel_class: SteelClass
) -> tuple[Floats, Floats]:
    """Return radius from 0 to the surface, and time from 700 to 500 °C there."""
    grid = round_grid(diameter_mm)
    stop = Stop(0, 480.0, "falling")
    plan = Plan(86400.0, watch=tuple(int(c) for c in grid.cells()), stop=stop)
    boundary = quench_boundary(grid, bath)
    history = quench_history(grid, cooling_steel(steel_class), start_c, (bath, boundary), plan)
    r, log_time = grid.across_mm, np.log(time_between(history.time_s, history.temperature_c))
    # Even about the axis; straight over the last half cell to the surface.
    bow = (log_time[1] - log_time[0]) / (r[1] ** 2 - r[0] ** 2)
    slope = (log_time[-1] - log_time[-2]) / (r[-1] - r[-2])
    surface = diameter_mm / 2.0
    radius = np.concatenate([[0.0], r, [surface]])
    ends = log_time[0] - bow * r[0] ** 2, log_time[-1] + slope * (surface - r[-1])
    return radius, np.exp(np.concatenate([[ends[0]], log_time, [ends[1]]]))


def time_on_bar_s(distance_mm: Floats, time_s: Floats) -> Floats:
    """Return the time from 700 to 500 °C, put right as the distance was.

    Parameters
    ----------
    distance_mm : ndarray
        Equivalent distance as charts and measured bars have it. [mm]
    time_s : ndarray
        Time as simulated. [s]

    Returns
    -------
    ndarray
        Time; the end-quench bar has ends, time has none. [s]
    """
    own = end_quench_time_s(equivalent_distance_mm(time_s))
    return np.asarray(time_s * end_quench_time_s(distance_mm) / own)
