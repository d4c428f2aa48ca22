"""The demands on a flame hardening: which it meets, each in words."""

from itertools import pairwise

import numpy as np

from selector.flame.outcome import Check, Outcome
from selector.hardening.composition import middle
from selector.hardness_scale import LOWEST_HRC
from selector.hazards.cracking import CrackRisk
from selector.heat.operator import SEEN_C
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.option.cracking import crack_sample, crack_words
from selector.option.movement import permitted_movement
from selector.torch.depth import is_skin
from selector.wording import shown

# Harder than this, nothing undrawn is put to work. Common practice. [HRC]
BRITTLE_HRC = 50.0
# One usual error of what is foretold, to tell a narrow yes from a safe one: hardness, heat at a
# corner, and the logarithms of depth and of torque. Estimates. [HRC], [°C], [-], [-]
HRC_ERROR, HEAT_ERROR_C, DEPTH_LOG_ERROR, TORQUE_LOG_ERROR = 3.0, 30.0, 0.25, 0.15
# The bad case of a bow is one heat in ten: so many errors from the middle.
BAD_CASE = 1.28
# A crack class as such a margin: what cracks now and then is a narrow yes. Estimate. [-]
CRACK_MARGIN = {"low": 2.0, "some": 0.5, "high": -2.0}
# A hard edge keeps this share of the section from a notch. Common practice. [-]
NEAR = 0.25
# Less than this between two zones is rounding. [mm]
APART_MM = 0.01
_NOTCHES = frozenset(
    {"cross-hole", "slot", "keyway", "thread", "sharp-corner", "groove", "weld"}
)


def checks(out: Outcome, job: Job, demand: Demand) -> tuple[Check, ...]:
    """Return every demand on the result, met or not.

    Parameters
    ----------
    out : Outcome
        What comes out.
    job : Job
        Part, loads, limits, workshop.
    demand : Demand
        What the leading zone asks.

    Returns
    -------
    tuple of Check
        The heat, hardness, depth, strength, corners, bow, handling.
    """
    found = [Check("reach", True, f"at {out.target_c:.0f} °C after {out.heated.heat_s:.0f} s")]
    found += _hardness(out, demand)
    found += _bearing(out, job)
    margin = out.overheated_c - out.corner_c
    side = "short of" if margin > 0.0 else "beyond"
    text = f"hottest edge {out.corner_c:.0f} °C, {abs(margin):.0f} °C {side} coarse grain"
    found.append(Check("corner", margin > 0.0, text, margin / HEAT_ERROR_C))
    permitted = permitted_movement(job.asked)
    usual, bad = out.bow_mm
    text = f"bow about {usual:.2f} mm, {bad:.2f} mm in a bad case, permitted {permitted.mm:.2f}"
    text += "" if permitted.stated else " (assumed)"
    spare = BAD_CASE * (permitted.mm - usual) / max(bad - usual, 1e-6)
    found.append(Check("movement", usual <= permitted.mm, text, spare))
    found += _handling(out, job)
    return tuple(found)


def asked_words(demand: Demand) -> str:
    """Return the hardness asked for, as the user wrote it, and what still passes.

    Parameters
    ----------
    demand : Demand
        What the zone asks.

    Returns
    -------
    str
        For instance "50 HRC (48 with slack)"; what was derived has a floor under its window.
    """
    low, floor = demand.low_hrc, demand.floor_hrc
    if floor is None:
        return "no hardness"
    if low is None or round(low) == round(floor):
        return shown(floor)
    return f"{shown(low)} ({floor:.0f} {'at least' if demand.derived else 'with slack'})"


def most_words(demand: Demand) -> str | None:
    """Return the most hardness that is wanted, and what still passes; none where all is.

    Parameters
    ----------
    demand : Demand
        What the zone asks.

    Returns
    -------
    str or None
        For instance "56 HRC (59 with slack)".
    """
    high, ceiling = demand.high_hrc, demand.ceiling_hrc
    if ceiling is None:
        return None
    if high is None or round(high) == round(ceiling):
        return shown(ceiling)
    return f"{shown(high)} ({ceiling:.0f} with slack)"


def slack_words(out: Outcome, demand: Demand) -> str:
    """Return that a hardness is under the least the user wrote, where only the slack saves it.

    Parameters
    ----------
    out : Outcome
        What comes out.
    demand : Demand
        What the zone asks.

    Returns
    -------
    str
        To be put after a sentence; empty where the hardness is what was written, or more.
    """
    low = demand.low_hrc
    if low is None or demand.derived or out.surface_hrc >= low:
        return ""
    return f"; {shown(low)} was asked, {low - out.surface_hrc:.1f} under it is within the slack"


def _hardness(out: Outcome, demand: Demand) -> list[Check]:
    """Return whether the zone is hard enough, not too hard, and deep enough."""
    found = []
    if demand.floor_hrc is not None:
        spare = out.surface_hrc - demand.floor_hrc
        # A miss of less than half a point is not rounded into what was asked.
        near = -0.5 < spare < 0.0 and demand.floor_hrc >= LOWEST_HRC
        here = f"{out.surface_hrc:.1f} HRC" if near else shown(out.surface_hrc)
        text = f"{here} at the softest place of the zone, asked "
        found.append(Check("hard", spare >= 0.0, text + asked_words(demand), spare / HRC_ERROR))
    if demand.ceiling_hrc is not None:
        text = f"{shown(out.surface_hrc)} drawn, asked at most {most_words(demand)}"
        spare = demand.ceiling_hrc - out.surface_hrc
        found.append(Check("not_too_hard", spare >= 0.0, text, spare / HRC_ERROR))
    if demand.depth_mm > 0.0:
        found.append(_depth(out, demand.depth_mm))
    return found


