"""Answers and demands in the words of the page, and text that is taken literally."""

import re

from selector.requirement.question import question, titled

_WORDS = {
    # what may be answered, by field where one word means different things
    "safety_use.none": "Nothing but the part",
    "could hurt": "Someone could be hurt",
    "brake": "It is part of a brake",
    "steering": "It is part of steering",
    "lifting": "It holds a load overhead",
    "pressure": "It holds pressure",
    "fast rotation": "It rotates fast",
    "part.condition.bar": "New bar",
    "part.condition.hard": "Already hard",
    "part.condition.finished": "Finished part",
    "bevel": "Bevel gear",
    "edge-impact": "Edge under knocks",
    "zone.wear.none": "Nothing, no wear",
    "sliding": "Rubbing",
    "abrasive": "Grit",
    "rolling-contact": "Rolling",
    "toolpost-grinder": "Tool-post grinder",
    "lap": "Lapping",
    "load.impact.none": "None",
    "hammered": "Hammered",
    "static": "Steady load",
    "occasional": "Now and then",
    "fatigue": "All day",
    "dim": "Dim room",
    "sun": "Full sun",
    "zone.mate.should_wear.mate": "The other part",
    "zone.mate.should_wear.part": "This part",
    "workshop.stock.evidence.none": "Nothing",
    "glass": "Glass scratch",
    "rebound": "Rebound tester",
    "tester": "Hardness tester",
    "coupon": "Test piece",
    "cheap": "Cheapest",
    "quick": "Quickest",
    "safe hands": "Surest",
    "wear": "Longest wear",
    "toughness": "Toughest",
    "own": "My own",
    # criteria
    "snap_margin": "Not snapping",
    "movement": "Staying true",
    "operator_sensitivity": "Forgiving the eye",
    "days": "Soon in hand",
    "custom": "As the trade does it",
    "at_hand": "At hand",
    # demands
    "hard_enough": "Hard enough",
    "not_too_hard": "Not too hard",
    "snap": "Does not snap",
    "contact": "Stands the pressure",
    "blow": "Stands the blow",
    "pair": "The right one wears",
    "hard_end": "Hardness ends clear of notches",
    "skin": "No soft skin where it wears",
    "cold": "Tough in the cold",
    "service_heat": "Stays hard in the heat of service",
    "depth": "Hard deep enough",
    "slack": "Hardened, not slack",
    "cracking": "No quench crack",
    "response": "The steel responds",
    "equipment": "The workshop can do it",
    "stock": "In the rack",
    "model": "Within what is modelled",
    # verdicts
    "pass": "yes",
    "marginal": "narrowly",
    "fail": "no",
    "unknown": "not known",
    "yes": "Yes",
    "yes_if": "Yes, if",
    "not_needed": "Not needed",
    "coupon_first": "Test piece first",
}
_KEY = re.compile(r"\b[a-z_]+(?:\.[a-z_]+)+\b")
_UNIT = re.compile(r"(?<=\d) (?=(?:°C|HRC|HB|mm|EUR|min)\b)")
_DEGREE = re.compile(r"(?<=\d )deg([CF])\b")
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


def titles(text: str) -> str:
    """Return a sentence of the engine with the title of each question that it names by key."""
    return _KEY.sub(lambda key: f"“{titled(key[0])}”" if question(key[0]) else key[0], text)


def unbroken(text: str) -> str:
    """Return a text whose figures stay on one line with their units."""
    return _UNIT.sub("\N{NO-BREAK SPACE}", text)


def degrees(text: str) -> str:
    """Return a text with the sign of the degree, for which a file may write letters."""
    return _DEGREE.sub(r"°\1", text)


def plain(text: str) -> str:
    """Return a text so that no character of it is read as formatting."""
    return _MARKDOWN.sub(r"\\\1", text)
