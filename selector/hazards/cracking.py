"""Will it crack in the quench: a counted score, each point with its reason and its remedy.

The score sorts into the classes low, some and high. Classes and points are estimated from rules
of practice until trials exist.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

CrackClass = Literal["low", "some", "high"]
QuenchClass = Literal["water", "oil", "air"]
Feature = Literal["cross-hole", "sharp-corner", "keyway", "slot", "thread", "teeth", "edge"]
Surface = Literal["ground", "machined", "rough", "hot-rolled"]

# Probability that a part cracks, by class; rates are uniform in its logarithm (estimated).
PROBABILITY: Mapping[CrackClass, tuple[float, float]] = MappingProxyType(
    {"low": (0.002, 0.02), "some": (0.02, 0.10), "high": (0.10, 0.40)}
)

# Rank of a medium on the scale air 0, oil 1, water 2.
_RANK = MappingProxyType(
    {
        "plates": 0.0,
        "air": 0.0,
        "oil": 1.0,
        "fast-oil": 1.0,
        "vegetable-oil": 1.0,
        "polymer": 1.5,
        "warm-water": 1.5,
        "water": 2.0,
        "brine": 2.5,
    }
)
# Air-hardening steel stands oil in plain shapes ("air highest, oil high" for S7): half a step.
_STEEL_RANK = MappingProxyType({"air": 0.5, "oil": 1.0, "water": 2.0})
_SECTION_RATIO = MappingProxyType({0: 4.0, 1: 2.5, 2: 1.5})  # tolerated by rank of the medium
_SURFACE = MappingProxyType({"ground": 0.0, "machined": 0.0, "rough": 0.5, "hot-rolled": 0.5})

# The strain of a quench goes with the difference in temperature across the section, full from
# this thickness up; a rod of half of it half as much, and no less. Estimate. [mm], [-]
THICK_MM, LEAST_STRAIN = 10.0, 0.5
# An edge is left blunt in the quench and formed after, as its remedy says. Estimate. [-]
EDGE_POINTS = 0.5
_MISMATCH = 4.0  # points for one whole rank above the steel's own medium
_SOME, _HIGH = 2.0, 4.0

_REMEDY = MappingProxyType(
    {
        "medium": "Use the steel's own medium, or a steel made for this one.",
        "carbon": "Use fast oil or warm water if the section still hardens, or less carbon.",
        "martensite": "Temper at once, when the part has reached 50 to 65 °C.",
        "section": "Even out the section, add a radius of 1.5 to 3 mm, or quench more gently.",
        "cross-hole": "Plug the hole with clay, steel wool or a screw.",
        "sharp-corner": "Radius inside corners: 1.5 to 3 mm for oil, 3 to 6 mm for water.",
        "keyway": "Round the corners of the keyway, or cut it after tempering.",
        "slot": "Round the ends of the slot, or cut it after tempering.",
        "thread": "Keep the thread out of the bath, or pack it with clay.",
        "teeth": "Round the roots, enter the bath along the axis.",
        "edge": "Leave the edge 0.5 mm thick, or quench the other end first.",
        "surface": "Machine the skin off all over and polish out marks before hardening.",
        "overheated": "Hold the hardening heat; normalise a coarse part first.",
    }
)


@dataclass(frozen=True, slots=True)
class CrackSteel:
    """What of a steel decides: dissolved carbon, Ms, and the medium it is made for."""

    carbon_wt_pct: float
    ms_c: float
    quench_class: QuenchClass
    equivalent_wt_pct: float | None = None


@dataclass(frozen=True, slots=True)
class CrackShape:
    """What of a part decides: adjoining sections large over small, features, skin, size."""

    section_ratio: float = 1.0
    features: tuple[Feature, ...] = ()
    surface: Surface = "machined"
    thickness_mm: float = THICK_MM

    @property
    def strain(self) -> float:
        """Share of the strain of a thick part: a thin one cools evenly right through. [-]."""
        return float(np.clip(self.thickness_mm / THICK_MM, LEAST_STRAIN, 1.0))


@dataclass(frozen=True, slots=True)
class CrackReason:
    """One reason, the points it adds, and what helps."""

    name: str
    points: float
    remedy: str


@dataclass(frozen=True, slots=True)
class CrackRisk:
    """Class of crack risk with its band of probability, and the reasons by weight."""

    crack_class: CrackClass
    low_fraction: float
    high_fraction: float
    score: float
    reasons: tuple[CrackReason, ...]
    basis: str = "estimated"

    @property
    def mitigations(self) -> tuple[str, ...]:
        """What helps, weightiest reason first."""
        return tuple(reason.remedy for reason in self.reasons)


def crack_equivalent_wt_pct(composition_wt_pct: Mapping[str, ArrayLike]) -> NDArray[np.float64]:
    """Return the equivalent carbon content for quench cracking.

    Parameters
    ----------
    composition_wt_pct : mapping of str to array_like
        Element to content; a missing element is 0. [wt %]

    Returns
    -------
    ndarray
        Equivalent content. [wt %]

    Notes
    -----
    ``C + Mn/5 + Mo/5 + Cr/10 + Ni/50``; above 0.525 with Ms below about 360 °C steel is prone
    to crack in water [1]_.

    References
    ----------
    .. [1] Iron and Steel Institute, 1971, paper on quench cracking, quoted in ASM Handbook,
       vol. 4 (from memory).

    Examples
    --------
    >>> round(float(crack_equivalent_wt_pct({"C": 0.45, "Mn": 0.7})), 3)
    0.59
    """
    weight = {"C": 1.0, "Mn": 0.2, "Mo": 0.2, "Cr": 0.1, "Ni": 0.02}
    share = [
        w * np.asarray(composition_wt_pct.get(element, 0.0), dtype=float)
        for element, w in weight.items()
    ]
    return np.asarray(sum(share, np.zeros(())))


def _steel_points(steel: CrackSteel, shape: CrackShape, rank: float) -> dict[str, float]:
    """Count the steel in its medium."""
    strain = 0.5 * max(rank, 0.3) * shape.strain  # 1 in water, 0.5 in oil
    excess = max(rank - _STEEL_RANK[steel.quench_class], 0.0)
    equivalent = steel.equivalent_wt_pct or 0.0
    prone = equivalent > 0.525 and steel.ms_c < 360 and rank >= 2
    return {
        "medium": _MISMATCH * excess,
        "carbon": strain * (2.0 * float(np.clip((steel.carbon_wt_pct - 0.3) / 0.3, 0, 1))),
        "martensite": strain * (0.5 * (steel.ms_c < 300) + 0.5 * prone),
    }


def _shape_points(shape: CrackShape, rank: float) -> dict[str, float]:
    """Count the part in its medium."""
    strain = 0.5 * max(rank, 0.3) * shape.strain
    tolerated = _SECTION_RATIO[min(round(rank), 2)]
    over = shape.section_ratio / tolerated
    points = {
        str(feature): strain * (EDGE_POINTS if feature == "edge" else 1.0)
        for feature in shape.features
    }
    points["section"] = 0.0 if over <= 1 else min(0.5 + (over - 1), 2.0)
    points["surface"] = strain * _SURFACE[shape.surface]
    return points


def crack_risk(
    steel: CrackSteel,
    medium: str,
    shape: CrackShape,
    overheated: bool = False,
) -> CrackRisk:
    """Return the class of quench-crack risk with its reasons and remedies.

    A medium one step harsher than the steel is made for (water for an oil-hardening steel) is
    high by itself. Warm water and polymer count halfway between oil and water.

    Parameters
    ----------
    steel : CrackSteel
        Dissolved carbon, Ms and the steel's own quench. [-]
    medium : str
        Quenching medium. [-]
    shape : CrackShape
        Section change, features and surface. [-]
    overheated : bool, optional
        Whether the part was too hot or soaked too long (coarse grain). [-]

    Returns
    -------
    CrackRisk
        Class, band of probability, score and reasons. [-]

    Notes
    -----
    Points: harsher medium 4 a step; carbon 0 at 0.30 % to 2 at 0.60 %; Ms below 300 °C 0.5; the
    equivalent of `crack_equivalent_wt_pct` above 0.525 in water 0.5; each feature 1; an edge
    half as much; section ratio above 4, 2.5, 1.5 in air, oil, water [1]_ 0.5 to 2; rough skin
    0.5; coarse grain 1. Carbon, martensite, features and skin count in proportion to the
    thickness below 10 mm, at least half. All but the first and the section are halved in oil.
    Classes: some from 2, high from 4. The weights are estimates; order and limits follow [1]_
    and [2]_.

    References
    ----------
    .. [1] Tool and die design rules for heat treatment in handbooks (from memory).
    .. [2] Precision Machined Products Association, seven causes of quench cracking.
    """
    rank = _RANK[medium]
    points = _steel_points(steel, shape, rank) | _shape_points(shape, rank)
    points["overheated"] = 0.5 * max(rank, 0.3) * overheated
    counted = sorted(((p, name) for name, p in points.items() if p > 0), reverse=True)
    score = sum(points.values())
    crack_class: CrackClass = "low" if score < _SOME else "some" if score < _HIGH else "high"
    low, high = PROBABILITY[crack_class]
    reasons = tuple(CrackReason(name, round(p, 3), _REMEDY[name]) for p, name in counted)
    return CrackRisk(crack_class, low, high, round(score, 3), reasons)
