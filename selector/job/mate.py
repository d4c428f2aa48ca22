"""What a zone runs on, by the words for its mate: bearing metal, a bush, rollers, stone."""

from selector.hardness_scale import hrc_from_hv
from selector.requirement import mate_name
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


def _is_of(zone: Zone, *groups: str) -> bool:
    """Return whether a zone's mate is said to be of what some groups of words name."""
    return zone.mate is not None and mate_name.is_of(zone.mate.material, *groups)


def spares_bearing(zone: Zone) -> bool:
    """Return whether bearing metal is to wear in a zone's place."""
    spared = zone.mate is not None and zone.mate.should_wear == "mate"
    return spared and zone.mate is not None and mate_name.is_bearing(zone.mate.material)


def runs_in_bush(zone: Zone) -> bool:
    """Return whether a bush of bearing metal is to wear in a zone's place."""
    return spares_bearing(zone) and _is_of(zone, "bush")


def is_soft(mate: Mate) -> bool:
    """Return whether a mate is no harder than plain bar, by its figure or its metal."""
    if mate.hardness is None:
        return mate_name.is_bearing(mate.material)
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
    return runs_on_hard(zone) and zone.mate is not None and zone.mate.should_wear != "part"


def runs_on_hard(zone: Zone) -> bool:
    """Return whether a mate is hardened steel by its figure, whichever is to wear."""
    mate = zone.mate
    if mate is None or mate.hardness is None:
        return False
    return float(hrc_from_hv(mate.hardness, outside="extend")) >= _HARDENED_HRC


def yields(zone: Zone) -> bool:
    """Return whether a mate yields to a pin sooner than it wears it, as nylon does."""
    return zone.mate is not None and mate_name.yields(zone.mate.material)


def is_harmless(zone: Zone) -> bool:
    """Return whether a mate wears no gauge and dents no tool."""
    return zone.mate is not None and mate_name.is_harmless(zone.mate.material)


def is_ductile(zone: Zone) -> bool:
    """Return whether a mate is of brass, copper or aluminium."""
    return _is_of(zone, "ductile")


def is_tender(zone: Zone) -> bool:
    """Return whether a mate blunts no point that is knocked into it, as ice does not."""
    return _is_of(zone, "tender")


def is_stone(zone: Zone) -> bool:
    """Return whether a zone bears on stone."""
    return _is_of(zone, "knife_edge_plane")


def on_jewel(zone: Zone) -> bool:
    """Return whether a zone is a pivot or a point that runs on a jewel."""
    return _is_of(zone, "jewel")


def outlasts_steel(zone: Zone) -> bool:
    """Return whether a zone is to outlast steel that it touches, or metal that it forms."""
    mate = zone.mate
    if mate is None or mate.should_wear != "mate" or is_ductile(zone):
        return False
    return mate_name.is_worked(mate.material) or mate_name.is_of(mate.material, "steel")


def polishes(zone: Zone) -> bool:
    """Return whether a zone rubs a form or a polish on gold or silver, which is to wear."""
    works = zone.mate is not None and zone.mate.should_wear == "mate"
    return works and _is_of(zone, "precious")


def is_track(zone: Zone) -> bool:
    """Return whether needles or balls run on a zone."""
    return _is_of(zone, "roller")
