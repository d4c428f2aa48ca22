"""What a zone's duty is called in the trade: an edge that is struck, a gear, a plain pin."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from selector.job.borne import FOR_GRIP, FOR_SPRING
from selector.job.demand import Demand
from selector.job.drive import is_drive_end, is_key
from selector.job.working_end import (
    is_strip_blade,
    is_struck_edge,
    is_thin_jaw,
    is_tip,
)
from selector.kept import per_record
from selector.requirement import Requirement
from selector.requirement.zone import LEAST_WEAR, Wear

Duty = Literal[
    "struck edge", "pressed edge", "cutting edge", "grit", "soil", "gear", "rolling",
    "struck body", "spring", "drive", "key", "sliding", "tool", "plain", "gauge",
    "pressed face", "struck face", "rubbing tool", "strip blade",
]  # fmt: skip
# Who asks so much hardness where nothing wears has a tool in mind. [HRC]
TOOL_HRC = 45.0
# What is to stay softer than this, to spare its mate, is left as bought like any plain part.
# Estimate. [HRC]
SPARING_HRC = 25.0


@dataclass(frozen=True, slots=True)
class _Zone:
    """What of a zone and its part names its duty."""

    wear: Wear
    struck: bool
    edged: bool
    strip: bool
    jaws: bool
    pressed: bool
    tip: bool
    toothed: bool
    spring: bool
    drives: bool
    key: bool
    lever: bool
    grips: bool
    hard: bool
    soft: bool
    sparing: bool
    ground: bool
    gauge: bool
    rubs: bool
    breaks: bool

    @classmethod
    def of(cls, demand: Demand, asked: Requirement) -> "_Zone":
        """Return the zone that a demand is made for."""
        zone = asked.zone[demand.zone]
        struck = asked.load.impact == "hammered"
        return cls(
            wear=zone.wear,
            struck=struck,
            edged=is_struck_edge(asked, zone),
            strip=is_strip_blade(asked),
            jaws=zone.wear == "sliding" and is_thin_jaw(asked, zone),
            pressed=asked.presses,
            tip=is_tip(asked, zone),
            toothed=asked.part.is_toothed,
            spring=asked.is_spring,
            # Whether or not its window is given, what turns something is a drive.
            drives=is_drive_end(asked, zone)
            and (zone.wear == "none" or (zone.wear, zone.severity) == LEAST_WEAR),
            key=is_key(asked, zone),
            lever=demand.purpose == FOR_SPRING,
            grips=demand.purpose == FOR_GRIP,
            hard=demand.low_hrc is not None and demand.low_hrc >= TOOL_HRC,
            # What slides lightly asks for no hardness, as a plain part does.
            soft=demand.low_hrc is None,
            sparing=demand.derived
            and demand.high_hrc is not None
            and demand.high_hrc < SPARING_HRC,
            ground=asked.works_ground,
            gauge=asked.measures,
            rubs=asked.rubs,
            breaks=asked.is_to_break,
        )


# The first that holds names the duty.
_DUTIES: tuple[tuple[Duty, Callable[[_Zone], bool]], ...] = (
    # A shear pin is a cheap loser, as a key is.
    ("key", lambda z: z.breaks),
    ("spring", lambda z: z.spring),
    # A lever is of the tough steel that drives and spanners are.
    ("drive", lambda z: z.lever),
    # A collet is turned of ground tool steel.
    ("tool", lambda z: z.grips),
    ("plain", lambda z: z.sparing),
    ("plain", lambda z: z.wear in {"edge-impact", "abrasive"} and z.soft),
    ("struck edge", lambda z: z.wear == "edge-impact" and z.struck and z.edged),
    ("struck body", lambda z: z.wear == "edge-impact" and z.struck),
    ("gear", lambda z: z.toothed and z.wear in {"edge-impact", "rolling-contact", "sliding"}),
    ("pressed edge", lambda z: z.wear == "edge-impact" and (z.pressed or z.tip)),
    # A billhook or an axe is swung: its edge takes the blow that a chisel's does.
    ("struck edge", lambda z: z.wear == "edge-impact" and z.edged),
    # Dogs, claws and stops take knocks on their faces and have no edge to hold.
    ("struck body", lambda z: z.wear == "edge-impact"),
    ("soil", lambda z: z.wear == "abrasive" and z.ground),
    # Where a die draws or coins, metal rubs on it under pressure.
    ("pressed face", lambda z: z.wear in {"sliding", "abrasive"} and z.pressed),
    ("gauge", lambda z: z.wear == "sliding" and z.gauge and not z.soft),
    # A spanner of sheet is cut of the strip that saws are.
    ("strip blade", lambda z: (z.wear == "abrasive" and z.strip) or z.jaws),
    ("cutting edge", lambda z: z.wear == "abrasive" and z.edged),
    ("grit", lambda z: z.wear == "abrasive"),
    ("rolling", lambda z: z.wear == "rolling-contact" and not z.soft),
    ("drive", lambda z: z.drives),
    ("key", lambda z: z.key),
    # What is hammered and forms by a face that rubs: doming punches, stakes.
    ("struck face", lambda z: z.struck and z.wear == "sliding" and not z.soft),
    # What is struck and wears by nothing is of plain bar: holdfasts, caps, stamps for leather.
    ("struck body", lambda z: z.struck and not z.soft),
    ("rubbing tool", lambda z: z.wear == "sliding" and not z.soft and z.rubs),
    ("sliding", lambda z: z.wear == "sliding" and not z.soft),
    ("tool", lambda z: z.hard),
)


@per_record(64)
def duty_of(demand: Demand, asked: Requirement) -> Duty:
    """Return the duty of a zone, as the trade would name it."""
    zone = _Zone.of(demand, asked)
    return next((duty for duty, holds in _DUTIES if holds(zone)), "plain")
