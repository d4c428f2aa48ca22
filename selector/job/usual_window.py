"""The hardness that is usual where a part wears, by how and how hard it does."""

from dataclasses import replace

from selector.job.mate import (
    is_ductile,
    is_hard,
    is_harmless,
    is_soft,
    is_stone,
    is_tender,
    is_track,
    on_jewel,
    outlasts_steel,
    polishes,
    runs_in_bush,
    runs_on_hard,
    spares_bearing,
    yields,
)
from selector.job.window_table import (
    BENDS_HRC,
    BENT_POINT,
    CLAMPS_N,
    FORMS,
    FORMS_LIGHTLY,
    GAUGE,
    GROUND_TRUE,
    HAMMERED,
    HOT,
    HOT_C,
    JAWS,
    JOURNAL_HRC,
    KNOCKED,
    ON_STONE,
    PINION_IN_BRASS,
    PLATE_HRC,
    PREHARD_HRC,
    PRESSED,
    PRESSED_SOFT,
    PRESSES_BY_THREAD,
    RUBS,
    STRUCK,
    STRUCK_SOFT_HRC,
    TIP,
    WET_EDGE_FLOOR_HRC,
    WET_EDGE_HRC,
    WINDOW,
    WORKED_UPON_HRC,
    Usual,
    of_trade,
    usual_spring,
)
from selector.job.working_end import (
    BROAD_MM,
    drives_brass,
    is_bent_point,
    is_strip_blade,
    is_struck_edge,
    is_thin_jaw,
    is_tip,
    presses_by_thread,
    reaps,
    turns_by_jaws,
)
from selector.requirement import Requirement
from selector.requirement.bending import is_strip
from selector.requirement.measuring import is_lapped
from selector.requirement.trade_name import Trade, does, measures
from selector.requirement.zone import Zone

# What slides so lightly that it asks for no hardness, and is hard by its trade.
TRUE: tuple[Trade, ...] = (
    "guides_tools", "centre", "locates", "grips", "traces", "burnishes",
)  # fmt: skip


def usual_window(requirement: Requirement, zone: Zone) -> Usual | None:
    """Return the usual window of what wears so, None where that asks for no hardness."""
    usual = WINDOW.get((zone.wear, zone.severity))
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
    if usual is not None:
        usual = _spared(requirement, zone, usual)
    return HOT if usual is not None and service_c is not None and service_c >= HOT_C else usual


def _spared(requirement: Requirement, zone: Zone, usual: Usual) -> Usual:
    """Return a usual window as the hardness of the mate has it."""
    if drives_brass(requirement, zone):
        return PINION_IN_BRASS
    # On a mate that is hard, bar left soft wears at once; only a bush is there to be renewed.
    if runs_on_hard(zone):
        bush = _is_bush(requirement, zone)
        return replace(usual, bought_hrc=PREHARD_HRC if bush else None)
    # Teeth of medium-carbon bar run on a wheel of such bar for long.
    rolls = requirement.part.is_toothed and zone.wear == "rolling-contact"
    soft = rolls and zone.severity != "heavy" and zone.mate is not None and is_soft(zone.mate)
    return replace(usual, bought_hrc=JOURNAL_HRC) if soft else usual


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
    if kept_true := _kept_true(requirement, zone):
        return kept_true
    if turns_by_jaws(requirement, zone) and (usual or is_thin_jaw(requirement, zone)):
        return JAWS
    if usual is None:
        return _sliding_lightly(requirement, zone)
    if requirement.presses:
        bought = BENDS_HRC if does(requirement.part.name, "bends_metal") else None
        return replace(usual, bought_hrc=bought)
    return _rubbing(requirement, zone, usual)


def _sliding_lightly(requirement: Requirement, zone: Zone) -> Usual | None:
    """Return the usual window of what slides lightly, None where that asks for no hardness."""
    if on_jewel(zone):
        return WINDOW["sliding", "medium"]
    if does(requirement.part.name, "worked_upon") and not is_harmless(zone):
        return replace(of_trade("worked_upon"), bought_hrc=WORKED_UPON_HRC)
    bears = outlasts_steel(zone) or _clamps(requirement, zone)
    return FORMS_LIGHTLY if bears else None


def _kept_true(requirement: Requirement, zone: Zone) -> Usual | None:
    """Return the usual window of what must stay true however lightly it wears."""
    name, spared = requirement.part.name, is_harmless(zone)
    trade = next((trade for trade in TRUE if does(name, trade)), None)
    if trade is not None and not spared:
        return of_trade(trade)
    if not requirement.measures or spared:
        return None
    # Feelers and templates of strip bend in the hand.
    thick = max(section.narrowest_mm for section in requirement.part.section)
    if is_strip(requirement.part):
        return usual_spring(thick)
    return GAUGE if measures(name) or is_lapped(requirement) else GROUND_TRUE


