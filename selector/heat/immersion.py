"""A dip: when each place goes under, how long vapour hides it, how the bath warms.

A dipped surface first hides behind vapour. A wetting front comes from the edges, and the film
collapses everywhere after a while that is as good as random; then the bath boils and grips.
"""

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.boiling import (
    Bath,
    bath_temperature_c,
    boiling_curve,
)
from selector.heat.conduction import History, Plan, conduct
from selector.heat.exchange import Boundary, Holder, held_end, mixed
from selector.heat.grid import Grid
from selector.heat.steel_property import SteelProperty

Floats = NDArray[np.float64]

# The front reaches this far from an edge by the time the film collapses by itself. Estimated.
FRONT_REACH_MM = 20.0
# Behind less steel than a round of 16 mm has, vapour lives shorter in proportion: it lasts as
# long as heat comes to keep it. Estimated, so that thin bars come out by the published
# severities of still and warm water. Volume per wetted area. [mm]
KEEPS_VAPOUR_MM = 4.0
STILL_AIR = Bath("air", agitation="none")
SPLASH_S = 0.02  # a surface goes under within this
LATE_S = 1e7  # later than any history is followed


@dataclass(frozen=True, slots=True)
class Immersion:
    """Length under the surface by time, from the working end; straight between, then held.

    A delay is a first time above 0; out is length 0; back in is a length again.
    """

    time_s: tuple[float, ...] = (0.0,)
    immersed_mm: tuple[float, ...] = (math.inf,)


def _under(immersion: Immersion, along_mm: float) -> list[tuple[float, float]]:
    """Return the intervals during which a place is under the surface."""
    times = [*immersion.time_s, math.inf]
    depth = [*immersion.immersed_mm, immersion.immersed_mm[-1]]
    edges: list[float] = [times[0]] if depth[0] > along_mm else []
    for t0, t1, d0, d1 in zip(times, times[1:], depth, depth[1:], strict=False):
        if (d0 > along_mm) != (d1 > along_mm):
            part = 1.0 if math.isinf(d0) or math.isinf(d1) else (along_mm - d0) / (d1 - d0)
            edges.append(t0 + part * (t1 - t0))
    if len(edges) % 2:
        edges.append(math.inf)
    return list(zip(edges[::2], edges[1::2], strict=True))


def _sound(immersion: Immersion) -> None:
    """Refuse a schedule that runs backwards or lacks a number."""
    t, d = np.array(immersion.time_s), np.array(immersion.immersed_mm)
    sound = t.size == d.size and t.size > 0 and np.all(np.isfinite(t)) and np.all(d >= 0.0)
    if not sound or t[0] < 0.0 or np.any(np.diff(t) < 0.0):
        rule = "times from 0 upward, each with a length of 0 or more"
        got = f"{immersion.time_s} and {immersion.immersed_mm}"
        step = "Give when the part goes in and how deep."
        raise OutOfRangeError(Problem("immersion", rule, got, step))


def quench_boundary(
    grid: Grid,
    bath: Bath,
    immersion: Immersion | None = None,
    collapse_normal: float = 0.0,
    bath_end_c: float | None = None,
    holder: Holder | None = "insulated",
) -> Boundary:
    """Return the boundary of a part that is immersed, wholly or in part.

    Walls above the surface are in still air. Under it a wall is behind vapour until the front
    from the nearest edge (working end, shoulder) or the collapse of the film reaches it.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    bath : Bath
        What it is dipped in. [-]
    immersion : Immersion, optional
        When and how deep; left out, all at once. [-]
    collapse_normal : float, optional
        Standard normal deviate of the film's life: 1 is a long-lived film. [-]
    bath_end_c : float, optional
        Where part and bath end together; the bath warms to it over the film and a few seconds
        more for each millimetre. [°C]
    holder : {"insulated", "tongs", "chuck"} or None, optional
        What holds the far end; None where that is in the bath like the working end. [-]

    Returns
    -------
    Boundary
        For the solver. [-]

    Raises
    ------
    OutOfRangeError
        As `bath_temperature_c`; the schedule is not one; the holder is not known.

    Notes
    -----
    A place at s from an edge, with v of steel behind each area of its skin, is wetted after
    film_s × min(1, s / 20 mm, v / 4 mm), with log sd 0.3 to 0.8 by motion: estimated.

    References
    ----------
    .. [1] H. M. Tensi, A. Stich, G. E. Totten, Fundamentals of quenching, Metal Heat Treating,
       1995 (from memory).
    """
    dip = Immersion() if immersion is None else immersion
    _sound(dip)
    cold = boiling_curve(bath)
    warm = cold
    if bath_end_c is not None:
        warm = boiling_curve(replace(bath, temperature_c=bath_end_c))
    life = cold.film_s * math.exp(cold.film_log_sd * collapse_normal)
    along, held = grid.wall_along_mm(), grid.wall_face == "held"
    wetted = ["end", "shoulder"] if holder else ["end", "shoulder", "held"]
    edges = np.unique(along[np.isin(grid.wall_face, wetted)])
    away = (
        np.abs(along[:, None] - edges).min(axis=1)
        if edges.size
        else np.full(along.size, np.inf)
    )
    kept = np.minimum(_behind_mm(grid, np.isin(grid.wall_face, wetted)) / KEEPS_VAPOUR_MM, 1.0)
    dry = life * np.minimum(away / FRONT_REACH_MM, kept)
    places, place_of = np.unique(along, return_inverse=True)
    spans = _padded([_under(dip, float(z)) for z in places])[place_of]
    knots, shares = _walls(spans, dry, _warming_s(grid))
    share = np.concatenate([shares, np.zeros((*knots.shape, 1))], axis=2)
    if holder is not None:
        share[held] = np.eye(6)[5]
    curves = [boiling_curve(STILL_AIR).film, cold.film, cold.wet]
    return mixed([*curves, warm.film, warm.wet, held_end(holder or "insulated")], share, knots)


