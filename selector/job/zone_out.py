"""The demand of a zone as the outputs of several questions have it."""

from selector.job.demand import Demand
from selector.record import ZoneOut


def zone_out(demand: Demand) -> ZoneOut:
    """Return the demand of a zone as plain data, zones counted from 1."""
    return ZoneOut(
        zone=demand.zone + 1,
        low_hrc=demand.low_hrc,
        high_hrc=demand.high_hrc,
        floor_hrc=demand.floor_hrc,
        ceiling_hrc=demand.ceiling_hrc,
        depth_mm=demand.depth_mm,
        derived=demand.derived,
        reason=demand.reason,
    )
