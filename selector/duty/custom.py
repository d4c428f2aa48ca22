"""Of what the trade makes such a part: which steels, treated how, are usual for which duty.

What physics leaves open, custom decides: a chisel of case-hardened mild steel may come out as
hard as one of chisel steel, and nobody makes one. Common practice of toolrooms and repair
shops, no source.
"""

from collections.abc import Mapping

from selector.duty.damp import thickest_mm, where_hot, where_wet
from selector.duty.made_of import CERTIFIED, KINDS, LINED, MADE, SKIN, THROUGH, WEAR_PLATE, Make
from selector.duty.merit import ALSO, EDGES, NEVER, SELDOM, USUAL
from selector.duty.named_duty import Duty, duty_of
from selector.duty.strength import has_load
from selector.duty.way import TOOL_KINDS, by_eye, carbon_wt_pct, most_of_way
from selector.job.bath_check import too_mild_mm
from selector.job.demand import Demand
from selector.job.process import SPRAYED
from selector.job.ready_hard import TURNED_HRC, delivered_hrc
from selector.job.screening import heated_thickness, is_pressed
from selector.job.sold import is_made_for
from selector.job.treatment import Treatment
from selector.requirement import Requirement

_A, _S = ALSO, SELDOM
_SPRING_KINDS = frozenset({"spring", "high-carbon"})
# Large pins, rollers and gears are made of alloy or case-hardening bar, not of tool steel.
_LARGE_IN_ALLOY = frozenset({"sliding", "rolling", "gear", "struck body", "drive"})
LARGE_MM, TOOL_STEEL_LARGE = 25.0, 0.2
# What bears a load again and again is of tough or cased steel, with no sulphides to crack. [-]
TOOL_STEEL_LOADED, FREE_CUTTING_LOADED = 0.5, 0.5
# Thinner pins and small hand tools are made of ground tool steel, bought to size, rather than
# of black bar; a disc or a ring is cut of bar as broad as it is. [mm]
SLENDER_MM = 12.0
_SLENDER: Mapping[tuple[Duty, str], float] = {
    ("sliding", "medium-carbon"): _A, ("tool", "medium-carbon"): _S, ("tool", "alloy"): _S,
    ("struck body", "medium-carbon"): _A, ("struck body", "alloy"): _A,
    ("pressed face", "alloy"): _S, ("sliding", "alloy"): _S,
}  # fmt: skip
# A struck or pressed edge wants this much carbon to hold it, a chisel of the smithy the least.
EDGE_CARBON_WT_PCT = 0.5
_POOR_EDGE = 0.2
# Strip for springs this rich makes knives and sickles too.
KEEN_CARBON_WT_PCT = 0.65
# So much thicker than oil hardens it, of the limit, steel for water is seldom oiled. [-]
OILED_BEYOND = 0.5
# Where a zone wants so much, steel of half a per cent of carbon is hardly tempered; it is made
# of steel with carbide to spare. Common practice. [HRC]
NOTHING_IN_HAND_HRC = 58.0
# Teeth of these, left as bought, soon wear: a gear left soft is of EN8 or the like. [-]
_SOFT_TEETH, SOFT_TEETH = frozenset({"mild", "free-cutting", "case-hardening"}), 0.5
# Plate bought hard is cut out for these by torch or disc, or ground.
_CUT_OUT = frozenset({"soil", "grit", "pressed face"})
# What holds or stops and is knocked, but neither hammered nor loaded, may be of these.
_HOLDS: Mapping[str, float] = {"oil-tool": _A, "air-tool": _S}


def make_of(work: Treatment) -> Make:
    """Return what is made of a bar, in the trade's rough terms."""
    route = work.route
    if work.condition.name == "hard-element":
        return "element"
    if route.process == "none":
        return "prehard" if work.condition.name == "prehard" else "as bought"
    if route.kind in SPRAYED:
        return "skin"
    named: dict[str, Make] = {
        "case": "case", "nitride": "nitrided", "chrome": "nitrided", "age": "aged",
        "anneal": "as bought", "normalise": "as bought",
    }  # fmt: skip
    return named.get(route.process, "hardened")


