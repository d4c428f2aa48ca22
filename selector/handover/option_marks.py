"""What a drawing is told of an option: read from its record and its own hardness map."""

import math

import numpy as np
from numpy.typing import NDArray

from selector.decision.option import Option
from selector.figure import quantiles
from selector.flame.output import figures, map_of, stretch_of
from selector.flame.record import FiguresOut
from selector.handover.drawing.marks import Band, Field, Marks, Note
from selector.hardening.stock import bought_hrc
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.treatment import LAYERS, Treatment, is_torched
from selector.option.set_up import alike, at_torch
from selector.option.torched import meant_torched
from selector.torch.residual_heat import RESIDUAL_HEAT
from selector.wording import shown

# Places across the steel that a field is told at.
ACROSS = 33
# Where nothing is asked, steps of hardness go by the usual ones. [HRC]
USUAL_HRC = (25.0, 40.0, 48.0, 50.0, 56.0)
# A zone with a longer name is called the zone beside its arrows. [letters]
LONGEST_NAME = 24
# A bar counts as bought where it is no harder than it came by more than this. [HRC]
AS_BOUGHT_HRC = 2.0


def asked_marks(job: Job) -> Marks:
    """Return what is asked of a part, nothing being chosen yet: bands as deep as asked.

    Parameters
    ----------
    job : Job
        Part and workshop.

    Returns
    -------
    Marks
        Without a figure of what comes out.
    """
    bands = [
        Band(start, end, demand.depth_mm or None, None, f"asked {_window(demand)}")
        for demand in job.demands
        if demand.floor_hrc is not None
        for start, end in _places(job, demand.sections)
    ]
    limits = _limits(job.leading, 10.0)
    return Marks(tuple(bands), None, limits, rest="no hardness asked")


def option_marks(job: Job, option: Option) -> Marks:
    """Return what is drawn of an option: where it is hard, heated and soft.

    Parameters
    ----------
    job : Job
        Part and workshop.
    option : Option
        What is done.

    Returns
    -------
    Marks
        Every figure is one of the option's record.
    """
    work = option.treatment
    bought = bought_hrc(work.condition)
    limits = _limits(job.leading, bought, _middle(option.judged.prediction.surface_hrc))
    rest = f"as bought, {shown(bought)}"
    if work.route.process == "none":
        return _untouched(job, work, rest)
    said = _said(job, option)
    if not (is_torched(work) and work.hardens):
        bands = _bands(job, option)
        return Marks(bands, None, limits, bought, rest, said)
    read = figures(job, option)
    return Marks(
        _torched_bands(job, option, read),
        _field(job, option),
        limits,
        bought,
        f"{rest} · a file cuts it" if bought < 50.0 else rest,
        said,
        _notes(job, option, read),
        heated_mm(job, work),
        _heat_words(job, work),
        _water_mm(job, work),
    )


def _middle(sample: NDArray[np.float64]) -> float:
    """Return the middle of a sample as the record has it, so that both round to one figure."""
    return quantiles(sample, 0.5)[0]


def _untouched(job: Job, work: Treatment, rest: str) -> Marks:
    """Return what is drawn of bar left as it came: hatched where that is hard enough."""
    bought, least = bought_hrc(work.condition), job.leading.floor_hrc
    if least is None:
        soft = max(USUAL_HRC[0], bought + AS_BOUGHT_HRC)
        limits = tuple(max(limit, soft + k) for k, limit in enumerate(USUAL_HRC))
        return Marks((), None, limits, bought, rest)
    length, limits = job.asked.part.length_mm, _limits(job.leading, bought)
    if bought < least:
        return Marks((), None, limits, bought, rest)
    return Marks((Band(0.0, length, None, bought, rest),), None, limits, bought, rest)


def _window(demand: Demand) -> str:
    """Return the window that is asked: "50 to 56 HRC"."""
    low = demand.low_hrc if demand.low_hrc is not None else demand.floor_hrc
    high = demand.high_hrc if demand.high_hrc is not None else demand.ceiling_hrc
    if low is None:
        return f"at most {shown(high)}" if high is not None else "nothing"
    if high is None or round(high) == round(low):
        return f"{shown(low)} or more"
    both = low >= 20.0
    return f"{low:.0f} to {high:.0f} HRC" if both else f"{shown(low)} to {shown(high)}"


