"""Cautions, each with an id, the hazard and a sentence of ours."""

from typing import Annotated

from pydantic import Field

from catalog.values import Fact, Record, Text


class Caution(Record):
    """One caution. `step` names the moment of the work at which it is shown."""

    hazard: Text
    step: Text
    fact: Fact


class Source(Record):
    """One reference: full citation and, where it matters, a remark."""

    citation: Text
    remark: Text | None = None


class Family(Record):
    """A group of near-equivalent steels that share a place in the ranking."""

    name: Text
    aliases: Annotated[tuple[Text, ...], Field(strict=False)] = ()
