"""Where leaded bar is not used: in heat that melts its lead, and where it touches food."""

from selector.gate import Gate
from selector.job.treatment import Treatment
from selector.requirement import Requirement
from selector.requirement.mate_name import is_of

# Lead melts here. Handbooks of chemistry (from memory). [°C]
LEAD_MELTS_C = 327.0


def hot_lead(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to leaded bar where it works hotter than lead melts."""
    service_c = asked.limit.service_temperature
    if service_c is None or service_c < LEAD_MELTS_C or not _is_leaded(work):
        return None
    text = f"leaded: the lead sweats out from {LEAD_MELTS_C:g} °C, and its fume is poisonous"
    return Gate("service_heat", "fail", text)


def lead_at_food(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to leaded bar where food or drink touches the part."""
    if not _is_leaded(work) or not touches_food(asked):
        return None
    return Gate("safety", "fail", "leaded: lead has no place where food is")


def touches_food(asked: Requirement) -> bool:
    """Return whether food or drink touches a part, by what it and its mates are called."""
    mates = (zone.mate.material for zone in asked.zone if zone.mate is not None)
    return any(is_of(text, "food") for text in (asked.part.name or "", *mates) if text)


def _is_leaded(work: Treatment) -> bool:
    """Return whether a steel has lead in it so that it cuts freely."""
    return "Pb" in work.steel.composition_wt_pct
