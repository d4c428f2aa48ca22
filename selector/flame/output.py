"""The flame verdict turned into plain data: what `flame --json` prints and the page reads."""

import math
from typing import Any

import numpy as np
from numpy.typing import NDArray

from selector.decision.heating_gate import overheated_c
from selector.decision.option import Option
from selector.decision.output import option_out
from selector.flame.answer import FlameAnswer, FlameVerdict
from selector.flame.assumption import flame_assumptions
from selector.flame.change import Change
from selector.flame.record import (
    AcrossOut,
    AskedOut,
    ChangeOut,
    CoolingOut,
    FamilyOut,
    FiguresOut,
    FlameOut,
    MapOut,
    SoftRingOut,
)
from selector.hardening.stock import bought_hrc
from selector.heat.end_quench import end_quench_rate_c_per_s
from selector.heat.operator import seen_cell
from selector.job.asked_words import asked_words, most_words
from selector.job.demand import Demand
from selector.job.job import Job
from selector.option.caution import cautions
from selector.option.first_screen import cautions_out
from selector.option.hardness_map import hardness_map
from selector.option.torched import meant_torched
from selector.torch.hardness_map import HardnessMap
from selector.torch.part import Stretch
from selector.torch.reading import hard_stretch_mm, softest_place
from selector.torch.response import Torched

Floats = NDArray[np.float64]
SCHEMA_VERSION = 1
# Bow of one heat in ten over its median, by the scatter of a bow: exp(0.7 × 1.28).
WORSE = 2.45


def flame_out(answer: FlameAnswer) -> FlameOut:
    """Return the answer as plain data: the word first, then each family, best first."""
    job, best = answer.job, answer.best
    shown = best is not None and best.word in {"yes", "yes_if", "coupon_first"}
    leading = [best.option.judged.prediction] if shown and best and best.option else []
    listed = cautions(job, leading) if leading or (best and best.change) else ()
    return FlameOut(
        schema_version=SCHEMA_VERSION,
        part=job.asked.part.name,
        verdict=answer.word,
        why=answer.why,
        asked=_asked(job.leading),
        families=tuple(
            _family(answer, verdict, place) for place, verdict in enumerate(answer.verdicts, 1)
        ),
        residual_heat=None if answer.residual is None else _family(answer, answer.residual, 1),
        bought_hard=answer.bought,
        map=None if best is None or best.option is None else _map(job, best.option),
        assumptions=() if best is None else flame_assumptions(best.treatment, job),
        cautions=cautions_out(job, leading, listed),
    )


def _asked(lead: Demand) -> AskedOut:
    """Return what the leading zone asks."""
    return AskedOut(
        low_hrc=lead.low_hrc,
        high_hrc=lead.high_hrc,
        floor_hrc=lead.floor_hrc,
        ceiling_hrc=lead.ceiling_hrc,
        text=asked_words(lead),
        most=most_words(lead),
        depth_mm=lead.depth_mm,
        reason=lead.reason,
    )


def _family(answer: FlameAnswer, verdict: FlameVerdict, place: int) -> FamilyOut:
    """Return one verdict as plain data."""
    work, option, job = verdict.treatment, verdict.option, answer.job
    return FamilyOut(
        family=work.steel.family,
        steel=work.steel.name,
        steel_slug=work.steel.slug,
        condition=work.condition.name,
        medium=work.medium.slug if work.medium else None,
        source=work.source.slug if work.source else None,
        verdict=verdict.word,
        why=verdict.why,
        conditions=verdict.conditions,
        change=None if verdict.change is None else _change(answer, verdict.change),
        option=None if option is None else option_out(job, option, place, answer.ranges),
        figures=None if option is None else figures(job, option),
    )


def _change(answer: FlameAnswer, change: Change) -> ChangeOut:
    """Return the one change as plain data."""
    option = option_out(change.job, change.option, 1, answer.ranges)
    return ChangeOut(text=change.text, at_hand=change.at_hand, option=option)


