"""Plots of a quenched section and of a tempering curve, each with its 90 % range."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from selector.specimen.output import quench_words
from selector.specimen.record import QuenchedOut, RangeOut, TemperedOut

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

LINE, MARK = "#1f5f99", "#b3541e"
# Oxide colours about as they look on bright steel.
OXIDE = {
    "pale yellow": "#f0e2a0",
    "straw": "#e3c565",
    "dark straw": "#d2a544",
    "brown": "#a26a35",
    "purple": "#7b4a78",
    "violet": "#5d4a94",
    "blue": "#3a57a6",
    "dark blue": "#2a4274",
    "light blue": "#7fa8c9",
    "grey": "#9aa3a8",
}


def quenched_figure(answer: QuenchedOut) -> "Figure":
    """Return hardness against depth under the surface."""
    figure, axes = _framed()
    at = [point.from_surface_mm for point in answer.points]
    _banded(axes, at, [point.hrc for point in answer.points], "as quenched")
    if answer.half_martensite_hrc is not None:
        half = answer.half_martensite_hrc
        axes.axhline(half, color=MARK, linestyle=":", label=f"half martensite, {half:.0f} HRC")
    axes.set_xlabel("under the surface, mm")
    axes.set_xlim(left=0.0)
    made = "" if answer.quench is None else f": {quench_words(answer.quench)}"
    # What a user names may hold a dollar sign, which is no formula.
    axes.set_title(f"{answer.steel.spoken}{made}", parse_math=False, fontsize="medium")
    axes.legend()
    return figure


def tempered_figure(answer: TemperedOut) -> "Figure":
    """Return hardness against tempering temperature, colours below."""
    figure, axes = _framed()
    heats_c = [row.temperature_c for row in answer.rows]
    _banded(axes, heats_c, [row.hrc for row in answer.rows], "tempered")
    for number, window in enumerate(answer.embrittlement):
        label = "brittle" if number == 0 else "_brittle"
        axes.axvspan(window.low_c, window.high_c, color=MARK, alpha=0.15, lw=0, label=label)
    if answer.wanted is not None:
        axes.axhline(answer.wanted.hrc, color="0.3", linestyle=":", label="wanted")
        heat = answer.wanted.temperature_c
        if heat is not None and heat.p50 is not None:
            axes.axvline(heat.p50, color="0.3", linestyle=":")
    low, high = axes.get_ylim()
    below = low - 0.05 * (high - low)
    axes.set(xlabel="tempered at, °C", ylim=(below - 0.02 * (high - low), high))
    shades = {row.temperature_c: OXIDE[row.colour] for row in answer.rows if row.colour}
    if shades:
        at, colours, heights = list(shades), list(shades.values()), [below] * len(shades)
        axes.scatter(at, heights, c=colours, s=80, marker="s", label="oxide colour")
    axes.set_title(answer.headline, parse_math=False, fontsize="medium", wrap=True)
    axes.legend()
    return figure


def _framed() -> "tuple[Figure, Axes]":
    """Return an empty plot with hardness upwards. Of matplotlib, not shown anywhere."""
    from matplotlib.figure import Figure  # noqa: PLC0415 - slow to load

    figure = Figure(figsize=(8.0, 5.0), layout="constrained")
    axes = figure.subplots()
    axes.set(ylabel="hardness, HRC")
    axes.grid(visible=True, alpha=0.25)
    return figure, axes


def _banded(axes: "Axes", at: Sequence[float], hrc: Sequence[RangeOut], label: str) -> None:
    """Draw a line through the medians and a band over the ranges."""
    low, middle, high = (
        [float("nan") if value is None else value for value in values]
        for values in zip(*((h.p05, h.p50, h.p95) for h in hrc), strict=True)
    )
    axes.plot(at, middle, "o-", color=LINE, markersize=4, label=label)
    axes.fill_between(at, low, high, color=LINE, alpha=0.2, lw=0, label="90 % range")
