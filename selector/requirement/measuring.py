"""Which parts are there to measure or to fit, by how they are finished and what they bear."""

from typing import TYPE_CHECKING

from selector.requirement import mate_name, trade_name
from selector.requirement.zone import LEAST_WEAR

if TYPE_CHECKING:
    from selector.requirement.whole import Requirement

# A face lapped to the first, a thou and a bit, is there to measure or to fit, and so is a piece
# that bears nothing and is ground to the second. Common practice. [mm]
FITTED_MM, TRUE_MM = 0.03, 0.01
_GRINDERS = frozenset({"surface-grinder", "toolpost-grinder"})


def surely_measures(asked: "Requirement") -> bool:
    """Return whether a part is finished to measure or to fit, whatever its name."""
    finished, runout = set(asked.part.finish_after), asked.limit.runout
    worn = {(zone.wear, zone.severity) for zone in asked.zone if zone.wear != "none"}
    if trade_name.measures(asked.part.name):
        # A gauge is ground or lapped, kept true, or tried on steel; a rail's is a bar.
        ground = bool(finished & (_GRINDERS | {"lap", "oilstone"}))
        return (
            ground or runout is not None or _outlasts_steel(asked) or not worn <= {LEAST_WEAR}
        )
    return worn == {LEAST_WEAR} and (is_lapped(asked) or _is_ground_true(asked))


def is_lapped(asked: "Requirement") -> bool:
    """Return whether a part is lapped to fit or to be tried, and turns nothing."""
    runout = asked.limit.runout
    fine = runout is not None and runout <= FITTED_MM
    lapped = "lap" in asked.part.finish_after and not asked.load.torque
    return lapped and (fine or _outlasts_steel(asked) or _is_tried(asked))


def _outlasts_steel(asked: "Requirement") -> bool:
    """Return whether a part is to outlast the steel that it is tried on again and again."""
    mates = (zone.mate for zone in asked.zone if zone.mate is not None)
    return any(m.should_wear == "mate" and mate_name.is_ferrous(m.material) for m in mates)


def _is_tried(asked: "Requirement") -> bool:
    """Return whether a part bears nothing and is tried now and then on what wears it."""
    mates = [zone.mate.material for zone in asked.zone if zone.mate is not None]
    soft = any(map(mate_name.is_soft_work, mates))
    return bool(mates) and not soft and _is_idle(asked)


def _is_ground_true(asked: "Requirement") -> bool:
    """Return whether a part that bears nothing is ground after hardening as true as a gauge."""
    runout, ground = asked.limit.runout, bool(_GRINDERS & set(asked.part.finish_after))
    return ground and runout is not None and runout <= TRUE_MM and _is_idle(asked)


def _is_idle(asked: "Requirement") -> bool:
    """Return whether a part bears nothing, nor is used without end."""
    load = asked.load
    loaded = any((load.torque, load.bending, load.axial, load.contact))
    return not loaded and load.impact == "none" and load.cycles != "fatigue"
