"""The part as numbers: sections, masses, notch factors, and the points hardness is asked at."""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.mechanics.notch import cross_hole_factor, fillet_factor, keyway_factor
from selector.requirement.part import Part, Section

Floats = NDArray[np.float64]
DENSITY_KG_PER_MM3 = 7.85e-6
# Points of one section, from just under the surface to the centre, as fraction of the radius.
POSITIONS = (0.98, 0.85, 0.65, 0.4, 0.0)
SHARP_RADIUS_MM = 0.2
# Notches the published charts do not cover, in torsion and bending; estimates of the project.
_NOTCH = {"thread": 2.5, "sharp-corner": 2.5, "slot": 2.0, "groove": 2.0, "teeth": 1.8}


def as_cooled(part: Part) -> tuple[Section, ...]:
    """Return the sections as they heat and cool: what is shorter than it is thick is a plate.

    Parameters
    ----------
    part : Part
        The part.

    Returns
    -------
    tuple of Section
        Same number and order; a disc stands as a flat of its thickness.
    """
    if part.length_mm >= min(s.size - (s.bore or 0.0) for s in part.section):
        return part.section
    return tuple(
        Section(shape="flat", size=part.length_mm, width=section.size, length=section.size)
        for section in part.section
    )


def area_mm2(section: Section) -> float:
    """Return the cross-section of the steel, in mm².

    Parameters
    ----------
    section : Section
        One stretch of the part.

    Returns
    -------
    float
        Area. [mm²]
    """
    size = section.size
    full = {
        "round": np.pi / 4 * size**2,
        "tube": np.pi / 4 * size**2,
        "square": size**2,
        "hexagon": 0.8660 * size**2,
        "flat": size * (section.width or size),
    }[section.shape]
    return float(full - np.pi / 4 * (section.bore or 0.0) ** 2)


def mass_kg(part: Part) -> float:
    """Return the mass of the finished part, in kg.

    Parameters
    ----------
    part : Part
        The part.

    Returns
    -------
    float
        Mass. [kg]
    """
    return sum(area_mm2(s) * s.length for s in part.section) * DENSITY_KG_PER_MM3


def blank_mm(part: Part) -> tuple[float, float]:
    """Return the round bar the part is cut from: diameter and length with cut loss, in mm.

    Parameters
    ----------
    part : Part
        The part.

    Returns
    -------
    tuple of float
        Diameter and length. [mm]
    """

    def across(section: Section) -> float:
        if section.shape == "square":
            return section.size * 2**0.5
        if section.shape == "hexagon":
            return section.size * 1.155
        return section.size

    rounds = [across(s) for s in part.section if s.shape != "flat"]
    flats = [(4 / np.pi * area_mm2(s)) ** 0.5 for s in part.section if s.shape == "flat"]
    allowance = 2 * (part.stock_removal or 0.0)
    return max(rounds + flats) + allowance, part.length_mm + 5.0


@dataclass(frozen=True, slots=True, eq=False)
class Notches:
    """Stress concentration of each section in torsion and bending. [-]."""

    torsion: Floats
    bending: Floats


def _place(part: Part, at: float | None) -> int:
    """Return the index of the section at a distance from the working end; 0 when unstated."""
    end = 0.0
    for index, section in enumerate(part.section):
        end += section.length
        if at is not None and at <= end:
            return index
    return 0 if at is None else len(part.section) - 1


def notches(part: Part) -> Notches:
    """Return the largest notch factor of each section.

    Parameters
    ----------
    part : Part
        The part.

    Returns
    -------
    Notches
        Shape (sections,); 1 where there is no notch. [-]
    """
    torsion, bending = np.ones(len(part.section)), np.ones(len(part.section))
    for index, (left, right) in enumerate(pairwise(part.section)):
        small, large = sorted((left.size, right.size))
        if large <= 1.01 * small:
            continue
        thin = index if left.size < right.size else index + 1
        radius = left.fillet or right.fillet or SHARP_RADIUS_MM
        for kind, factors in (("torsion", torsion), ("bending", bending)):
            factor = float(fillet_factor(kind, small, large, radius))  # type: ignore[arg-type]
            factors[thin] = max(factors[thin], factor)
    for feature in part.feature:
        index = _place(part, feature.at)
        bar = part.section[index].size
        if feature.kind == "cross-hole":
            hole = min(feature.size or 0.15 * bar, 0.3 * bar)
            pair = [float(cross_hole_factor(k, hole, bar)) for k in ("torsion", "bending")]
        elif feature.kind == "keyway":
            pair = [keyway_factor("torsion"), keyway_factor("bending")]
        else:
            pair = [_NOTCH.get(feature.kind, 1.0)] * 2
        torsion[index] = max(torsion[index], pair[0])
        bending[index] = max(bending[index], pair[1])
    return Notches(torsion, bending)


def section_ratio(part: Part) -> float:
    """Return the largest ratio of thickness between neighbouring sections.

    Parameters
    ----------
    part : Part
        The part.

    Returns
    -------
    float
        Ratio, 1 for an even part. [-]
    """
    sizes = [s.size for s in part.section]
    return max((max(a, b) / min(a, b) for a, b in pairwise(sizes)), default=1.0)
