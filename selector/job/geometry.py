"""The part as numbers: sections, masses, notch factors, and the points hardness is asked at."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.heat.ruling_section import round_equivalent_mm
from selector.mechanics.net_section import NetShare, hole_share, keyway_share, slot_share
from selector.mechanics.notch import (
    cross_hole_factor,
    fillet_factor,
    keyway_factor,
    plate_hole_factor,
)
from selector.requirement.part import CUTS, Feature, Part, Section, Shape

Floats = NDArray[np.float64]
DENSITY_KG_PER_MM3 = 7.85e-6
SHARP_RADIUS_MM = 0.2
# Notches the published charts do not cover, in torsion and bending; estimates of the project.
_NOTCH = {"thread": 2.5, "sharp-corner": 2.5, "slot": 2.0, "groove": 2.0, "teeth": 1.8}
# What stands on a disc covers little of its face where it is no thicker than so much of it.
# Estimate. [-]
STEM = 0.5
# Width of a cut whose size is not given, over the section; a key is a quarter of its shaft.
# Common practice, no source.
_PRESUMED = {"keyway": 0.25}
# Area of a shape over that of the square across it. [-]
_OF_SQUARE = {"round": np.pi / 4, "tube": np.pi / 4, "square": 1.0, "hexagon": 0.8660}


def as_cooled(part: Part) -> tuple[Section, ...]:
    """Return the sections as they heat and cool; what is shorter than thick is a plate."""
    if part.length_mm < min(s.size - (s.bore or 0.0) for s in part.section):
        return tuple(_plate(section, part.length_mm) for section in part.section)
    return tuple(
        _plate(section, section.length) if _is_flange(part, place) else section
        for place, section in enumerate(part.section)
    )


def _plate(section: Section, thick_mm: float) -> Section:
    """Return the plate that a disc heats and cools like."""
    return Section(shape="flat", size=thick_mm, width=section.size, length=section.size)


def _is_flange(part: Part, place: int) -> bool:
    """Return whether a section is a disc whose faces stand free: a foot, a head, a flange."""
    section = part.section[place]
    beside = [part.section[n] for n in (place - 1, place + 1) if 0 <= n < len(part.section)]
    free = all(other.size <= STEM * section.size for other in beside)
    solid = section.shape == "round" and section.bore is None
    return solid and free and section.length < section.size


def like_rounds_mm(sections: Iterable[Section], severity: float) -> Floats:
    """Return the rounds whose centres cool like those of the sections. [mm]."""
    return np.array(
        [
            float(round_equivalent_mm(s.shape, s.size, severity, s.width, s.bore))
            for s in sections
        ]
    )


def area_mm2(section: Section) -> float:
    """Return the cross-section of the steel. [mm²]."""
    full = solid_mm2(section.shape, section.size, section.width)
    return float(full - np.pi / 4 * (section.bore or 0.0) ** 2)


def solid_mm2(shape: Shape, size_mm: float, width_mm: float | None = None) -> float:
    """Return the cross-section of a shape without a bore. [mm²]."""
    if shape == "flat":
        return size_mm * (width_mm or size_mm)
    return _OF_SQUARE[shape] * size_mm**2


def mass_kg(part: Part, sections: Iterable[int] | None = None) -> float:
    """Return the mass of the finished part, or of some of its sections counted from 0. [kg]."""
    counted = part.section if sections is None else [part.section[i] for i in sections]
    return sum(area_mm2(s) * s.length for s in counted) * DENSITY_KG_PER_MM3


@dataclass(frozen=True, slots=True, eq=False)
class Notches:
    """Of each section: stress concentration, and what holes leave of its plastic strength. [-].

    The concentration is on the stress of the whole section, lost steel included; the shares
    are of what the whole section bears once it yields. Never both at once.
    """

    torsion: Floats
    bending: Floats
    net_torsion: Floats
    net_bending: Floats
    net_axial: Floats


def cut_share(part: Part, feature: Feature) -> NetShare:
    """Return what a feature leaves of its section once that yields throughout. [-]."""
    section = part.section[part.place(feature)]
    if feature.kind not in CUTS:
        return NetShare(1.0, 1.0, 1.0)
    wide = cut_mm(part, feature)
    if feature.kind == "keyway":
        # On a square, hexagon or flat: as on the round within.
        return keyway_share(wide, section.across_mm, section.bore)
    shape = (section.shape, section.size, section.width, section.bore)
    return (
        hole_share(wide, *shape) if feature.kind == "cross-hole" else slot_share(wide, *shape)
    )


@dataclass(frozen=True, slots=True)
class NotchFactor:
    """Stress concentration on the whole section, in torsion and in bending. [-]."""

    torsion: float
    bending: float


def notch_factor(part: Part, feature: Feature) -> NotchFactor:
    """Return what a feature adds to the stress of its whole section, 1 without a notch."""
    if feature.kind == "cross-hole":
        section = part.section[part.place(feature)]
        hole, bar, thick = cut_mm(part, feature), section.across_mm, section.narrowest_mm
        # A flat on edge has the hole where bending is least; the chart of a round is safe.
        leaf = section.shape == "flat" and section.size == thick
        bent = (
            plate_hole_factor(hole, bar, thick)
            if leaf
            else cross_hole_factor("bending", hole, bar)
        )
        return NotchFactor(float(cross_hole_factor("torsion", hole, bar)), float(bent))
    if feature.kind == "keyway":
        # The chart is of a standard key in a solid shaft; what more is lost comes on top.
        left, usual = cut_share(part, feature), keyway_share(_PRESUMED["keyway"], 1.0)
        return NotchFactor(
            keyway_factor("torsion") * max(1.0, usual.torsion / left.torsion),
            keyway_factor("bending") * max(1.0, usual.bending / left.bending),
        )
    factor = _NOTCH.get(feature.kind, 1.0)
    if feature.kind == "slot":
        # A slot has no chart: its estimate on what is left, brought to the whole section.
        left = cut_share(part, feature)
        return NotchFactor(factor / left.torsion, factor / left.bending)
    return NotchFactor(factor, factor)


def cut_mm(part: Part, feature: Feature) -> float:
    """Return how wide a hole, slot or keyway is, or usually is where no size is given. [mm]."""
    section = part.section[part.place(feature)]
    return feature.size or _PRESUMED.get(feature.kind, 0.15) * section.across_mm


def notches(part: Part) -> Notches:
    """Return the largest notch factor and the least net share of each section. [-]."""
    torsion, bending, *net = (np.ones(len(part.section)) for _ in range(5))
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
        index = part.place(feature)
        notch = notch_factor(part, feature)
        torsion[index] = max(torsion[index], notch.torsion)
        bending[index] = max(bending[index], notch.bending)
        share = cut_share(part, feature)
        for least, here in zip(net, (share.torsion, share.bending, share.axial), strict=True):
            least[index] = min(least[index], here)
    return Notches(torsion, bending, *net)


def section_ratio(part: Part) -> float:
    """Return the largest ratio of thickness between neighbouring sections. [-]."""
    sizes = [s.size for s in part.section]
    return max((max(a, b) / min(a, b) for a, b in pairwise(sizes)), default=1.0)
