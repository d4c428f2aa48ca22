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
    LengthMm,
    Money,
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

    torque: TorqueNm | None = None
    bending: BendingNm | None = None
    axial: ForceN | None = None
    torque_over: Over = None
    bending_over: Over = None
    contact: ForceN | None = None
    impact: Literal["none", "light", "hammered"]
    impact_energy: EnergyJ | None = None
    cycles: Literal["static", "occasional", "fatigue"]
    failure_cost: Money | None = None

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

    runout: LengthMm | None = None
    service_temperature: TemperatureC | None = None
    corrosion: Literal["none", "mild", "severe"] = "none"
    budget: Money | None = None
    currency: Label | None = None
    days: Days | None = None
