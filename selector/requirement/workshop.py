"""The workshop as it is: heat, baths, tempering, eyes and instruments, stock in the rack."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from selector.requirement.quantity import (
    NOT_BOOL,
    Asked,
    CatalogName,
    GasKgPerH,
    HardnessHv,
    Label,
    LengthMm,
    Money,
    TemperatureC,
    VolumeL,
    refuse,
)

Measure = Literal["eye", "magnet", "crayon", "thermocouple", "infrared", "oven-thermometer"]
Check = Literal["file", "hardness-files", "glass", "rebound", "tester", "coupon"]


class Heat(Asked):
    """One heat source: a catalogue name, with what the user knows of it."""

    source: CatalogName = Field(title="Heat source")
    gas_flow: GasKgPerH | None = Field(
        default=None, title="Gas flow", description="At full flame: 0.8 kg/h."
    )
    tip: Label | None = Field(default=None, title="Tip or nozzle")
    ceiling: TemperatureC | None = Field(
        default=None, title="Goes up to", description="1000 °C, 480 °F."
    )
    chamber: LengthMm | None = Field(
        default=None, title="Chamber length", description="Inside: 200 mm, 8 in."
    )


class Bath(Asked):
    """One quench bath: a catalogue medium with volume, temperature and motion."""

    medium: CatalogName = Field(title="Bath")
    volume: VolumeL | None = Field(default=None, title="Volume", description="12 l, 3 gal.")
    temperature: TemperatureC | None = Field(
        default=None, title="Temperature", description="When the part goes in: 50 °C."
    )
    agitation: Literal["none", "mild", "moderate", "strong", "violent"] = Field(
        default="moderate", title="How the part is moved"
    )


class TemperMeans(Asked):
    """One means of tempering, and how hot it goes."""

    means: Literal["oven", "furnace", "plate", "torch"] = Field(title="Temper by")
    ceiling: TemperatureC | None = Field(
        default=None, title="Goes up to", description="250 °C, 480 °F."
    )


# More carbon is cast iron. [wt %]
_WtPct = Annotated[float, Field(ge=0, le=30), NOT_BOOL]
_CarbonWtPct = Annotated[float, Field(ge=0, le=2.5), NOT_BOOL]


class Analysis(Asked):
    """What a certificate or a test says is in a bar, in wt %; what it leaves out is unknown."""

    C: _CarbonWtPct | None = Field(default=None, title="C")
    Si: _WtPct | None = Field(default=None, title="Si")
    Mn: _WtPct | None = Field(default=None, title="Mn")
    P: _WtPct | None = Field(default=None, title="P")
    S: _WtPct | None = Field(default=None, title="S")
    Cr: _WtPct | None = Field(default=None, title="Cr")
    Mo: _WtPct | None = Field(default=None, title="Mo")
    Ni: _WtPct | None = Field(default=None, title="Ni")
    V: _WtPct | None = Field(default=None, title="V")
    Cu: _WtPct | None = Field(default=None, title="Cu")
    W: _WtPct | None = Field(default=None, title="W")
    Co: _WtPct | None = Field(default=None, title="Co")
    Al: _WtPct | None = Field(default=None, title="Al")

    def held_wt_pct(self) -> dict[str, float]:
        """Return the elements it names, with their content. [wt %]."""
        return {name: content for name, content in self if content is not None}


class Stock(Asked):
    """A bar in the rack. An unmarked one is named "unknown".

    `analysis` and `hardness` are of this very bar: they narrow what is forecast of it.
    """

    steel: Label = Field(
        title="Steel",
        description="By any name, as marked: EN 19, 1.7225, silver steel, unknown.",
    )
    condition: Label | None = Field(
        default=None, title="Condition", description="As sold: annealed, cold-drawn, prehard."
    )
    size: LengthMm | None = Field(default=None, title="Size", description="30 mm, 1 1/4 in.")
    evidence: Literal["certificate", "marking", "receipt", "none"] = Field(
        default="none", title="Known by"
    )
    analysis: Analysis | None = Field(
        default=None, title="Analysis", description="Of this very bar, in wt %."
    )
    hardness: HardnessHv | None = Field(
        default=None, title="Hardness", description="Of this very bar: 200 HB, 30 HRC."
    )


class OwnPrice(Asked):
    """What a steel costs this workshop, in the currency of the price list."""

    steel: Label = Field(title="Steel", description="By any name: EN 8, silver steel.")
    per_kg: Money = Field(title="A kilogram costs", description="Of cut bar, annealed.")


_HAND = "1 is a practised hand, 2 twice as much."


class Skill(Asked):
    """Multipliers on the operator's error: 1 is a practised hand."""

    bias: Annotated[float, Field(ge=0.2, le=5), NOT_BOOL] = Field(
        default=1.0, title="Reads heat wrong", description=_HAND
    )
    scatter: Annotated[float, Field(ge=0.2, le=5), NOT_BOOL] = Field(
        default=1.0, title="Differs from heat to heat", description=_HAND
    )
    delay: Annotated[float, Field(ge=0.2, le=5), NOT_BOOL] = Field(
        default=1.0, title="Delay to the bath", description=_HAND
    )


class Workshop(Asked):
    """What the workshop has. An empty list says it has none.

    `protect` is what work in an open furnace is wrapped in or coated with.
    """

    heat: tuple[Heat, ...] = Field(
        title="Heat", description="What there is to heat with.", max_length=30
    )
    bath: tuple[Bath, ...] = Field(
        default=(),
        title="Quench baths",
        description="What there is to quench in.",
        max_length=30,
    )
    temper: tuple[TemperMeans, ...] = Field(
        default=(),
        title="Tempering",
        description="What there is to temper with, besides the heat above.",
        max_length=30,
    )
    measure: tuple[Measure, ...] = Field(
        default=("eye",), title="Heat is judged by", max_length=20
    )
    light: Literal["dim", "shade", "daylight", "sun"] = Field(
        default="shade", title="Light at the hearth"
    )
    check: tuple[Check, ...] = Field(
        default=("file",), title="Hardness is checked with", max_length=20
    )
    machine: tuple[Label, ...] = Field(default=(), title="Machines", max_length=60)
    turns_part: bool = Field(default=False, title="The part is turned while it is heated")
    held_by: Literal["lathe", "drill-press", "tongs", "wire", "vice"] | None = Field(
        default=None, title="Held by"
    )
    protect: tuple[Literal["foil", "coat"], ...] = Field(
        default=(), title="Wrapped or coated in the furnace with", max_length=5
    )
    subcontract: bool = Field(default=False, title="Work may be sent out to a firm")
    only_stock: bool = Field(default=False, title="Only bars in the rack may be used")
    stock: tuple[Stock, ...] = Field(
        default=(), title="Rack", description="Bars there are.", max_length=100
    )
    skill: Skill = Field(default=Skill(), title="Operator")
    price: tuple[OwnPrice, ...] = Field(
        default=(),
        title="Your prices",
        description="What steels cost you; the others go by the price list.",
        max_length=300,
    )
    labour_per_h: Money | None = Field(
        default=None, title="An hour of work costs", description="At the bench and the lathe."
    )

    @model_validator(mode="after")
    def _stock_named(self) -> Self:
        if self.only_stock and not self.stock:
            raise refuse(
                "a workshop with stock when only_stock is set",
                "List the bars, or drop only_stock.",
            )
        return self
