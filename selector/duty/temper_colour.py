"""The temper that the trade gives an edge or a struck face, as one hour's heat.

The trade names a colour, not a hardness: harder steel keeps more of it at the same colour.
"""

from collections.abc import Mapping

from selector.duty.named_duty import Duty, duty_of
from selector.job.demand import Demand
from selector.job.usual_window import HOT_C
from selector.requirement import Requirement

# Purple to blue where it is struck, blue on a face, brown to purple where it is swung, straw to
# brown under a press; a colour comes some 40 °C lower in an hour than in minutes. Common
# practice. [°C]
_HOUR_C: Mapping[Duty, float] = {
    "struck edge": 260.0, "struck body": 280.0, "struck face": 250.0, "pressed edge": 215.0,
}  # fmt: skip
_SWUNG_C = 220.0


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
    if duty == "struck edge" and asked.load.impact != "hammered":
        return _SWUNG_C
    return _HOUR_C.get(duty)
