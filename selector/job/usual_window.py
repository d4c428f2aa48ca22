"""The hardness and depth that are usual where a part wears, by how and how hard it does.

Common practice for tools and machine parts; the table carries no source.
"""

import re
from dataclasses import dataclass, replace

from selector.hardness_scale import hrc_from_hv
from selector.mechanics.contact import hertz_line
from selector.requirement import Requirement
from selector.requirement.part import Part
from selector.requirement.part_name import module_mm, stamps
from selector.requirement.zone import Mate, Zone


@dataclass(frozen=True, slots=True)
class Usual:
    """A usual window, and the floor below which the zone does not do its work. [HRC].

    What is bought ready and not hardened for it works from `bought_hrc` on, if that is less.
    """

    low_hrc: float
    high_hrc: float
    floor_hrc: float
    bought_hrc: float | None = None


# Pins and shafts of pre-hardened bar run in bushes everywhere, and wear sooner; who hardens one
# wants it hard.
_WINDOW: dict[tuple[str, str], Usual] = {
    ("sliding", "medium"): Usual(54.0, 61.0, 45.0, 24.0),
    ("sliding", "heavy"): Usual(57.0, 62.0, 52.0),
    ("abrasive", "light"): Usual(54.0, 62.0, 45.0),
    ("abrasive", "medium"): Usual(58.0, 63.0, 52.0),
    ("abrasive", "heavy"): Usual(59.0, 64.0, 55.0),
    ("rolling-contact", "light"): Usual(58.0, 63.0, 55.0),
    ("rolling-contact", "medium"): Usual(58.0, 63.0, 56.0),
    ("rolling-contact", "heavy"): Usual(59.0, 63.0, 57.0),
    # Struck or swung, and drawn to purple or blue.
    ("edge-impact", "light"): Usual(54.0, 60.0, 49.0),
    ("edge-impact", "medium"): Usual(53.0, 60.0, 48.0),
    ("edge-impact", "heavy"): Usual(52.0, 58.0, 45.0),
}
# What cuts metal is as hard as can be. Common practice.
_CUTS_METAL = Usual(58.0, 65.0, 54.0)
# Dogs, pawls, hooks and hammer faces: what takes knocks on a face and has no edge to hold is
# drawn to blue or further. Common practice.
_KNOCKED = {
    "light": Usual(46.0, 59.0, 40.0), "medium": Usual(50.0, 59.0, 45.0),
    "heavy": Usual(48.0, 58.0, 44.0),
}  # fmt: skip
# Jaws that turn another part by a slot: thin, they spread if soft and snap if hard. Common
# practice.
_JAWS = Usual(46.0, 56.0, 40.0)
# What has no edge to keep in grit wears sooner where it is softer, and does its work: plate
# for wear is 400 to 500 HB. Common practice. [HRC]
_PLATE_HRC = 42.0
# Shares, tines and hoes: softer than wear alone would have them, as stones break what is
# harder. Common practice.
_GROUND = Usual(44.0, 55.0, 38.0)
# Punches, dies and shear blades under a press: harder than what is struck by hand, and the
# more so the thinner the work. Common practice.
_PRESSED = {
    "light": Usual(58.0, 62.0, 52.0), "medium": Usual(56.0, 61.0, 51.0),
    "heavy": Usual(54.0, 59.0, 50.0),
}  # fmt: skip
# Punches and stakes that are hammered and form by a polished face: softer, it takes dents.
# Common practice.
_FORMS = Usual(50.0, 58.0, 45.0)
# Burnishers, spinning tools, flaring cones. Common practice.
_RUBS = Usual(57.0, 63.0, 50.0)
# A broad face that is struck and sets what is soft works as it is bought, of medium-carbon bar:
# groovers for tinplate, setts, drifts. It is dressed sooner. Common practice. [HRC], [mm]
_STRUCK_SOFT_HRC, BROAD_MM = 5.0, 12.0
# Plain bar and bearing metal are no harder; nor is what is there to break, or to wear before a
# soft mate does. Common practice. [HRC]
PLAIN_BAR_HRC = 22.0
# What steel runs in without being worn itself.
_BEARING = re.compile(
    r"bronze|brass|gunmetal|white ?metal|babbitt|cast[- ]iron|nylon|acetal|plastic|ptfe|wood",
    re.IGNORECASE,
)
# Gauges and setting pieces: hard, as a face that wears by a hundredth is worn out. Common
# practice.
GAUGE = Usual(58.0, 64.0, 55.0)
# Dies and tools that work hotter than this: harder steel cracks in the heat. Common practice.
# [°C]
HOT_C = 300.0
_HOT = Usual(44.0, 52.0, 40.0)
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
# Depths are asked in such steps. [mm]
_STEP_MM = 0.05
# Of the thickness of a tooth, which is 1.57 modules: a case of a quarter of the module, or it
# leaves too little core. Common practice. [-]
_TOOTH_SHARE, _TOOTH_MODULES = 0.16, 1.57
# What a gauge may touch without wearing. Common practice.
_WEARS_NOTHING = re.compile(
    r"wood|timber|plastic|nylon|acetal|leather|cork|felt|rubber|wax|paper|card|cloth|clay",
    re.IGNORECASE,
)
# Flat and coiled springs by the thickness of their section: thin strip is run harder.
# Common practice of spring makers, no source. [mm], [HRC]
_SPRING = (
    (1.5, Usual(46.0, 52.0, 42.0)), (6.0, Usual(44.0, 50.0, 41.0)),
    (float("inf"), Usual(42.0, 48.0, 40.0)),
)  # fmt: skip


