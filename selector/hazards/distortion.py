"""How far hardening moves a part: growth in size, and bow of its axis."""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
QuenchClass = Literal["water", "oil", "air"]
Heating = Literal["none", "through", "local-turned", "local-still"]

# Linear growth in %, median and standard deviation, of a part hardened and tempered low.
# Oil: O1 0.15 printed, 0.09 to 0.17 recalled; air: A2 and S7 0.10, D2 0.03 recalled; water:
# between 0.56 × 0.4 % C of full martensite and the halves that cores and austenite take back.
_GROWTH_PCT = MappingProxyType(
    {"water": (0.18, 0.08), "oil": (0.15, 0.05), "air": (0.07, 0.04)}
)

# Difference of strain across the section, from one-sided cooling and old stress (estimated; the
# order brine > water > polymer > fast oil > slow oil > air is published).
_STRAIN = MappingProxyType(
    {
        "brine": 1.2e-3,
        "water": 1.0e-3,
        "warm-water": 0.8e-3,
        "polymer": 0.7e-3,
        "fast-oil": 0.6e-3,
        "vegetable-oil": 0.5e-3,
        "oil": 0.45e-3,
        "air": 0.15e-3,
        "plates": 0.08e-3,
    }
)
# Share of it that counts: a turned end is heated all round and dipped along its axis.
_HEATING = MappingProxyType(
    {"none": 0.0, "through": 1.0, "local-turned": 0.5, "local-still": 2.0}
)
_LOG_SD = 0.7  # a factor of two up or down


@dataclass(frozen=True, slots=True, eq=False)
class Bow:
    """Bow of the axis: median, and standard deviation of its logarithm."""

    median_mm: FloatArray
    log_sd: float
    basis: str


@dataclass(frozen=True, slots=True, eq=False)
class Growth:
    """Change of size of the hardened length, with its error."""

    growth_pct: FloatArray
    sd_pct: FloatArray


def size_change(quench_class: QuenchClass, hardened_fraction: ArrayLike = 1.0) -> Growth:
    """Return the linear growth of a part hardened and tempered low.

    Parameters
    ----------
    quench_class : {"water", "oil", "air"}
        Medium the steel is made for. [-]
    hardened_fraction : array_like, optional
        Share of the section that becomes martensite; 0 as bought. [-]

    Returns
    -------
    Growth
        Growth and its error. [%]

    Notes
    -----
    O1 0.15 %, A2 and S7 0.10 % [1]_; other figures recalled from [2]_. A full martensite grows
    by ``0.56 × %C`` from spheroidised, 0.22 % at 0.4 % C; undissolved carbide, retained
    austenite and tempering take part of it back.

    References
    ----------
    .. [1] Buffalo Precision Products, data sheets O1, A2 and S7.
    .. [2] ASM Handbook, vol. 4, control of distortion in tool steels (from memory).
    """
    growth, sd = _GROWTH_PCT[quench_class]
    share = np.asarray(hardened_fraction, dtype=float)
    return Growth(np.asarray(growth * share), np.asarray(sd * share))


def bow(
    length_mm: ArrayLike,
    diameter_mm: ArrayLike,
    medium: str,
    heating: Heating = "through",
    heated_length_mm: ArrayLike | None = None,
    stressed: ArrayLike = False,
) -> Bow:
    """Return the bow that heating and quenching leave in a straight part.

    Only the length that is heated and quenched bends; the rest follows as a straight pointer
    and adds its tilt. As bought, nothing moves.

    Parameters
    ----------
    length_mm : array_like
        Whole length of the part. [mm]
    diameter_mm : array_like
        Diameter, or thickness of a flat. [mm]
    medium : str
        Quenching medium. [-]
    heating : {"none", "through", "local-turned", "local-still"}, optional
        Whole part, or one end by torch, turned or held still. [-]
    heated_length_mm : array_like, optional
        Length that is hardened when heating is local. [mm]
    stressed : array_like of bool, optional
        Whether the bar holds old stress (cold-drawn, straightened, half machined). [-]

    Returns
    -------
    Bow
        Median bow and its scatter. [mm]

    Notes
    -----
    Curvature ``Δε / D`` over the hardened length L: bow ``Δε L² / (8 D)``; local heating moves
    the tip of that length by ``Δε L² / (2 D)``. Δε is 1.0e-3 in water, 0.45e-3 in oil, 0.15e-3
    in air (estimated), half of it for an end turned in the flame and dipped at once, double for
    one heated from a side; old stress adds half. Only the order of the media is published.

    References
    ----------
    .. [1] ASM Handbook, vol. 4, order of distortion by quenchant (from memory).
    .. [2] Common practice, no source, for the strains; estimated.
    """
    length = np.asarray(length_mm, dtype=float)
    local = heating.startswith("local")
    given = length if heated_length_mm is None else np.asarray(heated_length_mm, dtype=float)
    hardened = np.minimum(given, length) if local else length
    strain = _STRAIN[medium] * _HEATING[heating] * (1 + 0.5 * np.asarray(stressed, dtype=float))
    arc = 2.0 if local else 8.0
    median = strain * hardened**2 / (arc * np.asarray(diameter_mm, dtype=float))
    return Bow(np.asarray(median), _LOG_SD if heating != "none" else 0.0, "estimated")
