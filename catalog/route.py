"""One hardening route: what it does, what it needs of workshop, steel and section."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from catalog.mark import ConditionName
from catalog.values import Fact, Number, Record, Span, Text

Process = Literal[
    "none", "quench", "marquench", "austemper", "case", "nitride", "chrome", "age", "anneal",
    "normalise",
]  # fmt: skip
Place = Literal["supplier", "workshop", "subcontract"]
TemperMeans = Literal["oven", "plate", "torch", "blaze", "sand", "residual", "furnace"]
RouteKind = Literal[
    "as-bought",
    "prehard",
    "buy-hard-element",
    "through-torch",
    "local-torch",
    "residual-heat",
    "through-furnace",
    "carburise",
    "case",
    "nitride",
    "chrome",
    "induction",
    "firm-flame",
    "laser",
    "subcontract",
    "age",
    "anneal",
    "normalise",
]
# What carbon is brought in from.
Carburiser = Literal["charcoal", "energised", "compound", "liquid", "gas"]


class Route(Record):
    """One catalogue route; `slug` is the file name.

    `extent` says whether the whole part or only the zone is hardened. A medium, where there is
    one, is chosen for each steel and written after the slug: "through-torch.oil".
    """

    slug: Text
    name: Text
    kind: RouteKind
    summary: Text
    process: Process
    place: Place
    extent: Literal["whole", "local"]
    conditions: Annotated[tuple[ConditionName, ...], Field(strict=False, min_length=1)]
    heat_sources: Annotated[tuple[Text, ...], Field(strict=False)] = ()
    media: Annotated[tuple[Text, ...], Field(strict=False)] = ()
    temper: Annotated[tuple[TemperMeans, ...], Field(strict=False)] = ()
    held: bool = False
    temperature_c: Span | None = None
    time_h: Span | None = None
    cold_c: Number | None = None
    depth_mm: Span | None = None
    surface_hrc: Span | None = None
    carburiser: Carburiser | None = None
    labour_h: Number
    days: Number
    movement_factor: Number
    section_mm: Span | None = None
    note: Annotated[tuple[Fact, ...], Field(strict=False)] = ()
    cautions: Annotated[tuple[Text, ...], Field(strict=False)] = ()

    @model_validator(mode="after")
    def _consistent(self) -> Self:
        if self.place == "workshop" and self.process != "none" and not self.heat_sources:
            msg = "a workshop route with a process needs heat_sources"
            raise ValueError(msg)
        if self.process in {"quench", "marquench", "austemper"} and not self.media:
            msg = "a quench needs media"
            raise ValueError(msg)
        if self.process == "case" and self.carburiser is None:
            msg = "a case needs a carburiser"
            raise ValueError(msg)
        return self

    def __hash__(self) -> int:
        """Return the hash of its slug: equal records have equal ones, and it is quick."""
        return hash(self.slug)