def usual_depth_mm(requirement: Requirement, zone: Zone) -> float:
    """Return the depth that wear asks, of thin work no more than hard right through. [mm]."""
    middle = min(section.most_depth_mm for section in requirement.sections_of(zone))
    teeth = [_TOOTH_SHARE * thick_mm for thick_mm in _teeth_mm(requirement.part)]
    pressed = _pressed_mm(requirement, zone) if zone.wear == "sliding" else 0.0
    asked = min(max(_DEPTH_MM[zone.wear], pressed), *teeth, middle)
    # As a shop would write it; half a thin section is what it is.
    steps = max(round(asked / _STEP_MM), 1) if asked else 0
    return min(round(steps * _STEP_MM, 2), middle)


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


def usual_window(requirement: Requirement, zone: Zone) -> Usual | None:
    """Return the usual window of what wears so, None where that asks for no hardness."""
    usual = _WINDOW.get((zone.wear, zone.severity))
    if spares_teeth(requirement, zone) or runs_in_bearing(requirement, zone):
        return None
    if usual is not None and requirement.part.is_toothed:
        usual = replace(usual, bought_hrc=None)
    if zone.wear == "sliding":
        usual = _sliding(requirement, zone, usual)
    elif usual is not None and zone.wear == "abrasive":
        usual = _in_grit(requirement, usual)
    elif usual is not None and zone.wear == "edge-impact":
        usual = _at_an_edge(requirement, zone, usual)
    service_c = requirement.limit.service_temperature
    return _HOT if usual is not None and service_c is not None and service_c >= HOT_C else usual


def spares_teeth(requirement: Requirement, zone: Zone) -> bool:
    """Return whether teeth are loaded now and then, lightly, against what is as soft as bar."""
    mate = zone.mate
    lightly = (zone.wear, zone.severity) == ("rolling-contact", "light")
    if mate is None or not requirement.part.is_toothed or not lightly:
        return False
    return requirement.load.cycles != "fatigue" and _is_soft(mate)


def runs_in_bearing(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a shaft that carries a torque turns in bearing metal that is to wear."""
    mate, thick = zone.mate, min(s.narrowest_mm for s in requirement.sections_of(zone))
    if mate is None or mate.should_wear != "mate" or _BEARING.search(mate.material) is None:
        return False
    turns = bool(requirement.load.torque) and not requirement.part.is_toothed
    usual = (zone.wear, zone.severity) == ("sliding", "medium")
    return usual and turns and thick >= BROAD_MM and _is_soft(mate)


def _is_soft(mate: Mate) -> bool:
    """Return whether a mate is no harder than plain bar, by its figure or its metal."""
    if mate.hardness is None:
        return _BEARING.search(mate.material) is not None
    return float(hrc_from_hv(mate.hardness, outside="extend")) <= PLAIN_BAR_HRC


def _sliding(requirement: Requirement, zone: Zone, usual: Usual | None) -> Usual | None:
    """Return the usual window of what slides or rubs."""
    harmless = zone.mate is not None and _WEARS_NOTHING.search(zone.mate.material)
    if requirement.load.impact == "hammered":
        return replace(GAUGE if requirement.measures else usual or _FORMS, bought_hrc=None)
    if requirement.measures and not harmless:
        return GAUGE
    if usual is None:
        return None
    if requirement.presses:
        return replace(usual, bought_hrc=None)
    if _turns_by_jaws(requirement, zone):
        return _JAWS
    # What polishes or forms by rubbing is polished itself and keeps its face.
    return _RUBS if requirement.rubs else usual


def _turns_by_jaws(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a slot in the zone carries the torque to another part."""
    part = requirement.part
    slots = {part.place(feature) for feature in part.feature if feature.kind == "slot"}
    return any(requirement.load.twists(n - 1) and n - 1 in slots for n in zone.section)


def _in_grit(requirement: Requirement, usual: Usual) -> Usual:
    """Return the usual window of what grit or cutting wears."""
    if requirement.works_ground:
        return _GROUND
    if requirement.cuts_metal:
        return _CUTS_METAL
    if requirement.has_edge or requirement.presses:
        return usual
    # What its name alone calls an edge is aimed as hard, and serves as plate does.
    return replace(usual, floor_hrc=_PLATE_HRC)


def _at_an_edge(requirement: Requirement, zone: Zone, usual: Usual) -> Usual:
    """Return the usual window of an edge or a face that takes blows or presses."""
    if requirement.presses:
        return _PRESSED[zone.severity]
    if is_struck_edge(requirement, zone) or requirement.part.is_toothed:
        return usual
    light = requirement.load.impact == "hammered" and zone.severity == "light"
    knocked = _KNOCKED[zone.severity]
    # A broad struck face that wears lightly works as it is bought.
    return replace(knocked, bought_hrc=_STRUCK_SOFT_HRC) if light else knocked


def is_struck_edge(requirement: Requirement, zone: Zone) -> bool:
    """Return whether what takes blows or knocks is an edge, as thin as one, or a stamp."""
    thin = min(s.narrowest_mm for s in requirement.sections_of(zone)) <= BROAD_MM
    struck = requirement.load.impact == "hammered"
    return requirement.is_edged or (struck and (thin or stamps(requirement.part.name)))


def usual_spring(thick_mm: float) -> Usual:
    """Return the usual window of a spring by the thickness of its section."""
    return next(usual for most_mm, usual in _SPRING if thick_mm <= most_mm)
