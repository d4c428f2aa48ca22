"""What is worth measuring before choosing, in the user's words."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.advice.advise import Advice
from selector.advice.record import MeasureOut
from selector.decision.measuring import ranked
from selector.decision.option import Option
from selector.hardening.composition import elements

Floats = NDArray[np.float64]
# What explains less is not worth the trouble. [-]
LEAST = 0.05


@dataclass(frozen=True, slots=True)
class _Cause:
    """An uncertainty as the user knows it, and what narrows it; none where nothing does."""

    words: str
    step: str | None
    shared: tuple[str, ...] = ()
    own: tuple[str, ...] = ()


_CAUSES: dict[str, _Cause] = {
    "eye": _Cause(
        "how you read the heat by eye",
        "hold a crayon or thermocouple against your eye once",
        ("eye_bias",),
    ),
    "furnace": _Cause(
        "the furnace's true temperature", "lay a second thermocouple in it", ("furnace_bias",)
    ),
    "oven": _Cause(
        "the true temperature of the temper",
        "lay an oven thermometer beside the part",
        ("temper_bias",),
    ),
    "bath": _Cause(
        "how fiercely the bath quenches", "quench a coupon in it and test it", ("bath_bias",)
    ),
    "flame": _Cause(
        "how strong the flame is", "time a coupon of this size to its heat", ("torch_bias",)
    ),
    "hardening": _Cause(
        "how the bar at hand hardens",
        "harden a coupon of the same bar and test it",
        ("hardenability_family",),
        ("hardenability", "as_quenched", "section_limit", "depth", "core"),
    ),
    "tempering": _Cause(
        "how the bar softens in the temper",
        "temper a hardened coupon and test it",
        ("tempering_family",),
        ("tempering",),
    ),
    "analysis": _Cause(
        "what is in the bar",
        "ask for its certificate and give the analysis (workshop.stock.analysis)",
    ),
    "bar": _Cause(
        "the hardness of the bar as bought", "test the bar", own=("supply_hardness",)
    ),
    "wear": _Cause(
        "how fast it wears", "note how long the worn part has lasted", ("wear_family",)
    ),
    "load": _Cause("the load", "measure or work out the load", ("load",)),
    "price": _Cause("prices", "ask for prices", ("price_level",)),
    "check": _Cause(
        "what your hardness check reads",
        "try it on a piece of known hardness",
        ("check_reading",),
    ),
    "heat to heat": _Cause(
        "what changes from heat to heat",
        None,
        ("eye_scatter", "temper_scatter", "delay", "rework"),
    ),
    "luck": _Cause(
        "cracks, bends and snaps that nobody foresees",
        None,
        own=("crack_rate", "crack", "movement", "snap"),
    ),
}


def measures(
    advice: Advice, gap: Floats, between: tuple[Option, ...]
) -> tuple[MeasureOut, ...]:
    """Return which uncertainties decide between options, those that decide most first.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    gap : ndarray
        Score of the first above its nearest rival over the samples; shape (samples,). [-]
    between : tuple of Option
        The two, or the one.

    Returns
    -------
    tuple of MeasureOut
        What no measurement narrows is among them, without a step.
    """
    groups = {name: list(_samples(advice, name, between)) for name in _CAUSES}
    return tuple(
        MeasureOut(
            name=name,
            words=_CAUSES[name].words,
            step=_CAUSES[name].step,
            explains=round(share, 4),
        )
        for name, share in ranked(gap, groups)
        if share >= LEAST
    )


def _samples(advice: Advice, name: str, between: tuple[Option, ...]) -> Iterator[Floats]:
    """Yield the samples of one uncertainty: shared ones, then those of each steel."""
    cause, shared = _CAUSES[name], advice.job.shared()
    yield from (shared[dimension] for dimension in cause.shared)
    steels = {option.treatment.steel.slug: option.treatment.steel for option in between}
    for slug, steel in steels.items():
        of_steel = advice.job.of_steel(slug)
        own = elements(steel) if name == "analysis" else cause.own
        yield from (of_steel[dimension] for dimension in own if dimension in of_steel)
