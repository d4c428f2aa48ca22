"""How long a steel may take from 700 to 500 °C and still half harden, by what is known of it.

A section limit published for the bath's class says it. Where none is, the analysis and the
other limits, each read in its own bath, say it anew, and the time is their mean, each counting
by how sure it is. Of high-alloy steel an analysis says nothing: there the limits stand alone.
"""

from collections.abc import Mapping
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from catalog.values import Number
from selector.hardening.bath_response import centre_s
from selector.hardening.composition import middle
from selector.hardening.kind import is_high_alloy, start
from selector.hardening.quenched_bar import (
    BLEND_WT_PCT,
    CRITICAL_LOG_SD,
    FURNACE_C_PER_S,
    SHORTEST_S,
    SOAK_S,
    steepness,
)
from selector.heat.boiling import Bath
from selector.metallurgy.austenite import Austenite, austenite
from selector.metallurgy.hardenability import critical_cooling_time, range_widening
from selector.metallurgy.martensite import as_quenched as quenched_structure

Floats = NDArray[np.float64]

# Baths in which section limits are meant: moderately stirred, still air.
LIMIT_BATH = {"water": Bath("water"), "oil": Bath("oil"), "air": Bath("air", None, "none")}
# How sure a limit is, as log sd of the time: published ones differ so between sources
# (estimate). Limits that are estimates themselves, 24 of low-alloy steel, lie 0.77 off what the
# analysis says, root mean square, of which its own error is 0.34.
LIMIT_SPREAD, ESTIMATED_SPREAD = 0.2, 0.7
# A limit carried to another class of medium is no better known than the time by analysis.
CARRIED_SPREAD = CRITICAL_LOG_SD
# Martensite at the centre of the section limit. A high-alloy steel is published as hard right
# to the centre there: nine tenths (estimate). Of steel for water it is where a soft core
# begins, half: so shells of silver steel and W1 meet the published 2.5 to 3.5 mm at 18 to 25 mm
# in water, and silver steel hardens through in oil to about 8 mm. Steel for oil is published as
# near full hardness there, within 3 to 4 HRC: three quarters. [-]
LIMIT_SHARE, HARD_THROUGH, DEEP_THROUGH = {"water": 0.5}, 0.75, 0.9


def critical_s(steel: Steel, state: Austenite, medium_class: str) -> tuple[Floats, float]:
    """Return the time at which half the structure hardens, and the sd of its logarithm. [s]."""
    if is_high_alloy(steel) and _limits(steel):
        time_s, log_sd = _limits_alone(steel, medium_class)
        return np.full((1, 1), time_s), log_sd
    factor, log_sd = _set_right(steel, medium_class)
    # Too cold a heat dissolves no carbon, and nothing hardens in any time.
    by_analysis = critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm)
    return np.maximum(by_analysis * factor, SHORTEST_S), log_sd


def _limits(steel: Steel) -> Mapping[str, Number]:
    """Return the section limits of a steel by class of medium."""
    published = steel.hardened.section_limit_mm if steel.hardened else {}
    return {str(name): limit for name, limit in published.items()}


@lru_cache(maxsize=512)
def _limits_alone(steel: Steel, medium_class: str) -> tuple[float, float]:
    """Return the time by the limit of the bath's class, else by all, and its log sd. [s]."""
    limits = _limits(steel)
    if medium_class in limits:
        return _half_s(steel, medium_class, limits[medium_class]), LIMIT_SPREAD
    log_times = [np.log(_half_s(steel, name, limit)) for name, limit in limits.items()]
    return float(np.exp(np.mean(log_times))), CARRIED_SPREAD


@lru_cache(maxsize=512)
def _set_right(steel: Steel, medium_class: str) -> tuple[float, float]:
    """Return what the time by analysis is multiplied by, and the sd of the logarithm."""
    limits, by_analysis = _limits(steel), soaked(steel)[0]
    own = limits.get(medium_class)
    if own is not None and own.basis != "estimated":
        return _half_s(steel, medium_class, own) / by_analysis, LIMIT_SPREAD
    said = [_half_s(steel, name, limit) / by_analysis for name, limit in limits.items()]
    spread = [_limit_log_sd(limit, name == medium_class) for name, limit in limits.items()]
    weight = np.array([_analysis_log_sd(steel), *spread]) ** -2.0
    log_factor = weight @ np.log([1.0, *said]) / weight.sum()
    return float(np.exp(log_factor)), float(weight.sum() ** -0.5)


def _analysis_log_sd(steel: Steel) -> float:
    """Return how sure the time by analysis is, as sd of its logarithm."""
    # More carbon than end-quench bands have is what the time is meant for.
    alloy = {element: span.middle for element, span in steel.composition_wt_pct.items()}
    return CRITICAL_LOG_SD * float(range_widening(alloy | {"C": BLEND_WT_PCT[0]}))


def _limit_log_sd(limit: Number, same_class: bool) -> float:
    """Return how sure the time is that a limit says, as sd of its logarithm."""
    base = ESTIMATED_SPREAD if limit.basis == "estimated" else LIMIT_SPREAD
    return base if same_class else float(np.hypot(base, CARRIED_SPREAD))


def _half_s(steel: Steel, medium_class: str, limit: Number) -> float:
    """Return the time at which half hardens, by a section limit. [s]."""
    reach_s = centre_s(limit.value, LIMIT_BATH[medium_class], start(steel))
    made_for = steel.hardened.quench if steel.hardened else "water"
    deep = is_high_alloy(steel)
    share = DEEP_THROUGH if deep else LIMIT_SHARE.get(made_for, HARD_THROUGH)
    return reach_s * float((share / (1.0 - share)) ** (1.0 / steepness(np.array(reach_s))))


@lru_cache(maxsize=512)
def soaked(steel: Steel) -> tuple[float, float]:
    """Return critical time and hardness after the furnace soak that published data presume."""
    low, high = (
        (steel.hardened.temperature_c.low, steel.hardened.temperature_c.high)
        if steel.hardened
        else (850.0, 850.0)
    )
    contents = {element: float(v[0, 0]) for element, v in middle(steel).items()}
    state = austenite(contents, 0.5 * (low + high), SOAK_S, FURNACE_C_PER_S, "spheroidised")
    critical = critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm)
    hrc = quenched_structure(state.dissolved_wt_pct).hrc
    return float(np.ravel(critical)[0]), float(np.ravel(hrc)[0])