def _clamps(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a zone that slides lightly is pressed again and again on what is hard."""
    force_n = max(requirement.load.axial or 0.0, requirement.load.contact or 0.0)
    often = requirement.load.cycles == "fatigue" and force_n >= CLAMPS_N
    return often and is_hard(zone) and not requirement.part.is_toothed


def _hammered(requirement: Requirement, zone: Zone, usual: Usual | None) -> Usual | None:
    """Return the usual window of a face that rubs under the hammer."""
    # What is driven home, or is to wear itself, is no tool for being hammered.
    spared = is_harmless(zone) or (zone.mate is not None and zone.mate.should_wear == "part")
    if zone.severity == "light" and (spared or does(requirement.part.name, "driven_home")):
        return None
    if zone.severity == "light" and does(requirement.part.name, "worked_upon"):
        return replace(of_trade("worked_upon"), bought_hrc=WORKED_UPON_HRC)
    if zone.severity != "heavy" and does(requirement.part.name, "backs"):
        return replace(STRUCK["light"], bought_hrc=STRUCK_SOFT_HRC)
    # On brass and copper a lightly used face dents and is dressed, as it is bought.
    bought = STRUCK_SOFT_HRC if zone.severity == "light" and is_ductile(zone) else None
    return replace(GAUGE if requirement.measures else usual or FORMS, bought_hrc=bought)


def _is_bush(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a sleeve is to wear in the place of what it slides on."""
    sleeve = all(section.shape == "tube" for section in requirement.part.section)
    loses = zone.mate is not None and zone.mate.should_wear == "part"
    return sleeve and loses and zone.wear == "sliding"


def _rubbing(requirement: Requirement, zone: Zone, usual: Usual) -> Usual | None:
    """Return the usual window of what rubs on its mate and turns nothing by it."""
    # What polishes or forms by rubbing is polished itself and keeps its face.
    if requirement.rubs or polishes(zone):
        return RUBS
    if presses_by_thread(requirement):
        return PRESSES_BY_THREAD
    if zone.severity == "medium" and yields(zone):
        return None
    if is_stone(zone):
        return ON_STONE
    if is_track(zone):
        return WINDOW["rolling-contact", zone.severity]
    journal = runs_in_bush(zone) and usual.bought_hrc is not None
    return replace(usual, bought_hrc=JOURNAL_HRC) if journal else usual


def _in_grit(requirement: Requirement, zone: Zone, usual: Usual) -> Usual | None:
    """Return the usual window of what grit or cutting wears."""
    # Of rakes and chutes the heat takes all hardness off again; hot knives melt their way.
    service_c = requirement.limit.service_temperature
    hot = service_c is not None and service_c >= HOT_C
    if hot and (is_harmless(zone) or not requirement.is_edged):
        return None
    if named := _by_trade(requirement, zone):
        return named
    if requirement.has_edge or requirement.presses:
        return _edge_in_wet(requirement, usual)
    # What its name alone calls an edge is aimed as hard, and serves as plate does.
    return replace(usual, floor_hrc=PLATE_HRC)


def _edge_in_wet(requirement: Requirement, usual: Usual) -> Usual:
    """Return the window of an edge as it is where it stands wet."""
    if requirement.limit.corrosion != "severe":
        return usual
    low_hrc = min(usual.low_hrc, WET_EDGE_HRC)
    return replace(usual, low_hrc=low_hrc, floor_hrc=min(usual.floor_hrc, WET_EDGE_FLOOR_HRC))


def _by_trade(requirement: Requirement, zone: Zone) -> Usual | None:
    """Return the window of its own that a trade has for what grit or cutting wears."""
    name = requirement.part.name
    if is_bent_point(requirement, zone):
        return BENT_POINT
    if does(name, "prises") and not requirement.cuts_metal:
        return KNOCKED[zone.severity]
    if requirement.measures and not is_harmless(zone):
        return GAUGE
    known: tuple[tuple[bool, Trade], ...] = (
        (does(name, "guides_tools"), "guides_tools"),
        (does(name, "crops") or reaps(requirement, zone), "crops"),
        (requirement.works_ground, "ground"),
        (requirement.cuts_metal, "cuts_metal"),
        (is_strip_blade(requirement), "thin_blade"),
        (requirement.is_edged and does(name, "keen"), "keen"),
    )
    return next((of_trade(trade) for holds, trade in known if holds), None)


def _at_an_edge(requirement: Requirement, zone: Zone, usual: Usual) -> Usual | None:
    """Return the usual window of an edge or a face that takes blows or presses."""
    if requirement.presses:
        return PRESSED_SOFT if is_harmless(zone) else PRESSED[zone.severity]
    if is_tender(zone):
        return None
    if is_tip(requirement, zone):
        return TIP
    if is_struck_edge(requirement, zone) or requirement.part.is_toothed:
        own: tuple[Trade, ...] = ("splits", "cuts_hot", "prises")
        if trade := next((t for t in own if does(requirement.part.name, t)), None):
            return of_trade(trade)
        return HAMMERED[zone.severity] if requirement.load.impact == "hammered" else usual
    return _on_a_face(requirement, zone)


def _on_a_face(requirement: Requirement, zone: Zone) -> Usual | None:
    """Return the usual window of a face that takes blows."""
    struck = requirement.load.impact == "hammered"
    if does(requirement.part.name, "prises"):
        return of_trade("prises")
    usual = (STRUCK if struck else KNOCKED)[zone.severity]
    if zone.severity != "light" or not (struck or does(requirement.part.name, "backs")):
        return usual
    # A broad face that wears lightly works as it is bought, and so does any on what dents none.
    broad = min(s.narrowest_mm for s in requirement.sections_of(zone)) > BROAD_MM
    if broad and is_harmless(zone):
        return None
    soft = broad or is_harmless(zone)
    return replace(usual, bought_hrc=STRUCK_SOFT_HRC) if soft else usual
