"""What is read off a hardness map: how far it is hard, and where it goes soft."""

from bisect import bisect_right
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.job.demand import Demand
from selector.requirement.part import Part
from selector.torch.hardness_map import HardnessMap
from selector.torch.part import Stretch
from selector.torch.weakest_place import torque_borne_nm, weakest_form

Floats = NDArray[np.float64]
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
    """Return which columns of a map lie in a zone."""
    inside = (along_mm >= zone_mm[0]) & (along_mm <= zone_mm[1])
    if not inside.any():
        inside[int(np.argmin(np.abs(along_mm - 0.5 * sum(zone_mm))))] = True
    return np.asarray(inside)


def wall_at(part: Stretch, at_mm: float) -> Wall:
    """Return what steel there is from the surface inwards, in the map and in the part. [mm]."""
    ends = part.edges_mm[1:]
    index = min(bisect_right(ends, at_mm), len(ends) - 1)
    section, shape = part.sections[index], part.shapes[index]
    thin_mm = min(shape.size, shape.width or shape.size)
    true_mm = 0.5 * (thin_mm - (shape.bore or 0.0))
    return Wall(0.5 * section.outer_mm, 0.5 * section.bore_mm, true_mm)


def hard_stretch_mm(
    hardness: HardnessMap, zone_mm: tuple[float, float], demand: Demand
) -> tuple[float, float]:
    """Return the longest stretch in the zone, and beyond it, whose surface is hard enough.

    Parameters
    ----------
    hardness : HardnessMap
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
    surface, along = hardness.surface(), hardness.along_mm
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
    hardness: HardnessMap, part: Stretch, supply_hrc: float, whole: Part | None = None
) -> Ring:
    """Return the softest place outside the zone, and what torque the part bears."""
    # Without width where nothing is softer than as bought.
    mean = hardness.mean()
    outside = ~within(hardness.along_mm, part.zone_mm)
    if not outside.any():
        outside = np.ones_like(outside)
    torque = _torque_nm(part, hardness.along_mm, mean)
    softest = np.where(outside, mean, np.inf)
    at = int(np.argmin(softest))
    soft = outside & (mean < supply_hrc - RING_HRC)
    width = float(np.sum(np.gradient(hardness.along_mm)[soft])) if soft.any() else 0.0
    weakest = float(np.min(np.where(outside, torque, np.inf)))
    ring = Ring(float(hardness.along_mm[at]), width, float(mean[at]), weakest)
    form = whole and weakest_form(
        whole, hardness.along_mm, mean, supply_hrc, turned_round=part.turned_round
    )
    if not form or form.torque_nm >= weakest:
        return ring
    return replace(ring, torque_nm=form.torque_nm, weakest=form.name)


def _torque_nm(part: Stretch, along_mm: Floats, hrc: Floats) -> Floats:
    """Return the torque each place bears at its hardness, without notch."""
    borne = np.full(len(hrc), np.inf)
    for shape, (start, end) in zip(part.shapes, pairwise(part.edges_mm), strict=True):
        here = (along_mm >= start) & (along_mm <= end)
        borne[here] = torque_borne_nm(shape, hrc[here])
    return borne
