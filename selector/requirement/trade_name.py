"""Tools and parts that the trade runs at a hardness of their own, by their names.

A name raises a presumption alone: what the part is, its sections and its mate say as well.
"""

import re

from selector.requirement.part_name import itself, named

# What grass, straw, reed and roots are cut with.
_CROPS = named(
    r"(?:chaff|hay|straw|silage|thatch(?:ing)?|reed|root)[- ](?:knife|knive|blade|cutter)s?|"
    r"sickles?|scythes?|(?:reciprocating )?(?:mower|mowing)[- ]?(?:machine )?"
    r"(?:knife |finger )?sections?"
)
# Thin edges that bend.
_THIN_BLADE = named(
    r"saws?|band[- ]?(?:saw|knife|knive)s?|(?:saw|bow)[- ]?blades?|"
    r"scrapers?(?: blade| cutter)?|loops?|palette knife|filling knife",
    "frame|set|vice|guide|arbor",
)
# An edge as fine as can be.
_KEEN = named(
    r"(?:plane|spokeshave|shave|shaving|router) (?:iron|blade|cutter)s?|razors?|scalpels?|"
    r"scribers?|scribing (?:needle|point)s?|(?:divider|trammel)s?(?: leg)? points?|"
    r"(?:carving|wood[- ]?turning|paring)[- ](?:tool|chisel|gouge|knife)s?|"
    r"gouges?|microtome(?: knife| blade)?",
    "handle|holder|block",
)
_SLOT = re.compile(r"\b(?:screw-?driver|turn-?screw|driver bit)s?\b", re.IGNORECASE)
# What turns something by hand: a loose key of a tool, a spanner, a screwdriver.
_BY_HAND = re.compile(
    r"\b(?:chuck|winding|clock|quoin|tuning|box|valve|stopcock|tap|radiator|bleed|skate|crank|"
    r"carriage|hex(?:agon)?|allen|square|spoke)[- ]?keys?\b|\bwinding (?:arbor|square)s?\b|"
    r"\b(?:spanner|wrench|screw-?driver|turn-?screw|socket|tuning (?:lever|hammer)|nut runner|"
    r"driver bit|drive(?:r)? square|square drive)(?:s|es)?\b",
    re.IGNORECASE,
)
# What strikes or pushes by a flat end: no edge, however thin.
_PUSHES = named(
    r"(?:firing|striker?|ejector|knock-?out|extractor|extraction)[- ]pins?|strikers?|plungers?|"
    r"pushers?|push-?rods?|knock-?outs?"
)
# What is held behind thin work that is beaten or riveted on it.
_BACKS = named(r"doll(?:y|ies)|bucking (?:bar|block)s?|holders?-up|hold-ups?|backing irons?")
# What bends sheet or strip and need not be as hard as what cuts it.
_BENDS = re.compile(
    r"\b(?:(?:press|bending|folding)[- ]?brake|folding|bending|joggl(?:e|ing)|flanging)\b",
    re.IGNORECASE,
)
# What catches, holds or carries by a face that takes knocks.
_DOG = named(
    r"dogs?|pawls?|clicks?|latch(?:es)?|hooks?|catch(?:es)?|claws?|ratchets?|stops?|sears?|"
    r"trips?|detents?|bolts?|levers?|prongs?|jaws?|pallets?|hammers?|fingers?|arms?|stumps?|"
    r"strikers?|firing pins?|(?:pry|wrecking|crow)[- ]?bars?|poppets?|valves?"
)
_CAM = named(
    r"cams?|camshafts?|cam lobes?|tappets?|cam followers?|valve lifters?", "cover|plate"
)


def cuts_crops(name: str) -> bool:
    """Return whether it cuts grass, straw or reed."""
    return _CROPS.search(itself(name)) is not None


def is_thin_blade(name: str) -> bool:
    """Return whether it is a saw, a scraper or a loop, if it is thin enough to bend."""
    return _THIN_BLADE.search(itself(name)) is not None


def is_keen(name: str) -> bool:
    """Return whether its edge is as fine as can be: a plane iron, a razor."""
    return _KEEN.search(itself(name)) is not None


def turns_screws(name: str) -> bool:
    """Return whether it turns a screw by its slot."""
    return _SLOT.search(itself(name)) is not None


def turns_by_hand(name: str) -> bool:
    """Return whether it turns something by hand: the key of a chuck, a spanner."""
    return _BY_HAND.search(itself(name)) is not None


def pushes(name: str) -> bool:
    """Return whether it strikes or pushes by a flat end."""
    return _PUSHES.search(itself(name)) is not None


def backs(name: str) -> bool:
    """Return whether it is held behind thin work that is beaten on it."""
    return _BACKS.search(itself(name)) is not None


def bends_metal(name: str) -> bool:
    """Return whether it bends metal and cuts none."""
    return _BENDS.search(name) is not None


def is_dog(name: str) -> bool:
    """Return whether it catches, holds or carries by a face that takes knocks."""
    return _DOG.search(itself(name)) is not None


def is_cam(name: str) -> bool:
    """Return whether it is a cam, or what runs on one."""
    return _CAM.search(itself(name)) is not None
