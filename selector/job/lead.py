"""Where leaded bar is not used: in heat that melts its lead, and where it touches food."""

import re

from selector.gate import Gate
from selector.job.treatment import Treatment
from selector.requirement import Requirement

# Lead melts here. Handbooks of chemistry (from memory). [°C]
LEAD_MELTS_C = 327.0
# What a part or its mate is called that food or drink touches. Common practice.
_FOOD = re.compile(
    r"\b(?:foods?|kitchen|cooking|breads?|doughs?|past(?:ry|a)|waffles?|cakes?|cheeses?|butter|"
    r"milk|cream|dairy|churns?|meat|mincers?|sausages?|fish|fruits?|apples?|cider|juices?|"
    r"wines?|beer|brew\w*|mash(?:es|ing)?|kegs?|coffee|roasters?|tea|chocolates?|sweets|confection\w*|"
    r"tablets?|noodles?|honey|oysters?|mussels?|eggs?|biscuits?|flour)\b",
    re.IGNORECASE,
)


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
    return any(_FOOD.search(text) for text in (asked.part.name or "", *mates) if text)


def _is_leaded(work: Treatment) -> bool:
    """Return whether a steel has lead in it so that it cuts freely."""
    return "Pb" in work.steel.composition_wt_pct
