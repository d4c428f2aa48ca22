"""Quenching media and their motion by name, and how warm a bath ends."""

from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import OutOfRangeError, Problem

Medium = Literal[
    "water",
    "warm-water",
    "brine",
    "fast-oil",
    "oil",
    "vegetable-oil",
    "polymer",
    "air",
    "plates",
]
Agitation = Literal["none", "mild", "moderate", "good", "strong", "violent"]
FloatArray = NDArray[np.float64]

# Heat capacity of a litre of bath, kJ/(l K): handbook properties near use (from memory).
_BATH_KJ_PER_L_K = MappingProxyType(
    {
        "water": 4.18,
        "warm-water": 4.12,
        "brine": 3.9,
        "fast-oil": 1.8,
        "oil": 1.8,
        "vegetable-oil": 1.85,
        "polymer": 3.9,
        "plates": 2.43,
    }
)
_STEEL_KJ_PER_KG_K = 0.65  # mean from hardening heat to the bath, heat of transformation in


def bath_end_c(
    part_mass_kg: ArrayLike,
    part_temperature_c: ArrayLike,
    bath_volume_l: ArrayLike,
    bath_temperature_c: ArrayLike = 20.0,
    medium: Medium = "water",
) -> FloatArray:
    """Return the temperature at which a part and its bath end together.

    No heat leaves the bath meanwhile and the bath is mixed. This is where the quench ends for
    retained austenite; in still air the part ends at the air's own temperature.

    Parameters
    ----------
    part_mass_kg : array_like
        Mass of the hot part. [kg]
    part_temperature_c : array_like
        Temperature of the part as it enters. [°C]
    bath_volume_l : array_like
        Volume of the bath, or of both plates. [l]
    bath_temperature_c : array_like, optional
        Bath before the quench. [°C]
    medium : str, optional
        Quenching medium. [-]

    Returns
    -------
    ndarray
        Temperature of part and bath together. [°C]

    Raises
    ------
    OutOfRangeError
        The medium is not in the table.

    Notes
    -----
    Heat balance with 0.65 kJ/(kg K) for steel, its transformation included, and heat capacities
    of the baths from memory. One kilogram from 850 °C warms 8 litres of water by 16 °C.
    Range: parts at 700 to 1050 °C.

    References
    ----------
    .. [1] Heat balance; heat capacities as printed in handbooks (from memory).
    """
    bath = np.asarray(bath_temperature_c, dtype=float)
    if medium == "air":
        return bath
    if medium not in _BATH_KJ_PER_L_K:
        rule = f"one of {', '.join(_BATH_KJ_PER_L_K)}"
        raise OutOfRangeError(Problem("medium", rule, medium, "Choose the nearest."))
    steel = np.asarray(part_mass_kg, dtype=float) * _STEEL_KJ_PER_KG_K
    liquid = np.asarray(bath_volume_l, dtype=float) * _BATH_KJ_PER_L_K[medium]
    rise = (np.asarray(part_temperature_c, dtype=float) - bath) * steel / (steel + liquid)
    return np.asarray(bath + rise)