def custom(work: Treatment, demand: Demand, asked: Requirement) -> float:
    """Return how usual a treatment is for a zone's duty, 1 usual, 0 not made so. [-]."""
    duty = duty_of(demand, asked)
    if is_made_for(work, asked) and not asked.safety_critical:
        return where_wet(USUAL, duty, work, asked)
    merit = _in_its_bath(asked, work) * _fit(duty, work, asked)
    return min(merit, SELDOM) if _has_nothing_in_hand(demand, work) else merit


def _has_nothing_in_hand(demand: Demand, work: Treatment) -> bool:
    """Return whether a zone asks all the hardness that a steel lean in carbon has to give."""
    lean = work.steel.kind in {"medium-carbon", "alloy"}
    wanted = demand.low_hrc is not None and demand.low_hrc >= NOTHING_IN_HAND_HRC
    return lean and wanted and work.route.process == "quench"


def _in_its_bath(asked: Requirement, work: Treatment) -> float:
    """Return what is left of a merit in a bath milder than the steel is made for. [-]."""
    if is_pressed(work):
        # Some knife makers press thin oil steel; the oil that it is made for is the usual way.
        return ALSO
    limit_mm = too_mild_mm(asked, work)
    if limit_mm is None:
        return USUAL
    # The limit is said with an "about": what is little thicker is oiled too.
    beyond = heated_thickness(asked, work) / limit_mm - 1.0
    return max(SELDOM, USUAL - (USUAL - SELDOM) * beyond / OILED_BEYOND)


def _fit(duty: Duty, work: Treatment, asked: Requirement) -> float:
    """Return how usual a treatment is for a duty, whatever bath its section asks for. [-]."""
    if asked.safety_critical:
        # Where no bar is hard enough a firm hardens it, of what such parts are made of.
        sent = SELDOM * _by_duty(duty, work) if work.route.place == "subcontract" else NEVER
        return max(CERTIFIED.get(make_of(work), {}).get(work.steel.kind, NEVER), sent)
    merit = _by_load(_by_size(_by_duty(duty, work), duty, work, asked), duty, work, asked)
    if work.hardens and work.by_eye:
        merit = by_eye(merit, duty, work, asked)
    return where_wet(where_hot(merit, duty, work, asked), duty, work, asked)


def _by_duty(duty: Duty, work: Treatment) -> float:
    """Return how usual a kind of steel, made so, is for a duty."""
    make, kind = make_of(work), work.steel.kind
    if make == "hardened":
        merit = THROUGH[duty].get(kind, NEVER)
    elif make == "skin":
        merit = SKIN.get(duty, THROUGH[duty]).get(kind, NEVER)
    elif kind == WEAR_PLATE:
        merit = LINED.get(duty, NEVER)
    else:
        spread = KINDS[make]
        merit = MADE[make].get(duty, NEVER) * spread.get(kind, spread.get("other", NEVER))
    if make in {"hardened", "skin"}:
        merit = _by_analysis(merit, duty, work)
    if make == "as bought" and duty == "gear" and kind in _SOFT_TEETH:
        merit *= SOFT_TEETH
    merit = min(merit, most_of_way(duty, work))
    return _bought_hard(merit, duty, work) if make == "prehard" else merit


def _bought_hard(merit: float, duty: Duty, work: Treatment) -> float:
    """Return the merit as it is for bar, strip or plate that its maker hardened."""
    springy = work.steel.kind in _SPRING_KINDS
    if duty in {"spring", "strip blade"}:
        return USUAL if springy else NEVER
    if duty == "soil" and springy:
        # Hoes and edgers are cut cold of hard strip.
        return ALSO
    # Harder than a small shop machines, it is cut out whole or not used.
    machined = duty not in _CUT_OUT and delivered_hrc(work.condition) > TURNED_HRC
    return min(merit, SELDOM) if machined else merit


