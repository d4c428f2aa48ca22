"""Strength from hardness, and the factor left under a static or an alternating load."""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.hardness_scale import tensile_mpa_from_hv

FloatArray = NDArray[np.float64]
Load = Literal["torsion", "bending"]
Finish = Literal["polished", "ground", "machined", "hot-rolled", "forged"]

# 50 and 56 HRC in HV (ASTM E140): below, a section may yield throughout; above, a notch counts.
# Keys and screwdrivers of 50 to 56 HRC twist before they break.
_DUCTILE_HV, _BRITTLE_HV = 513.0, 613.0
_SHEAR_YIELD, _SHEAR_ULTIMATE = 0.577, 0.6
_LINEAR_TO_HV = 400.0
_TORSION_FATIGUE = 0.60  # middle of 0.52 to 0.68 published for about 18 steels

# Surface factor A Rm^b, Rm in MPa (machine design texts after 1946 data, from memory).
_SURFACE = MappingProxyType(
    {
        "polished": (1.0, 0.0),
        "ground": (1.58, -0.085),
        "machined": (4.51, -0.265),
        "hot-rolled": (57.7, -0.718),
        "forged": (272.0, -0.995),
    }
)


@dataclass(frozen=True, slots=True, eq=False)
class Strength:
    """Strength of steel at a hardness, with the error of the relations at known hardness."""

    yield_mpa: FloatArray
    tensile_mpa: FloatArray
    shear_yield_mpa: FloatArray
    shear_ultimate_mpa: FloatArray
    sd_yield_mpa: FloatArray
    sd_tensile_mpa: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class FatigueLimit:
    """Fatigue limit of a smooth polished bar, with its error."""

    limit_mpa: FloatArray
    sd_mpa: FloatArray


def strength(hardness_hv: ArrayLike) -> Strength:
    """Return yield, tensile and shear strength of steel from its hardness.

    For as-rolled, normalised, and quenched and tempered steel; an as-quenched or barely
    tempered steel yields earlier than this and may break before it does.

    Parameters
    ----------
    hardness_hv : array_like
        Vickers hardness. [HV]

    Returns
    -------
    Strength
        Strengths and their model errors. [MPa]

    Notes
    -----
    Tensile strength by the table of ISO 18265 [1]_, its last slope continued. Yield strength
    ``-90.7 + 2.876 HV`` [2]_, standard error 102 MPa there, not above 0.95 of tensile nor
    below 0.5. Shear yield is 0.577 of yield (distortion energy), ultimate shear 0.6 of tensile.
    Range: 130 to 650 HV.

    References
    ----------
    .. [1] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.
    .. [2] E. J. Pavlina, C. J. Van Tyne, Correlation of yield strength and tensile strength
       with hardness for steels, J. Mater. Eng. Perform. 17, 2008, 888-893 (from memory).

    Examples
    --------
    >>> round(float(strength(300.0).yield_mpa), 1)
    772.1
    """
    hardness = np.asarray(hardness_hv, dtype=float)
    tensile = np.asarray(tensile_mpa_from_hv(hardness, outside="extend"), dtype=float)
    yielding = bounded(-90.7 + 2.876 * hardness, 0.5 * tensile, 0.95 * tensile)
    return Strength(
        yield_mpa=yielding,
        tensile_mpa=tensile,
        shear_yield_mpa=_SHEAR_YIELD * yielding,
        shear_ultimate_mpa=_SHEAR_ULTIMATE * tensile,
        sd_yield_mpa=np.maximum(102.0, 0.08 * yielding),
        sd_tensile_mpa=0.05 * tensile,
    )


