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
from selector.requirement.trade_name import does

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

    shape: Shape = Field(title="Shape")
    size: LengthMm = Field(
        title="Size",
        description="Diameter, width across flats, or thickness of a flat: 28 mm, 1 1/8 in.",
    )
    length: LengthMm = Field(title="Length", description="Along the part: 60 mm, 2 3/8 in.")
    bore: LengthMm | None = Field(
        default=None,
        title="Bore",
        description="Diameter of a hole along the axis, if there is one: 8 mm.",
    )
    width: LengthMm | None = Field(
        default=None, title="Width", description="Of a flat, across its thickness: 40 mm."
    )
    fillet: LengthMm | None = Field(
        default=None,
        title="Fillet",
        description="Radius at the shoulder to the next section: 2 mm.",
    )
    name: Label | None = Field(
        default=None,
        title="Called",
        description="What the shop calls this stretch: claws, shank, edge.",
    )

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
            if self.shape == "flat":
                step += " A hole through the thickness is a feature, kind cross-hole."
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

    kind: FeatureKind = Field(title="What")
    at: PlaceMm | None = Field(
        default=None, title="From the working end", description="How far along: 110 mm."
    )
    size: LengthMm | None = Field(
        default=None,
        title="Width",
        description="Diameter of a hole, width of a slot or keyway, or of a tooth: 6 mm.",
    )


class Part(Asked):
    """What is to be made or treated."""

    name: Label = Field(title="Name", description="What it is, in a few words.")
    quantity: Annotated[int, Field(ge=1, le=100_000), NOT_BOOL] = Field(
        default=1, title="How many"
    )
    section: Annotated[tuple[Section, ...], Field(min_length=1, max_length=30)] = Field(
        title="Sections", description="From the working end, each with its size and length."
    )
    feature: tuple[Feature, ...] = Field(
        default=(),
        title="Holes, notches, edges",
        description="Where steel is taken out, or an edge is left.",
        max_length=60,
    )
    condition: Literal["bar", "plated", "hard", "welded", "finished"] = Field(
        default="bar", title="Condition now"
    )
    shape_class: Literal["plain", "coil-spring", "gear", "bevel"] = Field(
        default="plain", title="Kind of shape"
    )
    stock_removal: PlaceMm | None = Field(
        default=None, title="Taken off after hardening", description="Per side: 0.2 mm."
    )
    finish_after: tuple[
        Literal["lathe", "toolpost-grinder", "surface-grinder", "lap", "oilstone"], ...
    ] = Field(default=(), title="Finished after hardening by", max_length=10)

    @property
    def is_toothed(self) -> bool:
        """Whether it has teeth that mesh: on a round, or on a flat that is called a rack."""
        if self.shape_class in {"gear", "bevel"}:
            return True
        toothed = [self.section[self.place(f)] for f in self.feature if f.kind == "teeth"]
        round_ = any(section.shape in {"round", "tube"} for section in toothed)
        return bool(toothed) and (round_ or does(self.name, "meshes"))

    @property
    def has_prongs(self) -> bool:
        """Whether it has teeth that mesh with none, as a comb, a saw or a pricking iron has."""
        return any(f.kind == "teeth" for f in self.feature) and not self.is_toothed

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
