"""What a zone runs on, by the words for its mate: bearing metal, a bush, rollers, stone."""

import re

from selector.hardness_scale import hrc_from_hv
from selector.requirement.mate_name import is_no_metal
from selector.requirement.part_name import is_metal
from selector.requirement.zone import Mate, Zone

# Plain bar and bearing metal are no harder; nor is what is there to break, or to wear before a
# soft mate does. Common practice. [HRC]
PLAIN_BAR_HRC = 22.0
# No steel is softer, about 110 HB. Common practice. [HRC]
_SOFTEST_STEEL_HRC = -14.0
# The softer of a pair wears for certain this far below the other. Common practice. [HRC]
APART_HRC = 4.0
# Softer steel is not called hardened. Common practice. [HRC]
_HARDENED_HRC = 45.0
_WOODS = r"wood|timber|\b(?:oak|elm|beech|birch|maple|pine|hornbeam|lignum)\b"
# What steel runs in without being worn itself.
_BEARING = re.compile(
    r"bronze|brass|gunmetal|white ?metal|babbitt|cast[- ]iron|nylon|acetal|plastic|ptfe|"
    + _WOODS,
    re.IGNORECASE,
)
_BUSH = re.compile(
    r"bush|bearing|liner|sleeve|boss|\beye|\bends?\b|brasses|\bstep\b|\bcups?\b", re.IGNORECASE
)
# What yields to a pin sooner than it wears it. Common practice.
_YIELDS = re.compile(
    r"nylon|acetal|plastic|ptfe|polythene|polyethylene|rubber|felt|cork", re.IGNORECASE
)
# What wears no gauge, nor dents a tool. Common practice.
_HARMLESS = re.compile(
    r"plastic|nylon|acetal|leather|cork|felt|rubber|wax|paper|card|cloth|clay|"
    r"\b(?:lead|pewter|solder)\b|" + _WOODS,
    re.IGNORECASE,
)
_DUCTILE = re.compile(r"\b(?:brass|copper|alumini?um)\b", re.IGNORECASE)
# What a point or a face goes through without wearing or being blunted.
_TENDER = re.compile(r"\b(?:ice|snow|butter|dough|sugar|wax|soap|curd)\b", re.IGNORECASE)
# What rubs on steel and is neither wood nor metal: no file says how hard it is.
_NO_FILE = re.compile(
    r"\b(?:packing|seal|rope|string|yarn|fabric|canvas|soil|earth|sand|grit|gravel|coal|coke|"
    r"grain|straw|hay|grass|corn|flour|meat|fish|food|fruit|paste|glass|ceramics?|concrete|"
    r"bricks?|tiles?)\b",
    re.IGNORECASE,
)
_STONE = re.compile(r"\b(?:agate|corundum)\b", re.IGNORECASE)
_ROLLERS = re.compile(r"\b(?:needles?|needle rollers?|balls?)\b", re.IGNORECASE)


def _is_of(zone: Zone, words: re.Pattern[str]) -> bool:
    """Return whether a zone's mate is said to be of what the words name."""
    return zone.mate is not None and words.search(zone.mate.material) is not None


def spares_bearing(zone: Zone) -> bool:
    """Return whether bearing metal is to wear in a zone's place."""
    spared = zone.mate is not None and zone.mate.should_wear == "mate"
    return spared and _is_of(zone, _BEARING)


def runs_in_bush(zone: Zone) -> bool:
    """Return whether a bush of bearing metal is to wear in a zone's place."""
    return spares_bearing(zone) and _is_of(zone, _BUSH)


def is_soft(mate: Mate) -> bool:
    """Return whether a mate is no harder than plain bar, by its figure or its metal."""
    if mate.hardness is None:
        return _BEARING.search(mate.material) is not None
    return float(hrc_from_hv(mate.hardness, outside="extend")) <= PLAIN_BAR_HRC


def soft_mate_hrc(zone: Zone) -> float | None:
    """Return the hardness of a mate as soft as plain bar that is to be spared. [HRC]."""
    mate = zone.mate
    if mate is None or mate.should_wear != "part" or mate.hardness is None:
        return None
    other = float(hrc_from_hv(mate.hardness, outside="extend"))
    return other if other - APART_HRC < PLAIN_BAR_HRC else None


def is_softer_than_steel(zone: Zone) -> bool:
    """Return whether a mate that is to be spared is softer than any steel."""
    other = soft_mate_hrc(zone)
    return other is not None and other < _SOFTEST_STEEL_HRC


def is_hard(zone: Zone) -> bool:
    """Return whether a mate that may wear is hardened steel, by its figure."""
    mate = zone.mate
    if mate is None or mate.hardness is None or mate.should_wear == "part":
        return False
    return float(hrc_from_hv(mate.hardness, outside="extend")) >= _HARDENED_HRC


def yields(zone: Zone) -> bool:
    """Return whether a mate yields to a pin sooner than it wears it, as nylon does."""
    return _is_of(zone, _YIELDS)


def is_harmless(zone: Zone) -> bool:
    """Return whether a mate wears no gauge and dents no tool."""
    return _is_of(zone, _HARMLESS)


def has_no_hardness(mate: Mate) -> bool:
    """Return whether a mate is of what no file or tester is held to: leather, clay, packing."""
    soft = (_NO_FILE, _YIELDS, _HARMLESS, _TENDER)
    named = any(words.search(mate.material) for words in soft) or is_no_metal(mate.material)
    return named and not is_metal(mate.material)


def is_ductile(zone: Zone) -> bool:
    """Return whether a mate is of brass, copper or aluminium."""
    return _is_of(zone, _DUCTILE)


def is_tender(zone: Zone) -> bool:
    """Return whether a mate blunts no point that is knocked into it, as ice does not."""
    return _is_of(zone, _TENDER)


def is_stone(zone: Zone) -> bool:
    """Return whether a zone bears on stone."""
    return _is_of(zone, _STONE)


def is_track(zone: Zone) -> bool:
    """Return whether needles or balls run on a zone."""
    return _is_of(zone, _ROLLERS)
