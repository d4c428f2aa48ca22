"""The library of heatings of a part at a torch: each stop, hold and strength of flame once.

One flat-out heating passes all stops, and from each the part is held; what the histories
amount to is written down cell by cell. So a part is heated a few times, whatever the steels,
baths and questions that follow.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.hardening.heating_course import heating_rate, held_s, tempered_s
from selector.heat.grid import Grid
from selector.heat.operator import FASTEST_C_PER_S, side_difference_k
from selector.heat.torch import AMBIENT_C
from selector.kept import kept_on_disk, kept_within
from selector.torch.course import (
    FLAMES_LOG,
    HOLDS_S,
    MIDDLE_FLAME,
    MIDDLE_STOP,
    RISING,
    Course,
    Reached,
    course,
    middle_course,
    middle_log_flame,
    part_grid,
    rise,
)
from selector.torch.part import Torching

Floats = NDArray[np.float64]

# Below this no tempering counts. [°C]
COLD_C = 250.0
# The time to a heat falls at least so fast with the flame, in logarithms. [-]
FLATTEST = -0.1
# An answer makes up to six libraries of some five megabytes, and the part with a changed answer
# asks for most of them again. [MB]
HEATINGS_MB = 96.0


@dataclass(frozen=True, eq=False)
class Heatings:
    """All heatings of a part for one reach past its zone, read place by place.

    Axes are flames, stops, holds and places; places are the steel cells of the grid, or what
    `at` makes of them. `figures` has four a place, before the last axis: the peak above the
    stop, the log rate, the hold at the peak that dissolves as much, and the logarithm of the
    tempering as time at 600 °C. `field_c` is how hot the places are at the middle flame;
    `to_stop_s`, `uneven_k` and `hottest_c` go by flame and stop.
    """

    torching: Torching
    past_mm: float
    grid: Grid
    log_flame: Floats
    reached: NDArray[np.bool_]
    to_stop_s: Floats
    uneven_k: Floats
    hottest_c: Floats
    efficiency: float
    figures: Floats
    field_c: Floats

    @property
    def table(self) -> Floats:
        """Peak, rate, hold and tempering side by side; (flames × stops × holds, 4 × places)."""
        return self.figures.reshape(-1, 4 * self.figures.shape[-1])

    @property
    def over_c(self) -> Floats:
        """The peak above the stop. [K]."""
        return self.figures[..., 0, :]

    @property
    def log_tempered_s(self) -> Floats:
        """The logarithm of the tempering as time at 600 °C, in seconds."""
        return self.figures[..., 3, :]

    def at(self, weight: Floats) -> "Heatings":
        """Return the same at places that lie between cells; weight is (places, cells)."""
        # One product of two matrices: of stacked ones each small one is a call of its own.
        rows = self.figures.reshape(-1, self.figures.shape[-1]) @ weight.T
        figures = rows.reshape(*self.figures.shape[:-1], -1)
        return replace(self, figures=figures, field_c=self.field_c @ weight.T)

    def in_time_log(self, stop_c: Floats) -> Floats:
        """Return the log share of the flame that leaves time to stop, by heat. [-]."""
        # Nobody stops in time above some 30 °C/s: the flame is turned down until he can.
        stops = np.array(self.torching.stops_c)
        shortest = np.log((stops - AMBIENT_C) / FASTEST_C_PER_S)
        log_time = np.log(self.to_stop_s)
        slope = (log_time[-1] - log_time[0]) / (self.log_flame[-1] - self.log_flame[0])
        # A heat that no flame reaches takes as long as patience lasts.
        slope = np.minimum(slope, FLATTEST)
        share = self.log_flame[MIDDLE_FLAME] + (shortest - log_time[MIDDLE_FLAME]) / slope
        return np.asarray(np.interp(stop_c, stops, share))

    def effective_log(self, log_strength: Floats, stop_c: Floats) -> Floats:
        """Return the log flame on the part: as it is, or turned down to stop in time. [-]."""
        return np.minimum(log_strength, self.in_time_log(stop_c))


@kept_within(HEATINGS_MB)
def heatings(torching: Torching, past_mm: float) -> Heatings:
    """Return all heatings of a part for one reach past its zone."""
    made = _heatings(torching, past_mm)
    # Read back, it has a part and cells of its own, which would be kept beside the first.
    return replace(made, torching=torching, grid=part_grid(torching.part))


@kept_on_disk
def _heatings(torching: Torching, past_mm: float) -> Heatings:
    """Return the same, worked out."""
    grid = part_grid(torching.part)
    log_flame = middle_log_flame(torching, past_mm) + np.array(FLAMES_LOG)
    shares = [float(np.exp(level)) for level in log_flame]
    runs, courses = [], []
    for flame, share in enumerate(shares):
        for stop in range(len(torching.stops_c)):
            # Each way up goes on from the one before it: asked for in turn, none is run twice.
            runs.append(rise(torching, past_mm, share, stop))
            courses.append(
                middle_course(torching, past_mm, stop)
                if flame == MIDDLE_FLAME
                else course(torching, past_mm, share, stop)
            )
    shape = (len(FLAMES_LOG), len(torching.stops_c))
    figures, field_c = _read(courses, shape, np.array(torching.stops_c))
    middle = runs[MIDDLE_FLAME * shape[1] + MIDDLE_STOP].history
    power_w = torching.flame.power_w * float(np.exp(log_flame[MIDDLE_FLAME]))
    return Heatings(
        torching,
        past_mm,
        grid,
        log_flame,
        np.array([run.reached for run in runs]).reshape(shape),
        np.array([float(run.history.time_s[-1]) for run in runs]).reshape(shape),
        np.array([_uneven_k(grid, torching, run) for run in runs]).reshape(shape),
        np.array([c.hottest_c for c in courses]).reshape(shape),
        middle.stored_j / (power_w * float(middle.time_s[-1])),
        figures,
        field_c,
    )


def _uneven_k(grid: Grid, torching: Torching, run: Reached) -> float:
    """Return the difference from side to side at a stop. [K]."""
    return side_difference_k(grid, run.history, torching.flame, torching.turns)


def _read(
    courses: list[Course], shape: tuple[int, int], stops_c: Floats
) -> tuple[Floats, Floats]:
    """Return the figures of courses by flame and stop, and the field of the middle flame."""
    time_s = np.stack([one.time_s for one in courses])[:, None, :]
    places = np.stack([one.temperature_c for one in courses])
    at = RISING + np.arange(len(HOLDS_S))
    peak = np.maximum.accumulate(places, axis=-1)[..., at]
    rate = heating_rate(time_s, places)
    hold = held_s(time_s, places, rate)[..., at]
    tempered = tempered_s(time_s, np.maximum(places, COLD_C))[..., at]
    over = peak - np.tile(stops_c, shape[0])[:, None, None]
    log_rate = np.broadcast_to(np.log(rate).reshape(*over.shape[:2], 1), over.shape)
    log_tempered = np.log(np.maximum(tempered, 1e-9))
    # From (courses, places, holds) to (flames, stops, holds, figures, places).
    joined = np.moveaxis(np.stack([over, log_rate, hold, log_tempered]), (0, 3), (2, 1))
    by_flame = places[..., at].reshape(*shape, places.shape[1], len(HOLDS_S))
    return (
        np.ascontiguousarray(joined).reshape(*shape, *joined.shape[1:]),
        np.ascontiguousarray(np.swapaxes(by_flame[MIDDLE_FLAME], -1, -2)),
    )
