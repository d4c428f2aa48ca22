"""Will it snap: toughness class of the steel, hardness, and how it is struck.

An estimated logistic model of the odds; no published relation gives them. Published impact
energies only place a steel in its class, each notch kind by its own limits.
"""

import math
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
ToughnessClass = Literal["low", "medium", "high", "very-high"]
Impact = Literal["none", "light", "hammered"]
Notch = Literal["charpy-c", "charpy-v", "izod", "unnotched"]

CLASSES: tuple[ToughnessClass, ...] = ("low", "medium", "high", "very-high")

# Hardness at which one part in two snaps in a steel of medium class without notch (estimated:
# O1 and W1 struck tools last at 57 to 59 HRC, unstruck gauges and scribers at 64).
_HALF_HRC = MappingProxyType({"none": 69.0, "light": 65.0, "hammered": 62.0})
_CLASS_HRC = 2.5  # what one class of toughness is worth
_NOTCH_HRC = 3.0  # what doubling the stress concentration costs
_SCALE_HRC = 1.5
_SD_HRC = 2.0
# Down to the first a temper makes a steel as tough as its class; from there to the second, at
# which gauges and ball races are relieved, a class is lost little by little (estimated). [°C]
_TOUGH_FROM_C, _LOWEST_TEMPER_C = 180.0, 150.0

# Upper limits of low, medium and high by notch kind, J (estimated from printed energies at
# working hardness: D2 28, O1 41, A2 53, S7 165 with C-notch; 440C 9, L6 12 with V-notch).
_LIMITS_J = MappingProxyType(
    {
        "charpy-c": (35.0, 60.0, 130.0),
        "charpy-v": (10.0, 20.0, 45.0),
        "izod": (12.0, 25.0, 60.0),
        "unnotched": (60.0, 150.0, 240.0),
    }
)


@dataclass(frozen=True, slots=True, eq=False)
class SnapLikelihood:
    """Probability that a part snaps in service; NaN where nothing supports a figure."""

    probability: FloatArray
    margin_hrc: FloatArray
    sd_margin_hrc: float
    basis: str


def impact_class(energy_j: float, notch: Notch) -> ToughnessClass:
    """Return the toughness class of a published impact energy.

    Energies of different notches are not comparable: each kind has its own limits.

    Parameters
    ----------
    energy_j : float
        Impact energy at working hardness. [J]
    notch : {"charpy-c", "charpy-v", "izod", "unnotched"}
        Specimen of the test. [-]

    Returns
    -------
    str
        Class of toughness. [-]

    Notes
    -----
    The limits are ours, set between printed energies of tool steels at their working hardness.

    References
    ----------
    .. [1] Eastern Tool Steel Service, data sheets O1, L6, A2 and S7 (Charpy C-notch).
    .. [2] Metals Handbook, ASM, vol. 1, nominal properties of tool steels (from memory).

    Examples
    --------
    >>> impact_class(41.0, "charpy-c")
    'medium'
    """
    return CLASSES[int(np.searchsorted(_LIMITS_J[notch], energy_j, side="right"))]


def snap_likelihood(
    hardness_hrc: ArrayLike,
    toughness: ToughnessClass,
    impact: Impact,
    temper_c: ArrayLike,
    notch_factor: ArrayLike = 1.0,
    embrittled: ArrayLike = False,
) -> SnapLikelihood:
    """Return the likelihood that a hardened part snaps.

    Tempered below 150 °C, or not at all, toughness is unknown and so is the answer; from 180
    down to 150 °C it falls by one class. A temper inside the steel's own embrittlement window
    costs one class.

    Parameters
    ----------
    hardness_hrc : array_like
        Hardness of the stressed place. [HRC]
    toughness : {"low", "medium", "high", "very-high"}
        Class of the steel, tempered by good practice. [-]
    impact : {"none", "light", "hammered"}
        How it is struck. [-]
    temper_c : array_like
        Tempering temperature; NaN as quenched. [°C]
    notch_factor : array_like, optional
        Stress concentration factor in tension. [-]
    embrittled : array_like of bool, optional
        Whether the temper lies in the steel's catalogued window. [-]

    Returns
    -------
    SnapLikelihood
        Probability, and how far below even odds in hardness with its error. [HRC]

    Notes
    -----
    ``logit p = (HRC - HRC50) / 1.5``, HRC50 = 69, 65, 62 for none, light and hammered in the
    medium class, 2.5 a class, less 3 for each doubling of the stress concentration. Estimated
    from working hardnesses in use; trials replace it. Range: 30 to 67 HRC (estimated).

    References
    ----------
    .. [1] Common practice, no source; estimated.
    """
    hardness = np.asarray(hardness_hrc, dtype=float)
    steps = CLASSES.index(toughness) - 1 - np.asarray(embrittled, dtype=float)
    drawn_c = np.asarray(temper_c, dtype=float)
    missing = (_TOUGH_FROM_C - drawn_c) / (_TOUGH_FROM_C - _LOWEST_TEMPER_C)
    steps = steps - np.clip(missing, 0.0, 1.0)
    notch = np.log(np.asarray(notch_factor, dtype=float)) / math.log(2)
    margin = _HALF_HRC[impact] + _CLASS_HRC * steps - _NOTCH_HRC * notch - hardness
    known = drawn_c >= _LOWEST_TEMPER_C
    margin = np.where(known, margin, np.nan)
    probability = 1 / (1 + np.exp(np.clip(margin / _SCALE_HRC, -60, 60)))
    return SnapLikelihood(probability, margin, _SD_HRC, "estimated")
