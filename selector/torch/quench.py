"""Quenches branched from the library of heatings: how every place cools in one bath.

Each starts from the field that a heating left, hot end and cold shank; the part goes into the
bath as it is meant to be at every stop and at three holds, and at the middle one into a keener
and a duller bath, earlier and later.
"""

from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.hardening.bath_response import (
    BINS_C,
    DELAY_LOG_SD,
    POSITIONS,
    Start,
    centre_s,
    chart_factor,
)
from selector.hardening.bath_response import (
    keener as keener_boundary,
)
from selector.heat.boiling import Bath, Quench
from selector.heat.conduction import History, Plan, Stop
from selector.heat.end_quench import HIGH_C, LOW_C, time_between
from selector.heat.immersion import STILL_AIR, quench_history
from selector.heat.steel_property import cooling_steel
from selector.torch.course import HOLDS_S, MELTS_C, MIDDLE_STOP
from selector.torch.heating import Heatings
from selector.torch.part import outlines
from selector.torch.section import place_in_radius, section_factors, start_bin_c

Floats = NDArray[np.float64]

# Stops and holds after which the part is quenched. [-], [s]
QUENCHED_AT = (0, 2, 4)
QUENCHED_AFTER_S = (5.0, 20.0, 80.0)
MIDDLE_HOLD = 1
# Baths and delays this many sd off the one that is meant. [-]
OFF_SD = 1.5
FOLLOWED_S = 1800.0
# The slowest place is followed past this, so that its time from 700 to 500 °C is known. [°C]
PASSED_C = 480.0
# A place that peaked below 700 °C is carried on from this far under its peak. [K]
UNDER_PEAK_K = 2.0
# What stays cooler than this never hardens, whatever its pace. [°C]
COLD_C = 560.0


@dataclass(frozen=True, eq=False)
class Cooled:
    """How every place cools in one bath; axes are stops, holds `QUENCHED_AFTER_S` and places.

    `log_time` is the logarithm of the time from 700 to 500 °C, and `gain_k` what a place still
    gains on its peak after the flame. `bath` and `delay` are what one and the square of an sd
    add to the log time, `log_chart` what published bar charts put right on the distance, by
    `BINS_C`, and `corner_share` the time at a corner of the section over that at its side.
    """

    stops_c: tuple[float, ...]
    log_time: Floats
    gain_k: Floats
    bath: Floats
    delay: Floats
    log_chart: Floats
    corner_share: Floats

    def at(self, weight: Floats) -> "Cooled":
        """Return the same at places that lie between cells; weight is (places, cells)."""
        return replace(
            self,
            log_time=self.log_time @ weight.T,
            gain_k=self.gain_k @ weight.T,
            bath=self.bath @ weight.T,
            delay=self.delay @ weight.T,
            log_chart=self.log_chart @ weight.T,
            corner_share=self.corner_share @ weight.T,
        )


def cooled(heatings: Heatings, quench: Quench) -> Cooled:
    """Return how every cell of a heated part cools in a bath."""
    if quench.bath is None:
        msg = "a charted medium has no boiling curve to simulate"
        raise ValueError(msg)
    bath = quench.bath
    task = heatings.torching
    holds = [HOLDS_S.index(hold) for hold in QUENCHED_AFTER_S]
    runs = [
        [_run(heatings, bath, quench, (s, h), (0.0, 0.0)) for h in holds] for s in QUENCHED_AT
    ]
    log_time = np.stack([[time for time, _ in row] for row in runs])
    middle = (MIDDLE_STOP, holds[MIDDLE_HOLD])
    meant = log_time[QUENCHED_AT.index(MIDDLE_STOP), MIDDLE_HOLD]
    keener, later = (
        [_run(heatings, bath, quench, middle, (b * sd, d * sd))[0] for sd in (-OFF_SD, OFF_SD)]
        for b, d in ((1.0, 0.0), (0.0, 1.0))
    )
    section = (bath, start_bin_c(task.stops_c[MIDDLE_STOP]), task.steel_class)
    slower, corner = section_factors(
        heatings.grid, task.part.edges_mm, outlines(task.part), section
    )
    return Cooled(
        tuple(task.stops_c[s] for s in QUENCHED_AT),
        log_time + np.log(slower),
        np.stack([[gain for _, gain in row] for row in runs]),
        _response(meant, keener),
        _response(meant, later),
        _log_chart(heatings, bath),
        corner,
    )


