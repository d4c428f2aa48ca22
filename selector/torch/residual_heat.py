"""Dip the end, take it out, let the heat behind it run back, and stop it at the colour.

One heat hardens and draws. The end must be cold before it is taken out, and enough heat must be
left behind it; the dip is the shortest that does the one, and the colour says the other.
"""

import math
from dataclasses import dataclass, replace

from selector.heat.drawing import Drawn, run_back
from selector.heat.grid import Grid
from selector.heat.immersion import Immersion
from selector.heat.operator import Heated
from selector.torch.flame_history import DEEP_MM, UNDER_S, Cooled, FlameJob, quench

RESIDUAL_HEAT = "residual-heat"
# How long the end stays under at most, tried in turn. Common practice. [s]
DIPS_S = (4.0, 8.0, 16.0, 32.0)
# The end counts as cold enough to have hardened below this, some way under Ms. [°C]
COLD_C = 150.0
# The colour is watched this far from the working end, on the polished flat. [mm]
WATCHED_MM = 3.0


@dataclass(frozen=True, slots=True, eq=False)
class RunBack:
    """A dip and what came back: the whole quench, and each place's draw between."""

    dip_s: float
    drawn: Drawn
    cooled: Cooled


def dipped_and_drawn(
    task: FlameJob, heated: Heated, grid: Grid, colour_c: float
) -> RunBack | None:
    """Return the histories of an end that is dipped and drawn by the heat behind it.

    Parameters
    ----------
    task : FlameJob
        Bath, delay, zone.
    heated : Heated
        Its heating.
    grid : Grid
        Its cells.
    colour_c : float
        Heat that is waited for at the working end. [°C]

    Returns
    -------
    RunBack or None
        None where the zone is not at the end, or too little heat comes back after the end is
        cold.
    """
    if task.zone_mm[0] > 0.0:
        return None
    # The water line lies a little past the zone; the heat behind it has not far to run.
    past_mm = 0.5 * min(task.heated_mm[1] - task.zone_mm[1], task.sections[0].outer_mm)
    under_mm = task.zone_mm[1] + past_mm
    watched_mm = min(WATCHED_MM, task.middle_mm)
    for dip_s in DIPS_S:
        drawn = run_back(
            grid, heated.end_c, task.bath, (under_mm, dip_s), (colour_c, watched_mm)
        )
        at_end = grid.along_mm <= task.middle_mm
        if drawn.temperature_c[at_end, 0].max() > min(COLD_C, colour_c):
            continue
        if not math.isfinite(drawn.arrived_s):
            return None  # a longer dip leaves less still
        out_s = task.delay_s + dip_s
        back_s = out_s + UNDER_S + drawn.arrived_s
        times = (task.delay_s, task.delay_s + UNDER_S, out_s, out_s + UNDER_S)
        dip = Immersion(
            (*times, back_s, back_s + UNDER_S), (0.0, under_mm, under_mm, 0.0, 0.0, DEEP_MM)
        )
        return RunBack(dip_s, drawn, quench(replace(task, dip=dip), heated, grid))
    return None
