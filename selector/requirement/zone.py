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
# A spring may rub so, and what does asks for no hardness.
LEAST_WEAR: tuple[Wear, Severity] = ("sliding", "light")


class Window(Asked):
    """A hardness window, either end open; held as Vickers.

    `must` turns the window into a gate at its very edges; without it the edges are judged with
    the slack of an ordinary drawing.
    """

    min: HardnessHv | None = Field(
        default=None,
        title="From",
        description="The least hardness that is wanted: 50 HRC, 480 HB, 510 HV.",
    )
    max: HardnessHv | None = Field(
        default=None, title="To", description="The most hardness that is wanted: 56 HRC."
    )
    must: bool = Field(
        default=False,
        title="To its very edges",
        description="Without the slack of an ordinary drawing.",
    )

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

    material: Label = Field(
        title="Which", description="The part it runs against: bronze bush, ratchet wheel."
    )
    hardness: HardnessHv | None = Field(
        default=None, title="Its hardness", description="If you know it: 56 HRC, 180 HB."
    )
    should_wear: Literal["mate", "part", "either"] = Field(
        default="either", title="Which should wear"
    )


class Zone(Asked):
    """One or more sections with one duty; sections are counted from 1 at the working end."""

    section: Annotated[
        tuple[Annotated[int, Field(ge=1), NOT_BOOL], ...], Field(min_length=1)
    ] = Field(title="Lies on", description="Numbers of its sections, 1 at the working end.")
    wear: Wear = Field(title="What does it suffer?")
    severity: Severity = Field(
        default="light",
        title="How badly",
        description="Light: seldom, clean, oiled. Heavy: all day, dry, dirty or hard pressed.",
    )
    name: Label | None = Field(default=None, title="Called")
    hardness: Window | None = Field(
        default=None,
        title="How hard must it be?",
        description="Left out, it is worked out from the duty.",
    )
    depth: LengthMm | None = Field(
        default=None,
        title="At least this deep",
        description="Hard to this depth: 1.5 mm. Left out, it is worked out.",
    )
    mate: Mate | None = Field(
        default=None,
        title="Does it run against another part?",
        description="Left out, it runs against none.",
    )
    life_ratio: Annotated[float, Field(gt=0, le=100), NOT_BOOL] | None = Field(
        default=None, title="Life wanted", description="Times as long as the old part lasted."
    )