def static_factor(
    stress_mpa: ArrayLike,
    hardness_hv: ArrayLike,
    load: Load,
    plastic_ratio: ArrayLike = 1.0,
    notch_factor: ArrayLike = 1.0,
) -> FloatArray:
    """Return the factor against static failure: what the section bears over what it carries.

    Below about 50 HRC a notch yields and the whole section may; above about 56 HRC the notch
    decides and nothing may yield. Between, straight in hardness.

    Parameters
    ----------
    stress_mpa : array_like
        Nominal elastic stress: shear in torsion, fibre stress in bending. [MPa]
    hardness_hv : array_like
        Vickers hardness where the stress is. [HV]
    load : {"torsion", "bending"}
        Load. [-]
    plastic_ratio : array_like, optional
        Plastic over elastic modulus of the section (round 1.33 in torsion). [-]
    notch_factor : array_like, optional
        Stress concentration factor. [-]

    Returns
    -------
    ndarray
        Factor; below 1 the part takes a set or breaks. [-]

    Notes
    -----
    The hardness limits are practice for tool steels, not a published relation.

    References
    ----------
    .. [1] Common practice in machine design; strengths as `strength`.
    """
    hardness = np.asarray(hardness_hv, dtype=float)
    bearing = strength(hardness)
    yielding = bearing.shear_yield_mpa if load == "torsion" else bearing.yield_mpa
    brittle = bounded((hardness - _DUCTILE_HV) / (_BRITTLE_HV - _DUCTILE_HV), 0, 1)
    tough = np.asarray(plastic_ratio, dtype=float)
    share = tough + brittle * (1 / np.asarray(notch_factor, dtype=float) - tough)
    return np.asarray(yielding * share / np.asarray(stress_mpa, dtype=float))


def fatigue_limit(hardness_hv: ArrayLike, load: Load = "bending") -> FatigueLimit:
    """Return the fatigue limit of a smooth polished bar from its hardness.

    Linear in hardness to 400 HV; beyond, inclusions and the surface decide, so the limit is
    held and its error grows.

    Parameters
    ----------
    hardness_hv : array_like
        Vickers hardness. [HV]
    load : {"torsion", "bending"}, optional
        Alternating load. [-]

    Returns
    -------
    FatigueLimit
        Stress amplitude and its error. [MPa]

    Notes
    -----
    ``1.6 HV ± 0.1 HV`` in rotating bending [1]_; torsion 0.60 of it, published 0.52 to
    0.68 [2]_. Above 400 HV the error rises from 7 to 25 % at 700 HV (235 to 819 MPa printed
    at 600 to 750 HB [3]_). Range: 100 to 750 HV.

    References
    ----------
    .. [1] Y. Murakami, Metal Fatigue: effects of small defects and nonmetallic inclusions,
       2002 (from memory).
    .. [2] Biaxial/Multiaxial Fatigue and Fracture, p. 287, Table 1.
    .. [3] Steel bar fatigue database, note of the steel bar industry (SMDI).

    Examples
    --------
    >>> float(fatigue_limit(300.0).limit_mpa)
    480.0
    """
    hardness = np.asarray(hardness_hv, dtype=float)
    limit = 1.6 * np.minimum(hardness, _LINEAR_TO_HV)
    scatter = 0.07 + 0.18 * np.clip((hardness - _LINEAR_TO_HV) / 300.0, 0, 1)
    if load == "torsion":
        return FatigueLimit(_TORSION_FATIGUE * limit, _TORSION_FATIGUE * limit * scatter)
    return FatigueLimit(limit, limit * scatter)


def surface_factor(finish: Finish, tensile_mpa: ArrayLike) -> FloatArray:
    """Return the share of the fatigue limit that a surface finish leaves.

    Parameters
    ----------
    finish : {"polished", "ground", "machined", "hot-rolled", "forged"}
        Finish of the stressed surface. [-]
    tensile_mpa : array_like
        Tensile strength. [MPa]

    Returns
    -------
    ndarray
        Factor, 1 at most. [-]

    Notes
    -----
    ``A Rm^b`` with the coefficients of [1]_. Range: 400 to 1700 MPa.

    References
    ----------
    .. [1] R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., 2011,
       Table 6-2 (from memory).
    """
    a, b = _SURFACE[finish]
    return np.minimum(a * np.asarray(tensile_mpa, dtype=float) ** b, 1.0)


