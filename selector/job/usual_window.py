"""The hardness that is usual where a part wears, by how and how hard it does.

Common practice for tools and machine parts; the table carries no source.
"""

from dataclasses import dataclass, replace

from selector.job.mate import (
    is_ductile,
    is_hard,
    is_harmless,
    is_soft,
    is_stone,
    is_tender,
    is_track,
    runs_in_bush,
    spares_bearing,
    yields,
)
from selector.job.working_end import (
    BROAD_MM,
    is_strip_blade,
    is_struck_edge,
    is_thin_jaw,
    is_tip,
    turns_by_jaws,
)
from selector.requirement import Requirement
from selector.requirement.mate_name import is_worked
from selector.requirement.trade_name import Trade, does, trade_window
from selector.requirement.zone import Zone


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
    ("sliding", "medium"): Usual(51.0, 61.0, 45.0, 24.0),
    ("sliding", "heavy"): Usual(57.0, 62.0, 52.0),
    ("abrasive", "light"): Usual(52.0, 62.0, 45.0),
    ("abrasive", "medium"): Usual(58.0, 63.0, 52.0),
    ("abrasive", "heavy"): Usual(59.0, 64.0, 55.0),
    ("rolling-contact", "light"): Usual(58.0, 63.0, 55.0),
    ("rolling-contact", "medium"): Usual(58.0, 63.0, 56.0),
    ("rolling-contact", "heavy"): Usual(59.0, 63.0, 57.0),
    # Swung, and tempered to purple.
    ("edge-impact", "light"): Usual(54.0, 60.0, 49.0),
    ("edge-impact", "medium"): Usual(53.0, 60.0, 48.0),
    ("edge-impact", "heavy"): Usual(52.0, 58.0, 45.0),
}
# Dogs, pawls, hooks and latches: what takes knocks on a face and has no edge to hold is
# tempered to blue or further. Common practice.
_KNOCKED = {
    "light": Usual(45.0, 57.0, 39.0), "medium": Usual(45.0, 57.0, 42.0),
    "heavy": Usual(45.0, 57.0, 42.0),
}  # fmt: skip
# Chisels and punches under the hammer: a little softer than what is swung. Common practice.
_HAMMERED = {
    "light": Usual(52.0, 60.0, 47.0), "medium": Usual(51.0, 60.0, 46.0),
    "heavy": Usual(52.0, 58.0, 45.0),
}  # fmt: skip
# Faces of hammers, sets and snaps, which are struck or strike. Common practice.
_STRUCK = {
    "light": Usual(46.0, 58.0, 40.0), "medium": Usual(48.0, 58.0, 44.0),
    "heavy": Usual(48.0, 58.0, 44.0),
}  # fmt: skip
# Jaws that turn another part by a slot: thin, they spread if soft and snap if hard. Common
# practice.
_JAWS = Usual(44.0, 56.0, 39.0)
# What has no edge to keep in grit wears sooner where it is softer, and does its work: plate
# for wear is 400 to 500 HB. Common practice. [HRC]
_PLATE_HRC = 42.0
# Punches, dies and shear blades under a press: harder than what is struck by hand, and the
# more so the thinner the work. Common practice.
_PRESSED = {
    "light": Usual(58.0, 62.0, 52.0), "medium": Usual(56.0, 61.0, 51.0),
    "heavy": Usual(54.0, 59.0, 50.0),
}  # fmt: skip
# Thin ends that push, set or bead by hand or by a lever: harder than dogs, a little softer than
# punches. Common practice.
_TIP = Usual(53.0, 61.0, 47.0)
# What presses on leather, paper or rubber may be softer. Common practice.
_PRESSED_SOFT = Usual(54.0, 61.0, 48.0)
# Brake and bending tools are bought pre-hardened too. Common practice. [HRC]
_BENDS_HRC = 28.0
# Punches and stakes that are hammered and form by a polished face: softer, it takes dents.
# Common practice.
_FORMS = Usual(50.0, 58.0, 45.0)
# What forms or guides steel now and then, or is pressed on hardened steel by more than a hand
# presses, is of pre-hardened bar, or harder. Common practice. [N]
_FORMS_LIGHTLY, _CLAMPS_N = Usual(28.0, 60.0, 20.0), 1000.0
# Burnishers, spinning tools, flaring cones. Common practice.
_RUBS = Usual(57.0, 63.0, 50.0)
# A broad face that is struck and sets what is soft works as it is bought, of medium-carbon bar:
# groovers for tinplate, setts, drifts. It is dressed sooner. Common practice. [HRC]
_STRUCK_SOFT_HRC = 5.0
# A shaft runs in bearing metal that is to wear as it is bought, of 190 HB and more. Common
# practice. [HRC]
_JOURNAL_HRC = 10.0
# The knife edges of balances rock on stone, and are as hard as they can be. Common practice.
_ON_STONE = Usual(59.0, 65.0, 55.0)
# Gauges and setting pieces: hard, as a face that wears by a hundredth is worn out. Common
# practice.
GAUGE = Usual(58.0, 64.0, 55.0)
# Dies and tools that work hotter than this: harder steel cracks in the heat. Common practice.
# [°C]
HOT_C = 300.0
_HOT = Usual(42.0, 52.0, 38.0)
# Flat and coiled springs by the thickness of their section: thin strip is run harder.
# Common practice of spring makers, no source. [mm], [HRC]
_SPRING = (
    (1.5, Usual(46.0, 52.0, 42.0)), (6.0, Usual(44.0, 50.0, 41.0)),
    (float("inf"), Usual(42.0, 48.0, 40.0)),
)  # fmt: skip


