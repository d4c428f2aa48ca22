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
from selector.composition import Composition
from selector.draws import Normals
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.heat.bar_equivalent import (
    LOG_SD_JOMINY,
    cooling_time_700_500_s,
    jominy_distance_mm,
)
from selector.metallurgy.austenite import austenite
from selector.metallurgy.hardenability import critical_cooling_time, jominy_curve
from selector.metallurgy.martensite import as_quenched as quenched_structure
from selector.metallurgy.tempering import (
    Structure,
    tempered_from_curve,
    tempered_hardness,
)
from selector.model_range import ranges_left
from selector.process import Heat, Quench
from selector.quenched_bar import QuenchedBar, quenched_bar

# The whole job on a plain bar has its own file; it is a hardness map too, and is named here.
__all__ = [
    "AsQuenched",
    "Points",
    "QuenchedBar",
    "as_quenched",
    "by_composition",
    "curve_reach_c",
    "points_of",
    "quenched_bar",
    "tempered",
]

Floats = NDArray[np.float64]

# Severity at which published section limits are meant: moderately stirred baths, still air.
LIMIT_SEVERITY = {"water": 1.2, "oil": 0.4, "air": 0.02}
# A section limit says "hard to the centre"; half martensite lies this much further out, and
# hardness falls this steeply about it. Estimates of the project. [-]
LIMIT_TO_HALF = 1.35
STEEPNESS = 8.0
# How much better the rim does than the centre in a bath milder than the steel's own. [-]
RIM_CREDIT = 0.25
# Scatter of published section limits between sources, and when a limit for one class of medium
# is carried over to another. Log sd, estimates. [-]
LIMIT_SPREAD, CARRIED_SPREAD = 0.15, 0.45
# What a tool steel falls to where it does not harden: fine pearlite and bainite. [HRC]
UNHARDENED_HRC = 38.0
# Beyond its hardening range a tool steel loses this much for each degree, below and above; the
# range leaves room, so it forms austenite down to 30 °C below and none from 60 °C. Estimates.
UNDER_HRC_PER_C, OVER_HRC_PER_C = 0.06, 0.03
FORMED_FULL_C, FORMED_NONE_C = 30.0, 60.0
AIR_LOG_SD_JOMINY = 0.35
AS_QUENCHED_SD_HRC = 0.8
CURVE_SD_HRC = 1.2
COMPOSITION_ROUTE_TO_WT_PCT = 0.7


@dataclass(frozen=True, slots=True, eq=False)
class Points:
    """Points of a part: equivalent end-quench distance over the draws, size, place.

    `distance_mm` has shape (draws, points), `size_mm` (the like round) and `position` (fraction
    of the radius, 0 at the centre) have shape (points,).
    """

    distance_mm: Floats
    size_mm: Floats
    position: Floats

    def only(self, index: int) -> "Points":
        """Return one of the points."""
        keep = slice(index, index + 1)
        return Points(self.distance_mm[:, keep], self.size_mm[keep], self.position[keep])


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
        heat.structure,  # type: ignore[arg-type]
    )
    # The bar charts carry an error of their own, more in air, which they do not cover.
    chart = LOG_SD_JOMINY if heat.medium_class != "air" else AIR_LOG_SD_JOMINY
    distance = points.distance_mm * np.exp(chart * normals["section_limit"][:, None])
    curve = jominy_curve(state.dissolved_wt_pct, distance, state.grain_size_astm)
    error = curve.sd_hrc * normals["hardenability"][:, None]
    hard = np.minimum(curve.hrc + error, 68.0)
    return AsQuenched(
        _with_ferrite(hard, state.fraction),
        f"end-quench curve ({curve.model}) at the equivalent distance, times austenite formed",
        "hardenability.jominy_curve",
        ranges_left("hardenability.jominy_curve", steel),
    )


