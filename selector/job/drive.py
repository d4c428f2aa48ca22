"""Which ends turn another part, and which squares and flats are keys."""

from selector.requirement import Requirement
from selector.requirement.zone import Zone

# A wider hexagon is no key but turned by a spanner, which bears along its flats. [mm]
KEYS_MM = 14.0
# A flat end at least so many times as wide as it is thick, and no longer than twice its width,
# turns a slot where thicker steel stands behind it. Estimate. [-]
_BLADE_WIDE, _BLADE_LONG = 3.0, 2.0


def is_drive_end(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a zone lies on a square, or a hexagon as of keys, that carries torque."""
    load, part = requirement.load, requirement.part
    turned = [part.section[n - 1] for n in zone.section if load.twists(n - 1)]
    drives = any(
        section.shape == "square" or (section.shape == "hexagon" and section.size <= KEYS_MM)
        for section in turned
    )
    return drives and not is_key(requirement, zone)


def is_key(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a zone is a key: a plain square or flat, or to spare its mate."""
    part = requirement.part
    shapes = {section.shape for section in requirement.sections_of(zone)}
    plain = len(part.section) == 1 and not part.feature
    spares = zone.mate is not None and zone.mate.should_wear == "part"
    carries = bool(requirement.load.torque) and zone.wear == "none"
    return carries and shapes <= {"square", "flat"} and (plain or spares)


def turns_slot(asked: Requirement) -> bool:
    """Return whether a part ends in a thin blade that carries the torque, as a screwdriver."""
    end, *behind = asked.part.section
    width = end.width or 0.0
    thin = end.shape == "flat" and width >= _BLADE_WIDE * end.size
    short = end.length <= _BLADE_LONG * width
    backed = bool(behind) and behind[0].narrowest_mm > end.size
    return thin and short and backed and asked.load.twists(0)