def _behind_mm(grid: Grid, ends: NDArray[np.bool_]) -> Floats:
    """Return the steel behind each wall, volume per area; of a whole section without ends."""
    mesh, volume = grid.mesh, np.where(grid.active, grid.mesh.volume, 0.0)
    column = mesh.wall_column if ends.any() else np.zeros_like(mesh.wall_column)
    steel = volume.sum(axis=0) if ends.any() else np.array([volume.sum()])
    area = np.bincount(column[~ends], mesh.wall_area[~ends], minlength=steel.size)
    behind = 1e3 * steel / np.where(area > 0.0, area, 1.0)
    return np.asarray(np.where(area > 0.0, behind, np.inf)[column])


def _warming_s(grid: Grid) -> float:
    """Return about how long the part takes to give its heat to the bath."""
    volume = float(np.sum(np.where(grid.active, grid.mesh.volume, 0.0)))
    return 2.0 + 2000.0 * volume / float(grid.mesh.wall_area.sum())  # a second for each half mm


def _padded(spans: list[list[tuple[float, float]]]) -> Floats:
    """Return spans of several places, shape (places, spans, 2); NaN where one has fewer."""
    most = max(len(span) for span in spans)
    padded = np.full((len(spans), most, 2), np.nan)
    for row, span in zip(padded, spans, strict=True):
        row[: len(span)] = np.reshape(span, (-1, 2))
    return padded


def _walls(spans: Floats, dry_s: Floats, pace_s: float) -> tuple[Floats, Floats]:
    """Return knots and shares of air, film, wet, film and wet in the warmed bath, by wall."""
    count, most = spans.shape[:2]
    start, leave = spans[:, :, 0], np.minimum(spans[:, :, 1], LATE_S)
    ramp = np.maximum(0.3 * dry_s, SPLASH_S)
    wetting = SPLASH_S + dry_s
    under = np.full(count, SPLASH_S)
    after = np.stack([np.zeros(count), under, wetting, wetting + ramp], axis=1)
    steps = np.empty((count, most, 6))
    # A place that leaves before it is wetted goes from vapour to air.
    steps[:, :, :4] = np.minimum(start[:, :, None] + after[:, None, :], leave[:, :, None])
    steps[:, :, 4], steps[:, :, 5] = leave, leave + SPLASH_S
    times = np.column_stack([np.zeros(count), steps.reshape(count, -1), np.zeros(count)])
    last = np.nanmax(times, axis=1, keepdims=True)
    times[:, -1] = np.nan
    missing = np.isnan(times)
    times = np.where(missing, np.maximum(last, LATE_S) + 1.0, times)
    air, film, wet = np.eye(3)
    pattern = np.stack([air, *(most * [air, film, film, wet, wet, air]), air])
    states = np.where(missing[:, :, None], air, pattern)
    first = np.nan_to_num(start[:, 0]) if most else np.zeros(count)
    # A knot of its own, as the bath is warm from then on.
    times, states = _with_knot(times, states, first + pace_s)
    done = np.clip((times - first[:, None]) / pace_s, 0.0, 1.0)[:, :, None]
    bathed = states[:, :, 1:]
    shares = [states[:, :, :1], bathed * (1.0 - done), bathed * done]
    return times, np.concatenate(shares, axis=2)


def _with_knot(times: Floats, states: Floats, extra_s: Floats) -> tuple[Floats, Floats]:
    """Return times and states with one more time in each row, the state straight between."""
    place = (times < extra_s[:, None]).sum(axis=1)
    rows = np.arange(len(times))
    low, high = times[rows, place - 1], times[rows, place]
    part = ((extra_s - low) / (high - low))[:, None]
    between = states[rows, place - 1] * (1.0 - part) + states[rows, place] * part
    column = np.arange(times.shape[1] + 1)
    source = np.minimum(column - (column > place[:, None]), times.shape[1] - 1)
    times = np.take_along_axis(times, source, axis=1)
    states = np.take_along_axis(states, source[:, :, None], axis=1)
    times[rows, place], states[rows, place] = extra_s, between
    return times, states


def quench_history(
    grid: Grid,
    steel: SteelProperty,
    start: float | Floats,
    boundary: tuple[Bath, Boundary],
    plan: Plan,
) -> History:
    """Return the history of a part in its quench, refusing a bath hotter than the part.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    steel : SteelProperty
        Cooling properties. [-]
    start : float or ndarray
        Temperature at the start, one or of each cell, °C. [-]
    boundary : tuple of Bath and Boundary
        The bath, and what `quench_boundary` made of it. [-]
    plan : Plan
        How long, and what to write down. [-]

    Returns
    -------
    History
        Temperatures. [-]

    Raises
    ------
    OutOfRangeError
        The bath is hotter than every place in the part, or as `conduct`.

    References
    ----------
    .. [1] As `quench_boundary`.
    """
    bath, exchange = boundary
    hottest, at = float(np.max(np.asarray(start))), bath_temperature_c(bath)
    if hottest <= at:
        rule, step = f"below the part's {hottest:g} °C", "Cool the bath or heat the part."
        raise OutOfRangeError(Problem("bath_temperature_c", rule, f"{at:g} °C", step))
    return conduct(grid, steel, exchange, start, plan)
