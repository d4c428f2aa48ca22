"""How hot the hottest place gets by the time the zone is at heat: edges, corners, webs."""

import numpy as np

from selector.heat.operator import seen_cell
from selector.heat.torch import wrap_fraction
from selector.torch.heating import Heatings
from selector.torch.history import between, field_at
from selector.torch.section import hole_lead_k

# What a corner is ahead of the flats by, over what a round's rim is ahead of its core, under an
# even flux: by the parabola for a square, by a computed cross-section for a hexagon. [-]
CORNER = {"round": 0.0, "tube": 0.0, "square": 1.0, "flat": 1.0, "hexagon": 0.4}


def hottest_edge_c(
    heatings: Heatings, stop_c: float, log_flame: float, holes: tuple[tuple[float, float], ...]
) -> float:
    """Return how hot the hottest place of a part gets by the time it is at its heat. [°C]."""
    part, grid = heatings.torching.part, heatings.grid
    rows = grid.cells().tolist()
    field = field_at(heatings, stop_c, 0.0)
    middle_mm = 0.5 * sum(part.zone_mm)
    rim = float(field[rows.index(seen_cell(grid, middle_mm))])
    core = float(field[rows.index(grid.cell(0.0, middle_mm))]) if grid.active[0].any() else rim
    ahead = max(CORNER[shape.shape] for shape in part.hot_shapes) * max(rim - core, 0.0)
    hottest = max(between(heatings, heatings.hottest_c, stop_c, log_flame), rim + ahead)
    low_mm, high_mm = heatings.torching.heated_mm(heatings.past_mm)
    for at_mm, hole_mm in holes:
        if low_mm > 0.0 or at_mm > high_mm:
            continue
        web = float(field[rows.index(seen_cell(grid, 0.5 * max(at_mm - 0.5 * hole_mm, 0.0)))])
        hottest = max(hottest, web + _lead_k(heatings, (at_mm, hole_mm), stop_c, log_flame))
    return hottest


def _lead_k(
    heatings: Heatings, hole: tuple[float, float], stop_c: float, log_flame: float
) -> float:
    """Return how far the web between a hole and the end runs ahead. [K]."""
    task = heatings.torching
    thick_mm = task.part.sections[0].outer_mm
    share = float(wrap_fraction(task.flame.width_mm, thick_mm)) * float(np.exp(log_flame))
    flame = (share * task.flame.exchange, task.flame.flame_c)
    return hole_lead_k(thick_mm, *hole, flame, stop_c)
