"""The pin that the traps of the trade are put to, and what is read from its advice."""

from typing import Any

from catalog import load_catalog
from selector.advice.output import advice_out
from selector.advice.record import AdviceOut
from selector.record import OptionOut
from selector.requirement import requirement_from
from tests.dog import only, varied
from tests.once import advise_once

# A plain pin in a shop with a good torch, a kitchen oven, water and oil.
PIN = """
safety_use = "could hurt"
[part]
name = "pin"
[[part.section]]
shape = "round"
size = 16
length = 80
[[zone]]
section = [1]
wear = "sliding"
severity = "medium"
[load]
impact = "none"
cycles = "static"
[workshop]
heat = [{ source = "oxy-propane" }, { source = "kitchen-oven" }]
bath = [{ medium = "water" }, { medium = "oil" }]
measure = ["magnet"]
"""
CHISEL = {
    "part.section": [
        {"shape": "hexagon", "size": 16, "length": 30},
        {"shape": "hexagon", "size": 16, "length": 120},
    ],
    "part.feature": [{"kind": "edge", "at": 0}],
    "zone": [
        {"section": [1], "wear": "edge-impact", "severity": "medium"},
        {"section": [2], "wear": "none"},
    ],
    "load.impact": "hammered",
}
SQUARE = {
    "part.section": [
        {"shape": "square", "size": 12.7, "length": 15},
        {"shape": "round", "size": 22, "length": 60},
    ],
    "zone": [{"section": [1], "wear": "none"}, {"section": [2], "wear": "none"}],
    "load.torque": "150 N m",
    "load.impact": "light",
}
SPRINGY = {
    "zone.0.wear": "none",
    "zone.0.hardness": {"min": "44 HRC", "max": "47 HRC"},
    "load.impact": "light",
}
OIL_ONLY = {"workshop.bath": [{"medium": "oil"}]}
WATER_ONLY = {"workshop.bath": [{"medium": "water"}]}
SENT_OUT = {"workshop.subcontract": True}
FURNACE = {"workshop.heat": [{"source": "oxy-propane"}, {"source": "muffle-furnace"}]}
TORCH = {"through-torch", "local-torch", "residual-heat"}


def ask(*changes: dict[str, Any], steels: tuple[str, ...] = (), **looked_at: str) -> AdviceOut:
    """Return the advice on the pin, changed; the rest is filled in."""
    asked = requirement_from(varied({k: v for c in changes for k, v in c.items()}, PIN))
    known = only(*steels) if steels else load_catalog()
    return advice_out(advise_once(asked, known, **looked_at))


def why_not(found: AdviceOut, steel: str, *kinds: str) -> set[str]:
    """Return why a steel is turned down for some kinds of route, all if none is named."""
    routes = load_catalog().routes
    reasons = {
        f"{item.gate}: {item.text}"
        for item in found.rejected
        if item.steel_slug == steel
        and (not kinds or {routes[route].kind for route in item.routes} & set(kinds))
    }
    assert reasons, f"nothing was turned down for {steel}"
    return reasons


def kinds_of(found: AdviceOut, steel: str) -> set[str]:
    """Return the kinds of route by which a steel is still an option."""
    return {option.route_kind for option in found.options if option.steel_slug == steel}


def hardened(found: AdviceOut) -> list[OptionOut]:
    """Return the options that are heated and quenched."""
    return [option for option in found.options if option.route_kind in TORCH]


def cautions(found: AdviceOut) -> set[str]:
    return {item.id for item in found.cautions}


def said(sentences: tuple[str, ...], *words: str) -> bool:
    """Return whether one sentence holds all the words."""
    return any(all(word in sentence for word in words) for sentence in sentences)
