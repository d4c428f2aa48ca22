"""Which ends turn another part, and which squares and flats are keys."""

from selector.requirement import Requirement
from selector.requirement.part import Part
from selector.requirement.trade_name import does
from selector.requirement.zone import Zone

# A wider hexagon is no key but turned by a spanner, which bears along its flats. [mm]
KEYS_MM = 14.0
# A flat end at least so many times as wide as it is thick, no longer than twice its width and
# as thin as a slot is wide turns one where thicker steel stands behind it. Estimate. [-], [mm]
_BLADE_WIDE, _BLADE_LONG, _BLADE_MM = 3.0, 2.0, 6.0


def is_drive_end(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a zone lies on a square, or a hexagon as of keys, that carries torque."""
    load, part = requirement.load, requirement.part
    turned = [n - 1 for n in zone.section if load.twists(n - 1)]
    drives = any(_enters(part, index) for index in turned)
    return drives and not is_key(requirement, zone)


def _enters(part: Part, index: int) -> bool:
    """Return whether a section is a square, or a hexagon as of keys, that enters a socket."""
    section, last = part.section[index], len(part.section) - 1
    if section.shape != "square":
        return section.shape == "hexagon" and section.size <= KEYS_MM
    # A driving square ends the part and shoulders on what is no thinner; a square that carries
    # something thinner, or lies between others, is the bar that the part was made of.
    beside = [part.section[n] for n in (index - 1, index + 1) if 0 <= n <= last]
    ends = index in {0, last}
    return ends and all(other.across_mm >= section.size for other in beside)


def is_key(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a zone is a key: a plain square or flat, or to spare its mate."""
    part = requirement.part
    shapes = {section.shape for section in requirement.sections_of(zone)}
    plain = len(part.section) == 1 and not part.feature
    spares = zone.mate is not None and zone.mate.should_wear == "part"
    plain = plain and not does(part.name, "turns_by_hand")
    carries = bool(requirement.load.torque) and zone.wear == "none"
    return carries and shapes <= {"square", "flat"} and (plain or spares)


def turns_slot(asked: Requirement) -> bool:
    """Return whether a part ends in a thin blade that carries the torque, as a screwdriver."""
    end, *behind = asked.part.section
    width = end.width or 0.0
    thin = end.shape == "flat" and _BLADE_WIDE * end.size <= width
    thin = thin and end.size <= _BLADE_MM
    short = end.length <= _BLADE_LONG * width
    backed = any(s.narrowest_mm > end.size for s in behind[:1])
    # A blade drawn without its shank turns a slot if it is called so.
    backed = backed or (not behind and does(asked.part.name, "turns_screws"))
    return thin and short and backed and asked.load.twists(0)