def _by_analysis(merit: float, duty: Duty, work: Treatment) -> float:
    """Return the merit as it is for an edge rich or poor in carbon, and with boron in soil."""
    kind, carbon = work.steel.kind, carbon_wt_pct(work)
    if duty in EDGES and kind == "medium-carbon":
        return ALSO if carbon >= EDGE_CARBON_WT_PCT else min(merit, _POOR_EDGE)
    if duty == "soil" and "B" in work.steel.composition_wt_pct:
        # Shares and tines are of boron steel; chromium and nickel are dear to wear away.
        return USUAL
    keen = duty == "cutting edge" and kind == "spring" and carbon >= KEEN_CARBON_WT_PCT
    return max(merit, ALSO) if keen else merit


def _by_size(merit: float, duty: Duty, work: Treatment, asked: Requirement) -> float:
    """Return the merit as it is for a thick or a slender part."""
    thick_mm, kind = thickest_mm(asked), work.steel.kind
    if duty in _LARGE_IN_ALLOY and kind in TOOL_KINDS and thick_mm > LARGE_MM:
        return merit * TOOL_STEEL_LARGE
    turned = all(section.shape == "round" for section in asked.part.section)
    spare = work.stock is not None and duty == "plain" and turned
    short_mm = LARGE_MM if spare else SLENDER_MM
    if thick_mm <= short_mm and kind in TOOL_KINDS and make_of(work) == "as bought":
        # A short end of ground rod is no waste, least of all of one that lies there; gauge
        # plate left soft is.
        return max(merit, ALSO if spare else SELDOM) if duty == "plain" else merit
    slender = max(section.across_mm for section in asked.part.section) <= SLENDER_MM
    return _of_slender(merit, duty, work) if slender and make_of(work) == "hardened" else merit


def _by_load(merit: float, duty: Duty, work: Treatment, asked: Requirement) -> float:
    """Return the merit as it is for a part that bears a load, or none and a knock."""
    kind, make = work.steel.kind, make_of(work)
    loaded = has_load(asked.load)
    struck = [zone.severity for zone in asked.zone if zone.wear == "edge-impact"]
    if duty == "struck edge" and make == "hardened" and set(struck) == {"light"}:
        # Stamps, awls and prongs that a light hammer drives are cut of gauge plate too.
        return max(merit, _HOLDS["oil-tool"]) if kind == "oil-tool" else merit
    if duty == "struck body" and make == "hardened":
        held = not loaded and asked.load.impact != "hammered"
        return max(merit, _HOLDS.get(kind, NEVER)) if held else merit
    worked = loaded or asked.load.impact != "none"
    if not worked or asked.load.cycles != "fatigue":
        return merit
    if duty in {"sliding", "rolling"} and kind in TOOL_KINDS:
        return merit * TOOL_STEEL_LOADED if thickest_mm(asked) > SLENDER_MM else merit
    if kind == "free-cutting" and make == "as bought":
        return merit * FREE_CUTTING_LOADED
    return merit


def _of_slender(merit: float, duty: Duty, work: Treatment) -> float:
    """Return the merit as it is for a slender part that is hardened."""
    kind = work.steel.kind
    if duty == "gear" and kind == "water-tool":
        # Pinions of clocks and instruments are cut of the rod that their arbors are of.
        return min(ALSO, most_of_way(duty, work))
    if duty == "struck body" and kind == "oil-tool":
        # Clicks, pawls and detents are filed out of ground stock.
        return most_of_way(duty, work)
    return min(merit, _SLENDER.get((duty, kind), USUAL))


def custom_words(merit: float) -> str:
    """Return how usual a treatment is, in words."""
    if merit >= USUAL:
        return "what such parts are made of"
    if merit >= ALSO - 0.2:
        return "such parts are made of it too"
    return "seldom used for this" if merit > NEVER else "nobody makes such a part of it"
