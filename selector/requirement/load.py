"""Loads, limits and what a failure costs."""

from typing import Literal

from pydantic import Field

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

    torque: TorqueNm | None = Field(
        default=None, title="Torque", description="With its unit: 90 N m, 66 lb ft."
    )
    bending: BendingNm | None = Field(
        default=None, title="Bending", description="Greatest bending moment: 40 N m."
    )
    axial: ForceN | None = Field(
        default=None, title="Pull or push", description="Along the part: 2000 N, 450 lbf."
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


class Limit(Asked):
    """What the finished part must keep to."""

    runout: LengthMm | None = Field(
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
