"""A scale of heat or temper colours under a step: what serves, and what it looks like there."""

from itertools import pairwise
from typing import Any

from selector.handover.step_figure import band_words
from selector.heat.colour import (
    HEAT_COLOURS,
    MAGNET_LOST_C,
    TEMPER_COLOURS,
    temper_colour_named,
)
from selector.record import StepOut
from selector.wording import shown_time

# How the colours print: near the eye's, each beside its word, for paper glows in no light. A
# hotter heat is paler, in grey as well; temper colours are not, so the word stands beside each.
HEAT_PRINT = {
    "faint red": "#3a1212", "dull red": "#5a1414", "dark cherry": "#7d1a16",
    "cherry": "#a62a1c", "bright cherry": "#cf4a28", "orange": "#ec8335", "yellow": "#f6c453",
    "white": "#fff3d6",
}  # fmt: skip
TEMPER_PRINT = {
    "pale yellow": "#f3e9b8", "straw": "#e8d27f", "dark straw": "#d5b04f", "brown": "#9b6a35",
    "purple": "#7b4a73", "violet": "#5c4a94", "blue": "#3b5fae", "dark blue": "#2b3f7d",
    "light blue": "#8fb3d6", "grey": "#a3a8ac",
}  # fmt: skip
# How far past what serves the scale runs. [°C]
HEAT_PAST_C, TEMPER_PAST_C = 110.0, 35.0


def scale_of(step: StepOut) -> dict[str, Any] | None:
    """Return the colour scale of a step, None of one that nobody judges by colour.

    Parameters
    ----------
    step : StepOut
        A step with a colour.

    Returns
    -------
    dict or None
        `low` and `high` end the scale, `band` is what serves, `said` the same in words,
        `magnet` is where the magnet lets go, `cells` are the colours with their word, print
        colour and ends; all in °C.
    """
    if step.colour is None or step.temperature_c is None:
        return None
    low, high = step.band_c or (step.temperature_c, step.temperature_c)
    if step.stage == "heat" and step.band_c is not None:
        known = [(c.name, c.temperature_c) for c in HEAT_COLOURS.values()]
        return _scale((low, high), HEAT_PAST_C, known, MAGNET_LOST_C, "")
    if step.stage != "temper" or step.minutes is None:
        return None
    held_s = 60.0 * step.minutes
    known = [(name, temper_colour_named(name, held_s).temperature_c) for name in TEMPER_COLOURS]
    return _scale((low, high), TEMPER_PAST_C, known, None, f" after {shown_time(held_s)}")


def _serving(band_c: tuple[float, float]) -> str:
    """Return what serves in words, of a band without width its one heat."""
    if round(band_c[0]) < round(band_c[1]):
        return band_words(band_c)
    return f"{band_c[0]:.0f} °C"


def _scale(
    band_c: tuple[float, float],
    past_c: float,
    known: list[tuple[str, float]],
    magnet_c: float | None,
    after: str,
) -> dict[str, Any]:
    """Return the part of a row of colours that lies about what serves."""
    low, high = band_c[0] - past_c, band_c[1] + past_c
    if magnet_c is not None:
        low = min(low, magnet_c - 30.0)
    edges = [low, *(0.5 * (a[1] + b[1]) for a, b in pairwise(known)), high]
    return {
        "low": low, "high": high, "band": list(band_c), "said": f"{_serving(band_c)}{after}",
        "magnet-said": f"magnet lets go {MAGNET_LOST_C:.0f} °C",
        "magnet": magnet_c if magnet_c is not None and low < magnet_c < high else None,
        "cells": [
            {
                "name": name, "said": f"{max(start, low):.0f} to {min(end, high):.0f} °C",
                "print": (HEAT_PRINT | TEMPER_PRINT)[name],
                "from": max(start, low), "to": min(end, high),
            }
            for (name, _), start, end in zip(known, edges[:-1], edges[1:], strict=True)
            if min(end, high) - max(start, low) > 0.0
        ],
    }  # fmt: skip
