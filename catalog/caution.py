"""Cautions, each with an id, the hazard and a sentence of ours."""

from typing import Annotated, Literal

from pydantic import Field

from catalog.values import Fact, Record, Text

# The moments of the work, in their order.
Step = Literal["before work", "heating", "quenching", "tempering", "finishing", "in service"]


class Caution(Record):
    """One caution. `step` names the moment of the work at which it is shown."""

    hazard: Text
    step: Step
    fact: Fact


class Source(Record):
    """One reference: full citation and, where it matters, a remark."""

    citation: Text
    remark: Text | None = None


class Family(Record):
    """A group of near-equivalent steels that share a place in the ranking."""

    name: Text
    aliases: Annotated[tuple[Text, ...], Field(strict=False)] = ()
