"""The thin blade of a screwdriver, which turns a slot."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.mechanics.strength import strength

FloatArray = NDArray[np.float64]
# Test torque over thickness squared times width. [N/mm²]
_TEST_MPA = 1000.0
# 48 HRC, the least hardness of such a tip (ASME B107.15-2002, 5.4.3), in HV (ASTM E140).
_LEAST_HV = 484.0


def slot_torque_nm(thickness_mm: ArrayLike, width_mm: ArrayLike) -> FloatArray:
    """Return the torque that the blade of a screwdriver is tested with, in a slot.

    Parameters
    ----------
    thickness_mm, width_mm : array_like
        Of the blade at its tip. [mm]

    Returns
    -------
    ndarray
        Test torque. [N m]

    Notes
    -----
    ``T = a² b`` in kN/mm², which gives the torques of the table of [1]_ to their last digit.
    Range: 0.4 x 2 to 2.5 x 14 mm.

    References
    ----------
    .. [1] ISO 2380-1:2004, Assembly tools for screws and nuts, screwdrivers for slotted-head
       screws, part 1 (from memory).

    Examples
    --------
    >>> round(float(slot_torque_nm(1.2, 8.0)), 1)
    11.5
    """
    thick, wide = np.asarray(thickness_mm, float), np.asarray(width_mm, float)
    return np.asarray(1e-3 * _TEST_MPA * thick**2 * wide)


def slot_stress_mpa(
    torque_nm: ArrayLike, thickness_mm: ArrayLike, width_mm: ArrayLike
) -> FloatArray:
    """Return the shear stress that a blade in a slot counts as, thin end of a thicker tool.

    A long flat strip would yield at a third to half of what such a blade bears: its torque
    enters over the depth of the slot, and the thicker steel behind keeps it from warping.

    Parameters
    ----------
    torque_nm : array_like
        Torque. [N m]
    thickness_mm, width_mm : array_like
        Of the blade at its tip. [mm]

    Returns
    -------
    ndarray
        Shear stress to hold against the shear yield stress. [MPa]

    Notes
    -----
    Scaled so that a blade of the least hardness that is sold, 48 HRC, just bears its test
    torque, as those do that pass the test. A departure from [1]_, which asks for no hardness.

    References
    ----------
    .. [1] ISO 2380-1:2004, Assembly tools for screws and nuts, screwdrivers for slotted-head
       screws, part 1 (from memory).
    .. [2] ASME B107.15-2002, Flat tip screwdrivers, 5.4.3.

    Examples
    --------
    >>> round(float(slot_stress_mpa(11.5, 1.2, 8.0)))
    750
    """
    bears = float(strength(_LEAST_HV).shear_yield_mpa)
    share = np.asarray(torque_nm, float) / slot_torque_nm(thickness_mm, width_mm)
    return np.asarray(bears * share)
