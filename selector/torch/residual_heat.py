"""Dip the end, take it out, let the heat behind it run back, and stop it at the colour.

One heat hardens and tempers. The end must be cold before it is taken out, and enough heat must
be left behind it; the dip is the shortest that does the one, and the colour says the other.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from selector.heat.boiling import Bath
from selector.heat.conduction import Plan
from selector.heat.immersion import Immersion, quench_boundary, quench_history
from selector.heat.operator import seen_cell
from selector.heat.steel_property import cooling_steel
from selector.heat.tempering_heat import run_back
from selector.kept import kept_on_disk
from selector.torch.course import MELTS_C, field_after, part_grid
from selector.torch.part import Torching

RESIDUAL_HEAT = "residual-heat"
# How long the end stays under at most, tried in turn. Common practice. [s]
DIPS_S = (4.0, 6.0, 8.0, 11.0, 16.0, 23.0, 32.0)
# The end counts as cold enough to have hardened below this, some way under Ms. [°C]
COLD_C = 150.0
# Past this the temper colours are over; holds from which a dip is worked out. [°C], [s]
HOTTEST_COLOUR_C, HOLDS = 340.0, (20.0, 80.0)
# The colour is watched this far from the working end, on the polished flat. [mm]
WATCHED_MM = 3.0


@dataclass(frozen=True, slots=True)
class Dip:
    """A dip that leaves the end cold, and how hot the heat behind makes it again, by time."""

    dip_s: float
    under_mm: float
    time_s: tuple[float, ...]
    end_c: tuple[float, ...]

    def colour_after_s(self, colour_c: float) -> float | None:
        """Return when the end comes to a colour once out, None if never."""
        if max(self.end_c) < colour_c:
            return None
        first = next(k for k, end_c in enumerate(self.end_c) if end_c >= colour_c)
        if first == 0:
            return self.time_s[0]
        near = slice(first - 1, first + 1)
        return float(np.interp(colour_c, self.end_c[near], self.time_s[near]))


def water_line_mm(torching: Torching, past_mm: float) -> float:
    """Return how far the end goes under: a little past the zone. [mm]."""
    # The heat behind the line has not far to run.
    part = torching.part
    return part.zone_mm[1] + 0.5 * min(max(past_mm, 1.0), part.sections[0].outer_mm)


def dip_for(
    torching: Torching, past_mm: float, heat: tuple[float, float], bath: Bath
) -> Dip | None:
    """Return the shortest dip that leaves the end cold, None where none does.

    Parameters
    ----------
    torching : Torching
        Part, flame, operator.
    past_mm : float
        How far past the zone the flame goes. [mm]
    heat : tuple of float
        Heat of the zone, °C, and how long it is held, s.
    bath : Bath
        What the end is dipped in.

    Returns
    -------
    Dip or None
        From the nearest stop and hold that are followed.
    """
    # A zone away from the end cannot be dipped alone, and behind a whole part lies no heat.
    part, (stop_c, hold_s) = torching.part, heat
    if part.zone_mm[0] > 0.0 or part.is_whole:
        return None
    stops = torching.stops_c
    stop = min(range(len(stops)), key=lambda n: abs(stops[n] - stop_c))
    hold = min(HOLDS, key=lambda seconds: abs(seconds - hold_s))
    return _dip((torching, past_mm), stop, hold, bath)


@lru_cache(maxsize=128)
@kept_on_disk
def _dip(heated: tuple[Torching, float], stop: int, hold_s: float, bath: Bath) -> Dip | None:
    """Return the dip of a part from one stop and hold of its heatings."""
    torching, reach_mm = heated
    part, grid = torching.part, part_grid(torching.part)
    end_mm, under_mm = part.zone_mm[1], water_line_mm(torching, reach_mm)
    watched_mm = min(WATCHED_MM, 0.5 * end_mm)
    field_c = field_after(torching, reach_mm, stop, hold_s)
    hot = grid.field(np.minimum(field_c, MELTS_C), 20.0)
    end = tuple(seen_cell(grid, float(z)) for z in grid.along_mm[grid.along_mm <= 0.5 * end_mm])
    dipped = quench_boundary(grid, bath, Immersion((0.0,), (under_mm,)))
    steel = cooling_steel(torching.steel_class)
    plan = Plan(DIPS_S[-1], watch=end)
    history = quench_history(grid, steel, hot, (bath, dipped), plan)
    hottest = history.temperature_c.max(axis=0)
    cold = [s for s in DIPS_S if np.interp(s, history.time_s, hottest) <= COLD_C]
    if not cold:
        return None
    back = run_back(grid, hot, bath, (under_mm, cold[0]), (HOTTEST_COLOUR_C, watched_mm))
    row = int(np.argmin(np.abs(grid.along_mm - watched_mm)))
    times, ends = back.time_s.tolist(), back.temperature_c[row].tolist()
    return Dip(cold[0], under_mm, tuple(times), tuple(ends))
