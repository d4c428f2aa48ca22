"""Of what the trade makes such a part: which steels, treated how, are usual for which duty.

What physics leaves open, custom decides: a chisel of case-hardened mild steel may come out as
hard as one of chisel steel, and nobody makes one. Common practice of toolrooms and repair
shops, no source.
"""

from collections.abc import Iterator, Mapping

from selector.duty.damp import thickest_mm, where_hot, where_wet
from selector.duty.made_of import CERTIFIED, KINDS, LINED, MADE, SKIN, THROUGH, WEAR_PLATE, Make
from selector.duty.merit import ALSO, EDGES, NEVER, SELDOM, USUAL
from selector.duty.named_duty import Duty, duty_of
from selector.duty.strength import has_load
from selector.job.bath_check import is_too_harsh, too_mild_mm
from selector.job.demand import Demand
from selector.job.process import SPRAYED
from selector.job.screening import heated_thickness
from selector.job.sold import is_made_for
from selector.job.together import heats
from selector.job.treatment import Treatment
from selector.requirement import Requirement

_A, _S = ALSO, SELDOM
_SPRING_KINDS = frozenset({"spring", "high-carbon"})
# What is struck is tempered by the heat behind its end; nobody makes a gauge or a pin so.
_STRUCK = frozenset({"struck edge", "struck body", "struck face", "pressed edge", "drive"})
# Large pins, rollers and gears are made of alloy or case-hardening bar, not of tool steel.
_LARGE_IN_ALLOY = frozenset({"sliding", "rolling", "gear", "struck body", "drive"})
_TOOL_KINDS = frozenset({"water-tool", "oil-tool", "air-tool", "high-speed", "shock-tool"})
LARGE_MM, TOOL_STEEL_LARGE = 25.0, 0.2
# What bears a load again and again is of tough or cased steel, with no sulphides to crack. [-]
TOOL_STEEL_LOADED, FREE_CUTTING_LOADED = 0.5, 0.5
# Thinner pins and small hand tools are made of ground tool steel, bought to size, rather than
# of black bar; a disc or a ring is cut of bar as broad as it is. [mm]
SLENDER_MM = 12.0
_SLENDER: Mapping[tuple[Duty, str], float] = {
    ("sliding", "medium-carbon"): _A, ("tool", "medium-carbon"): _S, ("tool", "alloy"): _S,
    ("struck body", "medium-carbon"): _A, ("struck body", "alloy"): _A,
}  # fmt: skip
# Teeth left soft are rather of medium-carbon bar, which wears half as fast. [-]
_SOFT_TEETH = {"mild": 0.7, "free-cutting": 0.7}
# A struck or pressed edge wants this much carbon to hold it, a chisel of the smithy the least.
EDGE_CARBON_WT_PCT = 0.5
_POOR_EDGE = 0.2
# Strip for springs this rich makes knives and sickles too.
KEEN_CARBON_WT_PCT = 0.65
# So much thicker than oil hardens it, of the limit, steel for water is seldom oiled. [-]
OILED_BEYOND = 0.5
# Hard chrome laid on a part of one's own. [-]
CHROMED = 0.5
# Held in hot salt until it is bainite: thin parts of spring steel and the like.
_AUSTEMPERED = frozenset({"spring", "high-carbon", "alloy", "medium-carbon"})
# Made for oil or air they crack in water, however thin: nobody tries it on tool steel, on
# springs few do. Common practice.
_CRACK_IN_WATER = {
    "oil-tool": NEVER, "air-tool": NEVER, "high-speed": NEVER, "shock-tool": NEVER,
    "hot-work-tool": NEVER, "martensitic-stainless": NEVER, "bearing": _S, "spring": _S,
}  # fmt: skip
# Sold in blocks for moulds and the tools that press in them; no one cuts moving parts of it.
_MOULD, _OF_MOULD_STEEL = "prehard-mould", {"pressed face": USUAL, "plain": _S, "gauge": _S}
# Springs hardened by eye are of leaner steel than this.
FUSSY_CARBON_WT_PCT = 0.9
# Beyond so many heats one after another nobody stands at a flame who can send a lot out or load
# a furnace. Common practice. [-]
MANY_HEATS = 24
# Of a struck tool the end alone is hardened; what is hard all over must have its head let down.
_EYE_HARD = 0.7


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
    return _oiled(asked, work) * _fit(duty, work, asked)


def _oiled(asked: Requirement, work: Treatment) -> float:
    """Return what is left of a merit where oil is for thinner sections of the steel. [-]."""
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
    merit = _by_size(_by_duty(duty, work), duty, work, asked)
    if _hardens_eye(duty, work, asked):
        merit *= _EYE_HARD
    if work.hardens and work.by_eye and heats(work, asked.part) > MANY_HEATS:
        merit = min(merit, SELDOM)
    return where_wet(where_hot(merit, duty, work, asked), duty, work, asked)


