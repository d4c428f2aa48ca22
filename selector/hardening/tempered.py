"""Hardness after tempering, at points of a part: by composition, or the steel's own curve."""

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.hardening.as_quenched import by_composition
from selector.hardening.composition import Composition
from selector.metallurgy.tempering import Structure, tempered_from_curve, tempered_hardness
from selector.sampling import Normals

Floats = NDArray[np.float64]

CURVE_SD_HRC = 1.2


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
    fresh_hrc: Floats,
    temper_c: Floats,
    time_s: float,
    normals: Normals,
) -> Floats:
    """Return the hardness after tempering, at points and over the samples. [HRC]."""
    own, family = normals["tempering"][:, None], normals["tempering_family"][:, None]
    error = 0.8 * own + 0.6 * family
    curve = steel.tempered
    if curve is None or by_composition(steel):
        found = tempered_hardness(
            composition, temper_c, time_s, as_quenched_hrc=fresh_hrc, structure=Structure()
        )
        return np.minimum(found.hrc + found.sd_hrc * error, fresh_hrc)
    points = np.array(curve.curve_hrc.points)
    on_curve = tempered_from_curve(
        points[:, 0], points[:, 1], curve.time_h * 3600, temper_c, time_s
    )
    # The middle lies on the curve, else the temper is not offered; its hottest samples may pass
    # the end, and are held there.
    on_curve = np.where(np.isnan(on_curve), points[-1, 1], on_curve)
    nominal = steel.hardened.as_quenched_hrc if steel.hardened else None
    top = max(nominal.middle if nominal else points[0, 1], points[0, 1])
    # What the quench missed is missing after the temper too, but fades as it softens.
    missed = np.maximum(top - fresh_hrc, -2.0)
    kept = np.clip((on_curve - 20.0) / (top - 20.0), 0.0, 1.0)
    hardness = on_curve - missed * kept + CURVE_SD_HRC * error
    secondary = points[:, 1].max() > points[0, 1] + 0.5
    return np.asarray(hardness if secondary else np.minimum(hardness, fresh_hrc))
