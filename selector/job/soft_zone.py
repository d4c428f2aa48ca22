"""Why a zone asks for no hardness, and what it must not pass all the same."""

from selector.job.mate import is_softer_than_steel
from selector.job.usual_window import runs_in_bearing, spares_mate
from selector.requirement import Requirement
from selector.requirement.zone import Zone

# A struck head or body beside a hard working end; harder, it chips. Common practice. [HRC]
STRUCK_BODY_HRC = 48.0
# A thread that is loaded; harder, it snaps at its root. The hardest class of bolts, 12.9, ends
# at 44 HRC (ISO 898-1, from memory). [HRC]
THREAD_HRC = 45.0
# By how the zone wears, where nothing else says it.
_REASONS = {
    "none": "no wear: strength alone decides",
    "edge-impact": "its mate dents and blunts no steel: no hardness is asked",
    "abrasive": "the heat of its service takes all hardness off again",
}
_SLIDES = {
    "light": "light sliding asks for no hardness",
    "medium": "its mate yields before it wears steel: no hardness is asked",
}


def why_soft(requirement: Requirement, zone: Zone) -> tuple[str, float | None]:
    """Return why a zone asks for no hardness, and what it must not pass all the same. [HRC]."""
    reason = _reason(requirement, zone)
    if _is_loaded_thread(requirement, zone):
        thread = f"; a thread under load, so not above {THREAD_HRC:.0f} HRC (common practice)"
        return reason + thread, THREAD_HRC
    if requirement.load.impact != "hammered":
        return reason, None
    struck = f"; struck, so not above {STRUCK_BODY_HRC:.0f} HRC (common practice)"
    return reason + struck, STRUCK_BODY_HRC


def _is_loaded_thread(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a thread is cut on a zone of a part that bears a load or blows."""
    part, load = requirement.part, requirement.load
    threads = {part.place(f) for f in part.feature if f.kind == "thread"}
    borne = any((load.torque, load.axial, load.bending, load.contact))
    loaded = borne or load.impact != "none" or load.cycles == "fatigue"
    return loaded and any(n - 1 in threads for n in zone.section)


def _reason(requirement: Requirement, zone: Zone) -> str:
    """Return why a zone asks for no hardness."""
    if is_softer_than_steel(zone):
        return "its mate is softer than any steel: finish and oil spare that, not hardness"
    if runs_in_bearing(requirement, zone):
        metal = zone.mate.material if zone.mate else "bronze"
        return f"a shaft in {metal}, which is to wear: strength alone decides"
    if spares_mate(requirement, zone):
        what = "teeth" if requirement.part.is_toothed else "a roller"
        return f"{what} loaded now and then on what is as soft as bar: no hardness is asked"
    slides = _SLIDES.get(zone.severity, _SLIDES["light"])
    return _REASONS.get(zone.wear, slides)