def _hardens_eye(duty: Duty, work: Treatment, asked: Requirement) -> bool:
    """Return whether all of a struck tool is hardened at the torch, head and eye too."""
    struck = (
        duty in {"struck edge", "struck body", "struck face"}
        and asked.load.impact == "hammered"
    )
    return struck and work.by_eye and work.route.extent == "whole" and len(asked.zone) > 1


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
    if make == "as bought" and duty == "gear":
        merit *= _SOFT_TEETH.get(kind, 1.0)
    if make in {"hardened", "skin"}:
        merit = _by_analysis(merit, duty, work)
    merit = min(merit, _most(duty, work))
    if make == "prehard" and duty in {"spring", "strip blade"}:
        merit = USUAL if kind in _SPRING_KINDS else NEVER
    if make == "prehard" and duty == "soil" and kind in _SPRING_KINDS:
        # Hoes and edgers are cut cold of hard strip.
        merit = ALSO
    return merit


def _most(duty: Duty, work: Treatment) -> float:
    """Return the most that a way of hardening is worth, whatever it is made of."""
    most = [USUAL, *_most_of_process(duty, work), *_most_by_eye(duty, work)]
    kind = work.steel.kind
    if work.hardens and is_too_harsh(work.steel, work.medium):
        most.append(_CRACK_IN_WATER.get(kind, USUAL))
    if "residual" in work.route.temper and duty not in _STRUCK:
        most.append(SELDOM)
    if work.steel.family == _MOULD:
        most.append(_OF_MOULD_STEEL.get(duty, NEVER))
    return min(most)


def _most_of_process(duty: Duty, work: Treatment) -> Iterator[float]:
    """Return what a process that few firms offer or few send parts to is worth at most."""
    kind, route = work.steel.kind, work.route
    if route.kind == "laser" or (route.process == "austemper" and kind not in _AUSTEMPERED):
        yield SELDOM
    if route.cold_c is not None and route.place == "workshop":
        # Who owns a kiln seldom has dry ice.
        yield SELDOM
    if route.process == "chrome":
        # Rods are bought chromed; of new parts few are sent to be plated.
        yield CHROMED
    if route.process == "chrome" and duty == "pressed face":
        # Hard chrome cracks where what is under it gives way.
        yield SELDOM if kind in _TOOL_KINDS else NEVER


def _most_by_eye(duty: Duty, work: Treatment) -> Iterator[float]:
    """Return what steel that wants a measured heat is worth at most where there is an eye."""
    steel = work.steel
    if not (work.hardens and work.by_eye):
        return
    if steel.hardened and steel.hardened.quench == "air":
        # Steel that hardens in air wants a soak that nobody holds by eye.
        yield SELDOM
    if (
        duty == "spring"
        and steel.kind == "high-carbon"
        and _carbon(work) >= FUSSY_CARBON_WT_PCT
    ):
        # One per cent of carbon is soon overheated by eye, and a spring of it snaps.
        yield NEVER


def _by_analysis(merit: float, duty: Duty, work: Treatment) -> float:
    """Return the merit as it is for an edge rich or poor in carbon, and with boron in soil."""
    kind, carbon = work.steel.kind, _carbon(work)
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
    if duty in _LARGE_IN_ALLOY and kind in _TOOL_KINDS and thick_mm > LARGE_MM:
        return merit * TOOL_STEEL_LARGE
    turned = all(section.shape == "round" for section in asked.part.section)
    spare = work.stock is not None and duty == "plain" and turned
    short_mm = LARGE_MM if spare else SLENDER_MM
    if thick_mm <= short_mm and kind in _TOOL_KINDS and make_of(work) == "as bought":
        # A short end of ground rod is no waste, least of all of one that lies there; gauge
        # plate left soft is.
        return max(merit, ALSO if spare else SELDOM) if duty != "key" else merit
    loaded = asked.load.cycles == "fatigue" and has_load(asked.load)
    of_tool_steel = duty in {"sliding", "rolling"} and kind in _TOOL_KINDS
    if loaded and of_tool_steel and thick_mm > SLENDER_MM:
        return merit * TOOL_STEEL_LOADED
    if loaded and kind == "free-cutting" and make_of(work) == "as bought":
        return merit * FREE_CUTTING_LOADED
    slender = max(section.across_mm for section in asked.part.section) <= SLENDER_MM
    return _of_slender(merit, duty, work) if slender and make_of(work) == "hardened" else merit


def _of_slender(merit: float, duty: Duty, work: Treatment) -> float:
    """Return the merit as it is for a slender part that is hardened."""
    kind = work.steel.kind
    if duty == "gear" and kind == "water-tool":
        # Pinions of clocks and instruments are cut of the rod that their arbors are of.
        return min(ALSO, _most(duty, work))
    if duty == "struck body" and kind == "oil-tool":
        # Clicks, pawls and detents are filed out of ground stock.
        return min(USUAL, _most(duty, work))
    return min(merit, _SLENDER.get((duty, kind), USUAL))


def _carbon(work: Treatment) -> float:
    """Return the carbon of a steel, nil where it is not known. [wt %]."""
    carbon = work.steel.composition_wt_pct.get("C")
    return 0.0 if carbon is None else carbon.middle


def custom_words(merit: float) -> str:
    """Return how usual a treatment is, in words."""
    if merit >= USUAL:
        return "what such parts are made of"
    if merit >= ALSO - 0.2:
        return "such parts are made of it too"
    return "seldom used for this" if merit > NEVER else "nobody makes such a part of it"
