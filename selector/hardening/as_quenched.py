"""Heat and metallurgy joined: hardness at points of a part, as quenched and as tempered.

Two ways to the as-quenched hardness. Up to 0.7 % C and low alloy the composition decides, by
the end-quench curve at the equivalent distance. Above, and for tool and stainless steels, the
catalogue's own hardness and section limit decide: the limit is turned into the end-quench
distance it corresponds to in its own quench, and other sections, positions and media are
judged by theirs.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.hardening.bath_response import TIME_POWER, Points, Start, centre_s, start_of
from selector.hardening.composition import Composition
from selector.hardening.model_range import ranges_left
from selector.hardening.quenched_bar import (
    CRITICAL_LOG_SD,
    FERRITE_HV,
    FURNACE_C_PER_S,
    HIGH_ALLOY_WT_PCT,
    SOAK_S,
    STEEPNESS,
    QuenchedBar,
    mixed_hrc,
    quenched_bar,
)
from selector.hardness_scale import hv_from_hrc
from selector.heat.bar_equivalent import LOG_SD_JOMINY
from selector.heat.boiling import Bath
from selector.heat.steel_property import SteelClass
from selector.job.process import Heat
from selector.metallurgy.austenite import austenite
from selector.metallurgy.hardenability import critical_cooling_time, heat_curve
from selector.metallurgy.martensite import as_quenched as quenched_structure
from selector.metallurgy.tempering import (
    Structure,
    tempered_from_curve,
    tempered_hardness,
)
from selector.sampling import Normals

# The whole job on a plain bar has its own file; it is a hardness map too, and is named here.
__all__ = [
    "AsQuenched",
    "Points",
    "QuenchedBar",
    "as_quenched",
    "by_composition",
    "curve_reach_c",
    "quenched_bar",
    "start",
    "tempered",
]

Floats = NDArray[np.float64]

# Baths in which published section limits are meant: moderately stirred, still air.
LIMIT_BATH = {"water": Bath("water"), "oil": Bath("oil"), "air": Bath("air", None, "none")}
# A section limit says "hard to the centre"; half martensite takes this many times longer from
# 700 to 500 °C. Estimate of the project: some nine tenths martensite at the limit. [-]
LIMIT_TO_HALF = 1.6
# How much better the rim does than the centre in a bath milder than the steel's own. [-]
RIM_CREDIT = 0.25
# Scatter of published section limits between sources, as log sd of the critical time; estimate.
# A limit carried to another class of medium is no better known than the critical time itself.
LIMIT_SPREAD, CARRIED_SPREAD = 0.2, CRITICAL_LOG_SD
# What a tool steel falls to where it does not harden: fine pearlite and bainite. [HRC]
UNHARDENED_HRC = 38.0
# Beyond its hardening range a tool steel loses this much for each degree, below and above; the
# range leaves room, so it forms austenite down to 30 °C below and none from 60 °C. Estimates.
UNDER_HRC_PER_C, OVER_HRC_PER_C = 0.06, 0.03
FORMED_FULL_C, FORMED_NONE_C = 30.0, 60.0
AS_QUENCHED_SD_HRC = 0.8
CURVE_SD_HRC = 1.2
# Held so long, a tool steel has dissolved what its published hardness presumes. [s]
SOAKED_S = 900.0
COMPOSITION_ROUTE_TO_WT_PCT = 0.7


@dataclass(frozen=True, slots=True, eq=False)
class AsQuenched:
    """Hardness as quenched at the points, and where it comes from. [HRC]."""

    hrc: Floats
    relation: str
    source: str
    validity: tuple[str, ...]


def by_composition(steel: Steel) -> bool:
    """Return whether the composition models speak for a steel, rather than its catalogue curve.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.

    Returns
    -------
    bool
        False for tool, stainless and high-carbon steels with a published hardness.
    """
    carbon = steel.composition_wt_pct.get("C")
    lean = carbon is not None and carbon.middle <= COMPOSITION_ROUTE_TO_WT_PCT
    published = steel.hardened is not None and steel.hardened.as_quenched_hrc is not None
    return lean and not (published and steel.tempered is not None)


def as_quenched(
    steel: Steel,
    composition: Composition,
    heat: Heat,
    points: Points,
    normals: Normals,
) -> AsQuenched:
    """Return the as-quenched hardness at points that cool like end-quench distances.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.
    composition : mapping of str to ndarray
        Element to content; shape (draws, 1). [wt %]
    heat : Heat
        Hardening heat.
    points : Points
        Where, and how each place cools.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    AsQuenched
        Hardness; shape (draws, points). [HRC]
    """
    if by_composition(steel):
        return _by_composition(steel, composition, heat, points, normals)
    return _by_catalogue(steel, composition, heat, points, normals)


def _by_composition(
    steel: Steel, composition: Composition, heat: Heat, points: Points, normals: Normals
) -> AsQuenched:
    """Harden by the end-quench curve of what is dissolved."""
    state = austenite(
        composition,
        heat.peak_c,
        heat.hold_s,
        heat.rate_c_per_s,
        heat.structure,
    )
    # The equivalence has an error of its own, and so has the response of the quench.
    own = np.hypot(LOG_SD_JOMINY, points.log_sd)
    distance = points.distance_mm * np.exp(own * normals["section_limit"][:, None])
    # Each draw is one heat, as a bar of known analysis is.
    curve = heat_curve(state.dissolved_wt_pct, distance, state.grain_size_astm)
    error = curve.sd_hrc * normals["hardenability"][:, None]
    hard_hv = hv_from_hrc(np.minimum(curve.hrc + error, 68.0), outside="extend")
    return AsQuenched(
        mixed_hrc(state.fraction, hard_hv, np.minimum(FERRITE_HV, hard_hv)),
        f"end-quench curve ({curve.model}) at the equivalent distance, times austenite formed",
        "hardenability.heat_curve",
        ranges_left("hardenability.heat_curve", steel),
    )


def _by_catalogue(
    steel: Steel, composition: Composition, heat: Heat, points: Points, normals: Normals
) -> AsQuenched:
    """Harden by the published hardness and section limit of the steel."""
    hardened = steel.hardened
    if hardened is None:
        msg = f"{steel.slug} has no hardened table"
        raise ValueError(msg)
    window = hardened.temperature_c
    under = np.maximum(window.low - heat.peak_c, 0.0)
    over = np.maximum(heat.peak_c - window.high, 0.0)
    if hardened.as_quenched_hrc is not None:
        top = hardened.as_quenched_hrc.middle
    else:
        dissolved = {k: np.minimum(v, 0.8) if k == "C" else v for k, v in composition.items()}
        top = float(np.median(quenched_structure(dissolved).hrc))
    scatter = AS_QUENCHED_SD_HRC * normals["as_quenched"][:, None]
    full = top + scatter - UNDER_HRC_PER_C * under - OVER_HRC_PER_C * over
    full = full - _undissolved_hrc(composition, heat)
    share = 1.0 / (1.0 + _beyond(steel, composition, heat, points, normals) ** STEEPNESS)
    floor = min(UNHARDENED_HRC, top - 5)
    return AsQuenched(
        floor + (full - floor) * share * _formed(steel, heat),
        "published hardness and section limit of the steel, by time from 700 to 500 °C",
        hardened.as_quenched_hrc.source
        if hardened.as_quenched_hrc
        else "martensite.as_quenched",
        () if hardened.section_limit_mm else ("no published section limit",),
    )


def _undissolved_hrc(composition: Composition, heat: Heat) -> Floats:
    """Return what a heat loses to carbide that a furnace soak would have dissolved. [HRC]."""
    if heat.structure != "spheroidised" or np.min(heat.hold_s) >= SOAKED_S:
        return np.zeros((1, 1))
    # Of the usual analysis and heat: what those off it lose is told by errors of their own.
    usual_c = np.median(heat.peak_c, axis=0)
    contents = np.median(np.hstack(list(composition.values())), axis=0)
    steel = dict(zip(composition, contents, strict=True))
    held, soaked = (
        quenched_structure(
            austenite(steel, usual_c, hold_s, rate, "spheroidised").dissolved_wt_pct
        ).hrc
        for hold_s, rate in ((heat.hold_s, heat.rate_c_per_s), (SOAK_S, FURNACE_C_PER_S))
    )
    return np.maximum(soaked - held, 0.0)


def _beyond(
    steel: Steel, composition: Composition, heat: Heat, points: Points, normals: Normals
) -> Floats:
    """Return each point's time over that of half martensite: 1 there, less inside. [-]."""
    limits = steel.hardened.section_limit_mm if steel.hardened else {}
    own = heat.medium_class in limits
    spread = np.hypot(LIMIT_SPREAD if own else CARRIED_SPREAD, TIME_POWER * points.log_sd)
    scatter = np.exp(-spread * normals["section_limit"][:, None])
    # In a bath milder than its own a steel hardens up to the published section and hardly
    # beyond, rim and all: the charts' quick rim does not see the vapour stage.
    milder = own and steel.hardened is not None and heat.medium_class != steel.hardened.quench
    of_centre = points.centre_s * (1.0 - RIM_CREDIT * points.position)
    spent = of_centre if milder else points.time_s
    critical = _critical_s(steel, composition, heat, simulated=milder)
    return np.asarray(spent / critical * scatter)