def end_dipped(cooled: Cooled, heatings: Heatings, under_mm: float) -> Cooled:
    """Return the same of a part whose end alone is dipped: behind it still air cools.

    Parameters
    ----------
    cooled : Cooled
        All of the part in the bath, at all cells.
    heatings : Heatings
        What it was quenched from.
    under_mm : float
        How far the end goes under. [mm]

    Returns
    -------
    Cooled
        Behind the water line by its section's time in air, whatever bath and delay.
    """
    task, grid = heatings.torching, heatings.grid
    along = grid.along_mm[grid.cells() % grid.along_mm.size]
    ends = task.part.edges_mm[1:]
    enters = Start(start_bin_c(task.stops_c[MIDDLE_STOP]), task.steel_class)
    in_air = np.log(
        [centre_s(round(s.outer_mm, 2), STILL_AIR, enters) for s in task.part.sections]
    )
    here = np.minimum(np.searchsorted(ends, along), len(ends) - 1)
    behind = along > under_mm
    return replace(
        cooled,
        log_time=np.where(behind, np.maximum(in_air[here], cooled.log_time), cooled.log_time),
        bath=np.where(behind, 0.0, cooled.bath),
        delay=np.where(behind, 0.0, cooled.delay),
        log_chart=np.where(behind, 0.0, cooled.log_chart),
    )


def _run(
    heatings: Heatings,
    bath: Bath,
    quench: Quench,
    start: tuple[int, int],
    off: tuple[float, float],
) -> tuple[Floats, Floats]:
    """Return the log time of each cell in one quench, and what it gains on its peak."""
    (stop, hold), (sds, late) = start, off
    grid, task = heatings.grid, heatings.torching
    field_c = np.minimum(heatings.field_c[stop, hold], MELTS_C)
    delay_s = quench.delay_s * float(np.exp(DELAY_LOG_SD * late))
    boundary = keener_boundary(
        grid, bath, delay_s, (sds, quench.log_sd), whole=task.part.is_whole
    )
    cells = grid.cells()
    watch = tuple(int(cell) for cell in cells)
    # The slowest place may be another than the middle: behind vapour, or in a thicker section.
    plan = Plan(FOLLOWED_S, watch=watch, stop=Stop(None, PASSED_C, "falling"))
    steel = cooling_steel(task.steel_class)
    start_c = grid.field(field_c, 20.0)
    if field_c.max() <= COLD_C:
        nothing = np.zeros(cells.size)
        return nothing + np.log(FOLLOWED_S), nothing
    history = quench_history(grid, steel, start_c, (bath, boundary), plan)
    before = heatings.over_c[1, stop, hold] + task.stops_c[stop]
    gain = np.maximum(history.temperature_c.max(axis=1) - before, 0.0)
    return _log_time(history), gain


def _log_time(history: History) -> Floats:
    """Return the log time from 700 to 500 °C of each place."""
    # A place that never saw 700 °C counts the 200 K at its own pace, from its peak to 500 °C.
    rows = history.temperature_c
    peak = rows.max(axis=1)
    high = np.minimum(peak - UNDER_PEAK_K, HIGH_C)
    scale = (HIGH_C - LOW_C) / np.maximum(high - LOW_C, COLD_C - UNDER_PEAK_K - LOW_C)
    # Stretched so that each place's own upper temperature lies at 700 °C.
    spent = time_between(history.time_s, LOW_C + (rows - LOW_C) * scale[:, None]) * scale
    known = np.isfinite(spent) & (peak > COLD_C)
    return np.log(np.where(known, np.maximum(spent, 1e-3), FOLLOWED_S))


def _response(meant: Floats, off: list[Floats]) -> Floats:
    """Return what one and the square of an sd add to the log time; shape (2, cells)."""
    below, above = off[0] - meant, off[1] - meant
    return np.stack([0.5 * (above - below) / OFF_SD, 0.5 * (above + below) / OFF_SD**2])


def _log_chart(heatings: Heatings, bath: Bath) -> Floats:
    """Return the log of the charts' factor on the distance; shape (starts, cells)."""
    grid, task = heatings.grid, heatings.torching
    place, along = place_in_radius(grid), grid.along_mm[grid.cells() % grid.along_mm.size]
    logs = np.zeros((len(BINS_C), place.size))
    spans = pairwise(task.part.edges_mm)
    for section, (low, high) in zip(task.part.sections, spans, strict=True):
        here = (along >= low) & (along < high)
        for n, heat_c in enumerate(BINS_C):
            start = Start(heat_c, task.steel_class)
            factor = chart_factor(round(section.outer_mm, 2), bath, start)
            logs[n, here] = np.interp(place[here], POSITIONS[::-1], np.log(factor[::-1]))
    return logs