def _depth(out: Outcome, asked_mm: float) -> Check:
    """Return whether the zone is hard deep enough; hard through is the most there is."""
    met = out.depth_mm >= asked_mm
    text = f"hard to {out.depth_mm:.1f} mm, asked {asked_mm:g}"
    if out.through:
        text = f"hard through, {out.wall_mm:.2g} mm to middle or bore, asked {asked_mm:g}"
        text += "" if met else ": there is no more steel"
    spare = float(np.log(max(out.depth_mm, 1e-3) / asked_mm)) / DEPTH_LOG_ERROR
    return Check("depth", met, text, np.inf if met and out.through else spare)


def _bearing(out: Outcome, job: Job) -> list[Check]:
    """Return whether the softest place bears the torque."""
    torque = job.asked.load.torque
    if not torque or out.ring is None:
        return []
    where = f"outside the zone, softest at {out.ring.at_mm:.0f} mm, it"
    if out.ring.weakest:
        where = f"{out.ring.weakest} is its weakest place and"
    borne, carried = (
        f"{t:.0f}" if t >= 10.0 else f"{t:.1f}" for t in (out.ring.torque_nm, torque)
    )
    text = f"{where} bears {borne} N m before it twists throughout, and carries {carried}"
    spare = float(np.log(max(out.ring.torque_nm, 1e-3) / torque)) / TORQUE_LOG_ERROR
    return [Check("ring", out.ring.torque_nm >= torque, text, spare)]


def crack_of(work: Treatment, job: Job) -> CrackRisk | None:
    """Return the crack risk of a quench at the middle of the steel, None without a quench.

    Parameters
    ----------
    work : Treatment
        Steel and bath.
    job : Job
        The part.

    Returns
    -------
    CrackRisk or None
        Class, band and reasons.
    """
    bar, skin = middle(work.steel), is_skin(work, job)
    return crack_sample(work, job.asked.part, bar, job.shared(), skin=skin).risk


def _handling(out: Outcome, job: Job) -> list[Check]:
    """Return evenness, hold of the part, cracking, and whether it is drawn at all."""
    uneven = out.heated.uneven_k
    text = f"{uneven:.0f} °C from side to side"
    found = [Check("even", uneven <= SEEN_C, text + ": uneven, turn it" * (uneven > SEEN_C))]
    shop = job.asked.workshop
    held = shop.held_by is not None or shop.turns_part or bool(out.setup.turns)
    text = "nothing is said to hold the part in the flame and over the bath"
    found.append(Check("held", held, "held" if held else text))
    risk = out.crack
    if risk is not None:
        text = f"cracking {crack_words(risk)}"
        spare = CRACK_MARGIN[risk.crack_class]
        found.append(Check("cracking", risk.crack_class != "high", text, spare))
    brittle = out.temper.means == "none" and out.fresh_hrc > BRITTLE_HRC
    text = f"{out.fresh_hrc:.0f} HRC undrawn: it snaps; draw it at once"
    found.append(Check("drawn", not brittle, text if brittle else "drawn"))
    return found


def left_out(out: Outcome, job: Job) -> tuple[str, ...]:
    """Return which other places ask for hardness but lie apart from what is heated.

    Parameters
    ----------
    out : Outcome
        What comes out.
    job : Job
        The part and its demands.

    Returns
    -------
    tuple of str
        One condition for each zone apart: it takes a heat of its own.
    """
    whole = job.asked.part
    low, high = out.part.zone_mm
    if out.part.turned_round:
        low, high = whole.length_mm - high, whole.length_mm - low
    ends = [0.0, *np.cumsum([s.length for s in whole.section]).tolist()]
    found = []
    for demand in job.demands:
        apart = [
            n
            for n in demand.sections
            if demand.floor_hrc is not None
            and (ends[n + 1] <= low + APART_MM or ends[n] >= high - APART_MM)
        ]
        if apart:
            named = "section " + " and ".join(str(n + 1) for n in apart)
            found.append(
                f"{named}, which lies apart and asks {asked_words(demand)} too, gets a heat of "
                "its own; what that heat draws here is not computed"
            )
    return tuple(found)


def edge_notes(out: Outcome, job: Job) -> tuple[str, ...]:
    """Return where the hard zone ends too near to a notch.

    Parameters
    ----------
    out : Outcome
        What comes out.
    job : Job
        The part and its features.

    Returns
    -------
    tuple of str
        One condition for each notch within a quarter of the section of a hard edge.
    """
    part, whole = out.part, job.asked.part
    edges = [z for z in out.hard_mm if 0.0 < z < part.length_mm - 1.0]
    steps = np.cumsum([s.length_mm for s in part.sections])[:-1]
    sizes = [s.outer_mm for s in part.sections]
    places = {
        f"the step at {z:.0f} mm": float(z)
        for z, (a, b) in zip(steps, pairwise(sizes), strict=True)
        if abs(a - b) > 0.01 * a
    }
    for feature in whole.feature:
        if feature.at is not None and feature.kind in _NOTCHES:
            at = whole.length_mm - feature.at if part.turned_round else feature.at
            places[f"the {feature.kind} at {at:.0f} mm"] = at
    near = NEAR * part.thickest_mm
    return tuple(
        f"the hard zone, which ends at {edge:.0f} mm, is moved clear of {name} by {near:.0f} mm"
        for name, at in places.items()
        for edge in edges
        if abs(edge - at) < near
    )