def _formed(steel: Steel, heat: Heat) -> Floats:
    """Return the share that turned to austenite, by how far the peak missed the range."""
    low = steel.hardened.temperature_c.low if steel.hardened else 800.0
    missed = low - heat.peak_c
    return np.clip((FORMED_NONE_C - missed) / (FORMED_NONE_C - FORMED_FULL_C), 0.0, 1.0)


def _critical_s(
    steel: Steel, composition: Composition, heat: Heat, *, simulated: bool
) -> Floats:
    """Return the time from 700 to 500 °C at which half the structure hardens. [s]."""
    limits = steel.hardened.section_limit_mm if steel.hardened else {}
    own = limits.get(heat.medium_class)
    limits = {heat.medium_class: own} if own is not None else limits
    begin = start(steel)
    reach = [
        centre_s(limit.value, LIMIT_BATH[quench], begin)[1 if simulated else 0]
        for quench, limit in limits.items()
    ]
    if reach:
        return np.full((1, 1), LIMIT_TO_HALF * float(np.exp(np.mean(np.log(reach)))))
    state = austenite(
        composition,
        heat.target_c,
        heat.hold_s,
        heat.rate_c_per_s,
        heat.structure,
    )
    return critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm)


def start(steel: Steel) -> Start:
    """Return how a steel enters its quench.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.

    Returns
    -------
    Start
        At the middle of its hardening range; high-alloy steels conduct less.
    """
    alloy = sum(v.middle for e, v in steel.composition_wt_pct.items() if e not in ("C", "Fe"))
    kind: SteelClass = "high-alloy" if alloy > HIGH_ALLOY_WT_PCT else "low-alloy"
    heat_c = steel.hardened.temperature_c.middle if steel.hardened else 850.0
    return start_of(heat_c, kind)


