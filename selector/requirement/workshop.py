"""The workshop as it is: heat, baths, tempering, eyes and instruments, stock in the rack."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from selector.requirement.quantity import (
    NOT_BOOL,
    Asked,
    GasKgPerH,
    Label,
    LengthMm,
    TemperatureC,
    VolumeL,
    refuse,
)

Measure = Literal["eye", "magnet", "crayon", "thermocouple", "infrared", "oven-thermometer"]
Check = Literal["file", "hardness-files", "glass", "rebound", "tester", "coupon"]


class Heat(Asked):
    """One heat source: a catalogue name, with what the user knows of it."""

    source: Label
    gas_flow: GasKgPerH | None = None
    tip: Label | None = None
    ceiling: TemperatureC | None = None
    chamber: LengthMm | None = None


class Bath(Asked):
    """One quench bath: a catalogue medium with volume, temperature and motion."""

    medium: Label
    volume: VolumeL | None = None
    temperature: TemperatureC | None = None
    agitation: Literal["none", "mild", "moderate", "strong", "violent"] = "moderate"


class TemperMeans(Asked):
    """One means of tempering, and how hot it goes."""

    means: Literal["oven", "furnace", "plate", "torch"]
    ceiling: TemperatureC | None = None


class Stock(Asked):
    """A bar in the rack. An unmarked one is named "unknown"."""

    steel: Label
    condition: Label | None = None
    size: LengthMm | None = None
    evidence: Literal["certificate", "marking", "receipt", "none"] = "none"


class Skill(Asked):
    """Multipliers on the operator's error: 1 is a practised hand."""

    bias: Annotated[float, Field(ge=0.2, le=5), NOT_BOOL] = 1.0
    scatter: Annotated[float, Field(ge=0.2, le=5), NOT_BOOL] = 1.0
    delay: Annotated[float, Field(ge=0.2, le=5), NOT_BOOL] = 1.0


class Workshop(Asked):
    """What the workshop has. An empty list says it has none.

    `protect` is what work in an open furnace is wrapped in or coated with.
    """

    heat: tuple[Heat, ...]
    bath: tuple[Bath, ...] = ()
    temper: tuple[TemperMeans, ...] = ()
    measure: tuple[Measure, ...] = ("eye",)
    light: Literal["dim", "shade", "daylight", "sun"] = "shade"
    check: tuple[Check, ...] = ("file",)
    machine: tuple[Label, ...] = ()
    turns_part: bool = False
    held_by: Literal["lathe", "drill-press", "tongs", "wire", "vice"] | None = None
    protect: tuple[Literal["foil", "coat"], ...] = ()
    subcontract: bool = False
    only_stock: bool = False
    stock: tuple[Stock, ...] = ()
    skill: Skill = Skill()

    @model_validator(mode="after")
    def _stock_named(self) -> Self:
        if self.only_stock and not self.stock:
            raise refuse(
                "a workshop with stock when only_stock is set",
                "List the bars, or drop only_stock.",
            )
        return self
