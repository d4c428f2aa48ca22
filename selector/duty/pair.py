"""Which of a pair wears, and which of the two should."""

import numpy as np
from numpy.typing import NDArray

from selector.figure import median
from selector.gate import Gate, judged
from selector.hardness_scale import hrc_from_hv
from selector.job.demand import Demand
from selector.job.mate import APART_HRC
from selector.requirement import Requirement
from selector.requirement.mate_name import has_no_hardness, is_slippery
from selector.requirement.zone import Zone
from selector.wording import shown, times_in_100

Floats = NDArray[np.float64]


# Steel no harder than this picks up on steel as soft. Common practice. [HRC]
GALLS_HRC = 35.0


def pair_gate(hrc: Floats, demand: Demand, asked: Requirement) -> Gate | None:
    """Judge which of a pair wears; None where the mate's hardness is open or either may."""
    # The softer of the two wears. A pair in the wrong order is marginal, not refused: it
    # works, at the cost of the dear part.
    mate = asked.zone[demand.zone].mate
    if mate is None or mate.hardness is None or mate.should_wear == "either":
        return None
    other = float(hrc_from_hv(mate.hardness, outside="extend"))
    harder = hrc > other
    as_wished = harder if mate.should_wear == "mate" else ~harder
    here, there = shown(median(hrc)), shown(other)
    loser = "the mate" if median(hrc) > other else "this part"
    text = f"{loser} wears: {here} here against {there} of {mate.material}"
    gate = judged("pair", as_wished, text)
    if gate.verdict == "pass":
        return gate
    wished = {"mate": "the mate", "part": "this part"}[mate.should_wear]
    odds = f"; {wished} should"
    if wished == loser:
        odds = f" (the other way round {times_in_100(float(np.mean(~as_wished)))})"
    return Gate("pair", "marginal", text + odds, gate.share)


def galling_gate(hrc: Floats, demand: Demand, asked: Requirement) -> Gate | None:
    """Warn of soft steel on steel as soft: it picks up and tears; None where it does not."""
    zone = asked.zone[demand.zone]
    mate = zone.mate
    rubs = zone.wear in {"sliding", "rolling-contact"}
    if not rubs or mate is None or mate.hardness is None or is_slippery(mate.material):
        return None
    here, there = median(hrc), float(hrc_from_hv(mate.hardness, outside="extend"))
    if max(here, there) >= GALLS_HRC or abs(here - there) >= APART_HRC:
        return None
    text = (
        f"soft on soft galls: {shown(here)} on {shown(there)} of {mate.material}; harden "
        f"one of them to {GALLS_HRC:.0f} HRC or more, or run it in bronze, and keep it greased"
    )
    return Gate("pair", "marginal", text)


def left_open(zone: Zone) -> str | None:
    """Return which of a pair ought to wear, where that or the mate's hardness is left open."""
    mate = zone.mate
    if mate is None or has_no_hardness(mate.material):
        return None
    if mate.should_wear == "either":
        return (
            f"Which should wear, this part or {mate.material}, is not said: let it be the one "
            f"cheaper to renew, and leave that one {APART_HRC:.0f} HRC softer or more."
        )
    if mate.hardness is None:
        loser = "this part" if mate.should_wear == "part" else mate.material
        return (
            f"How hard {mate.material} is, is not said: file or test it, for {loser} wears for "
            f"certain only if it is {APART_HRC:.0f} HRC softer or more."
        )
    return None
