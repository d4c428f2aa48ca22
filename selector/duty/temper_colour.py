"""The temper that the trade gives an edge or a struck face, as one hour's heat.

The trade names a colour, not a hardness: harder steel keeps more of it at the same colour.
"""

from collections.abc import Mapping

from selector.duty.merit import EDGES
from selector.duty.named_duty import Duty, duty_of
from selector.job.demand import Demand
from selector.job.window_table import HOT_C
from selector.requirement import Requirement

# Purple to blue where it is struck, blue on a face, brown to purple where it is swung, straw to
# brown under a press; a colour comes some 40 °C lower in an hour than in minutes. Common
# practice. [°C]
_HOUR_C: Mapping[Duty, float] = {
    "struck edge": 260.0, "struck body": 280.0, "struck face": 250.0, "pressed edge": 215.0,
}  # fmt: skip
_SWUNG_C = 220.0
# A point as thin as the last that is bent, or an end that is twisted, is tempered to blue, or
# it snaps; a broad blade bends a little and is not. Common practice. [°C], [-], [mm]
_PRISES_C, _BROAD, _THIN_MM = 270.0, 2.0, 4.0


def usual_temper_c(demand: Demand, asked: Requirement) -> float | None:
    """Return the usual temper of an edge or a face that takes blows.

    Parameters
    ----------
    demand : Demand
        Of the zone.
    asked : Requirement
        What is asked.

    Returns
    -------
    float or None
        As of one hour; None where hardness alone decides, and for tools that work hot. [°C]
    """
    service_c = asked.limit.service_temperature
    if service_c is not None and service_c >= HOT_C:
        return None
    duty = duty_of(demand, asked)
    by_hand = asked.load.impact != "hammered" and not asked.presses
    if duty in EDGES and by_hand and _prises(demand, asked):
        return _PRISES_C
    if duty == "struck edge" and asked.load.impact != "hammered":
        return _SWUNG_C
    return _HOUR_C.get(duty)


def _prises(demand: Demand, asked: Requirement) -> bool:
    """Return whether a thin edge is twisted, or a thin point bent."""
    load, sections = asked.load, asked.part.section
    thin = [n for n in demand.sections if sections[n].narrowest_mm <= _THIN_MM]
    slim = {n for n in thin if sections[n].across_mm <= _BROAD * sections[n].size}
    return any(load.twists(n) or (n in slim and load.bends(n)) for n in thin)
