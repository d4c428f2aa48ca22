"""The records of a flame hardening: how it is done, what comes out, which demands it meets."""

import math
from dataclasses import dataclass
from typing import Literal

from selector.hazards.cracking import CrackRisk
from selector.heat.boiling import Bath
from selector.heat.operator import Heated
from selector.heat.torch import Torch
from selector.job.treatment import NO_TEMPER, Temper
from selector.torch.hardness_map import FlameMap
from selector.torch.part import Stretch
from selector.torch.reading import Ring

CheckName = Literal[
    "reach", "hard", "not_too_hard", "depth", "ring", "corner", "movement", "cracking", "even",
    "held", "drawn", "bath",
]  # fmt: skip

# Steel coarsens within seconds above the first, and this far above the hardening range of the
# steel; burning comes later. Common practice, no source. [°C]
OVERHEATED_C, OVER_RANGE_C = 1050.0, 150.0
# Two errors are safe; more of a margin buys nothing. [-]
SAFE = 2.0


@dataclass(frozen=True, slots=True)
class Setup:
    """How it is done, and how far this heat strays from what was meant."""

    hold_s: float = 20.0
    past_mm: float = 10.0
    turns: bool | None = None
    flame: Torch | None = None
    temper: Temper | None = None
    misread_c: float = 0.0
    strength: float = 1.0
    collapse: float = 0.0
    bath: Bath | None = None


@dataclass(frozen=True, slots=True)
class Check:
    """One demand on the result: met or not, in words, and by how many usual errors."""

    name: CheckName
    met: bool
    text: str
    margin: float = math.inf


@dataclass(frozen=True, slots=True, eq=False)
class Outcome:
    """What comes out of one way of doing it."""

    setup: Setup
    part: Stretch
    target_c: float
    heated: Heated
    checks: tuple[Check, ...]
    overheated_c: float = OVERHEATED_C
    corner_c: float = float("nan")
    temper: Temper = NO_TEMPER
    hardness: FlameMap | None = None
    surface_hrc: float = float("nan")
    fresh_hrc: float = float("nan")
    core_hrc: float = float("nan")
    depth_mm: float = 0.0
    hard_mm: tuple[float, float] = (0.0, 0.0)
    ring: Ring | None = None
    bow_mm: tuple[float, float] = (0.0, 0.0)
    corner_hrc: float = float("nan")
    wall_mm: float = float("nan")
    crack: CrackRisk | None = None
    removed_mm: float = 0.0
    skin_mm: float = 0.0
    # Where on an end-quench bar it cools as at the middle of the zone: surface, core.
    jominy_mm: tuple[float, float] = (float("nan"), float("nan"))

    @property
    def failed(self) -> tuple[Check, ...]:
        """The demands that are not met."""
        return tuple(check for check in self.checks if not check.met)

    @property
    def margin(self) -> float:
        """By how many usual errors the narrowest demand is met, at most `SAFE`. [-]."""
        return min([SAFE, *(check.margin for check in self.checks)])

    @property
    def sentence(self) -> str:
        """What comes out, in a sentence."""
        deep = "hard through" if self.through else f"hard to {self.depth_mm:.1f} mm"
        face = f" under the {self.removed_mm:g} mm that is ground off" * (self.removed_mm > 0.0)
        return (
            f"{self.surface_hrc:.0f} HRC{face}, {deep}, after "
            f"{self.heated.heat_s:.0f} s of heat and {self.setup.hold_s:.0f} s at it"
        )

    @property
    def through(self) -> bool:
        """Whether the middle of the zone is hard from the surface to the centre or the bore."""
        return self.depth_mm >= self.wall_mm
