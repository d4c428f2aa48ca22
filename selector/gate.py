"""Gates: demands an option passes, passes narrowly, fails, or cannot be judged on.

A gate is one-sided and functional. Its share is the part of the sample that meets the demand;
the verdict follows from the share by one of two pairs of limits.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

Verdict = Literal["pass", "marginal", "fail", "unknown"]
GateName = Literal[
    "safety",
    "equipment",
    "stock",
    "response",
    "heating",
    "medium",
    "hard_enough",
    "not_too_hard",
    "depth",
    "slack",
    "strength",
    "cracking",
    "snap",
    "movement",
    "contact",
    "blow",
    "pair",
    "hard_end",
    "skin",
    "core",
    "corrosion",
    "service_heat",
    "cold",
    "shape",
    "budget",
    "days",
    "model",
    "near",
    "custom",
]

# Gates that say no for want of a tool, a bath, a bar or leave, or by the shape alone.
BY_SHOP: frozenset[GateName] = frozenset({"safety", "equipment", "stock", "medium", "shape"})
# Gates that say no by the steel alone, or because another serves.
BY_STEEL: frozenset[GateName] = frozenset({"response", "near", "custom"})
BEFORE_PREDICTION = BY_SHOP | BY_STEEL
# (pass at or above, fail below). Breaking hurts more than wearing, so its limits are higher.
FUNCTIONAL = (0.90, 0.50)
BREAKING = (0.95, 0.80)
# What a part costs is known less well than how it comes out: what may well stay inside the
# budget is shown, and how likely it does. Estimate.
BUDGETED = (0.90, 0.20)


@dataclass(frozen=True, slots=True)
class Gate:
    """The judgement of one demand on one option; `share` is None where nothing is sampled."""

    name: GateName
    verdict: Verdict
    text: str
    share: float | None = None


# How far a treatment was looked at that was worked out.
PREDICTED = 2


def looked_at(gate: Gate) -> int:
    """Return how far a treatment was looked at: 0 by its steel, 1 by the shop, 2 predicted."""
    return PREDICTED if gate.name not in BEFORE_PREDICTION else int(gate.name in BY_SHOP)


def judged(
    name: GateName,
    met: NDArray[np.bool_],
    text: str,
    limits: tuple[float, float] = FUNCTIONAL,
) -> Gate:
    """Return the gate whose share is that of the sample that meets the demand.

    Parameters
    ----------
    name : str
        Which demand.
    met : ndarray of bool
        Whether each place of the sample meets it.
    text : str
        The demand and what is predicted, for the reader.
    limits : tuple of float
        Pass at or above the first, fail below the second.

    Returns
    -------
    Gate
        With verdict pass, marginal or fail.
    """
    share = np.count_nonzero(met) / met.size
    verdict: Verdict = "marginal"
    if share >= limits[0]:
        verdict = "pass"
    elif share < limits[1]:
        verdict = "fail"
    return Gate(name, verdict, text, share)


def worst(gates: Iterable[Gate]) -> Verdict:
    """Return the verdict that decides: fail, then unknown, marginal and pass."""
    verdicts = {gate.verdict for gate in gates}
    order: tuple[Verdict, ...] = ("fail", "unknown", "marginal")
    return next((verdict for verdict in order if verdict in verdicts), "pass")