def fatigue_factor(
    stress_amplitude_mpa: ArrayLike,
    hardness_hv: ArrayLike,
    load: Load,
    notch_factor: ArrayLike,
    finish: Finish = "machined",
) -> FloatArray:
    """Return the factor against fatigue under a fully reversed stress.

    The notch counts in full: hard steel is fully notch sensitive, and soft steel is treated so.

    Parameters
    ----------
    stress_amplitude_mpa : array_like
        Nominal stress amplitude. [MPa]
    hardness_hv : array_like
        Vickers hardness where the stress is. [HV]
    load : {"torsion", "bending"}
        Alternating load. [-]
    notch_factor : array_like
        Stress concentration factor; 1 only for a part without notch. [-]
    finish : {"polished", "ground", "machined", "hot-rolled", "forged"}, optional
        Finish of the stressed surface. [-]

    Returns
    -------
    ndarray
        Factor; below 1 it breaks in time. [-]

    References
    ----------
    .. [1] As `fatigue_limit` and `surface_factor`.
    """
    limit = fatigue_limit(hardness_hv, load).limit_mpa
    kept = surface_factor(finish, strength(hardness_hv).tensile_mpa)
    peak = np.asarray(notch_factor, dtype=float) * np.asarray(stress_amplitude_mpa, dtype=float)
    return np.asarray(limit * kept / peak)


def combined_factor(
    torsion: ArrayLike, bending: ArrayLike = np.inf, axial: ArrayLike = np.inf
) -> FloatArray:
    """Return the factor left where torsion, bending and axial load act at once.

    Each is given as its own factor: what the section bears over what it carries. Torsion is
    largest where bending is, at the outer fibre, so they are taken at one point.

    Parameters
    ----------
    torsion, bending, axial : array_like
        Factors of each load alone, infinite where there is none. [-]

    Returns
    -------
    ndarray
        Factor of all together, at most the least of the three. [-]

    Notes
    -----
    ``1/n = √((1/n_b + 1/n_a)² + (1/n_t)²)``. At first yield this is the distortion energy of
    ``σ = √(σ² + 3 τ²)`` [1]_; for alternating loads it is the ellipse quadrant measured for
    ductile steel [2]_; for a section that yields throughout it is on the safe side.

    References
    ----------
    .. [1] R. von Mises, Mechanik der festen Körper im plastisch-deformablen Zustand, 1913.
    .. [2] H. J. Gough, H. V. Pollard, The strength of metals under combined alternating
       stresses, Proc. Inst. Mech. Eng. 131, 1935, 3-103 (from memory).

    Examples
    --------
    >>> float(combined_factor(2.0, 2.0))
    1.414213562373095
    """
    direct = 1 / np.asarray(bending, dtype=float) + 1 / np.asarray(axial, dtype=float)
    use = np.hypot(direct, 1 / np.asarray(torsion, dtype=float))
    return np.asarray(1 / np.maximum(use, 1e-12))


def impact_force_n(
    energy_j: ArrayLike, length_mm: ArrayLike, area_mm2: ArrayLike, young_mpa: float = 206_000.0
) -> FloatArray:
    """Return the force of a blow along a stepped bar that takes all its energy elastically.

    The bar alone springs; hammer, work and hand are rigid, so the force is the largest there
    can be.

    Parameters
    ----------
    energy_j : array_like
        Energy of the blow. [J]
    length_mm : array_like
        Lengths of the sections. [mm]
    area_mm2 : array_like
        Their areas, in mm². [-]
    young_mpa : float, optional
        Modulus of elasticity. [MPa]

    Returns
    -------
    ndarray
        Force along the bar, in newton. [N]

    Notes
    -----
    ``F = √(2 E U / Σ(l/A))``, from the strain energy ``F² Σ(l/A) / (2 E)`` [1]_.

    References
    ----------
    .. [1] S. Timoshenko, Strength of Materials, strain energy and impact (from memory).

    Examples
    --------
    >>> round(float(impact_force_n(1.0, [206.0], [100.0])))
    14142
    """
    give = np.sum(np.asarray(length_mm, dtype=float) / np.asarray(area_mm2, dtype=float))
    work = 2e3 * young_mpa * np.asarray(energy_j, dtype=float)
    return np.asarray(np.sqrt(work / give))
