"""The mildest bath that hardens is the best one: which baths need not be weighed."""

from collections.abc import Iterable

from selector.gate import Gate
from selector.job.process import severity
from selector.job.treatment import Treatment
from selector.requirement.workshop import Workshop
from selector.wording import in_sentence

# Demands that a faster quench can help to meet: it hardens more and deeper, but makes cracks,
# bending and snapping worse. A doubt about the bath itself, such as its size, may be met by
# another bath.
MENDED_BY_QUENCH = frozenset({"hard_enough", "slack", "depth", "strength", "contact", "medium"})


def mild_first(treatments: Iterable[Treatment], workshop: Workshop) -> list[Treatment]:
    """Return treatments, those of milder baths first, otherwise in the order given."""

    def severity_per_in(work: Treatment) -> float:
        if work.medium is None:
            return 0.0
        sent_out = work.route.place == "subcontract"
        span = severity(work.medium, workshop, sent_out=sent_out)
        return float((span.low * span.high) ** 0.5)

    return sorted(treatments, key=severity_per_in)


def but_for_bath(work: Treatment) -> tuple[str, str, str, str]:
    """Return steel, condition, route and source, which treatments share that differ in bath."""
    heat = work.source.slug if work.source else ""
    return work.steel.slug, work.condition.name, work.route.slug, heat


def hardens_fully(work: Treatment, gates: Iterable[Gate]) -> bool:
    """Return whether a faster quench could improve nothing: what it helps is met outright."""
    # A case grown to its depth is as deep in any bath; one that fails may be of steel that the
    # bath leaves under 550 HV.
    cased = work.route.process == "case"
    asked = [
        gate.verdict == "pass" or (cased and gate.name == "depth" and gate.verdict != "fail")
        for gate in gates
        if gate.name in MENDED_BY_QUENCH
    ]
    return work.medium is not None and all(asked)


def needless(work: Treatment, milder: Treatment) -> Gate:
    """Return why a harsher bath is not weighed beside a milder one."""
    mild = in_sentence(milder.medium.name) if milder.medium else "a milder bath"
    harsh = in_sentence(work.medium.name) if work.medium else "a harsher one"
    text = f"{mild} hardens it as asked here; {harsh} would only add cracks and bending"
    return Gate("medium", "fail", text)
