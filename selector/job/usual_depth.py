"""How deep a zone must be hard where it wears, by how it does and what presses on it.

Common practice for tools and machine parts; the table carries no source.
"""

from selector.mechanics.contact import hertz_line
from selector.requirement import Requirement
from selector.requirement.part import Part
from selector.requirement.part_name import module_mm
from selector.requirement.trade_name import does
from selector.requirement.zone import Zone

# Depth that keeps the zone from wearing or crushing through, in mm.
_DEPTH_MM = {
    "none": 0.0,
    "sliding": 0.1,
    "abrasive": 0.3,
    "rolling-contact": 0.8,
    "edge-impact": 1.0,
}
# Times the depth of the greatest shear under a line contact that a track is hard. Common
# practice. [-]
_SHEAR_DEPTHS = 4.0
# A track for rollers whose force is known is hard at least so deep, however little that is.
# From memory of the catalogues of needle bearings. [mm]
_LEAST_ROLLED_MM = 0.3
# Depths are asked in such steps. [mm]
_STEP_MM = 0.05
# Of the thickness of a tooth, which is 1.57 modules: a case of a quarter of the module, or it
# leaves too little core. Common practice. [-]
_TOOTH_SHARE, _TOOTH_MODULES = 0.16, 1.57


def usual_depth_mm(requirement: Requirement, zone: Zone) -> float:
    """Return the depth that wear asks, of thin work no more than hard right through. [mm]."""
    middle = min(section.most_depth_mm for section in requirement.sections_of(zone))
    teeth = [_TOOTH_SHARE * thick_mm for thick_mm in _teeth_mm(requirement.part)]
    asked = min(_worn_mm(requirement, zone), *teeth, middle)
    # As a shop would write it; half a thin section is what it is.
    steps = max(round(asked / _STEP_MM), 1) if asked else 0
    return min(round(steps * _STEP_MM, 2), middle)


def _worn_mm(requirement: Requirement, zone: Zone) -> float:
    """Return the depth that wear and the force on a track ask, however thin the work. [mm]."""
    pressed = _pressed_mm(requirement, zone)
    if zone.wear == "rolling-contact" and pressed and not requirement.part.is_toothed:
        # The flank of a cam is struck by its roller as well.
        cam = does(requirement.part.name, "cam")
        return max(_DEPTH_MM["rolling-contact"] if cam else _LEAST_ROLLED_MM, pressed)
    usual = _DEPTH_MM["rolling-contact" if _is_track(requirement, zone) else zone.wear]
    return max(usual, pressed) if zone.wear == "sliding" else usual


def _is_track(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a rim slides under a force that comes again and again, as a cam's does."""
    # It is cased as deep as what rolls: what wears through is the end of it.
    load, heavy = requirement.load, (zone.wear, zone.severity) == ("sliding", "heavy")
    rim = all(section.length <= section.size for section in requirement.sections_of(zone))
    pressed = bool(load.contact) and load.cycles == "fatigue" and rim
    return heavy and (pressed or does(requirement.part.name, "cam"))


def _teeth_mm(part: Part) -> list[float]:
    """Return how thick the teeth of a part are, as given or by its name. [mm]."""
    given = [f.size for f in part.feature if f.kind == "teeth" and f.size is not None]
    if given or not part.is_toothed:
        return given
    module = module_mm(part.name, max(section.size for section in part.section))
    return [] if module is None else [_TOOTH_MODULES * module]


def _pressed_mm(requirement: Requirement, zone: Zone) -> float:
    """Return how deep a round track must be hard under the force on it. [mm]."""
    force_n = requirement.load.contact
    rounds = [s for s in requirement.sections_of(zone) if s.shape in {"round", "tube"}]
    if not force_n or not rounds:
        return 0.0
    thin = min(rounds, key=lambda section: section.size)
    contact = hertz_line(force_n / thin.length, 0.5 * thin.size)
    return _SHEAR_DEPTHS * float(contact.shear_depth_mm)
