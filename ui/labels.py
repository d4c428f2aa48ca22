"""Words, units and number formats of the page."""

import re
from collections.abc import Mapping
from typing import Literal

from selector.record import CostOut, OptionOut, Spread
from selector.wording import condition_words

_WORDS = {
    # safety use
    "could hurt": "Could hurt someone nearby",
    "safety_use.none": "Nothing but the part",
    "brake": "It is part of a brake",
    "steering": "It is part of steering",
    "lifting": "It lifts or holds a load overhead",
    "pressure": "It holds pressure",
    "fast rotation": "It rotates fast",
    # form
    "part.condition.bar": "New bar",
    "part.condition.hard": "Already hard",
    "part.condition.finished": "Finished part",
    "bevel": "Bevel gear",
    "edge-impact": "Edge under blows",
    "toolpost-grinder": "Tool-post grinder",
    "lap": "Lapping",
    "static": "Steady load",
    "occasional": "Now and then",
    "fatigue": "Again and again (fatigue)",
    "dim": "Dim room",
    "sun": "Full sun",
    "zone.mate.should_wear.mate": "The other part",
    "zone.mate.should_wear.part": "This part",
    "zone.wear.none": "No wear",
    "workshop.stock.evidence.none": "Nothing",
    "glass": "Glass scratch",
    "rebound": "Rebound tester",
    "tester": "Hardness tester",
    "coupon": "Test piece",
    "cheap": "Low cost",
    "quick": "Soon in hand",
    "safe hands": "Forgiving of the operator",
    # demands
    "hard_enough": "Hard enough",
    "not_too_hard": "Not too hard",
    "snap": "Does not snap",
    "contact": "Stands the contact pressure",
    "blow": "Stands the blow",
    "pair": "The right one of the pair wears",
    "hard_end": "Hardness ends clear of notches",
    "skin": "No soft skin where it wears",
    "cold": "Tough in the cold of service",
    "service_heat": "Stays hard in the heat of service",
    "depth": "Hard deep enough",
    "cracking": "Does not crack in the quench",
    "response": "The steel responds",
    "equipment": "The workshop can do it",
    "stock": "In the rack",
    "model": "Within what is modelled",
    # verdicts
    "pass": "✓\u00a0yes",
    "marginal": "~\u00a0narrowly",
    "fail": "✗\u00a0no",
    "unknown": "?\u00a0unknown",
}
VERDICTS = {
    "harden": "Harden it",
    "leave_as_bought": "Leave it as bought",
    "toss_up": "A toss-up",
    "safety_referral": "A matter for qualified people",
    "coupon_first": "A test piece first",
    "no_option": "No option",
}
COLOURS: Mapping[str, Literal["green", "blue", "orange", "red"]] = {
    "harden": "green",
    "leave_as_bought": "green",
    "toss_up": "blue",
    "safety_referral": "red",
    "coupon_first": "orange",
    "no_option": "orange",
}
_MARKDOWN = re.compile(r"([\\`*_{}\[\]<>()#+\-!|$~:])")


def words(name: str, place: str = "") -> str:
    """Return a name of ours in the words of the page, which may depend on the field."""
    word = _WORDS.get(f"{place}.{name}") or _WORDS.get(name)
    return word or upper(name.replace("-", " ").replace("_", " "))


def upper(text: str) -> str:
    """Return a text with a capital at its start; the rest, units too, stays."""
    return text[:1].upper() + text[1:]


def lower(text: str) -> str:
    """Return a text without the capital at its start; the rest, units too, stays."""
    return text[:1].lower() + text[1:]


def plain(text: str) -> str:
    """Return a text so that no character of it is read as formatting."""
    return _MARKDOWN.sub(r"\\\1", text)


def span(spread: Spread, digits: int = 0) -> str:
    """Return a number with its range and unit: "2.0 mm (0.9 to 4.4)"."""
    if spread.p50 is None or spread.p05 is None or spread.p95 is None:
        return "unknown"
    ends = f"{spread.p05:.{digits}f} to {spread.p95:.{digits}f}"
    return f"{spread.p50:.{digits}f} {spread.unit} ({ends})"


def number(value: float, unit: str, currency: str) -> str:
    """Return a number with its unit; "-" is none, "currency" stands for the one in use."""
    return f"{value:.3g}\u00a0{({'-': '', 'currency': currency}).get(unit, unit)}".strip()


def money(cost: CostOut) -> str:
    """Return the cost of a good part with its range."""
    return span(cost.spread)


def share(fraction: float | None, absent: str = "not sampled") -> str:
    """Return a chance: "98 in 100", never broken between lines, or what stands for none."""
    return absent if fraction is None else f"{100 * fraction:.0f}\u00a0in\u00a0100"


def route(option: OptionOut, media: Mapping[str, str]) -> str:
    """Return the route, with what it is quenched in."""
    if option.medium is None:
        return option.route_name
    return f"{option.route_name}, {lower(media.get(option.medium, option.medium))}"


def option(option: OptionOut) -> str:
    """Return an option in one line."""
    bar = f"{option.spoken}, {condition_words(option.condition)}"
    return f"{option.place} · {bar}: {lower(option.route_name)}"
