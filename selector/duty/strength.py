"""Least factor of strength over the sections, by yielding, by fatigue and at corners."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.duty.contact import Corner, corner_factor, corners
from selector.figure import column_medians
from selector.hardness_scale import hv_from_hrc
from selector.job.drive import is_key, turns_slot
from selector.job.geometry import Notches, area_mm2, notches
from selector.mechanics.blade import slot_stress_mpa
from selector.mechanics.section import (
    bending_stress_mpa,
    section_modulus,
    torsion_stress_mpa,
)
from selector.mechanics.strength import (
    Finish,
    combined_factor,
    fatigue_factor,
    static_factor,
    strength,
)
from selector.requirement import Requirement
from selector.requirement.bending import STRIP_MM
from selector.requirement.load import Load
from selector.requirement.part import Feature, Part

Floats = NDArray[np.float64]
# A factor above this on a known load buys nothing.
CAP = 2.0
# Pre-hardened alloy bar as sold, 28 to 32 HRC. [HV]
PREHARD_HV = 300.0
# How far off the load that a user states may be, as standard deviation of its logarithm.
LOAD_LOG_SD = 0.15
# Share of a fatigue load that alternates: a working part is rarely fully reversed. Estimate.
ALTERNATING = 0.5
# Axial over bending fatigue limit (R. G. Budynas, J. K. Nisbett, Shigley's Mechanical
# Engineering Design, 9th ed., 2011, Eq. 6-26, from memory).
AXIAL_FATIGUE = 0.85
# What presses is pulled by a share of its load when the work is stripped off it: 5 to 20 parts
# in 100. Pushed, it does not tire. Common practice of press shops, no source. [-]
STRIPS = 0.2


@dataclass(frozen=True, slots=True)
class Stress:
    """One load on one section: nominal stress, what yielding throughout adds, its notch.

    The stress is that of the whole section, and so is the notch factor, lost steel included.
    Where the section yields throughout, no notch counts and a hole is deducted instead. Of an
    axial load, `pulled` is the share that pulls.
    """

    load: Literal["torsion", "bending", "axial"]
    nominal_mpa: float
    plastic_ratio: float
    notch: float
    finish: Finish = "machined"
    pulled: float = 1.0

    @property
    def kind(self) -> Literal["torsion", "bending"]:
        """The kind of stress; an axial load is judged as bending is."""
        return "torsion" if self.load == "torsion" else "bending"

    def static_factor(self, hv: Floats) -> Floats:
        """Return the static factor of this load alone, over hardness in HV."""
        return static_factor(self.nominal_mpa, hv, self.kind, self.plastic_ratio, self.notch)

    def fatigue_factor(self, hv: Floats) -> Floats:
        """Return the fatigue factor of this load alone, over hardness in HV."""
        amplitude = ALTERNATING * self.pulled * self.nominal_mpa
        factor = fatigue_factor(amplitude, hv, self.kind, self.notch, self.finish)
        return AXIAL_FATIGUE * factor if self.load == "axial" else factor


@dataclass(frozen=True, slots=True, eq=False)
class Bearing:
    """What the part bears: notches and stresses of each section, corners that carry torque.

    `stressed` holds one tuple a section, empty where no load is stated. `vital` is True where
    lives depend on the part, `fatigue_kept` what a plating leaves of the fatigue limit.
    """

    notches: Notches
    stressed: tuple[tuple[Stress, ...], ...]
    corners: tuple[Corner, ...]
    fatigue: bool
    vital: bool
    fatigue_kept: float = 1.0

    @property
    def is_known(self) -> bool:
        """Whether any load is stated."""
        return any(self.stressed)


def has_load(load: Load) -> bool:
    """Return whether any load is stated, without which strength cannot be judged."""
    return any((load.torque, load.bending, load.axial))


def bearing(asked: Requirement) -> Bearing:
    """Return what the part bears, whatever its steel."""
    notch = notches(_bent(asked))
    return Bearing(
        notches=notch,
        stressed=_stresses(asked, notch),
        corners=corners(asked),
        fatigue=asked.load.cycles == "fatigue",
        vital=asked.safety_critical,
    )


def _bent(asked: Requirement) -> Part:
    """Return a part with the notches that bend: a leaf's hole lies in its clamp or eye."""
    part = asked.part
    leaf = asked.is_spring and part.shape_class != "coil-spring"
    bent = tuple(f for f in part.feature if not (leaf and f.kind == "cross-hole"))
    # A hole for a pin close by an end carries no bending: there is nothing beyond it.
    if not (asked.load.torque or asked.load.axial or asked.load.bending_over):
        bent = tuple(f for f in bent if not _ends(part, f))
    return part.model_copy(update={"feature": bent})


def _ends(part: Part, feature: Feature) -> bool:
    """Return whether a cross-hole lies within a thickness of an end of a part."""
    if feature.kind != "cross-hole" or feature.at is None:
        return False
    near = part.section[part.place(feature)].narrowest_mm
    return min(feature.at, part.length_mm - feature.at) <= near


