"""A zone: the stretch of the part with one duty."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from selector.requirement.quantity import (
    NOT_BOOL,
    Asked,
    HardnessHv,
    Label,
    LengthMm,
    refuse,
)

Wear = Literal["none", "sliding", "abrasive", "rolling-contact", "edge-impact"]
Severity = Literal["light", "medium", "heavy"]


class Window(Asked):
    """A hardness window, either end open; held as Vickers.

    `must` turns the window into a gate at its very edges; without it the edges are judged with
    the slack of an ordinary drawing.
    """

    min: HardnessHv | None = None
    max: HardnessHv | None = None
    must: bool = False

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.min is None and self.max is None:
            raise refuse("a window with min, max or both", "Leave it out to have it derived.")
        if self.min is not None and self.max is not None and self.min > self.max:
            raise refuse(
                f"a window whose min does not exceed its max (min {self.min:.0f} HV, "
                f"max {self.max:.0f} HV)",
                "Swap the two, or check their scales.",
            )
        return self


class Mate(Asked):
    """What the zone runs against, and which of the two should wear."""

    material: Label
    hardness: HardnessHv | None = None
    should_wear: Literal["mate", "part", "either"] = "either"


class Zone(Asked):
    """One or more sections with one duty; sections are counted from 1 at the working end."""

    section: Annotated[tuple[Annotated[int, Field(ge=1), NOT_BOOL], ...], Field(min_length=1)]
    wear: Wear
    severity: Severity = "light"
    name: Label | None = None
    hardness: Window | None = None
    depth: LengthMm | None = None
    mate: Mate | None = None
    life_ratio: Annotated[float, Field(gt=0, le=100), NOT_BOOL] | None = None
