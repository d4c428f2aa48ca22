"""What every option of one job is judged against: zones, loads, limits and checks."""

from dataclasses import dataclass

from selector.duty.contact import Pressing, pressings
from selector.duty.strength import Bearing, bearing
from selector.job.demand import Demand
from selector.job.job import Job, per_job
from selector.job.treatment import FLAMES
from selector.requirement import Requirement
from selector.sampling import Normals


@dataclass(frozen=True, slots=True, eq=False)
class Standard:
    """What the options are judged against; the same for all of them.

    `lead` is the demand of the zone that sets the treatment, `others` those of the zones beside
    it, `hard` the sections that want hardness. `pressing` is the contact of the leading zone.
    `normals` is the sample that all steels share.
    """

    asked: Requirement
    lead: Demand
    others: tuple[Demand, ...]
    hard: tuple[int, ...]
    bears: Bearing
    pressing: Pressing | None
    has_flame: bool
    normals: Normals


@per_job
def standard_of(job: Job) -> Standard:
    """Return what the options of a job are judged against."""
    lead = job.leading
    return Standard(
        asked=job.asked,
        lead=lead,
        others=tuple(demand for demand in job.demands if demand.zone != lead.zone),
        hard=job.hard,
        bears=bearing(job.asked),
        pressing=next((p for p in pressings(job.asked) if p.zone == lead.zone), None),
        has_flame=any(source.kind in FLAMES for source in job.bench.sources),
        normals=job.shared(),
    )
