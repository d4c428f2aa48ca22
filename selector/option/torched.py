"""A treatment at a torch over the samples: what every place went through by its set-up."""

from selector.hardening.bath_response import POSITIONS
from selector.job.job import Job, per_job
from selector.job.process import ReadingError
from selector.job.treatment import Treatment
from selector.option.set_up import alike, at_torch
from selector.requirement.part import Part
from selector.torch.probe import probes
from selector.torch.response import Library, SetUp, Torched, heats_of, looked_at


def torched(job: Job, work: Treatment) -> Torched:
    """Return a part as its torch leaves it, over the samples."""
    at = at_torch(job, work)
    return _torched(job, (at.library, at.set_up), at.error, (at.hard, at.lead, at.lead_probe))


def torched_to(job: Job, work: Treatment, heat_c: float, hold_s: float) -> Torched:
    """Return a part brought to a heat that is not that of hardening, over the samples."""
    at = at_torch(job, work)
    meant = SetUp(heat_c, hold_s, at.past_mm)
    return _torched(job, (at.library, meant), at.error, (at.hard, at.lead, at.lead_probe))


def meant_torched(job: Job, work: Treatment) -> Torched:
    """Return a part as its torch is meant to leave it, at the middle of all uncertainties."""
    return torched(job.middle(), alike(work))


@per_job
def _torched(
    job: Job,
    heated: tuple[Library, SetUp],
    error: ReadingError,
    zone: tuple[tuple[int, ...], int, int],
) -> Torched:
    """Return a part as its torch leaves it, for all steels that are heated alike."""
    (whole, set_up), (hard, lead, lead_probe) = heated, zone
    part, stretch, normals = job.asked.part, whole.heatings.torching.part, job.shared()
    radius_mm = 0.5 * part.section[lead].size
    seen = probes(stretch, _places(radius_mm, job.leading.depth_mm))
    library = looked_at(whole, seen)
    stop_c = set_up.heat_c + error.shift_c + error.bias_c * normals["eye_bias"]
    stop_c = stop_c + error.scatter_c * normals["eye_scatter"]
    heats = heats_of(library, set_up, stop_c, normals)
    of_hard, of_soft = (
        tuple(len(part.section) - 1 - n if stretch.turned_round else n for n in numbers)
        for numbers in (seen.hard, seen.soft)
    )
    return Torched(
        whole,
        set_up,
        seen,
        heats,
        library.read(heats),
        of_hard,
        of_soft,
        _columns(of_hard, (lead, max(hard)), seen.ends),
        lead_probe,
        part.length_mm,
        _holes(part, turned_round=stretch.turned_round),
    )


def _places(radius_mm: float, depth_mm: float) -> tuple[float, ...]:
    """Return the places looked at, one of them at the depth that is asked for."""
    asked = 1.0 - depth_mm / radius_mm
    if depth_mm <= 0.0 or not 0.05 < asked < POSITIONS[0] - 0.01:
        return POSITIONS
    near = min(range(1, len(POSITIONS) - 1), key=lambda k: abs(POSITIONS[k] - asked))
    return (*POSITIONS[:near], asked, *POSITIONS[near + 1 :])


def _columns(hard: tuple[int, ...], of: tuple[int, int], ends: int) -> tuple[int, ...]:
    """Return the probe of each section × place; what is apart has the leading one's."""
    count, (lead, last) = len(POSITIONS), of
    columns: list[int] = []
    for section in range(last + 1):
        first = (hard.index(section) if section in hard else hard.index(lead)) * count
        columns += range(first, first + count)
    return (*columns, *range(len(hard) * count, len(hard) * count + ends))


def _holes(part: Part, *, turned_round: bool) -> tuple[tuple[float, float], ...]:
    """Return place along the stretch and width of each cross-hole. [mm]."""
    return tuple(
        (part.length_mm - f.at if turned_round else f.at, f.size)
        for f in part.feature
        if f.kind == "cross-hole" and f.at is not None and f.size
    )
