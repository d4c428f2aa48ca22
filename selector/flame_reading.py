"""What is read off a hardness map: how deep and how far it is hard, and where it goes soft."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.duty import Demand
from selector.flame_map import FlameMap
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.mechanics.section import section_modulus, torsion_stress_mpa
from selector.mechanics.strength import static_factor
from selector.torch_job import Stretch

Floats = NDArray[np.float64]
# Depth ends at this share of the hardness asked for, in HV (ISO 18203).
DEPTH_SHARE = 0.8
# A ring is where a bar is softer than it was bought, by more than this. [HRC]
RING_HRC = 1.0


@dataclass(frozen=True, slots=True)
class Ring:
    """The softest place beside the hard zone: where, how wide, how hard, torque it bears."""

    at_mm: float
    width_mm: float
    hrc: float
    torque_nm: float


def within(along_mm: Floats, zone_mm: tuple[float, float]) -> NDArray[np.bool_]:
    """Return which columns of a map lie in a zone.

    Parameters
    ----------
    along_mm : ndarray
        Places of the columns. [mm]
    zone_mm : tuple of float
        From and to. [mm]

    Returns
    -------
    ndarray of bool
        The nearest column at least.
    """
    inside = (along_mm >= zone_mm[0]) & (along_mm <= zone_mm[1])
    if not inside.any():
        inside[int(np.argmin(np.abs(along_mm - 0.5 * sum(zone_mm))))] = True
    return np.asarray(inside)


def _limit_hrc(demand: Demand, surface_hrc: float) -> float:
    """Return the hardness at which the depth ends."""
    asked = surface_hrc if demand.floor_hrc is None else demand.floor_hrc
    hv = DEPTH_SHARE * float(hv_from_hrc(asked, outside="extend"))
    return float(hrc_from_hv(hv, outside="extend"))


def hard_depth_mm(found: FlameMap, middle_mm: float, demand: Demand) -> float:
    """Return how deep the middle of the zone is hard.

    Parameters
    ----------
    found : FlameMap
        The map.
    middle_mm : float
        Where. [mm]
    demand : Demand
        What hardness is asked.

    Returns
    -------
    float
        To 0.8 of the hardness asked for, or of the surface; the radius when hard through. [mm]
    """
    column = found.column(middle_mm)
    rows = np.flatnonzero(np.isfinite(column))
    hrc, radius = column[rows][::-1], found.across_mm[rows][::-1]
    limit = _limit_hrc(demand, float(hrc[0]))
    soft = np.flatnonzero(hrc < limit)
    if soft.size == 0:
        solid = rows[0] == 0
        return float(radius[0] if solid else radius[0] - radius[-1])
    if soft[0] == 0:
        return 0.0
    k = int(soft[0])
    part = (hrc[k - 1] - limit) / (hrc[k - 1] - hrc[k])
    return float(radius[0] - radius[k - 1] + part * (radius[k - 1] - radius[k]))


def hard_stretch_mm(found: FlameMap, middle_mm: float, demand: Demand) -> tuple[float, float]:
    """Return the stretch about the middle whose surface is hard enough.

    Parameters
    ----------
    found : FlameMap
        The map.
    middle_mm : float
        Middle of the zone. [mm]
    demand : Demand
        What hardness is asked.

    Returns
    -------
    tuple of float
        From and to; empty where the middle itself is soft. [mm]
    """
    surface = found.surface()
    least = demand.floor_hrc if demand.floor_hrc is not None else 0.9 * float(surface.max())
    at = int(np.argmin(np.abs(found.along_mm - middle_mm)))
    hard = surface >= least
    if not hard[at]:
        return (middle_mm, middle_mm)
    first = at - int(np.argmin(hard[at::-1])) + 1 if not hard[: at + 1].all() else 0
    after = int(np.argmin(hard[at:])) if not hard[at:].all() else hard.size - at
    low = 0.0 if first == 0 else float(found.along_mm[first])
    return (low, float(found.along_mm[at + after - 1]))


def softest_place(found: FlameMap, part: Stretch, supply_hrc: float) -> Ring:
    """Return the softest place outside the zone, and what torque is borne there.

    Parameters
    ----------
    found : FlameMap
        The map.
    part : Stretch
        Sections and zone.
    supply_hrc : float
        Hardness of the bar as bought. [HRC]

    Returns
    -------
    Ring
        Without width where nothing is softer than as bought.
    """
    mean = found.mean()
    outside = ~within(found.along_mm, part.zone_mm)
    if not outside.any():
        outside = np.ones_like(outside)
    torque = _torque_nm(part, found.along_mm, mean)
    softest = np.where(outside, mean, np.inf)
    at = int(np.argmin(softest))
    soft = outside & (mean < supply_hrc - RING_HRC)
    width = float(np.sum(np.gradient(found.along_mm)[soft])) if soft.any() else 0.0
    weakest = float(np.min(np.where(outside, torque, np.inf)))
    return Ring(float(found.along_mm[at]), width, float(mean[at]), weakest)


def _torque_nm(part: Stretch, along_mm: Floats, hrc: Floats) -> Floats:
    """Return the torque each place bears at its hardness, without notch."""
    hv = np.maximum(hv_from_hrc(hrc, outside="extend"), 90.0)
    borne = np.empty_like(hv)
    edges = np.cumsum([0.0, *(s.length_mm for s in part.sections)])
    for shape, start, end in zip(part.shapes, edges, edges[1:], strict=False):
        here = (along_mm >= start) & (along_mm <= end)
        of = (shape.shape, shape.size, shape.width, shape.bore)
        modulus = section_modulus(*of)
        ratio = modulus.torsion_plastic_mm3 / modulus.torsion_mm3
        stress = torsion_stress_mpa(1.0, *of)
        borne[here] = static_factor(stress, hv[here], "torsion", ratio)
    return borne
