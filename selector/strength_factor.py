"""Least factor of strength over the sections and the ways they can fail."""

import numpy as np
from numpy.typing import NDArray

from selector.geometry import area_mm2
from selector.hardness_scale import hv_from_hrc
from selector.mechanics.section import (
    bending_stress_mpa,
    section_modulus,
    torsion_stress_mpa,
)
from selector.mechanics.strength import fatigue_factor, static_factor, strength
from selector.requirement.part import Section
from selector.surroundings import Surroundings

Floats = NDArray[np.float64]
# More than this on a known load buys nothing.
CAP = 2.0
# How far the load a user states may be off, as standard deviation of its logarithm.
LOAD_LOG_SD = 0.15
# Of a fatigue load, what alternates: a working part is rarely fully reversed. Estimate.
ALTERNATING = 0.5


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
    """Return the least factor of strength over sections and modes, over the draws.

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
    count = len(section_hrc)
    if not has_load(around):
        return np.full(count, CAP)
    over = np.exp(LOAD_LOG_SD * around.shared()["load"])
    hv = np.asarray(hv_from_hrc(section_hrc, outside="extend"))
    factors = [
        _section_factor(section, index, np.maximum(hv[:, index], 90.0), around)
        for index, section in enumerate(around.asked.part.section)
    ]
    return np.asarray(np.minimum(np.min(factors, axis=0) / over, CAP))


def _section_factor(section: Section, index: int, hv: Floats, around: Surroundings) -> Floats:
    """Return the least factor of one section at the stated load."""
    load, cyclic = around.asked.load, around.asked.load.cycles == "fatigue"
    shape = (section.shape, section.size, section.width, section.bore)
    modulus = section_modulus(*shape)
    factors = [np.full(hv.shape, 10.0)]
    if load.torque:
        stress = torsion_stress_mpa(load.torque, *shape)
        notch = around.notches.torsion[index]
        ratio = modulus.torsion_plastic_mm3 / modulus.torsion_mm3
        factors.append(static_factor(stress, hv, "torsion", ratio, notch))
        if cyclic:
            factors.append(fatigue_factor(ALTERNATING * stress, hv, "torsion", notch))
    if load.bending:
        stress = bending_stress_mpa(load.bending, *shape)
        notch = around.notches.bending[index]
        ratio = modulus.bending_plastic_mm3 / modulus.bending_mm3
        factors.append(static_factor(stress, hv, "bending", ratio, notch))
        if cyclic:
            factors.append(fatigue_factor(ALTERNATING * stress, hv, "bending", notch))
    if load.axial:
        factors.append(strength(hv).yield_mpa * area_mm2(section) / load.axial)
    return np.asarray(np.min(factors, axis=0))
