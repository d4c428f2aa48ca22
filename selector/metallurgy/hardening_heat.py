"""One hardening heat as metallurgy takes it: peak, hold, rate and the structure before it."""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from selector.metallurgy.transformation import SPHEROIDISED_ABOVE_WT_PCT, Structure

Floats = NDArray[np.float64]

STRUCTURE: dict[str, Structure] = {
    "annealed": "ferrite-pearlite",
    "hot-rolled": "ferrite-pearlite",
    "normalised": "normalised",
    "cold-drawn": "ferrite-pearlite",
    "prehard": "quenched and tempered",
    "solution-treated": "quenched and tempered",
}


MediumClass = Literal["water", "oil", "air"]


@dataclass(frozen=True, slots=True, eq=False)
class Heat:
    """One hardening heat: peak over the sample, time at heat, rate, structure, what follows.

    Where a torch is simulated, peak, time and rate are those of each place. `cold_c` is the
    temperature of a cold step right after the quench.
    """

    target_c: float
    peak_c: Floats
    hold_s: float | Floats
    rate_c_per_s: float | Floats
    structure: Structure
    medium_class: MediumClass = "oil"
    cold_c: float | None = None


def structure_of(condition: str, carbon_wt_pct: float) -> Structure:
    """Return the structure of a bar as bought.

    Parameters
    ----------
    condition : str
        Supply condition. [-]
    carbon_wt_pct : float
        Carbon. [wt %]

    Returns
    -------
    str
        As this package names it; soft bar rich in carbon is spheroidised. [-]

    References
    ----------
    .. [1] Common practice, no source.
    """
    structure = STRUCTURE.get(condition, "ferrite-pearlite")
    rich = carbon_wt_pct > SPHEROIDISED_ABOVE_WT_PCT
    return "spheroidised" if rich and structure == "ferrite-pearlite" else structure
