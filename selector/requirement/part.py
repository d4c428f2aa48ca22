"""The part: sections from the working end, features, condition, what is ground afterwards."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from selector.requirement.quantity import NOT_BOOL, Asked, Label, LengthMm, PlaceMm, refuse

Shape = Literal["round", "square", "hexagon", "tube", "flat"]
FeatureKind = Literal[
    "cross-hole",
    "slot",
    "keyway",
    "teeth",
    "thread",
    "sharp-corner",
    "taper",
    "edge",
    "groove",
    "weld",
]


class Section(Asked):
    """One stretch of the part, the first at the working end.

    `size` is the diameter, the width across flats, or the thickness of a flat, in mm.
    """

    shape: Shape
    size: LengthMm
    length: LengthMm
    bore: LengthMm | None = None
    width: LengthMm | None = None
    fillet: LengthMm | None = None
    name: Label | None = None

    @model_validator(mode="after")
    def _possible(self) -> Self:
        if self.shape == "tube" and self.bore is None:
            raise refuse("given a bore, because a tube has one", "Add bore.")
        if self.shape == "flat" and self.width is None:
            raise refuse("given a width, because a flat has one", "Add width.")
        if self.bore is not None and self.bore >= self.size:
            raise refuse(
                f"a section with some wall left; bore {self.bore:g} mm is not smaller than "
                f"size {self.size:g} mm",
                "Check bore and size.",
            )
        return self


class Feature(Asked):
    """A notch, hole, edge or the like; `at` is its distance from the working end, in mm."""

    kind: FeatureKind
    at: PlaceMm | None = None
    size: LengthMm | None = None


class Part(Asked):
    """What is to be made or treated."""

    name: Label
    quantity: Annotated[int, Field(ge=1, le=100_000), NOT_BOOL] = 1
    section: Annotated[tuple[Section, ...], Field(min_length=1, max_length=30)]
    feature: tuple[Feature, ...] = ()
    condition: Literal["bar", "plated", "hard", "welded", "finished"] = "bar"
    shape_class: Literal["plain", "coil-spring", "gear", "bevel"] = "plain"
    stock_removal: PlaceMm | None = None
    finish_after: tuple[
        Literal["lathe", "toolpost-grinder", "surface-grinder", "lap", "oilstone"], ...
    ] = ()

    @property
    def length_mm(self) -> float:
        """The sum of the section lengths, in mm."""
        return sum(section.length for section in self.section)