def _limits(lead: Demand, bought: float, comes_hrc: float | None = None) -> tuple[float, ...]:
    """Return the bounds between the six steps of hardness, each over the one before."""
    floor = lead.floor_hrc
    if floor is None:
        # Nothing is asked: what comes out is the middle of the steps.
        floor = USUAL_HRC[2] if comes_hrc is None else comes_hrc - 4.0
    low = max(lead.low_hrc if lead.low_hrc is not None else floor + 2.0, floor + 0.5)
    high = max(lead.high_hrc or lead.ceiling_hrc or low + 6.0, low + 1.0)
    soft = min(max(USUAL_HRC[0], bought + AS_BOUGHT_HRC), floor - 2.0)
    return soft, 0.5 * (soft + floor), floor, low, high


def _said(job: Job, option: Option) -> tuple[str, ...]:
    """Return what comes out, and what was asked, in a line each."""
    outcome, lead = option.judged.prediction, job.leading
    hrc = shown(_middle(outcome.surface_hrc))
    depth = _middle(outcome.depth_mm)
    if outcome.layer is not None:
        first = f"{hrc}, {outcome.layer.depth_mm:.2f} mm deep"
    elif outcome.hard_through:
        first = f"{hrc} right through"
    else:
        first = f"{hrc}, {depth:.1f} mm deep" if math.isfinite(depth) and depth else hrc
    if lead.floor_hrc is None:
        return (first,)
    deep = f", at least {lead.depth_mm:g} mm deep" if lead.depth_mm else ""
    return first, f"asked {_window(lead)}{deep}"


def _places(job: Job, sections: tuple[int, ...]) -> list[tuple[float, float]]:
    """Return the stretches that sections make, neighbours joined. [mm]."""
    ends = np.cumsum([0.0, *(s.length for s in job.asked.part.section)]).tolist()
    runs: list[list[int]] = []
    for index in sorted(sections):
        if runs and runs[-1][-1] == index - 1:
            runs[-1].append(index)
        else:
            runs.append([index])
    return [(ends[run[0]], ends[run[-1] + 1]) for run in runs]


def _bands(job: Job, option: Option) -> tuple[Band, ...]:
    """Return what is hard where no map was computed: a layer all over, or by sections."""
    outcome, work = option.judged.prediction, option.treatment
    surface, sections = _middle(outcome.surface_hrc), range(len(job.asked.part.section))
    if work.route.process in LAYERS:
        depth = outcome.layer.depth_mm if outcome.layer else _middle(outcome.depth_mm)
        places = _places(job, job.hard if work.route.extent == "local" else tuple(sections))
        return tuple(Band(a, b, depth, surface, shown(surface)) for a, b in places)
    if not work.hardens and work.route.process != "age":
        return ()
    local = work.route.extent == "local"
    return tuple(
        _band(job, option, index) for index in sections if index in job.hard or not local
    )


def _band(job: Job, option: Option, index: int) -> Band:
    """Return one section as it comes out of a quench that it went into whole."""
    outcome = option.judged.prediction
    ((start, end),) = _places(job, (index,))
    if index in job.leading.sections:
        hrc = _middle(outcome.surface_hrc)
        depth = None if outcome.hard_through else _middle(outcome.depth_mm)
        return Band(start, end, depth, hrc, shown(hrc))
    # The record has one figure for all sections beside the zone: said where there is one.
    hrc = float(np.median(outcome.section_hrc[:, index]))
    others = [i for i in range(len(job.asked.part.section)) if i not in job.hard]
    words = shown(_middle(outcome.shank_hrc)) if others == [index] else ""
    return Band(start, end, None, hrc, words)


def _torched_bands(job: Job, option: Option, read: FiguresOut) -> tuple[Band, ...]:
    """Return the words of the strip of a part at a torch: what the zone comes out as."""
    hrc = _middle(option.judged.prediction.surface_hrc)
    if meant_torched(job, option.treatment).part.is_whole:
        ends = _places(job, job.leading.sections)
    else:
        ends = [_turned(job, option.treatment, (read.hard_from_mm, read.hard_to_mm))]
    return tuple(Band(low, high, None, hrc, shown(hrc)) for low, high in ends)


