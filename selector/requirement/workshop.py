"""The workshop as it is: heat, baths, tempering, eyes and instruments, stock in the rack."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from selector.requirement.quantity import (
    NOT_BOOL,
    Asked,
    GasKgPerH,
    HardnessHv,
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


# More carbon is cast iron. [wt %]
_WtPct = Annotated[float, Field(ge=0, le=30), NOT_BOOL]
_CarbonWtPct = Annotated[float, Field(ge=0, le=2.5), NOT_BOOL]


class Analysis(Asked):
    """What a certificate or a test says is in a bar, in wt %; what it leaves out is unknown."""

    C: _CarbonWtPct | None = None
    Si: _WtPct | None = None
    Mn: _WtPct | None = None
    P: _WtPct | None = None
    S: _WtPct | None = None
    Cr: _WtPct | None = None
    Mo: _WtPct | None = None
    Ni: _WtPct | None = None
    V: _WtPct | None = None
    Cu: _WtPct | None = None
    W: _WtPct | None = None
    Co: _WtPct | None = None
    Al: _WtPct | None = None

    def held_wt_pct(self) -> dict[str, float]:
        """Return the elements it names, with their content. [wt %]."""
        return {name: content for name, content in self if content is not None}


class Stock(Asked):
    """A bar in the rack. An unmarked one is named "unknown".

    `analysis` and `hardness` are of this very bar: they narrow what is forecast of it.
    """

    steel: Label
    condition: Label | None = None
    size: LengthMm | None = None
    evidence: Literal["certificate", "marking", "receipt", "none"] = "none"
    analysis: Analysis | None = None
    hardness: HardnessHv | None = None


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
