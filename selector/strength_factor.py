"""Least factor of strength over the sections and the ways they can fail."""

import numpy as np
from numpy.typing import NDArray

from selector.contact_duty import corner_factor, corners
from selector.geometry import area_mm2
from selector.hardness_scale import hv_from_hrc
from selector.mechanics.section import (
    bending_stress_mpa,
    section_modulus,
    torsion_stress_mpa,
)
from selector.mechanics.strength import (
    combined_factor,
    fatigue_factor,
    static_factor,
    strength,
)
from selector.requirement.part import Section
from selector.surroundings import Surroundings

Floats = NDArray[np.float64]
# More than this on a known load buys nothing.
CAP = 2.0
# Pre-hardened alloy bar as sold, 28 to 32 HRC. [HV]
PREHARD_HV = 300.0
# How far the load a user states may be off, as standard deviation of its logarithm.
LOAD_LOG_SD = 0.15
# Of a fatigue load, what alternates: a working part is rarely fully reversed. Estimate.
ALTERNATING = 0.5
# Axial over bending fatigue limit (R. G. Budynas, J. K. Nisbett, Shigley's Mechanical
# Engineering Design, 9th ed., 2011, Eq. 6-26, from memory).
AXIAL_FATIGUE = 0.85


def has_load(around: Surroundings) -> bool:
    """Return whether any load was given.

    Parameters
    ----------
    around : Surroundings
        Part and loads.

    Returns
    -------
    bool
        False when strength cannot be judged.
    """
    load = around.asked.load
    return any((load.torque, load.bending, load.axial))


def least_factor(section_hrc: Floats, around: Surroundings) -> Floats:
    """Return the least factor of strength over sections, modes and corners, over the draws.

    Parameters
    ----------
    section_hrc : ndarray
        Hardness of the stressed fibres; shape (draws, sections). [HRC]
    around : Surroundings
        Part, loads, notches.

    Returns
    -------
    ndarray
        Factor, at most `CAP`; shape (draws,). [-]
    """
    if not has_load(around):
        return _of_unknown_load(section_hrc, around)
    over = np.exp(LOAD_LOG_SD * around.shared()["load"])
    hv = np.asarray(hv_from_hrc(section_hrc, outside="extend"))
    factors = [
        section_factor(section, index, np.maximum(hv[:, index], 90.0), around)
        for index, section in enumerate(around.asked.part.section)
    ]
    factors += [
        corner_factor(corner, np.maximum(hv[:, corner.section], 90.0))
        for corner in around.once(("corners",), lambda: corners(around.asked))
    ]
    return np.asarray(np.minimum(np.min(factors, axis=0) / over, CAP))


def _of_unknown_load(section_hrc: Floats, around: Surroundings) -> Floats:
    """Return the factor where no load is stated: full, save where lives depend on the part."""
    # There the stronger bar is the safer guess, up to pre-hardened alloy bar. Common practice.
    if not around.asked.safety_critical:
        return np.full(len(section_hrc), CAP)
    weakest = np.asarray(hv_from_hrc(section_hrc.min(axis=1), outside="extend"))
    share = strength(np.maximum(weakest, 90.0)).yield_mpa / strength(PREHARD_HV).yield_mpa
    return np.asarray(1.0 + (CAP - 1.0) * np.minimum(share, 1.0))


def section_factor(section: Section, index: int, hv: Floats, around: Surroundings) -> Floats:
    """Return the factor of one section at the stated loads, taken together.

    Parameters
    ----------
    section : Section
        The section.
    index : int
        Its place, from 0, for its notches.
    hv : ndarray
        Hardness of its outer fibres. [HV]
    around : Surroundings
        Loads and notches.

    Returns
    -------
    ndarray
        Least of the static factor and, where the load is one of fatigue, that of it. [-]
    """
    static, tired = _alone(section, index, hv, around)
    worst = combined_factor(*static)
    if around.asked.load.cycles == "fatigue":
        worst = np.minimum(worst, combined_factor(*tired))
    return worst


def _alone(
    section: Section, index: int, hv: Floats, around: Surroundings
) -> tuple[list[Floats], list[Floats]]:
    """Return the factors of torsion, bending and axial load alone, static and of fatigue."""
    load = around.asked.load
    shape = (section.shape, section.size, section.width, section.bore)
    modulus = section_modulus(*shape)
    none = np.full(np.shape(hv), np.inf)
    static, tired = [none, none, none], [none, none, none]
    if load.torque:
        stress, notch = torsion_stress_mpa(load.torque, *shape), around.notches.torsion[index]
        ratio = modulus.torsion_plastic_mm3 / modulus.torsion_mm3
        static[0] = static_factor(stress, hv, "torsion", ratio, notch)
        tired[0] = fatigue_factor(ALTERNATING * stress, hv, "torsion", notch)
    notch = around.notches.bending[index]
    if load.bending:
        stress = bending_stress_mpa(load.bending, *shape)
        ratio = modulus.bending_plastic_mm3 / modulus.bending_mm3
        static[1] = static_factor(stress, hv, "bending", ratio, notch)
        tired[1] = fatigue_factor(ALTERNATING * stress, hv, "bending", notch)
    if load.axial:
        stress = np.asarray(load.axial / area_mm2(section))
        static[2] = static_factor(stress, hv, "bending", 1.0, notch)
        tired[2] = AXIAL_FATIGUE * fatigue_factor(ALTERNATING * stress, hv, "bending", notch)
    return static, tired