def usual_window(requirement: Requirement, zone: Zone) -> Usual | None:
    """Return the usual window of what wears so, None where that asks for no hardness."""
    usual = _WINDOW.get((zone.wear, zone.severity))
    if spares_mate(requirement, zone) or runs_in_bearing(requirement, zone):
        return None
    if usual is not None and requirement.part.is_toothed:
        usual = replace(usual, bought_hrc=None)
    if zone.wear == "sliding":
        usual = _sliding(requirement, zone, usual)
    elif usual is not None and zone.wear == "abrasive":
        usual = _in_grit(requirement, zone, usual)
    elif usual is not None and zone.wear == "edge-impact":
        usual = _at_an_edge(requirement, zone, usual)
    service_c = requirement.limit.service_temperature
    return _HOT if usual is not None and service_c is not None and service_c >= HOT_C else usual


def spares_mate(requirement: Requirement, zone: Zone) -> bool:
    """Return whether teeth or a roller are loaded now and then on what is as soft as bar."""
    mate = zone.mate
    if mate is None or zone.wear != "rolling-contact":
        return False
    # A pinion of plain bar outlasts a cast-iron wheel; a roller only where it runs lightly.
    outlasts = requirement.part.is_toothed and mate.should_wear != "part"
    if zone.severity not in ({"light", "medium"} if outlasts else {"light"}):
        return False
    return requirement.load.cycles != "fatigue" and is_soft(mate)


