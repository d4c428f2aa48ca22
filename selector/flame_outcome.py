"""The records of a flame hardening: how it is done, what comes out, which demands it meets."""

from dataclasses import dataclass
from typing import Literal

from selector.flame_map import FlameMap
from selector.flame_reading import Ring
from selector.heat.operator import Heated
from selector.heat.torch import Torch
from selector.torch_job import Stretch
from selector.treatment import NO_TEMPER, Temper

CheckName = Literal[
    "reach", "hard", "not_too_hard", "depth", "ring", "corner", "movement", "cracking", "even",
    "held", "drawn",
]  # fmt: skip

# Steel coarsens within seconds above the first, and this far above the hardening range of the
# steel; burning comes later. Common practice, no source. [°C]
OVERHEATED_C, OVER_RANGE_C = 1050.0, 150.0


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


@dataclass(frozen=True, slots=True)
class Check:
    """One demand on the result: met or not, in words."""

    name: CheckName
    met: bool
    text: str


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

    @property
    def failed(self) -> tuple[Check, ...]:
        """The demands that are not met."""
        return tuple(check for check in self.checks if not check.met)

    @property
    def sentence(self) -> str:
        """What comes out, in a sentence."""
        return (
            f"{self.surface_hrc:.0f} HRC, hard to {self.depth_mm:.1f} mm, after "
            f"{self.heated.heat_s:.0f} s of heat and {self.setup.hold_s:.0f} s at it"
        )
