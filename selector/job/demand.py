"""What each zone needs of the steel: hardness window, floor, ceiling and depth, with reasons.

A window the user gives stands. One left out is derived from wear, severity and impact by what
is usual, less what blows and the mate take off.
"""

from dataclasses import dataclass, replace

from selector.hardness_scale import hrc_from_hv
from selector.job.borne import CERTIFIED_HRC, Borne, prising, springing, turning
from selector.job.mate import (
    APART_HRC,
    PLAIN_BAR_HRC,
    is_softer_than_steel,
    runs_on_hard,
    soft_mate_hrc,
)
from selector.job.presumed import presumed
from selector.job.soft_zone import why_soft
from selector.job.usual_depth import usual_depth_mm
from selector.job.usual_window import usual_window
from selector.job.window_table import GAUGE, Usual
from selector.requirement import Requirement
from selector.requirement.trade_name import does
from selector.requirement.zone import Window, Zone

TOP_HRC = 66.0
_TOP_BY_IMPACT = {"none": TOP_HRC, "light": 62.0, "hammered": 60.0}
# A window off the drawing is read with this slack unless the user says "must": a file feels
# 2 HRC, and a part a little too hard still works where a part too soft does not.
SLACK_BELOW_HRC, SLACK_ABOVE_HRC = 2.0, 3.0
# Of a pair that is hard right up this far half of that will do: pins of 58 HRC run in bushes of
# 60, and softer ones wear for nothing. Common practice. [HRC]
BOTH_HARD_HRC, BOTH_HARD_APART_HRC = 55.0, 2.0
_LEAST_WIDTH_HRC = 4.0
# Plain bar lies between 110 and 240 HB. Common practice. [HRC]
_PLAIN_WIDTH_HRC = 35.0
# What hardness is for, where a load is borne without it.
FOR_WEAR, WISHED = "for wear", "your own wish"


@dataclass(frozen=True, slots=True)
class Demand:
    """What one zone asks. Hardness in HRC, carried on below 20 where HV is softer.

    Bar that is used as it comes, not hardened for it, is asked for `bought_hrc` and no depth.
    """

    zone: int
    sections: tuple[int, ...]
    low_hrc: float | None
    high_hrc: float | None
    floor_hrc: float | None
    ceiling_hrc: float | None
    depth_mm: float
    derived: bool
    reason: str
    purpose: str = FOR_WEAR
    bought_hrc: float | None = None


def _hrc(hardness_hv: float | None) -> float | None:
    """Return a Vickers hardness on the C scale, carried on below its end."""
    return None if hardness_hv is None else float(hrc_from_hv(hardness_hv, outside="extend"))


def _demand(requirement: Requirement, number: int) -> Demand:
    """Return what one zone asks of hardness and depth."""
    zone = requirement.zone[number]
    depth = zone.depth if zone.depth is not None else usual_depth_mm(requirement, zone)
    if zone.hardness is not None:
        return _given(number, zone, zone.hardness, depth)
    if requirement.is_to_break:
        reason = "it is there to break before something dearer does (common practice)"
        return _undemanding(zone, number, reason, PLAIN_BAR_HRC)
    if spring := springing(requirement, zone):
        return _throughout(number, zone, spring)
    usual = usual_window(requirement, zone)
    if usual is not None and not is_softer_than_steel(zone):
        return _derived(requirement, number, usual, depth)
    return _bearing(requirement, number, zone)


def _bearing(requirement: Requirement, number: int, zone: Zone) -> Demand:
    """Return the demand of a zone that nothing wears, by the load that it bears."""
    borne = prising(requirement, zone) or turning(requirement, zone)
    if borne is None:
        return _undemanding(zone, number, *why_soft(requirement, zone))
    demand = _throughout(number, zone, borne)
    return _behind(requirement, demand) if borne.carried else demand