def _turned(job: Job, work: Treatment, ends_mm: tuple[float, float]) -> tuple[float, float]:
    """Return a stretch of the map as it lies from the working end. [mm]."""
    if not meant_torched(job, work).part.turned_round:
        return ends_mm
    length = job.asked.part.length_mm
    return length - ends_mm[1], length - ends_mm[0]


def heated_mm(job: Job, work: Treatment) -> tuple[float, float]:
    """Return from where to where a part is heated, from the working end. [mm]."""
    seen = meant_torched(job, work)
    stretch = seen.whole.heatings.torching.heated_mm(seen.set_up.past_mm)
    if seen.part.is_whole:
        return 0.0, job.asked.part.length_mm
    return _turned(job, work, stretch)


def _heat_words(job: Job, work: Treatment) -> str:
    """Return where the heat goes in words: "FLAME 0–25 mm: claws and 7 mm past, all round"."""
    seen, zone = meant_torched(job, work), job.asked.zone[job.leading.zone]
    name = "FIRE" if work.source is not None and work.source.kind == "fire" else "FLAME"
    if seen.part.is_whole:
        return f"{name}: all of it, end to end"
    low, high = heated_mm(job, work)
    past = round(seen.set_up.past_mm, 1)
    beyond = f" and {past:.0f} mm past" if past >= 0.5 else ", and no farther"
    where = zone.name if len(zone.name or "") <= LONGEST_NAME else None
    return f"{name} {low:.0f}–{high:.0f} mm: {where or 'zone'}{beyond}, all round"


def _field(job: Job, option: Option) -> Field:
    """Return the hardness map as a drawing takes it: across by share of the steel."""
    found, part = map_of(job, option), stretch_of(job, option)
    share = np.linspace(0.0, 1.0, ACROSS)
    hrc, peak = (np.empty((ACROSS, found.along_mm.size)) for _ in range(2))
    for column in range(found.along_mm.size):
        rows = np.flatnonzero(np.isfinite(found.hrc[:, column]))
        across = found.across_mm[rows]
        places = (across - across[0]) / max(across[-1] - across[0], 1e-9)
        hrc[:, column] = np.interp(share, places, found.hrc[rows, column])
        peak[:, column] = np.interp(share, places, found.peak_c[rows, column])
    along = np.asarray(found.along_mm)
    if part.turned_round:
        along, hrc, peak = job.asked.part.length_mm - along[::-1], hrc[:, ::-1], peak[:, ::-1]
    return Field(along, share, hrc, peak)


def _notes(job: Job, option: Option, read: FiguresOut) -> tuple[Note, ...]:
    """Return what stands over the strip: where hardness ends, begins, and the softest ring."""
    work = option.treatment
    if meant_torched(job, work).part.is_whole:
        return ()
    length, notes = job.asked.part.length_mm, []
    low, high = _turned(job, work, (read.hard_from_mm, read.hard_to_mm))
    if low >= 0.5:
        notes.append(Note(low, f"hard from {low:.0f}"))
    if high <= length - 0.5:
        notes.append(Note(high, f"hard to {high:.0f}"))
    # As the last file test says: where nothing got hot enough to turn.
    soft = max(option.judged.prediction.hard_ends_mm, default=length)
    if high < soft <= length - 0.5:
        notes.append(Note(soft, f"soft from {soft:.0f}"))
    ring = read.soft_ring
    if ring.width_mm > 0.0:
        at = _turned(job, work, (ring.at_mm, ring.at_mm))[0]
        notes.append(Note(at, f"softest {shown(ring.hrc)}"))
    return tuple(notes)


def _water_mm(job: Job, work: Treatment) -> float | None:
    """Return how far a part is dipped that keeps its heat behind. [mm]."""
    if work.route.slug != RESIDUAL_HEAT:
        return None
    dip = at_torch(job, alike(work)).dip
    return None if dip is None else float(round(dip.under_mm))
