"""The part: sections from the working end, features, condition, what is ground afterwards."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from selector.requirement.quantity import (
    NOT_BOOL,
    Asked,
    Label,
    LengthMm,
    PlaceMm,
    refuse,
    refuse_at,
)

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


# Lengths in inches add up to less than they are; so much is no fault. [mm]
ROUNDING_MM = 1e-6
# What takes steel out of the section, by its `size` across the part.
CUTS = frozenset({"cross-hole", "slot", "keyway"})


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
        narrow = self.narrowest_mm
        side = "width" if narrow < self.size else "size"
        if self.bore is not None and self.bore >= narrow:
            rule = f"smaller than {side}, {narrow:g} mm, or no wall is left"
            step = f"Check bore and {side}."
            raise refuse_at("Section", (("bore",), f"{self.bore:g} mm", rule, step))
        return self

    @property
    def across_mm(self) -> float:
        """How wide a hole through it may be, in mm: a flat is drilled through its thickness."""
        return max(self.size, self.width or 0.0) if self.shape == "flat" else self.size

    @property
    def narrowest_mm(self) -> float:
        """The least width across it, in mm: a flat may be given on edge."""
        return min(self.size, self.width or self.size) if self.shape == "flat" else self.size

    @property
    def most_depth_mm(self) -> float:
        """How deep a layer can be, in mm: to the middle, or through the wall."""
        return 0.5 * (self.narrowest_mm - (self.bore or 0.0))


class Feature(Asked):
    """A notch, hole, edge or the like; `at` is its distance from the working end, in mm.

    `size` is the diameter of a hole, the width of a slot or keyway, or the thickness of a tooth
    at half its height, in mm.
    """

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

    @model_validator(mode="after")
    def _features_on_it(self) -> Self:
        rule = f"on the part, which is {self.length_mm:g} mm long"
        beyond = [
            (
                ("feature", number, "at"),
                f"{feature.at:g} mm",
                rule,
                "Measure from the working end.",
            )
            for number, feature in enumerate(self.feature)
            if feature.at is not None and feature.at > self.length_mm + ROUNDING_MM
        ]
        if beyond:
            raise refuse_at("Part", *beyond)
        return self

    @model_validator(mode="after")
    def _steel_left(self) -> Self:
        faults = []
        for number, feature in enumerate(self.feature):
            if feature.kind not in CUTS or feature.size is None:
                continue
            place = self.place(feature)
            wide = self.section[place].across_mm
            if feature.size >= wide:
                rule = f"smaller than section {place + 1} is wide, {wide:g} mm"
                step = f"Check the {feature.kind}, its place and the section."
                got = f"{feature.size:g} mm"
                faults.append((("feature", number, "size"), got, rule, step))
        if faults:
            raise refuse_at("Part", *faults)
        return self

    def place(self, feature: Feature) -> int:
        """Return the index of the section a feature lies on.

        Parameters
        ----------
        feature : Feature
            One of the features.

        Returns
        -------
        int
            From 0; where it has no place, the first section that it does not cut in two.
        """
        if feature.at is None:
            wide = feature.size or 0.0
            fits = (i for i, s in enumerate(self.section) if wide < s.across_mm)
            return next(fits, 0)
        end = 0.0
        for index, section in enumerate(self.section):
            end += section.length
            if feature.at <= end:
                return index
        return len(self.section) - 1

    @property
    def length_mm(self) -> float:
        """The sum of the section lengths, in mm."""
        return sum(section.length for section in self.section)
