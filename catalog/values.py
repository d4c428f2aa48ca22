"""Values that cannot exist without a unit, a source, a place in it and a basis.

The unit stands in the name of the table or key that holds the value.
"""

from collections.abc import Mapping
from itertools import pairwise
from types import MappingProxyType
from typing import Annotated, Literal, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, model_validator

from catalog.text import RULE, is_steady

Basis = Literal["specified", "typical", "measured", "computed", "estimated"]
Seen = Literal["read", "part", "memory"]
# How a reader is told of it.
SEEN_WORDS: Mapping[Seen, str] = MappingProxyType(
    {"read": "read there", "part": "read there in part", "memory": "from memory"}
)


def _steady(text: str) -> str:
    """Return a text, refusing what would steer a terminal."""
    if not is_steady(text):
        msg = f"must be {RULE}"
        raise ValueError(msg)
    return text


Text = Annotated[str, Field(min_length=1), AfterValidator(_steady)]


class Record(BaseModel):
    """A frozen catalogue record that refuses unknown keys and loose types."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", strict=True, allow_inf_nan=False, defer_build=True
    )


class Sourced(Record):
    """Where a value comes from.

    `source` is a key of sources.toml, `at` the place in it (page, table, equation), `basis`
    what kind of value it is, and `seen` whether it was read there, read there in part (a curve
    lengthened, a sentence filled up by practice), or recalled from memory.
    """

    source: Text
    at: Text
    basis: Basis
    seen: Seen


class Number(Sourced):
    """One number."""

    value: float


class Span(Sourced):
    """A range; either end may be open, not both."""

    min: float | None = None
    max: float | None = None

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.min is None and self.max is None:
            msg = "give min, max or both"
            raise ValueError(msg)
        if self.min is not None and self.max is not None and self.min > self.max:
            msg = f"min must not exceed max ({self.min:g} > {self.max:g})"
            raise ValueError(msg)
        return self

    @property
    def low(self) -> float:
        """The lower end, or the upper one where the lower is open."""
        return self.min if self.min is not None else float(self.max or 0.0)

    @property
    def high(self) -> float:
        """The upper end, or the lower one where the upper is open."""
        return self.max if self.max is not None else self.low

    @property
    def middle(self) -> float:
        """The midpoint of the two ends."""
        return 0.5 * (self.low + self.high)


Point = Annotated[tuple[float, float], Field(strict=False)]


class Curve(Sourced):
    """Points of a curve, first coordinate ascending."""

    points: Annotated[tuple[Point, ...], Field(strict=False, min_length=2)]

    @model_validator(mode="after")
    def _ascending(self) -> Self:
        xs = [x for x, _ in self.points]
        if any(b <= a for a, b in pairwise(xs)):
            msg = f"first coordinates must ascend ({xs})"
            raise ValueError(msg)
        return self


class Sizes(Sourced):
    """Sizes that something is made in, rising."""

    values: Annotated[tuple[float, ...], Field(strict=False, min_length=1)]

    @model_validator(mode="after")
    def _rising(self) -> Self:
        if any(b <= a for a, b in pairwise(self.values)) or self.values[0] <= 0:
            msg = f"must rise from above 0 ({list(self.values)})"
            raise ValueError(msg)
        return self


class Fact(Sourced):
    """A sentence of our own that states a sourced fact."""

    text: Text
