"""One heat source of a workshop: flame, fire, furnace or oven."""

from typing import Annotated, Literal

from pydantic import Field

from catalog.values import Fact, Number, Record, Span, Text


class HeatSource(Record):
    """One catalogue heat source; `slug` is the file name.

    `soak_max_min` is how long it can hold a part at heat evenly enough to soak it; open flames
    cannot do so for long. `section_mm` is the round section it brings to hardening heat.
    """

    slug: Text
    name: Text
    control: Literal["eye", "instrument"]
    kind: Literal["flame", "fire", "furnace", "oven", "induction", "salt-bath"]
    power_w: Span | None = None
    ceiling_c: Number
    soak_max_min: Number
    section_mm: Number
    gas_per_h_kg: Number | None = None
    note: Annotated[tuple[Fact, ...], Field(strict=False)] = ()
    cautions: Annotated[tuple[Text, ...], Field(strict=False)] = ()

    def __hash__(self) -> int:
        """Return the hash of its slug: equal records have equal ones, and it is quick."""
        return hash(self.slug)
