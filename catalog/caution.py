"""Cautions, each with an id, the hazard and a sentence of ours."""

from typing import Annotated, Literal

from pydantic import Field

from catalog.values import Fact, Record, Text

# The moments of the work, in their order.
Step = Literal["before work", "heating", "quenching", "tempering", "finishing", "in service"]


# The worst that a caution warns of: it kills or blinds, injures, or spoils the part.
Harm = Literal["kills", "injures", "spoils"]


class Caution(Record):
    """One caution: `brief` is its line on the first screen, `step` where it stands in full."""

    hazard: Text
    harm: Harm
    step: Step
    brief: Annotated[Text, Field(max_length=105)]
    fact: Fact


class Source(Record):
    """One reference: full citation and, where it matters, a remark."""

    citation: Text
    remark: Text | None = None


class Family(Record):
    """A group of near-equivalent steels that share a place in the ranking.

    `usual` is the slug of the one that people buy, where others of it are had as easily.
    """

    name: Text
    aliases: Annotated[tuple[Text, ...], Field(strict=False)] = ()
    usual: Text | None = None
