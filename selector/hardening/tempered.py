"""Hardness after tempering, at points of a part: by composition, or the steel's own curve."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from catalog.steel import Aged, Steel
from selector.hardening.as_quenched import OVER_HRC_PER_C, UNDER_HRC_PER_C
from selector.hardening.composition import Composition, middle
from selector.hardening.kind import by_composition, is_high_alloy
from selector.metallurgy.bainite import BAINITE_SD_HRC, austempered_hardness
from selector.metallurgy.published_curve import (
    SD_HIGH_ALLOY_HRC,
    SD_HRC,
    curve_sd_hrc,
    for_heat,
    from_as_quenched,
    hardens_again_c,
    tempered_from_curve,
)
from selector.metallurgy.tempering import Structure, temperature_for, tempered_hardness
from selector.sampling import Normals

Floats = NDArray[np.float64]
# Scatter of bars about a published ageing curve: estimate. [HRC]
AGED_SD_HRC = 0.8


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


def hottest_temper_c(steel: Steel, hrc: float, time_s: float) -> float | None:
    """Return the hottest temper, or ageing, after which a steel is still so hard.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.
    hrc : float
        Hardness of a bar as it is sold. [HRC]
    time_s : float
        Time at the temper, where no curve of the steel states its own. [s]

    Returns
    -------
    float or None
        At the middle of all uncertainties, at least the end of the curve where the bar is
        softer; None where nothing published gives such hardness. [°C]
    """
    known = steel.aged or steel.tempered
    if by_composition(steel) and steel.aged is None:
        contents = {element: float(wt[0, 0]) for element, wt in middle(steel).items()}
        found = float(temperature_for(contents, time_s, hrc))
        return found if np.isfinite(found) else None
    if known is None:
        return None
    points = np.array(known.curve_hrc.points, dtype=float)
    hard = np.flatnonzero(points[:, 1] >= hrc)
    if not hard.size:
        return None
    last = int(hard[-1])
    if last == len(points) - 1:
        return float(points[-1, 0])
    (low_c, low), (high_c, high) = points[last], points[last + 1]
    return float(low_c + (high_c - low_c) * (low - hrc) / (low - high))


def whole_curve(steel: Steel) -> Floats:
    """Return the published tempering curve of a steel, begun at its hardness as quenched.

    Parameters
    ----------
    steel : Steel
        Catalogue steel with a `[tempered]` curve.

    Returns
    -------
    ndarray
        Temperatures in °C and hardness in HRC, shape (points, 2). [-]

    Raises
    ------
    ValueError
        When the steel has no such curve.
    """
    curve = steel.tempered
    if curve is None:
        msg = f"{steel.slug} has no tempering curve"
        raise ValueError(msg)
    fresh = steel.hardened.as_quenched_hrc if steel.hardened else None
    return from_as_quenched(curve.curve_hrc.points, fresh.middle if fresh else None)


@cache
def hardened_from(steel: Steel, heat_c: float) -> Steel:
    """Return a steel whose tempering curve is that of a hardening temperature.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.
    heat_c : float
        Hardening temperature. [°C]

    Returns
    -------
    Steel
        The same, where no curves of several hardening temperatures are published.
    """
    curve, hardened = steel.tempered, steel.hardened
    if curve is None or curve.hardened_c is None or not curve.heat:
        return steel
    others = [(other.hardened_c, other.curve_hrc.points) for other in curve.heat]
    begun = [(float(c), float(hrc)) for c, hrc in whole_curve(steel)]
    moved = for_heat(begun, others, curve.hardened_c, heat_c)
    points = tuple((float(c), float(hrc)) for c, hrc in moved)
    moved_curve = curve.curve_hrc.model_copy(update={"points": points})
    update: dict[str, object] = {
        "tempered": curve.model_copy(update={"curve_hrc": moved_curve})
    }
    if hardened and hardened.as_quenched_hrc:
        # What another heat leaves less hard is in the curve, so the quench has not missed it.
        window, fresh = hardened.temperature_c, hardened.as_quenched_hrc
        under, over = max(window.low - heat_c, 0.0), max(heat_c - window.high, 0.0)
        top = fresh.middle - UNDER_HRC_PER_C * under - OVER_HRC_PER_C * over
        fresh = fresh.model_copy(update={"min": top, "max": top})
        update["hardened"] = hardened.model_copy(update={"as_quenched_hrc": fresh})
    return steel.model_copy(update=update)


def austempered(
    composition: Composition, fresh_hrc: Floats, bath_c: Floats, normals: Normals
) -> Floats:
    """Return the hardness of bainite at points of a part, over the samples. [HRC]."""
    # Where the bath was too slow for the section it is as soft as the quench left it.
    bainite = austempered_hardness(composition["C"], bath_c)
    error_hrc = BAINITE_SD_HRC * normals["tempering"][:, None]
    return np.minimum(bainite + error_hrc, fresh_hrc)


def aged_hrc(aged: Aged, aged_c: Floats, normals: Normals) -> Floats:
    """Return the hardness of an age-hardened bar by its table, over the samples. [HRC]."""
    points = np.array(aged.curve_hrc.points)
    error_hrc = AGED_SD_HRC * normals["tempering"]
    return np.asarray(np.interp(aged_c, points[:, 0], points[:, 1]) + error_hrc)


def tempered(
    steel: Steel,
    composition: Composition,
    fresh_hrc: Floats,
    temper_c: Floats,
    time_s: ArrayLike,
    normals: Normals,
) -> Floats:
    """Return the hardness after tempering, at points and over the samples. [HRC]."""
    own, family = normals["tempering"][:, None], normals["tempering_family"][:, None]
    curve = steel.tempered
    if curve is None or by_composition(steel):
        found = tempered_hardness(
            composition, temper_c, time_s, as_quenched_hrc=fresh_hrc, structure=Structure()
        )
        error_hrc = found.sd_steel_hrc * own + found.sd_laboratory_hrc * family
        return np.minimum(found.hrc + error_hrc, fresh_hrc)
    points = whole_curve(steel)
    drawn = (points[:, 0], points[:, 1], curve.time_h.value * 3600, temper_c, time_s)
    on_curve = tempered_from_curve(*drawn)
    nominal = steel.hardened.as_quenched_hrc if steel.hardened else None
    top = max(nominal.middle if nominal else points[0, 1], points[0, 1])
    # What the quench missed is missing after the temper too, but fades as it softens.
    missed = np.maximum(top - fresh_hrc, -2.0)
    kept = np.clip((on_curve - 20.0) / (top - 20.0), 0.0, 1.0)
    level_hrc = SD_HIGH_ALLOY_HRC if is_high_alloy(steel) else SD_HRC
    error_hrc = curve_sd_hrc(*drawn, level_hrc) * (0.8 * own + 0.6 * family)
    hardness = on_curve - missed * kept + error_hrc
    again = temper_c > hardens_again_c(points)
    return np.asarray(np.where(again, hardness, np.minimum(hardness, fresh_hrc)))