def curve_reach_c(steel: Steel) -> float:
    """Return how hot the published tempering curve of a steel goes, infinite without one.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.

    Returns
    -------
    float
        Hottest temper that can be judged. [°C]
    """
    if steel.tempered is None or by_composition(steel):
        return float("inf")
    return steel.tempered.curve_hrc.points[-1][0]


def tempered(
    steel: Steel,
    composition: Composition,
    fresh: AsQuenched,
    temper_c: Floats,
    time_s: float,
    normals: Normals,
) -> Floats:
    """Return the hardness after tempering, at points and over draws.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.
    composition : mapping of str to ndarray
        Element to content; shape (draws, 1). [wt %]
    fresh : AsQuenched
        What the quench left; shape (draws, points).
    temper_c : ndarray
        Temperature reached; shape (draws, 1). [°C]
    time_s : float
        Time at temperature. [s]
    normals : mapping of str to ndarray
        The steel's own draws and the shared tempering dimension.

    Returns
    -------
    ndarray
        Hardness; shape (draws, points). [HRC]
    """
    own, family = normals["tempering"][:, None], normals["tempering_family"][:, None]
    error = 0.8 * own + 0.6 * family
    curve = steel.tempered
    if curve is None or by_composition(steel):
        found = tempered_hardness(
            composition, temper_c, time_s, as_quenched_hrc=fresh.hrc, structure=Structure()
        )
        return np.minimum(found.hrc + found.sd_hrc * error, fresh.hrc)
    points = np.array(curve.curve_hrc.points)
    on_curve = tempered_from_curve(
        points[:, 0], points[:, 1], curve.time_h * 3600, temper_c, time_s
    )
    # The middle lies on the curve, else the temper is not offered; its hottest draws may pass
    # the end, and are held there.
    on_curve = np.where(np.isnan(on_curve), points[-1, 1], on_curve)
    nominal = steel.hardened.as_quenched_hrc if steel.hardened else None
    top = max(nominal.middle if nominal else points[0, 1], points[0, 1])
    # What the quench missed is missing after the temper too, but fades as it softens.
    missed = np.maximum(top - fresh.hrc, -2.0)
    kept = np.clip((on_curve - 20.0) / (top - 20.0), 0.0, 1.0)
    drawn = on_curve - missed * kept + CURVE_SD_HRC * error
    secondary = points[:, 1].max() > points[0, 1] + 0.5
    return np.asarray(drawn if secondary else np.minimum(drawn, fresh.hrc))
