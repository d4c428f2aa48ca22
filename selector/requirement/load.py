"""Loads, limits and what a failure costs."""

from typing import Annotated, Literal

from pydantic import Field

from selector.requirement.quantity import (
    NOT_BOOL,
    Asked,
    BendingNm,
    Days,
    EnergyJ,
    ForceN,
    Label,
    Money,
    RunoutMm,
    TemperatureC,
    TorqueNm,
)

# Sections a load lies on, counted from 1; all of them where it is left out.
Over = Annotated[tuple[Annotated[int, Field(ge=1), NOT_BOOL], ...], Field(min_length=1)] | None


class Load(Asked):
    """What the part bears in use.

    `torque_over` and `bending_over` name the sections that bear it, counted from 1 at the
    working end: a shaft is twisted from its drive to its driver, and bent most at one place.
    """

    torque: TorqueNm | None = Field(
        default=None, title="Torque", description="With its unit: 90 N m, 66 lb ft."
    )
    bending: BendingNm | None = Field(
        default=None, title="Bending", description="Greatest bending moment: 40 N m."
    )
    axial: ForceN | None = Field(
        default=None, title="Pull or push", description="Along the part: 2000 N, 450 lbf."
    )
    torque_over: Over = Field(
        default=None, title="Twisted sections", description="Their numbers; all if left out."
    )
    bending_over: Over = Field(
        default=None, title="Bent sections", description="Their numbers; all if left out."
    )
    contact: ForceN | None = Field(
        default=None, title="Pressing on it", description="Force on what wears: 800 N, 180 lbf."
    )
    impact: Literal["none", "light", "hammered"] = Field(title="Knocks")
    impact_energy: EnergyJ | None = Field(
        default=None, title="Energy of a blow", description="15 J, 11 ft lb."
    )
    cycles: Literal["static", "occasional", "fatigue"] = Field(title="How often loaded")
    failure_cost: Money | None = Field(
        default=None,
        title="A failure in use costs",
        description="What it costs you if it breaks in use, roughly.",
    )

    def twists(self, index: int) -> bool:
        """Return whether the torque lies on a section, counted from 0."""
        return bool(self.torque) and _lies(self.torque_over, index)

    def bends(self, index: int) -> bool:
        """Return whether the bending lies on a section, counted from 0."""
        return bool(self.bending) and _lies(self.bending_over, index)


def _lies(over: Over, index: int) -> bool:
    """Return whether a section is among those named, all where none is."""
    return over is None or index + 1 in over


class Limit(Asked):
    """What the finished part must keep to."""

    runout: RunoutMm | None = Field(
        default=None,
        title="Run-out allowed",
        description="How far it may bow or run out: 0.3 mm, 12 thou.",
    )
    service_temperature: TemperatureC | None = Field(
        default=None, title="Hottest in use", description="80 °C, 180 °F."
    )
    corrosion: Literal["none", "mild", "severe"] = Field(default="none", title="Damp and rust")
    budget: Money | None = Field(
        default=None, title="A good part may cost", description="At most, all work counted."
    )
    currency: Label | None = Field(
        default=None, title="Currency", description="That of the price list."
    )
    days: Days | None = Field(
        default=None, title="Needed within", description="5 days, 2 weeks."
    )
