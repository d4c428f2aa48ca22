"""Least factor of strength over the sections and the ways they can fail."""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.duty.contact import corner_factor, corners
from selector.hardness_scale import hv_from_hrc
from selector.job.geometry import area_mm2
from selector.job.job import Job
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


def has_load(job: Job) -> bool:
    """Return whether any load was given.

    Parameters
    ----------
    job : Job
        Part and loads.

    Returns
    -------
    bool
        False when strength cannot be judged.
    """
    load = job.asked.load
    return any((load.torque, load.bending, load.axial))


def least_factor(section_hrc: Floats, job: Job) -> Floats:
    """Return the least factor of strength over sections, modes and corners, over the draws.

    Parameters
    ----------
    section_hrc : ndarray
        Hardness of the stressed fibres; shape (draws, sections). [HRC]
    job : Job
        Part, loads, notches.

    Returns
    -------
    ndarray
        Factor, at most `CAP`; shape (draws,). [-]
    """
    if not has_load(job):
        return _of_unknown_load(section_hrc, job)
    over = np.exp(LOAD_LOG_SD * job.shared()["load"])
    hv = np.asarray(hv_from_hrc(section_hrc, outside="extend"))
    factors = [
        section_factor(section, index, np.maximum(hv[:, index], 90.0), job)
        for index, section in enumerate(job.asked.part.section)
    ]
    factors += [
        corner_factor(corner, np.maximum(hv[:, corner.section], 90.0))
        for corner in job.once(("corners",), lambda: corners(job.asked))
    ]
    return np.asarray(np.minimum(np.min(factors, axis=0) / over, CAP))


def _of_unknown_load(section_hrc: Floats, job: Job) -> Floats:
    """Return the factor where no load is stated: full, save where lives depend on the part."""
    # There the stronger bar is the safer guess, up to pre-hardened alloy bar. Common practice.
    if not job.asked.safety_critical:
        return np.full(len(section_hrc), CAP)
    weakest = np.asarray(hv_from_hrc(section_hrc.min(axis=1), outside="extend"))
    share = strength(np.maximum(weakest, 90.0)).yield_mpa / strength(PREHARD_HV).yield_mpa
    return np.asarray(1.0 + (CAP - 1.0) * np.minimum(share, 1.0))


def section_factor(section: Section, index: int, hv: Floats, job: Job) -> Floats:
    """Return the factor of one section at the stated loads, taken together.

    Parameters
    ----------
    section : Section
        The section.
    index : int
        Its place, from 0, for its notches.
    hv : ndarray
        Hardness of its outer fibres. [HV]
    job : Job
        Loads and notches.

    Returns
    -------
    ndarray
        Least of the static factor and, where the load is one of fatigue, that of it. [-]
    """
    stresses = job.once(("stress", str(index)), lambda: _stresses(section, index, job))
    worst = combined_factor(*(_static(stress, hv) for stress in stresses))
    if job.asked.load.cycles == "fatigue":
        worst = np.minimum(worst, combined_factor(*(_tired(stress, hv) for stress in stresses)))
    return worst


@dataclass(frozen=True, slots=True)
class _Stress:
    """One load on one section: nominal stress, what yielding throughout adds, its notch.

    The stress is that of the whole section, and so is the notch factor, lost steel included.
    Where the section yields throughout, no notch counts and a hole is deducted instead.
    """

    kind: Literal["torsion", "bending"]
    nominal_mpa: float
    plastic_ratio: float
    notch: float
    fatigue_share: float = 1.0


def _stresses(section: Section, index: int, job: Job) -> tuple[_Stress | None, ...]:
    """Return the stress of torsion, of bending and of axial load, None where there is none."""
    load, notches = job.asked.load, job.notches
    shape = (section.shape, section.size, section.width, section.bore)
    modulus = section_modulus(*shape)
    twist, bend = float(notches.torsion[index]), float(notches.bending[index])
    found: list[_Stress | None] = [None, None, None]
    if load.torque:
        ratio = float(modulus.torsion_plastic_mm3 / modulus.torsion_mm3)
        stress = float(torsion_stress_mpa(load.torque, *shape))
        net = float(notches.net_torsion[index])
        found[0] = _Stress("torsion", stress, ratio * net, twist)
    if load.bending:
        ratio = float(modulus.bending_plastic_mm3 / modulus.bending_mm3)
        stress = float(bending_stress_mpa(load.bending, *shape))
        found[1] = _Stress("bending", stress, ratio * float(notches.net_bending[index]), bend)
    if load.axial:
        stress = load.axial / area_mm2(section)
        net = float(notches.net_axial[index])
        found[2] = _Stress("bending", stress, net, bend, AXIAL_FATIGUE)
    return tuple(found)


def _static(stress: _Stress | None, hv: Floats) -> Floats | float:
    """Return the static factor of one load alone."""
    if stress is None:
        return np.inf
    return static_factor(
        stress.nominal_mpa, hv, stress.kind, stress.plastic_ratio, stress.notch
    )


def _tired(stress: _Stress | None, hv: Floats) -> Floats | float:
    """Return the fatigue factor of one load alone."""
    if stress is None:
        return np.inf
    amplitude = ALTERNATING * stress.nominal_mpa
    return stress.fatigue_share * fatigue_factor(amplitude, hv, stress.kind, stress.notch)
