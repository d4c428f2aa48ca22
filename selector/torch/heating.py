"""The library of heatings of a part at a torch: each stop, hold and strength of flame once.

One flat-out heating passes all stops, and from each the part is held; what the histories
amount to is written down cell by cell. So a part is heated a few times, whatever the steels,
baths and questions that follow.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from selector.hardening.heating_course import heating_rate, held_s, tempered_s
from selector.heat.grid import Grid
from selector.heat.operator import FASTEST_C_PER_S, side_difference_k
from selector.heat.torch import AMBIENT_C
from selector.torch.course import (
    FLAMES_LOG,
    HOLDS_S,
    KEPT,
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


@dataclass(frozen=True, eq=False)
class Heatings:
    """All heatings of a part for one reach past its zone, read place by place.

    Axes are flames, stops, holds and places; places are the steel cells of the grid, or what
    `at` makes of them. `over_c` is the peak above the stop, `held_s` the hold at the peak that
    dissolves as much, `log_tempered_s` the logarithm of the tempering as time at 600 °C, and
    `field_c` how hot the places are at the middle flame. `to_stop_s`, `uneven_k` and
    `hottest_c` go by flame and stop.
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
    over_c: Floats
    log_rate: Floats
    held_s: Floats
    log_tempered_s: Floats
    field_c: Floats

    @cached_property
    def table(self) -> Floats:
        """Peak, rate, hold and tempering side by side; (flames × stops × holds, 4 × places)."""
        rate = np.broadcast_to(self.log_rate[:, :, None, :], self.over_c.shape)
        parts = (self.over_c, rate, self.held_s, self.log_tempered_s)
        joined = np.concatenate(parts, axis=-1)
        return joined.reshape(-1, joined.shape[-1])

    def at(self, weight: Floats) -> "Heatings":
        """Return the same at places that lie between cells; weight is (places, cells)."""
        return replace(
            self,
            over_c=self.over_c @ weight.T,
            log_rate=self.log_rate @ weight.T,
            held_s=self.held_s @ weight.T,
            log_tempered_s=self.log_tempered_s @ weight.T,
            field_c=self.field_c @ weight.T,
        )

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


@lru_cache(maxsize=KEPT)
def heatings(torching: Torching, past_mm: float) -> Heatings:
    """Return all heatings of a part for one reach past its zone."""
    grid = part_grid(torching.part)
    log_flame = middle_log_flame(torching, past_mm) + np.array(FLAMES_LOG)
    stops = range(len(torching.stops_c))
    shares = [float(np.exp(level)) for level in log_flame]
    courses = [
        middle_course(torching, past_mm, stop)
        if flame == MIDDLE_FLAME
        else course(torching, past_mm, share, stop)
        for flame, share in enumerate(shares)
        for stop in stops
    ]
    runs = [[rise(torching, past_mm, share, stop) for stop in stops] for share in shares]
    shape = (len(FLAMES_LOG), len(torching.stops_c))
    over, rate, hold, tempered, field = _read(courses, shape, np.array(torching.stops_c))
    middle = runs[MIDDLE_FLAME][MIDDLE_STOP].history
    power_w = torching.flame.power_w * float(np.exp(log_flame[MIDDLE_FLAME]))
    return Heatings(
        torching,
        past_mm,
        grid,
        log_flame,
        np.array([[r.reached for r in rises] for rises in runs]),
        np.array([[float(r.history.time_s[-1]) for r in rises] for rises in runs]),
        np.array([[_uneven_k(grid, torching, r) for r in rises] for rises in runs]),
        np.array([c.hottest_c for c in courses]).reshape(shape),
        middle.stored_j / (power_w * float(middle.time_s[-1])),
        over,
        rate,
        hold,
        tempered,
        field[MIDDLE_FLAME],
    )


def _uneven_k(grid: Grid, torching: Torching, run: Reached) -> float:
    """Return the difference from side to side at a stop. [K]."""
    return side_difference_k(grid, run.history, torching.flame, torching.turns)


def _read(courses: list[Course], shape: tuple[int, int], stops_c: Floats) -> Iterator[Floats]:
    """Yield peak over the stop, log rate, hold, log tempering and field, by flame and stop."""
    time_s = np.stack([one.time_s for one in courses])[:, None, :]
    places = np.stack([one.temperature_c for one in courses])
    at = RISING + np.arange(len(HOLDS_S))
    peak = np.maximum.accumulate(places, axis=-1)[..., at]
    rate = heating_rate(time_s, places)
    hold = held_s(time_s, places, rate)[..., at]
    tempered = tempered_s(time_s, np.maximum(places, COLD_C))[..., at]
    over = peak - np.tile(stops_c, shape[0])[:, None, None]
    yield _axes(over, shape)
    yield np.log(rate).reshape(*shape, -1)
    yield _axes(hold, shape)
    yield _axes(np.log(np.maximum(tempered, 1e-9)), shape)
    yield _axes(places[..., at], shape)


def _axes(part: Floats, shape: tuple[int, int]) -> Floats:
    """Return (courses, places, holds) as (flames, stops, holds, places)."""
    split = part.reshape(*shape, *part.shape[1:])
    return np.ascontiguousarray(np.swapaxes(split, -1, -2))