def _stresses(asked: Requirement, notch: Notches) -> tuple[tuple[Stress, ...], ...]:
    """Return the stresses of torsion, bending and axial load in each section."""
    load, stressed = asked.load, []
    # A key is sheared along its length, not twisted: what it bears hangs on the shaft.
    keys = {n - 1 for zone in asked.zone if is_key(asked, zone) for n in zone.section}
    for index, section in enumerate(asked.part.section):
        shape = (section.shape, section.size, section.width, section.bore)
        modulus, here = section_modulus(*shape), list[Stress]()
        twist, bend = float(notch.torsion[index]), float(notch.bending[index])
        if load.torque and index == 0 and turns_slot(asked):
            mpa = float(slot_stress_mpa(load.torque, section.size, section.width or 0.0))
            here.append(Stress("torsion", mpa, 1.0, 1.0))
        elif load.torque and load.twists(index) and index not in keys:
            ratio = float(modulus.torsion_plastic_mm3 / modulus.torsion_mm3)
            ratio *= float(notch.net_torsion[index])
            mpa = float(torsion_stress_mpa(load.torque, *shape))
            here.append(Stress("torsion", mpa, ratio, twist))
        if load.bending and load.bends(index):
            ratio = float(modulus.bending_plastic_mm3 / modulus.bending_mm3)
            ratio *= float(notch.net_bending[index])
            mpa = float(bending_stress_mpa(load.bending, *shape))
            here.append(Stress("bending", mpa, ratio, bend))
        if load.axial:
            mpa = load.axial / area_mm2(section)
            pulled = STRIPS if asked.presses else 1.0
            net = float(notch.net_axial[index])
            here.append(Stress("axial", mpa, net, bend, pulled=pulled))
        stressed.append(tuple(here))
    if _is_drawn_smooth(asked):
        return tuple(tuple(replace(s, finish="ground") for s in here) for here in stressed)
    return tuple(stressed)


def _is_drawn_smooth(asked: Requirement) -> bool:
    """Return whether a part is a spring of wire or thin strip, smooth as it is drawn."""
    thick = max(section.narrowest_mm for section in asked.part.section)
    coiled = asked.part.shape_class == "coil-spring"
    return coiled or (asked.is_spring and thick <= STRIP_MM)


def least_factor(section_hrc: Floats, bears: Bearing, load: Floats) -> Floats:
    """Return the least factor of strength over sections, modes and corners, over the sample.

    Parameters
    ----------
    section_hrc : ndarray
        Hardness of the stressed fibres; shape (samples, sections). [HRC]
    bears : Bearing
        Stresses and corners of the part.
    load : ndarray
        Standard normal sample of the load; shape (samples,). [-]

    Returns
    -------
    ndarray
        Factor, at most `CAP`; shape (samples,). [-]
    """
    return least_and_weakest(section_hrc, bears, load)[0]


def least_and_weakest(
    section_hrc: Floats, bears: Bearing, load: Floats
) -> tuple[Floats, int | None]:
    """Return the least factor, and the section that has it at its middle hardness, from 0.

    Parameters
    ----------
    section_hrc : ndarray
        Hardness of the stressed fibres; shape (samples, sections). [HRC]
    bears : Bearing
        Stresses and corners of the part.
    load : ndarray
        Standard normal sample of the load; shape (samples,). [-]

    Returns
    -------
    tuple of ndarray and int or None
        Factor, at most `CAP`, shape (samples,); None where no load is stated. [-]
    """
    if not bears.is_known:
        return _of_unknown_load(section_hrc, vital=bears.vital), None
    # The middle goes along as one more sample.
    rows = np.concatenate([section_hrc, column_medians(section_hrc)[None]])
    hv = np.maximum(np.asarray(hv_from_hrc(rows, outside="extend")), 90.0)
    places = [k for k, stresses in enumerate(bears.stressed) if stresses]
    factors = [section_factor(bears, k, hv[:, k]) for k in places]
    factors += [corner_factor(corner, hv[:, corner.section]) for corner in bears.corners]
    places += [corner.section for corner in bears.corners]
    least = np.min([factor[:-1] for factor in factors], axis=0)
    weakest = min(range(len(factors)), key=lambda n: (factors[n][-1], places[n]))
    return np.asarray(np.minimum(least / np.exp(LOAD_LOG_SD * load), CAP)), places[weakest]


def _of_unknown_load(section_hrc: Floats, *, vital: bool) -> Floats:
    """Return the factor where no load is stated: full, save where lives depend on the part."""
    # There the stronger bar is the safer guess, up to pre-hardened alloy bar. Common practice.
    if not vital:
        return np.full(len(section_hrc), CAP)
    weakest = np.asarray(hv_from_hrc(section_hrc.min(axis=1), outside="extend"))
    share = strength(np.maximum(weakest, 90.0)).yield_mpa / strength(PREHARD_HV).yield_mpa
    return np.asarray(1.0 + (CAP - 1.0) * np.minimum(share, 1.0))


def strength_words(factor: float) -> str:
    """Return a factor of strength in words: "bears 1.4 times what you ask"."""
    if factor >= CAP:
        return "bears twice what you ask, or more"
    return f"bears {factor:.1f} times what you ask"


def section_factor(bears: Bearing, index: int, hv: Floats) -> Floats:
    """Return the factor of one section at the stated loads, taken together.

    Parameters
    ----------
    bears : Bearing
        Stresses of the part.
    index : int
        Place of the section, from 0.
    hv : ndarray
        Hardness of its outer fibres. [HV]

    Returns
    -------
    ndarray
        Least of the static factor and, where the load is one of fatigue, that of it. [-]
    """
    stresses = bears.stressed[index]
    factor = _combined({stress.load: stress.static_factor(hv) for stress in stresses})
    if bears.fatigue:
        tired = _combined({stress.load: stress.fatigue_factor(hv) for stress in stresses})
        factor = np.minimum(factor, bears.fatigue_kept * tired)
    # A section that no load lies on has one infinite factor, for whatever hardness.
    return np.broadcast_to(factor, np.shape(hv))


def _combined(factors: Mapping[str, Floats]) -> Floats:
    """Return the factor of all loads at once; a load that is not stated takes nothing off."""
    torsion, bending, axial = (factors.get(k, np.inf) for k in ("torsion", "bending", "axial"))
    return combined_factor(torsion, bending, axial)