def _behind(requirement: Requirement, drive: Demand) -> Demand:
    """Return the demand of a driving end that may be as hard as another end asks to be."""
    # One piece is heated whole: its shank is no softer than the end that it carries.
    asked = [_hrc(zone.hardness.max) for zone in requirement.zone if zone.hardness is not None]
    tops = [top + SLACK_ABOVE_HRC for top in asked if top is not None]
    ceiling = max([drive.ceiling_hrc or TOP_HRC, *tops])
    return drive if requirement.safety_critical else replace(drive, ceiling_hrc=ceiling)


def _places(zone: Zone) -> tuple[int, ...]:
    """Return the indices of a zone's sections, from 0."""
    return tuple(index - 1 for index in zone.section)


def _given(number: int, zone: Zone, window: Window, depth: float) -> Demand:
    """Return the demand of a zone whose window the user gives."""
    low, high = _hrc(window.min), _hrc(window.max)
    below, above = (0.0, 0.0) if window.must else (SLACK_BELOW_HRC, SLACK_ABOVE_HRC)
    return Demand(
        zone=number,
        sections=_places(zone),
        low_hrc=low,
        high_hrc=high,
        floor_hrc=None if low is None else low - below,
        ceiling_hrc=None if high is None else high + above,
        depth_mm=depth,
        derived=False,
        reason="the window you gave" + (", to be kept exactly" if window.must else ""),
        purpose=WISHED if zone.wear == "none" else FOR_WEAR,
    )


def _throughout(number: int, zone: Zone, borne: Borne) -> Demand:
    """Return the demand of a zone that is as hard right through as its load asks."""
    usual = borne.usual
    return Demand(
        zone=number,
        sections=_places(zone),
        low_hrc=usual.low_hrc,
        high_hrc=usual.high_hrc,
        floor_hrc=usual.floor_hrc,
        ceiling_hrc=usual.high_hrc + SLACK_ABOVE_HRC,
        depth_mm=0.0,
        derived=True,
        reason=borne.reason,
        purpose=borne.purpose,
    )


def _derived(requirement: Requirement, number: int, usual: Usual, depth: float) -> Demand:
    """Return the demand of a zone that wears, without a window of its own."""
    zone, aim = requirement.zone[number], _worn(requirement, requirement.zone[number], usual)
    if requirement.safety_critical and requirement.load.impact == "hammered":
        aim = _VITAL_STRUCK
    wish = _wish_only(requirement, zone, usual)
    # A cheap loser needs to be strong enough, no more: a mate as soft as plain bar is spared by
    # any that is no harder.
    loser = soft_mate_hrc(zone)
    free = wish is not None or loser is not None
    floor = min(usual.floor_hrc, aim.low_hrc)
    bought = min(
        floor, _over_mate(zone), floor if usual.bought_hrc is None else usual.bought_hrc
    )
    return Demand(
        zone=number,
        sections=_places(zone),
        low_hrc=aim.low_hrc,
        high_hrc=aim.high_hrc,
        floor_hrc=None if free else floor,
        ceiling_hrc=(aim.high_hrc if loser is None else loser) + SLACK_ABOVE_HRC,
        depth_mm=0.0 if free else depth,
        derived=True,
        reason=f"{aim.words}{f', a wish only: {wish}' if wish else ''} (common practice)",
        bought_hrc=bought if bought < floor and not free else None,
    )


def _wish_only(requirement: Requirement, zone: Zone, usual: Usual) -> str | None:
    """Return why less than a usual window serves too, or None where it is a demand."""
    if usual is GAUGE and not requirement.surely_measures:
        return "it is called a gauge, but nothing says that it is kept true"
    true = requirement.measures or does(requirement.part.name, "guides_tools")
    needed = requirement.has_edge or true
    if (zone.wear, zone.severity) == ("abrasive", "light") and not needed:
        return "without an edge soft steel does for a while in light grit"
    if requirement.safety_critical:
        # Its worn face is renewed. Common practice.
        return "where lives depend on it toughness comes first"
    if zone.wear in {"sliding", "rolling-contact"} and requirement.limit.corrosion == "severe":
        return "what stands severe corrosion is seldom so hard"
    return None


