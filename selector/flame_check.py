"""The demands on a flame hardening: which it meets, each in words."""

from itertools import pairwise

import numpy as np

from selector.composition import middle
from selector.duty import Demand
from selector.flame_outcome import Check, Outcome
from selector.heat.operator import SEEN_C
from selector.movement import permitted_mm
from selector.quench_crack import crack_draws
from selector.surroundings import Surroundings
from selector.treatment import Treatment

# Harder than this, nothing undrawn is put to work. Common practice. [HRC]
BRITTLE_HRC = 50.0
# A zone that names no hardness but is to be hard at all. Common practice. [HRC]
USUAL_HRC = 50.0
# A hard edge keeps this share of the section from a notch. Common practice. [-]
NEAR = 0.25
_NOTCHES = frozenset(
    {"cross-hole", "slot", "keyway", "thread", "sharp-corner", "groove", "weld"}
)


def checks(
    out: Outcome, work: Treatment, around: Surroundings, demand: Demand
) -> tuple[Check, ...]:
    """Return every demand on the result, met or not.

    Parameters
    ----------
    out : Outcome
        What comes out.
    work : Treatment
        Steel, source, bath.
    around : Surroundings
        Part, loads, limits, workshop.
    demand : Demand
        What the leading zone asks.

    Returns
    -------
    tuple of Check
        The heat, hardness, depth, strength, corners, bow, handling.
    """
    floor, ceiling = demand.floor_hrc, demand.ceiling_hrc
    found = [Check("reach", True, f"at {out.target_c:.0f} °C after {out.heated.heat_s:.0f} s")]
    least = USUAL_HRC if floor is None else floor
    text = f"{out.surface_hrc:.0f} HRC at the softest place of the zone, asked {least:.0f}"
    found.append(Check("hard", out.surface_hrc >= least, text))
    if ceiling is not None:
        text = f"{out.surface_hrc:.0f} HRC drawn, at most {ceiling:.0f} asked"
        found.append(Check("not_too_hard", out.surface_hrc <= ceiling, text))
    if demand.depth_mm > 0.0:
        text = f"hard to {out.depth_mm:.1f} mm, asked {demand.depth_mm:.1f}"
        found.append(Check("depth", out.depth_mm >= demand.depth_mm, text))
    found += _bearing(out, around)
    margin = out.overheated_c - out.corner_c
    side = "short of" if margin > 0.0 else "beyond"
    text = f"hottest edge {out.corner_c:.0f} °C, {abs(margin):.0f} °C {side} coarse grain"
    found.append(Check("corner", margin > 0.0, text))
    limit, stated = permitted_mm(around)
    text = (
        f"bow about {out.bow_mm[0]:.2f} mm, {out.bow_mm[1]:.2f} mm in a bad case, permitted "
        f"{limit:.2f}" + ("" if stated else " (assumed)")
    )
    found.append(Check("movement", out.bow_mm[0] <= limit, text))
    found += _handling(out, work, around)
    return tuple(found)


def _bearing(out: Outcome, around: Surroundings) -> list[Check]:
    """Return whether the softest place bears the torque."""
    torque = around.asked.load.torque
    if not torque or out.ring is None:
        return []
    text = (
        f"outside the zone, softest at {out.ring.at_mm:.0f} mm, it bears "
        f"{out.ring.torque_nm:.0f} N m and carries {torque:.0f}"
    )
    return [Check("ring", out.ring.torque_nm >= torque, text)]


def _handling(out: Outcome, work: Treatment, around: Surroundings) -> list[Check]:
    """Return evenness, hold of the part, cracking, and whether it is drawn at all."""
    uneven = out.heated.uneven_k
    text = f"{uneven:.0f} °C from side to side"
    found = [Check("even", uneven <= SEEN_C, text + ": uneven, turn it" * (uneven > SEEN_C))]
    shop = around.asked.workshop
    held = shop.held_by is not None or shop.turns_part or bool(out.setup.turns)
    text = "nothing is said to hold the part in the flame and over the bath"
    found.append(Check("held", held, "held" if held else text))
    risk = crack_draws(work, around, middle(work.steel), around.shared()).risk
    if risk is not None:
        reason = f" ({risk.reasons[0].name})" if risk.reasons else ""
        cracks = risk.crack_class == "high"
        found.append(Check("cracking", not cracks, f"cracking {risk.crack_class}{reason}"))
    brittle = out.temper.means == "none" and out.fresh_hrc > BRITTLE_HRC
    text = f"{out.fresh_hrc:.0f} HRC undrawn: it snaps; draw it at once"
    found.append(Check("drawn", not brittle, text if brittle else "drawn"))
    return found


def edge_notes(out: Outcome, around: Surroundings) -> tuple[str, ...]:
    """Return where the hard zone ends too near to a notch.

    Parameters
    ----------
    out : Outcome
        What comes out.
    around : Surroundings
        The part and its features.

    Returns
    -------
    tuple of str
        One condition for each notch within a quarter of the section of a hard edge.
    """
    part, whole = out.part, around.asked.part
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
