"""A zone: the stretch of the part with one duty."""

from collections.abc import Mapping
from typing import Annotated, Literal, Self

from pydantic import Field, ModelWrapValidatorHandler, model_validator

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

    @model_validator(mode="wrap")
    @classmethod
    def _in_order(cls, data: object, read: ModelWrapValidatorHandler[Self]) -> Self:
        if isinstance(data, str):
            raise refuse(
                "a window as a table", 'Write it as { min = "50 HRC", max = "56 HRC" }.'
            )
        window = read(data)
        if window.min is None and window.max is None:
            raise refuse("a window with min, max or both", "Leave it out to have it derived.")
        if window.min is not None and window.max is not None and window.min > window.max:
            # In the scales that were written, not the Vickers that they are held in.
            wrote = data if isinstance(data, Mapping) else vars(window)
            raise refuse(
                "a window whose min does not exceed its max "
                f"(min {wrote['min']}, max {wrote['max']})",
                "Swap the two, or check their scales.",
            )
        return window


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
