"""What kind of end a zone works by: an edge under the hammer, a tip, jaws, thin strip."""

from selector.job.mate import is_ductile, is_harmless
from selector.requirement import Requirement, mate_name
from selector.requirement.bending import STRIP_MM
from selector.requirement.trade_name import does
from selector.requirement.zone import Zone

# What takes blows on more than this is a face. Common practice. [mm]
BROAD_MM = 12.0
# A slender point is no thicker, and so many times as long as thick. Estimate. [mm], [-]
_POINT_MM, _POINT_LONG = 3.0, 5.0
# Tips that push and jaws of sheet are no thicker. Common practice. [mm]
TIP_MM = 6.0


def is_thin_jaw(requirement: Requirement, zone: Zone) -> bool:
    """Return whether jaws as thin as a spanner of sheet turn what dents them."""
    thin = max(s.narrowest_mm for s in requirement.sections_of(zone)) <= TIP_MM
    return thin and turns_by_jaws(requirement, zone) and not is_ductile(zone)


def turns_by_jaws(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a slot in the zone carries the torque to another part."""
    part, load = requirement.part, requirement.load
    hollow = all(section.bore for section in requirement.sections_of(zone))
    if hollow and does(part.name, "turns_by_hand"):
        return bool(load.torque)
    spanner = does(part.name, "turns_by_hand")
    slots = {part.place(feature) for feature in part.feature if feature.kind == "slot"}
    # A spanner is pulled at its handle, which bends it.
    turned = [load.twists(n - 1) or (spanner and load.bends(n - 1)) for n in zone.section]
    return any(turns and n - 1 in slots for turns, n in zip(turned, zone.section, strict=True))


def is_strip_blade(requirement: Requirement) -> bool:
    """Return whether a part is a saw, a scraper or the like of thin strip that bends."""
    thin = max(s.narrowest_mm for s in requirement.part.section) <= STRIP_MM
    return thin and does(requirement.part.name, "thin_blade") and not requirement.cuts_metal


def is_tip(requirement: Requirement, zone: Zone) -> bool:
    """Return whether what takes knocks is a thin end that pushes or sets, and no dog."""
    if zone.wear != "edge-impact" or requirement.load.impact == "hammered":
        return False
    thin = min(s.narrowest_mm for s in requirement.sections_of(zone)) <= TIP_MM
    edged = requirement.is_edged or requirement.part.is_toothed
    holds = does(requirement.part.name, "dog") and not requirement.part.has_prongs
    return thin and not edged and not holds


def is_struck_edge(requirement: Requirement, zone: Zone) -> bool:
    """Return whether what takes blows or knocks is an edge, as thin as one, or a stamp."""
    thin = min(s.narrowest_mm for s in requirement.sections_of(zone)) <= BROAD_MM
    struck, name = requirement.load.impact == "hammered", requirement.part.name
    # A firing pin or a knock-out strikes by a flat end, however thin, and an end for what dents
    # none has no edge to keep.
    thin = thin and not does(name, "pushes") and not is_harmless(zone)
    formed = does(name, "stamps") or requirement.part.has_prongs
    return requirement.is_edged or (struck and (thin or formed))


def is_bent_point(requirement: Requirement, zone: Zone) -> bool:
    """Return whether an edge ends a slender round that its load bends."""
    slender = all(
        section.shape == "round"
        and section.size <= _POINT_MM
        and section.length >= _POINT_LONG * section.size
        for section in requirement.sections_of(zone)
    )
    bent = any(requirement.load.bends(n - 1) for n in zone.section)
    return slender and bent and requirement.is_edged and not requirement.cuts_metal


def reaps(requirement: Requirement, zone: Zone) -> bool:
    """Return whether an edge cuts what grows, swung at it or often: twigs, hay, thorn."""
    swung = requirement.load.impact != "none" or zone.severity == "heavy"
    grows = zone.mate is not None and mate_name.is_of(zone.mate.material, "growth")
    return requirement.is_edged and swung and grows


def presses_by_thread(requirement: Requirement) -> bool:
    """Return whether a part is a screw that pushes or pulls."""
    threaded = any(feature.kind == "thread" for feature in requirement.part.feature)
    return threaded and bool(requirement.load.axial) and not requirement.part.is_toothed


def drives_brass(requirement: Requirement, zone: Zone) -> bool:
    """Return whether teeth roll on a wheel of brass that is to wear, without heavy load."""
    light = zone.wear == "rolling-contact" and zone.severity != "heavy"
    spares = zone.mate is not None and zone.mate.should_wear != "part"
    soft = zone.mate is not None and mate_name.is_of(
        zone.mate.material, "bearing_metal", "ductile"
    )
    return light and spares and soft and requirement.part.is_toothed