@dataclass(frozen=True, slots=True)
class _Aim:
    """A window that is aimed at, and why. [HRC]."""

    low_hrc: float
    high_hrc: float
    words: str


# What is struck and lives depend on. Common practice.
_VITAL_STRUCK = _Aim(28.0, CERTIFIED_HRC, "struck, and lives depend on it: pre-hardened bar")


def _worn(requirement: Requirement, zone: Zone, usual: Usual) -> _Aim:
    """Return the window that wear asks, less what blows and the mate take off."""
    words = f"{zone.severity} {zone.wear.replace('-', ' ')} wear"
    high, top = usual.high_hrc, _TOP_BY_IMPACT[requirement.load.impact]
    if top < high:
        words += f", kept to {top:.0f} HRC because it takes blows"
    high = min(high, top)
    mate, other = zone.mate, _hrc(zone.mate.hardness) if zone.mate else None
    loses = mate is not None and mate.should_wear == "part" and not _spalls(requirement, zone)
    if loses:
        high = high - APART_HRC if other is None else min(high, other - apart_hrc(other))
        words += ", softened because this part is to be the one that wears"
    if loses and zone.wear == "edge-impact" and soft_mate_hrc(zone) is None:
        # Softer than its duty needs, an end under blows is battered out of shape.
        needed = usual.floor_hrc + _LEAST_WIDTH_HRC
        high = max(high, needed if other is None else min(needed, other))
    wide = _LEAST_WIDTH_HRC if soft_mate_hrc(zone) is None else _PLAIN_WIDTH_HRC
    low = min(usual.low_hrc, high - wide)
    if loses and (other or 0.0) >= BOTH_HARD_HRC:
        low = high - wide
    if mate is not None and other is not None and mate.should_wear == "mate":
        needed = min(other + apart_hrc(other), high - _LEAST_WIDTH_HRC)
        if needed > low:
            low, words = needed, words + f", harder than {mate.material}, which is to wear"
    return _Aim(low, high, words)


def _spalls(requirement: Requirement, zone: Zone) -> bool:
    """Return whether a zone is a track for what is hard: softer, it spalls before it wears."""
    return (
        zone.wear == "rolling-contact"
        and runs_on_hard(zone)
        and not requirement.part.is_toothed
    )


def apart_hrc(other_hrc: float) -> float:
    """Return how far below its mate the softer of a pair is kept. [HRC]."""
    return BOTH_HARD_APART_HRC if other_hrc >= BOTH_HARD_HRC else APART_HRC


def _over_mate(zone: Zone) -> float:
    """Return the hardness that outlasts a mate of which either may wear, if it is known."""
    mate = zone.mate
    other = _hrc(mate.hardness) if mate is not None and mate.should_wear == "either" else None
    return TOP_HRC if other is None else other + APART_HRC


def _undemanding(zone: Zone, number: int, reason: str, ceiling_hrc: float | None) -> Demand:
    """Return the demand of a zone that asks for no hardness."""
    return Demand(
        zone=number,
        sections=_places(zone),
        low_hrc=None,
        high_hrc=None,
        floor_hrc=None,
        ceiling_hrc=ceiling_hrc,
        depth_mm=0.0,
        derived=True,
        reason=reason,
    )


def demands(requirement: Requirement) -> tuple[Demand, ...]:
    """Return what every zone asks.

    Parameters
    ----------
    requirement : Requirement
        What is asked.

    Returns
    -------
    tuple of Demand
        In the order of the zones.
    """
    worn = presumed(requirement)
    every = tuple(
        _demand(worn or requirement, number) for number in range(len(requirement.zone))
    )
    return every if worn is None else tuple(map(_unsaid, every))


def _unsaid(demand: Demand) -> Demand:
    """Return a demand that says where its wear is presumed."""
    if demand.low_hrc is None:
        return demand
    reason = f"nothing is said to wear it, but what is called so wears: {demand.reason}"
    return replace(demand, reason=reason)
