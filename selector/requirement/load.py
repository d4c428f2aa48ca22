"""Loads, limits and what a failure costs."""

from typing import Literal

from selector.requirement.quantity import (
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


class Load(Asked):
    """What the part bears in use."""

    torque: TorqueNm | None = None
    bending: BendingNm | None = None
    axial: ForceN | None = None
    contact: ForceN | None = None
    impact: Literal["none", "light", "hammered"]
    impact_energy: EnergyJ | None = None
    cycles: Literal["static", "occasional", "fatigue"]
    failure_cost: Money | None = None


class Limit(Asked):
    """What the finished part must keep to."""

    runout: LengthMm | None = None
    service_temperature: TemperatureC | None = None
    corrosion: Literal["none", "mild", "severe"] = "none"
    budget: Money | None = None
    currency: Label | None = None
    days: Days | None = None