def runs_in_bearing(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a shaft that carries a torque turns in bearing metal that is to wear."""
    mate, thick = zone.mate, min(s.narrowest_mm for s in requirement.sections_of(zone))
    if mate is None or not spares_bearing(zone):
        return False
    turns = bool(requirement.load.torque) and not requirement.part.is_toothed
    usual = (zone.wear, zone.severity) == ("sliding", "medium")
    return usual and turns and thick >= BROAD_MM and is_soft(mate)


def _sliding(requirement: Requirement, zone: Zone, usual: Usual | None) -> Usual | None:
    """Return the usual window of what slides or rubs."""
    if requirement.load.impact == "hammered":
        return _hammered(requirement, zone, usual)
    if requirement.measures and not is_harmless(zone):
        return GAUGE
    if turns_by_jaws(requirement, zone) and (usual or is_thin_jaw(requirement, zone)):
        return _JAWS
    if usual is None:
        bears = _forms_steel(zone) or _clamps(requirement, zone)
        return _FORMS_LIGHTLY if bears else None
    if requirement.presses:
        bought = _BENDS_HRC if does(requirement.part.name, "bends_metal") else None
        return replace(usual, bought_hrc=bought)
    return _rubbing(requirement, zone, usual)


def _forms_steel(zone: Zone) -> bool:
    """Return whether a zone that slides lightly forms or guides steel, which is to wear."""
    mate = zone.mate
    works = mate is not None and mate.should_wear == "mate" and is_worked(mate.material)
    return zone.wear == "sliding" and works and not is_ductile(zone)


def _clamps(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a zone that slides lightly is pressed again and again on what is hard."""
    force_n = max(requirement.load.axial or 0.0, requirement.load.contact or 0.0)
    often = requirement.load.cycles == "fatigue" and force_n >= _CLAMPS_N
    return often and is_hard(zone) and not requirement.part.is_toothed


def _hammered(requirement: Requirement, zone: Zone, usual: Usual | None) -> Usual | None:
    """Return the usual window of a face that rubs under the hammer."""
    if zone.severity == "light" and is_harmless(zone):
        return None
    # On brass and copper a lightly used face dents and is dressed, as it is bought.
    bought = _STRUCK_SOFT_HRC if zone.severity == "light" and is_ductile(zone) else None
    return replace(GAUGE if requirement.measures else usual or _FORMS, bought_hrc=bought)


def _rubbing(requirement: Requirement, zone: Zone, usual: Usual) -> Usual | None:
    """Return the usual window of what rubs on its mate and turns nothing by it."""
    # What polishes or forms by rubbing is polished itself and keeps its face.
    if requirement.rubs:
        return _RUBS
    if zone.severity == "medium" and yields(zone):
        return None
    if is_stone(zone):
        return _ON_STONE
    if is_track(zone):
        return _WINDOW["rolling-contact", zone.severity]
    journal = runs_in_bush(zone) and usual.bought_hrc is not None
    return replace(usual, bought_hrc=_JOURNAL_HRC) if journal else usual


def _in_grit(requirement: Requirement, zone: Zone, usual: Usual) -> Usual | None:
    """Return the usual window of what grit or cutting wears."""
    # Of rakes and chutes the heat takes all hardness off again; hot knives melt their way.
    service_c = requirement.limit.service_temperature
    hot = service_c is not None and service_c >= HOT_C
    if hot and (is_harmless(zone) or not requirement.is_edged):
        return None
    if named := _by_trade(requirement):
        return named
    if requirement.has_edge or requirement.presses:
        return usual
    # What its name alone calls an edge is aimed as hard, and serves as plate does.
    return replace(usual, floor_hrc=_PLATE_HRC)


def _by_trade(requirement: Requirement) -> Usual | None:
    """Return the window of its own that a trade has for what grit or cutting wears."""
    name = requirement.part.name
    known: tuple[tuple[bool, Trade], ...] = (
        (does(name, "crops"), "crops"),
        (requirement.works_ground, "ground"),
        (requirement.cuts_metal, "cuts_metal"),
        (is_strip_blade(requirement), "thin_blade"),
        (requirement.is_edged and does(name, "keen"), "keen"),
    )
    return next((_of_trade(trade) for holds, trade in known if holds), None)


def _of_trade(trade: Trade) -> Usual:
    """Return the window that a trade runs its tools at."""
    window = trade_window(trade)
    return Usual(window.low_hrc, window.high_hrc, window.floor_hrc)


def _at_an_edge(requirement: Requirement, zone: Zone, usual: Usual) -> Usual | None:
    """Return the usual window of an edge or a face that takes blows or presses."""
    if is_tender(zone) and not requirement.presses:
        return None
    if requirement.presses:
        return _PRESSED_SOFT if is_harmless(zone) else _PRESSED[zone.severity]
    if is_tip(requirement, zone):
        return _TIP
    struck = requirement.load.impact == "hammered"
    if is_struck_edge(requirement, zone) or requirement.part.is_toothed:
        return _HAMMERED[zone.severity] if struck else usual
    faced = (_STRUCK if struck else _KNOCKED)[zone.severity]
    # A broad face that is struck, or backs thin work, and wears lightly works as it is bought.
    broad = min(s.narrowest_mm for s in requirement.sections_of(zone)) > BROAD_MM
    light = zone.severity == "light" and (struck or does(requirement.part.name, "backs"))
    if light and broad and is_harmless(zone):
        return None
    return replace(faced, bought_hrc=_STRUCK_SOFT_HRC) if light and broad else faced


def usual_spring(thick_mm: float) -> Usual:
    """Return the usual window of a spring by the thickness of its section."""
    return next(usual for most_mm, usual in _SPRING if thick_mm <= most_mm)
