"""What is read off a hardness map: how deep and how far it is hard, and where it goes soft."""

from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.job.demand import Demand
from selector.metallurgy.martensite import hardness
from selector.metallurgy.transformation import MOST_DISSOLVED_WT_PCT, SPHEROIDISED_ABOVE_WT_PCT
from selector.requirement.part import Part
from selector.torch.hardness_map import FlameMap
from selector.torch.part import Stretch
from selector.torch.weakest_place import torque_borne_nm, weakest_form

Floats = NDArray[np.float64]
# Depth ends at this share of the hardness asked for, in HV (ISO 18203).
DEPTH_SHARE = 0.8
# A ring is where a bar is softer than it was bought, by more than this. [HRC]
RING_HRC = 1.0


@dataclass(frozen=True, slots=True)
class Wall:
    """Steel from the surface inwards: of the round in the map, and half the true thickness."""

    outer_mm: float
    inner_mm: float
    true_mm: float


@dataclass(frozen=True, slots=True)
class Ring:
    """The softest place beside the hard zone: where, how wide, how hard, torque borne.

    The torque is the least of the part before it twists throughout; `weakest` names the place
    where a hole or a thin section, not the softness, sets it.
    """

    at_mm: float
    width_mm: float
    hrc: float
    torque_nm: float
    weakest: str = ""


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


def wall_at(part: Stretch, at_mm: float) -> Wall:
    """Return what steel there is from the surface inwards, in the map and in the part.

    Parameters
    ----------
    part : Stretch
        Sections as the solver takes them, and their true shapes.
    at_mm : float
        Distance from the end. [mm]

    Returns
    -------
    Wall
        Of the section there. [mm]
    """
    ends = list(accumulate(section.length_mm for section in part.sections))
    index = min(bisect_right(ends, at_mm), len(ends) - 1)
    section, shape = part.sections[index], part.shapes[index]
    thin_mm = min(shape.size, shape.width or shape.size)
    true_mm = 0.5 * (thin_mm - (shape.bore or 0.0))
    return Wall(0.5 * section.outer_mm, 0.5 * section.bore_mm, true_mm)


def half_martensite_hrc(composition_wt_pct: Mapping[str, float]) -> float:
    """Return the hardness as quenched below which a rich steel counts as not hardened.

    Parameters
    ----------
    composition_wt_pct : mapping of str to float
        Of the steel. [wt %]

    Returns
    -------
    float
        That of half martensite; 0 for a steel whose pearlite is softer than any depth ends at.
        [HRC]
    """
    carbon = composition_wt_pct["C"]
    if carbon <= SPHEROIDISED_ABOVE_WT_PCT:
        return 0.0
    return float(hardness(min(carbon, MOST_DISSOLVED_WT_PCT), 0.5))


def hard_depth_mm(
    found: FlameMap, middle_mm: float, demand: Demand, wall: Wall, least_fresh_hrc: float = 0.0
) -> float:
    """Return how deep the middle of the zone is hard.

    Parameters
    ----------
    found : FlameMap
        The map.
    middle_mm : float
        Where. [mm]
    demand : Demand
        What hardness is asked.
    wall : Wall
        What steel there is.
    least_fresh_hrc : float, optional
        What is softer as quenched is not hardened, however hard its pearlite. [HRC]

    Returns
    -------
    float
        From the surface to 0.8 of the hardness asked for, or of the surface, in HV; half the
        thickness, or the wall, when hard through. [mm]
    """
    at = int(np.argmin(np.abs(found.along_mm - middle_mm)))
    rows = np.flatnonzero(np.isfinite(found.hrc[:, at]))[::-1]
    hrc, radius = found.hrc[rows, at], found.across_mm[rows]
    over = np.minimum(
        hrc - _limit_hrc(demand, float(hrc[0])), found.quenched_hrc[rows, at] - least_fresh_hrc
    )
    soft = np.flatnonzero(over < 0.0)
    if soft.size == 0:
        return wall.true_mm
    if soft[0] == 0:
        return 0.0
    k = int(soft[0])
    ends_mm = radius[k - 1] + over[k - 1] / (over[k - 1] - over[k]) * (
        radius[k] - radius[k - 1]
    )
    # What stands for a flat is a thicker round: its depth is the same share of the section.
    share = (wall.outer_mm - ends_mm) / (wall.outer_mm - wall.inner_mm)
    return float(wall.true_mm * share)


def hard_stretch_mm(
    found: FlameMap, zone_mm: tuple[float, float], demand: Demand
) -> tuple[float, float]:
    """Return the longest stretch in the zone, and beyond it, whose surface is hard enough.

    Parameters
    ----------
    found : FlameMap
        The map.
    zone_mm : tuple of float
        From and to. [mm]
    demand : Demand
        What hardness is asked.

    Returns
    -------
    tuple of float
        From and to; of no length where nothing in the zone is hard enough. [mm]
    """
    surface, along = found.surface(), found.along_mm
    least = demand.floor_hrc if demand.floor_hrc is not None else 0.9 * float(surface.max())
    over = surface - least
    hard = np.concatenate([[False], over >= 0.0, [False]])
    firsts, afters = (
        np.flatnonzero(hard[1:] & ~hard[:-1]),
        np.flatnonzero(hard[:-1] & ~hard[1:]),
    )

    def crossing(soft: int, inner: int) -> float:
        share = over[inner] / (over[inner] - over[soft])
        return float(along[inner] + share * (along[soft] - along[inner]))

    stretches = [
        (
            0.0 if first == 0 else crossing(first - 1, first),
            max(float(along[-1]), zone_mm[1])
            if after == along.size
            else crossing(after, after - 1),
        )
        for first, after in zip(firsts.tolist(), afters.tolist(), strict=True)
    ]
    shared = [min(high, zone_mm[1]) - max(low, zone_mm[0]) for low, high in stretches]
    if not shared or max(shared) <= 0.0:
        middle_mm = 0.5 * sum(zone_mm)
        return (middle_mm, middle_mm)
    return stretches[shared.index(max(shared))]


def softest_place(
    found: FlameMap, part: Stretch, supply_hrc: float, whole: Part | None = None
) -> Ring:
    """Return the softest place outside the zone, and what torque the part bears.

    Parameters
    ----------
    found : FlameMap
        The map.
    part : Stretch
        Sections and zone.
    supply_hrc : float
        Hardness of the bar as bought. [HRC]
    whole : Part, optional
        The part as asked, for its holes and what lies beyond the map.

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
    ring = Ring(float(found.along_mm[at]), width, float(mean[at]), weakest)
    form = whole and weakest_form(
        whole, found.along_mm, mean, supply_hrc, turned_round=part.turned_round
    )
    if not form or form.torque_nm >= weakest:
        return ring
    return replace(ring, torque_nm=form.torque_nm, weakest=form.name)


def _torque_nm(part: Stretch, along_mm: Floats, hrc: Floats) -> Floats:
    """Return the torque each place bears at its hardness, without notch."""
    borne = np.full(len(hrc), np.inf)
    edges = np.cumsum([0.0, *(s.length_mm for s in part.sections)])
    for shape, start, end in zip(part.shapes, edges, edges[1:], strict=False):
        here = (along_mm >= start) & (along_mm <= end)
        borne[here] = torque_borne_nm(shape, hrc[here])
    return borne
