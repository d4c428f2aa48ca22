"""What wears a tool that nothing is said to wear: a form left as it came says nothing of it."""

from selector.job.usual_window import TRUE
from selector.requirement import Requirement
from selector.requirement.part_name import itself
from selector.requirement.trade_name import does, measures, presses
from selector.requirement.zone import LEAST_WEAR, Severity, Wear


def presumed(requirement: Requirement) -> Requirement | None:
    """Return what is asked with the wear that a name presumes, None where it presumes none.

    Parameters
    ----------
    requirement : Requirement
        What is asked.

    Returns
    -------
    Requirement or None
        Its zone at the working end wears; None where any zone wears or has a window of its own.
    """
    said = any(zone.wear != "none" or zone.hardness is not None for zone in requirement.zone)
    if said or requirement.safety_critical or requirement.is_spring or requirement.is_to_break:
        return None
    wears = _wears(requirement)
    if wears is None:
        return None
    worn = {"wear": wears[0], "severity": wears[1]}
    zones = tuple(
        zone.model_copy(update=worn) if 1 in zone.section else zone for zone in requirement.zone
    )
    return requirement.model_copy(update={"zone": zones})


def _wears(requirement: Requirement) -> tuple[Wear, Severity] | None:
    """Return how a tool of a name wears at its working end."""
    name, struck = requirement.part.name, requirement.load.impact == "hammered"
    if does(name, "guides_tools"):
        return "sliding", "heavy"
    if requirement.has_edge:
        return "edge-impact" if struck else "abrasive", "medium"
    if (presses(name) and not struck) or (does(name, "stamps") and struck):
        return "edge-impact", "medium"
    if does(name, "crops") or does(itself(name), "ground"):
        return "abrasive", "medium"
    kept_true = measures(name) or any(does(name, trade) for trade in TRUE)
    return LEAST_WEAR if kept_true else None
