"""One quenching medium: what it is called, how severe it is and what it may do to people."""

from typing import Annotated, Literal

from pydantic import Field

from catalog.values import Fact, Number, Record, Span, Text

MediumKind = Literal[
    "water", "warm-water", "brine", "fast-oil", "oil", "vegetable-oil", "polymer",
    "air", "plates", "hot-salt", "hot-oil",
]  # fmt: skip
Agitation = Literal["none", "mild", "moderate", "strong", "violent"]


class Medium(Record):
    """One catalogue medium; `slug` is the file name.

    `severity_per_in` is the Grossmann severity of quench H by agitation, in 1/in as published.
    The boiling curve of each kind is described for the shipped severities: a medium of your own
    is keener than its kind by the ratio of the two.
    """

    slug: Text
    name: Text
    kind: MediumKind
    severity_class: Literal["water", "oil", "air"]
    severity_per_in: Annotated[dict[Agitation, Span], Field(min_length=1)]
    temperature_c: Span
    flash_point_c: Number | None = None
    note: Annotated[tuple[Fact, ...], Field(strict=False)] = ()
    cautions: Annotated[tuple[Text, ...], Field(strict=False)] = ()

    def __hash__(self) -> int:
        """Return the hash of its slug: equal records have equal ones, and it is quick."""
        return hash(self.slug)

    @property
    def is_oil(self) -> bool:
        """Whether it burns; polymer and salt quench like oil and do not."""
        return self.kind in {"oil", "fast-oil", "vegetable-oil", "hot-oil"}
