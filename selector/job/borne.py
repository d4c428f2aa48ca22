"""What a zone must be right through so as to bear its load: springs, levers, driving ends."""

from dataclasses import dataclass

from selector.job.drive import is_drive_end, turns_slot
from selector.job.window_table import Usual, of_trade, usual_spring
from selector.mechanics.section import bending_stress_mpa
from selector.requirement import Requirement
from selector.requirement.bending import SOFT_BENDS_MPA
from selector.requirement.trade_name import Trade, does
from selector.requirement.zone import Zone

# What hardness is for, where a load is borne by it.
FOR_CORNERS, FOR_SPRING = "for the corners of the drive", "to spring back"
FOR_GRIP = "to spring and grip"
# Driving squares and hexagons: floor of ISO 3315:2018, top by common practice.
_DRIVE = Usual(39.0, 50.0, 39.0)
# Smaller squares are of silver steel tempered to blue, and hexagon keys harder still. Common
# practice. [mm]
_SMALL_MM, _SMALL_DRIVE, _HEX_KEY = 6.0, Usual(39.0, 54.0, 39.0), Usual(46.0, 58.0, 42.0)
# The blade of a screwdriver: floor of ASME B107.15-2002, 5.4.3, top by common practice.
_BLADE = Usual(50.0, 58.0, 48.0)
# Where lives depend on it, bar is certified as hard as this; a part is tough before all else.
# Common practice. [HRC]
CERTIFIED_HRC = 40.0
_VITAL_DRIVE = Usual(28.0, CERTIFIED_HRC, 24.0)


# What bends in use, and why it is hard.
_LEVERS: dict[Trade, str] = {
    "prises": "a lever that must spring back from what it prises",
    "pulls": "a hook that its pull would open",
}


@dataclass(frozen=True, slots=True)
class Borne:
    """The window that bears a load, why, and what it is for.

    One that is `carried` may be as hard as another end of the part asks to be.
    """

    usual: Usual
    reason: str
    purpose: str
    carried: bool = False


def springing(requirement: Requirement, zone: Zone) -> Borne | None:
    """Return the window of a spring, by the thickness of its section, and of a collet."""
    if not requirement.is_spring:
        grips = does(requirement.part.name, "collet") and _works(zone)
        reason = "it grips by springing (common practice)"
        return Borne(of_trade("collet"), reason, FOR_GRIP) if grips else None
    thick = max(section.narrowest_mm for section in requirement.sections_of(zone))
    reason = f"a spring of {thick:g} mm (common practice)"
    if requirement.part.shape_class != "coil-spring" and not requirement.is_named_spring:
        # Of a piece that its load alone makes a spring, a stout handle is none.
        if not _stays_bent(requirement, zone):
            return None
        reason = "thin steel that this load would bend for good if it were soft: spring temper"
    return Borne(usual_spring(thick), reason, FOR_SPRING)


def _works(zone: Zone) -> bool:
    """Return whether a zone wears or lies at the working end."""
    return zone.wear != "none" or 1 in zone.section


def prising(requirement: Requirement, zone: Zone) -> Borne | None:
    """Return the window of a lever where it would stay bent, None elsewhere."""
    trade = next((t for t in _LEVERS if does(requirement.part.name, t)), None)
    if trade is None or not requirement.hardly_wears or not _stays_bent(requirement, zone):
        return None
    return Borne(of_trade(trade), f"{_LEVERS[trade]} (common practice)", FOR_SPRING)


def _stays_bent(requirement: Requirement, zone: Zone) -> bool:
    """Return whether its load bends a zone for good if it is soft; an end if none is said."""
    load, part = requirement.load, requirement.part
    if not load.bending:
        return 1 in zone.section
    bent = [part.section[n - 1] for n in zone.section if load.bends(n - 1)]
    shapes = ((s.shape, s.size, s.width, s.bore) for s in bent)
    return any(float(bending_stress_mpa(load.bending, *s)) > SOFT_BENDS_MPA for s in shapes)


def turning(requirement: Requirement, zone: Zone) -> Borne | None:
    """Return the window of what turns another part by its corners or its blade, if it does."""
    spares = zone.mate is not None and zone.mate.should_wear == "part"
    if turns_slot(requirement) and zone.section == (1,) and not spares:
        return Borne(_BLADE, "a blade that turns a slot (common practice)", FOR_CORNERS)
    return _driving(requirement, zone) if is_drive_end(requirement, zone) else None


def _driving(requirement: Requirement, zone: Zone) -> Borne:
    """Return the window of a zone that drives by its corners."""
    widest = max(requirement.sections_of(zone), key=lambda section: section.size)
    usual = _DRIVE if widest.size > _SMALL_MM else _SMALL_DRIVE
    reason = "a driving end: at least 39 HRC (ISO 3315:2018), not so hard that it snaps"
    if widest.shape == "hexagon" and zone.section == (1,):
        usual, reason = _HEX_KEY, "a hexagon that enters a screw (common practice)"
    if requirement.safety_critical:
        usual = _VITAL_DRIVE
        reason = "a driving end, and lives depend on it: pre-hardened bar (common practice)"
    return Borne(usual, reason, FOR_CORNERS, carried=True)