def figures(job: Job, option: Option) -> FiguresOut:
    """Return what is read off the map of an option."""
    work = option.treatment
    seen, hard = meant_torched(job, work), map_of(job, option)
    part = seen.part
    low, high = hard_stretch_mm(hard, part.zone_mm, job.leading)
    ring = softest_place(hard, part, bought_hrc(work.condition), job.asked.part)
    # As far as the zone is judged: short of a thick body behind it.
    start_mm, end_mm = max(part.zone_mm[0], low), min(part.zone_mm[1], high)
    inside = (hard.along_mm >= start_mm) & (hard.along_mm <= end_mm)
    fresh = hard.surface(hard.quenched_hrc)
    bow = float(np.median(option.judged.prediction.movement.raw_mm))
    return FiguresOut(
        from_the_other_end=part.turned_round,
        hard_from_mm=round(low, 1),
        hard_to_mm=round(high, 1),
        as_quenched_hrc=round(float(fresh[inside].min() if inside.any() else fresh.min()), 1),
        soft_ring=SoftRingOut(
            at_mm=round(ring.at_mm, 1),
            width_mm=round(ring.width_mm, 1),
            hrc=round(ring.hrc, 1),
            torque_nm=round(ring.torque_nm, 1),
            weakest=ring.weakest,
        ),
        hottest_c=round(seen.hottest_c, 0),
        corner_margin_c=round(overheated_c(work.steel) - seen.hottest_c, 0),
        side_to_side_k=round(seen.uneven_k, 0),
        efficiency=round(seen.whole.heatings.efficiency, 3),
        bow_p90_mm=round(WORSE * bow, 3),
        cooling=_cooling(seen),
    )


def _cooling(seen: Torched) -> tuple[CoolingOut, ...]:
    """Return how surface and core of the zone cool, as on an end-quench bar."""
    grid, middle_mm = seen.grid, 0.5 * sum(seen.part.zone_mm)
    rows = grid.cells().tolist()
    column = int(np.argmin(np.abs(grid.along_mm - middle_mm)))
    inner = int(np.flatnonzero(grid.active[:, column])[0]) * grid.along_mm.size + column
    places = {"surface": seen_cell(grid, middle_mm), "core": inner}
    distance = seen.field.distance_mm[0]
    return tuple(
        CoolingOut(
            at=name,
            jominy_mm=round(float(distance[rows.index(cell)]), 1),
            rate_704_c_k_per_s=round(
                float(end_quench_rate_c_per_s(distance[rows.index(cell)])), 1
            ),
        )
        for name, cell in places.items()
    )


def _map(job: Job, option: Option) -> MapOut:
    """Return hardness and hottest temperature of every place, and along and across."""
    part, hard = stretch_of(job, option), map_of(job, option)
    middle_mm = 0.5 * sum(part.zone_mm)
    across = hard.column(middle_mm)
    kept = np.isfinite(across)
    return MapOut(
        from_the_other_end=part.turned_round,
        zone_mm=part.zone_mm,
        along_mm=_list(hard.along_mm),
        across_mm=_list(hard.across_mm, 2),
        hrc=_rows(hard.hrc),
        hottest_c=_rows(hard.peak_c, 0),
        surface_hrc=_list(hard.surface()),
        core_hrc=_list(hard.core()),
        as_quenched_hrc=_list(hard.surface(hard.quenched_hrc)),
        across=AcrossOut(
            at_mm=middle_mm,
            radius_mm=_list(hard.across_mm[kept], 2),
            hrc=_list(across[kept]),
        ),
    )


def map_of(job: Job, option: Option) -> HardnessMap:
    """Return the hardness map of an option at a torch, for a plot."""
    return hardness_map(job, option.treatment, option.choice.temper)


def stretch_of(job: Job, option: Option) -> Stretch:
    """Return the part as the solver has it, for a plot."""
    return meant_torched(job, option.treatment).part


def _list(values: Floats, digits: int = 1) -> tuple[Any, ...]:
    """Return an array as rounded numbers, None where there is none."""
    return tuple(round(float(v), digits) if math.isfinite(v) else None for v in values)


def _rows(field: Floats, digits: int = 1) -> tuple[tuple[Any, ...], ...]:
    """Return a field as rows of rounded numbers."""
    return tuple(_list(row, digits) for row in field)


def schema() -> dict[str, Any]:
    """Return the JSON schema of the flame verdict."""
    return FlameOut.model_json_schema()