def _with_ferrite(hrc: Floats, austenite_fraction: Floats) -> Floats:
    """Return the hardness where only part of the structure was austenite and quenched."""
    soft_hv = 180.0
    hv = hv_from_hrc(hrc, outside="extend")
    mixed = austenite_fraction * hv + (1 - austenite_fraction) * np.minimum(soft_hv, hv)
    return np.asarray(hrc_from_hv(mixed, outside="extend"))


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
    share = 1.0 / (1.0 + _beyond(steel, composition, heat, points, normals) ** STEEPNESS)
    floor = min(UNHARDENED_HRC, top - 5)
    return AsQuenched(
        floor + (full - floor) * share * _formed(steel, heat),
        "published hardness and section limit of the steel, by equivalent end-quench distance",
        hardened.as_quenched_hrc.source
        if hardened.as_quenched_hrc
        else "martensite.as_quenched",
        () if hardened.section_limit_mm else ("no published section limit",),
    )


def _beyond(
    steel: Steel, composition: Composition, heat: Heat, points: Points, normals: Normals
) -> Floats:
    """Return how far each point lies beyond half martensite: 1 there, less inside. [-]."""
    limits = steel.hardened.section_limit_mm if steel.hardened else {}
    spread = LIMIT_SPREAD if heat.medium_class in limits else CARRIED_SPREAD
    scatter = np.exp(-spread * normals["section_limit"][:, None])
    own = limits.get(heat.medium_class)
    if own is not None and steel.hardened and heat.medium_class != steel.hardened.quench:
        # In a bath milder than its own a steel hardens up to the published section and hardly
        # beyond, rim and all: the bar chart's quick surface does not see the vapour stage.
        ratio = points.size_mm / own.value * (1.0 - RIM_CREDIT * points.position)
        return np.asarray(ratio[None, :] / LIMIT_TO_HALF * scatter)
    return points.distance_mm / _half_distance(steel, composition, heat) * scatter


def _formed(steel: Steel, heat: Heat) -> Floats:
    """Return the share that turned to austenite, by how far the peak missed the range."""
    low = steel.hardened.temperature_c.low if steel.hardened else 800.0
    missed = low - heat.peak_c
    return np.clip((FORMED_NONE_C - missed) / (FORMED_NONE_C - FORMED_FULL_C), 0.0, 1.0)


def _half_distance(steel: Steel, composition: Composition, heat: Heat) -> Floats:
    """Return the end-quench distance at which half the structure hardens. [mm]."""
    limits = steel.hardened.section_limit_mm if steel.hardened else {}
    own = limits.get(heat.medium_class)
    limits = {heat.medium_class: own} if own is not None else limits
    reach = [
        float(jominy_distance_mm(limit.value, 0.0, LIMIT_SEVERITY[quench]))
        for quench, limit in limits.items()
    ]
    if reach:
        return np.full((1, 1), LIMIT_TO_HALF * float(np.exp(np.mean(np.log(reach)))))
    state = austenite(
        composition,
        heat.target_c,
        heat.hold_s,
        heat.rate_c_per_s,
        heat.structure,  # type: ignore[arg-type]
    )
    critical = critical_cooling_time(state.dissolved_wt_pct, state.grain_size_astm)
    grid = np.geomspace(1.5, 80.0, 200)
    times = cooling_time_700_500_s(grid)
    return np.asarray(np.interp(critical, times, grid))


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


def points_of(sizes_mm: Floats, positions: Floats, quench: Quench) -> Points:
    """Return points of several rounds as they cool in a quench.

    Parameters
    ----------
    sizes_mm : ndarray
        Equivalent round of each point; shape (points,). [mm]
    positions : ndarray
        Place of each point as fraction of the radius, 0 at the centre; shape (points,). [-]
    quench : Quench
        Severity over the draws.

    Returns
    -------
    Points
        With the equivalent end-quench distance of each.
    """
    distance = jominy_distance_mm(sizes_mm[None, :], positions[None, :], quench.severity)
    return Points(np.asarray(distance), sizes_mm, positions)
