"""How hard a bath quenches, and how warm it ends."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, get_args

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

_HANDBOOK = "Metals Handbook, severity of quench by agitation (from memory)"
_VELOCITY = "Handbook of Quenchants and Quenching Technology, 1993 (from memory)"
_ESTIMATE = "estimated, no source"

# Severity from low to high by agitation; a state a source leaves out is absent and read between
# its neighbours. Water speeds of the 1993 table: 0.25 m/s taken as moderate, 0.51 as strong,
# 0.76 as violent (our reading).
_BANDS = MappingProxyType(
    {
        "water": (
            _HANDBOOK,
            {
                "none": (0.9, 1.0),
                "mild": (1.0, 1.1),
                "moderate": (1.2, 1.3),
                "good": (1.4, 1.5),
                "strong": (1.6, 2.0),
                "violent": (4.0, 4.0),
            },
        ),
        "brine": (
            _HANDBOOK,
            {"none": (2.0, 2.0), "mild": (2.0, 2.2), "violent": (5.0, 5.0)},
        ),
        "oil": (
            _HANDBOOK,
            {
                "none": (0.25, 0.3),
                "mild": (0.3, 0.35),
                "moderate": (0.35, 0.4),
                "good": (0.4, 0.5),
                "strong": (0.5, 0.8),
                "violent": (0.8, 1.1),
            },
        ),
        "fast-oil": (
            _VELOCITY,
            {
                "none": (0.5, 0.5),
                "moderate": (1.0, 1.0),
                "strong": (1.1, 1.1),
                "violent": (1.5, 1.5),
            },
        ),
        "warm-water": (
            _VELOCITY,
            {
                "none": (0.2, 0.2),
                "moderate": (0.6, 0.6),
                "strong": (1.5, 1.5),
                "violent": (2.4, 2.4),
            },
        ),
        # Still air: 0.02 in the handbook, 0.05 in the 1993 table; moving: 0.05, 0.06 to 0.08.
        "air": (_HANDBOOK, {"none": (0.02, 0.05), "strong": (0.05, 0.08)}),
        "vegetable-oil": (_ESTIMATE, {"none": (0.25, 0.45), "strong": (0.5, 0.9)}),
        "polymer": (_ESTIMATE, {"none": (0.15, 0.3), "strong": (0.6, 1.2)}),
        "plates": (_ESTIMATE, {"none": (0.1, 0.3)}),
    }
)

# The share of the severity a water bath keeps at 55 °C, by agitation, over that at 32 °C.
_WARM_SHARE = MappingProxyType({"none": 0.2 / 1.1, "moderate": 0.6 / 2.1, "strong": 1.5 / 2.7})
_COLD_C, _WARM_C = 32.0, 55.0

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


@dataclass(frozen=True, slots=True)
class QuenchSeverity:
    """Grossmann severity of a bath, with the band of its source."""

    severity: float
    low: float
    high: float
    source: str

    @property
    def log_sd(self) -> float:
        """Standard deviation of its logarithm: the band as 90 %, and the table's own steps."""
        return math.hypot(math.log(self.high / self.low) / 3.29, 0.1)


def _known(field: str, word: str, words: Iterable[str]) -> None:
    """Refuse a word that is not in the table."""
    if word not in words:
        rule = f"one of {', '.join(words)}"
        raise OutOfRangeError(Problem(field, rule, word, "Choose the nearest."))


def _between(
    by_agitation: dict[str, tuple[float, float]], agitation: str
) -> tuple[float, float]:
    """Read a band at an agitation, geometrically between the states the source gives."""
    words = get_args(Agitation)
    ranks = [words.index(word) for word in by_agitation]
    bands = np.log(np.array(list(by_agitation.values())))
    low, high = (float(np.exp(np.interp(words.index(agitation), ranks, b))) for b in bands.T)
    return low, high


def grossmann_h(
    medium: Medium, agitation: Agitation = "none", bath_temperature_c: float | None = None
) -> QuenchSeverity:
    """Return the quench severity of a medium on Grossmann's scale.

    Water loses severity as it warms because its vapour blanket lasts longer, least when it is
    driven hard; other media are taken at their usual temperature.

    Parameters
    ----------
    medium : str
        Quenching medium; warm-water is 55 °C, plates are aluminium clamps on a thin part. [-]
    agitation : str, optional
        Motion of bath or part, from none to violent. [-]
    bath_temperature_c : float, optional
        Temperature of a water bath. [°C]

    Returns
    -------
    QuenchSeverity
        Severity (still water about 1) with low and high of its source. [-]

    Raises
    ------
    OutOfRangeError
        The medium or agitation is not in the table.

    Notes
    -----
    Bands from [1]_; warm water and fast oil from [2]_, severity straight in the logarithm from
    32 to 55 °C and held outside. Vegetable oil, polymer and plates are estimates and say so.

    References
    ----------
    .. [1] Metals Handbook, ASM, severity of quench H by agitation, after Grossmann and Asimow
       1940 (from memory).
    .. [2] G. E. Totten, C. E. Bates, N. A. Clinton, Handbook of Quenchants and Quenching
       Technology, ASM, 1993, effect of quenching conditions on severity (from memory).

    Examples
    --------
    >>> grossmann_h("oil", "moderate").low
    0.35
    """
    _known("medium", medium, get_args(Medium))
    _known("agitation", agitation, get_args(Agitation))
    source, by_agitation = _BANDS[medium]
    low, high = _between(by_agitation, agitation)
    if medium == "water" and bath_temperature_c is not None and bath_temperature_c > _COLD_C:
        shares = {word: (share, share) for word, share in _WARM_SHARE.items()}
        share = _between(shares, agitation)[0]
        warmth = min((bath_temperature_c - _COLD_C) / (_WARM_C - _COLD_C), 1.0)
        low, high = low * share**warmth, high * share**warmth
        source = f"{source}; warmed by {_VELOCITY}"
    low, high = round(low, 6), round(high, 6)
    return QuenchSeverity(float(np.sqrt(low * high)), low, high, source)


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
    _known("medium", medium, _BATH_KJ_PER_L_K)
    steel = np.asarray(part_mass_kg, dtype=float) * _STEEL_KJ_PER_KG_K
    liquid = np.asarray(bath_volume_l, dtype=float) * _BATH_KJ_PER_L_K[medium]
    rise = (np.asarray(part_temperature_c, dtype=float) - bath) * steel / (steel + liquid)
    return np.asarray(bath + rise)
