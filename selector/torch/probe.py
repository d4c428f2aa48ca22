"""Where a part at a torch is looked at: zone from rim to core, ends, shanks and ring."""

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from selector.hardening.bath_response import POSITIONS
from selector.heat.grid import Grid, bar_grid
from selector.torch.course import FINENESS
from selector.torch.part import Stretch

Floats = NDArray[np.float64]

# Where a shank is looked at, and the end of a zone, as share of the wall.
OUTER, RIM = 0.85, POSITIONS[0]
# The ring lies within so many columns of cells beside the zone, every second looked at.
RING_COLUMNS, RING_STEP = 12, 2


@dataclass(frozen=True, eq=False)
class Probes:
    """Where a part is looked at; sections count along the stretch, from 0.

    `weight` gives the value at each probe from those of the steel cells. The probes are the
    `hard` sections at `places` of their wall, the ends of the zone, the `soft` sections, then
    those along the rim behind the zone where the ring is looked for.
    """

    hard: tuple[int, ...]
    soft: tuple[int, ...]
    places: tuple[float, ...]
    ends: int
    weight: Floats

    @property
    def in_zone(self) -> int:
        """How many probes lie in the zone, its ends included."""
        return len(self.hard) * len(self.places) + self.ends

    @property
    def before_ring(self) -> int:
        """How many probes there are without the ring's."""
        return self.in_zone + len(self.soft)

    @property
    def rims(self) -> list[int]:
        """The rim of each hard section, and the ends."""
        count = len(self.places)
        inside = count * len(self.hard)
        return [*range(0, inside, count), *range(inside, self.in_zone)]

    @property
    def place(self) -> Floats:
        """Share of the wall of each probe of the zone. [-]."""
        return np.array([*self.places * len(self.hard), *[RIM] * self.ends])


@lru_cache(maxsize=32)
def probes(part: Stretch, places: tuple[float, ...]) -> Probes:
    """Return where a part is looked at."""
    grid = bar_grid(part.sections, FINENESS)
    start, end = part.zone_mm
    spans = list(enumerate(pairwise(part.edges_mm)))
    hard = tuple(i for i, (low, high) in spans if low < end and high > start)
    soft = tuple(i for i, _ in spans if i not in hard)
    middles = [0.5 * (low + high) for _, (low, high) in spans]
    rows = [_row(grid, middles[i], place) for i in hard for place in places]
    low, high = part.judged_mm
    inside = np.flatnonzero((grid.along_mm > low) & (grid.along_mm < high))
    ends = [_row(grid, grid.along_mm[column], RIM) for column in (inside[0], inside[-1])]
    shanks = [_row(grid, middles[i], OUTER) for i in soft]
    behind = grid.along_mm[grid.along_mm > end]
    before = grid.along_mm[grid.along_mm < start]
    beside = behind if behind.size >= before.size else before[::-1]
    ring = [_row(grid, z, RIM) for z in beside[: RING_COLUMNS * RING_STEP : RING_STEP]]
    return Probes(hard, soft, places, len(ends), np.array([*rows, *ends, *shanks, *ring]))


def _row(grid: Grid, along_mm: float, place: float) -> Floats:
    """Return the weight of each steel cell at a share of the wall, at a distance along."""
    column = int(np.argmin(np.abs(grid.along_mm - along_mm)))
    rows = np.flatnonzero(grid.active[:, column])
    radii = grid.across_mm[rows]
    weight = np.zeros(grid.active.shape)
    if rows.size == 1:
        weight[rows[0], column] = 1.0
    else:
        half = 0.5 * (radii[-1] - radii[-2])
        inner = radii[0] - half if rows[0] > 0 else 0.0
        at = np.clip(inner + place * (radii[-1] + half - inner), radii[0], radii[-1])
        k = int(np.clip(np.searchsorted(radii, at) - 1, 0, rows.size - 2))
        part = (at - radii[k]) / (radii[k + 1] - radii[k])
        weight[rows[k], column], weight[rows[k + 1], column] = 1.0 - part, part
    return weight.ravel()[grid.cells()]
