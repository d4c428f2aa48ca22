"""One way of flame hardening one bar, followed through: what comes out, and what it fails."""

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from selector.flame.bath import bath_check
from selector.flame.check import checks, crack_of
from selector.flame.outcome import OVER_RANGE_C, OVERHEATED_C, Check, Outcome, Setup
from selector.flame.temper import chosen_temper
from selector.hardening.as_quenched import start
from selector.hardening.stock import Stock, stock_of
from selector.hazards.one_sided import bath_side_k, bow_mm
from selector.heat.boiling import Bath
from selector.heat.grid import Grid
from selector.heat.operator import Heated, seen_cell
from selector.heat.torch import wrap_fraction
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.process import DELAY_S
from selector.job.treatment import NO_TEMPER, Treatment
from selector.torch.flame_history import Cooled, FlameJob, heat, quench
from selector.torch.ground_face import flame_skin_mm, ground
from selector.torch.hardness_map import draw, draw_along, harden
from selector.torch.part import Stretch, flame_of, operator, outlines, stretch
from selector.torch.reading import (
    half_martensite_hrc,
    hard_depth_mm,
    hard_stretch_mm,
    softest_place,
    wall_at,
    within,
)
from selector.torch.residual_heat import RESIDUAL_HEAT, RunBack, dipped_and_drawn
from selector.torch.section import hole_lead_k

Floats = NDArray[np.float64]

# What a corner is ahead of the flats by, over what a round's rim is ahead of its core, under an
# even flux: by the parabola for a square, by a computed cross-section for a hexagon. [-]
CORNER = {"round": 0.0, "tube": 0.0, "square": 1.0, "flat": 1.0, "hexagon": 0.4}
# A heat that rises by less in a minute has come to its end; this many seconds a minute. [°C]
STUCK_C_PER_MIN, MINUTE_S = 3.0, 60.0
# Median of the absolute of a standard normal draw, and its 90 % point.
HALF, NINETY = 0.674, 1.645


def bath_of(work: Treatment, job: Job) -> Bath:
    """Return the bath a treatment is quenched in, as this workshop keeps it.

    Parameters
    ----------
    work : Treatment
        What is quenched.
    job : Job
        The workshop.

    Returns
    -------
    Bath
        Medium, temperature and motion.
    """
    slug = work.medium.slug if work.medium else "air"
    kept = next((b for b in job.asked.workshop.bath if b.medium == slug), None)
    if kept is None:
        return Bath(slug, None, "none" if slug == "air" else "moderate")  # type: ignore[arg-type]
    return Bath(slug, kept.temperature, kept.agitation)  # type: ignore[arg-type]


def _volume_l(work: Treatment, job: Job) -> float | None:
    """Return how much the workshop's bath holds, if it was said."""
    slug = work.medium.slug if work.medium else "air"
    kept = next((b for b in job.asked.workshop.bath if b.medium == slug), None)
    return kept.volume if kept is not None else None


def target_c(work: Treatment) -> float:
    """Return the hardening heat aimed at, in steps of 10 °C that steels share. [°C].

    Parameters
    ----------
    work : Treatment
        What is heated.

    Returns
    -------
    float
        Middle of the steel's own range. [°C]
    """
    hardened = work.steel.hardened
    return 10.0 * round((hardened.temperature_c.middle if hardened else 850.0) / 10.0)


def overheated_c(work: Treatment) -> float:
    """Return the heat above which a steel coarsens in the flame. [°C].

    Parameters
    ----------
    work : Treatment
        What is heated.

    Returns
    -------
    float
        By its hardening range, and for any steel. [°C]
    """
    hardened = work.steel.hardened
    top = hardened.temperature_c.high if hardened else OVERHEATED_C
    return min(OVERHEATED_C, top + OVER_RANGE_C)


def corner_c(heated: Heated, grid: Grid, part: Stretch, middle_mm: float) -> float:
    """Return how hot the hottest edge gets: of an end, or of a square or hexagon. [°C].

    Parameters
    ----------
    heated : Heated
        Heating of the round that stands for the section; all cells.
    grid : Grid
        Its cells.
    part : Stretch
        The real sections of the zone.
    middle_mm : float
        Middle of the zone. [mm]

    Returns
    -------
    float
        Hottest cell, or the corner by `CORNER`. [°C]
    """
    rows = grid.cells().tolist()
    rim, core = (
        float(np.interp(heated.heat_s, heated.time_s, heated.temperature_c[rows.index(cell)]))
        for cell in (seen_cell(grid, middle_mm), grid.cell(0.0, middle_mm))
    )
    ahead = max(CORNER[shape.shape] for shape in part.hot_shapes) * max(rim - core, 0.0)
    return max(heated.hottest_c, rim + ahead)


def _web_c(heated: Heated, grid: Grid, task: FlameJob, job: Job) -> float:
    """Return how hot the steel between a cross-hole and the end gets, 0 without one. [°C]."""
    part, hottest = job.asked.part, 0.0
    away = stretch(job.asked, job.hard, job.leading.sections[0]).turned_round
    for feature in part.feature:
        if feature.kind != "cross-hole" or feature.at is None or not feature.size:
            continue
        at_mm = part.length_mm - feature.at if away else feature.at
        if task.heated_mm[0] > 0.0 or at_mm > task.heated_mm[1]:
            continue
        web = seen_cell(grid, 0.5 * max(at_mm - 0.5 * feature.size, 0.0))
        row = heated.temperature_c[grid.cells().tolist().index(web)]
        thick_mm = task.sections[0].outer_mm
        washed = float(wrap_fraction(task.flame.width_mm, thick_mm)) * heated.level
        flame = (washed * task.flame.exchange, task.flame.flame_c)
        lead = hole_lead_k(thick_mm, at_mm, feature.size, flame, task.operator.stop_c)
        hottest = max(hottest, lead + float(np.interp(heated.heat_s, heated.time_s, row)))
    return hottest


def job_of(work: Treatment, job: Job, setup: Setup) -> tuple[FlameJob, Stretch]:
    """Return the numbers of one heat and quench.

    Parameters
    ----------
    work : Treatment
        Steel, source, bath.
    job : Job
        Part and workshop.
    setup : Setup
        How it is done.

    Returns
    -------
    tuple of Job and Stretch
        For the solver, and the part it stands for.

    Raises
    ------
    ValueError
        The treatment has no heat source.
    """
    shop, source = job.asked.workshop, work.source
    if source is None:
        msg = f"{work.label} has no heat source"
        raise ValueError(msg)
    part = stretch(job.asked, job.hard, job.leading.sections[0])
    flame = flame_of(source, shop) if setup.flame is None else setup.flame
    hand = operator(source, shop, target_c(work) + setup.misread_c, setup.hold_s)
    if setup.turns is not None:
        hand = replace(hand, turns=setup.turns)
    low, high = part.zone_mm
    heated = (max(low - setup.past_mm, 0.0), min(high + setup.past_mm, part.length_mm))
    return FlameJob(
        part.sections,
        part.zone_mm,
        heated,
        flame.stronger(setup.strength),
        hand,
        setup.bath or bath_of(work, job),
        DELAY_S * shop.skill.delay,
        setup.collapse,
        steel_class=start(work.steel).steel_class,
        bath_volume_l=_volume_l(work, job),
        outlines=outlines(part),
    ), part


def heated_for(
    work: Treatment, job: Job, setup: Setup
) -> tuple[FlameJob, Stretch, tuple[Heated, Grid]]:
    """Return the heating of a setup, computed once for all steels and baths that share it.

    Parameters
    ----------
    work : Treatment
        Steel, source, bath.
    job : Job
        Part and workshop.
    setup : Setup
        How it is done.

    Returns
    -------
    tuple of Job, Stretch and (Heated, Grid)
        The numbers, the part, and its heating.
    """
    task, part = job_of(work, job, setup)
    source = work.source.slug if work.source else ""
    key = (
        "flame-heat",
        source,
        repr((task.operator, task.heated_mm, task.flame, task.steel_class)),
    )
    return task, part, job.once(key, lambda: heat(task))


def _short(heated: Heated, grid: Grid, task: FlameJob, aim_c: float) -> str:
    """Return in words how far a flame came that does not bring the heat: stuck, or too slow."""
    seen = heated.temperature_c[grid.cells().tolist().index(seen_cell(grid, task.middle_mm))]
    before = float(np.interp(heated.time_s[-1] - MINUTE_S, heated.time_s, seen))
    # A degree short is short: no heat is rounded up to the one that is needed.
    came, minutes = min(heated.ceiling_c, aim_c - 1.0), heated.heat_s / MINUTE_S
    where = " between firebricks" if task.operator.hearth else ""
    how = (
        f"only {came:.0f} °C after {minutes:.0f} minutes{where}, and hardly rising"
        if heated.ceiling_c - before < STUCK_C_PER_MIN
        else f"only {came:.0f} °C after {minutes:.0f} minutes{where}, still rising"
    )
    return f"{how}: short of the {aim_c:.0f} °C that the steel needs"


def follow(work: Treatment, job: Job, setup: Setup, demand: Demand) -> Outcome:
    """Return what comes out when a bar is hardened this way.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    job : Job
        Part and workshop.
    setup : Setup
        How it is done.
    demand : Demand
        What the leading zone asks.

    Returns
    -------
    Outcome
        Figures, the map and every demand, met or not.
    """
    task, part, (heated, grid) = heated_for(work, job, setup)
    aim = target_c(work)
    if not heated.reached:
        text = _short(heated, grid, task, aim)
        return Outcome(setup, part, aim, heated, (Check("reach", False, text),))
    key = ("flame-quench", repr((task, work.source.slug if work.source else "")))
    cooled: Cooled = job.once(key, lambda: quench(task, heated, grid))
    stock = stock_of(work)
    hardened = harden(cooled, stock, task.bath)
    temper = setup.temper or chosen_temper(work, job, hardened, demand, part.zone_mm)
    found = draw(hardened, temper)
    if work.route.slug == RESIDUAL_HEAT:
        same = ("flame-residual", key[1], f"{temper.temperature_c:g}")
        back: RunBack | None = job.once(
            same, lambda: dipped_and_drawn(task, heated, grid, temper.temperature_c)
        )
        if back is None:  # too little heat is left: it stays undrawn
            temper = NO_TEMPER
            found = draw(hardened)
        else:
            cooled = back.cooled
            temper = replace(temper, time_s=back.drawn.arrived_s)
            found = draw_along(harden(cooled, stock, task.bath), back.drawn)
    zone = within(found.along_mm, part.zone_mm)
    removed_mm = job.asked.part.stock_removal or 0.0
    finished = ground(found, part, removed_mm)
    surface, fresh = finished.surface(), found.surface(found.quenched_hrc)
    wall, least = (
        wall_at(part, task.middle_mm),
        half_martensite_hrc(stock.composition_wt_pct),
    )
    middle_core = float(np.interp(task.middle_mm, found.along_mm, found.core()))
    outcome = Outcome(
        setup,
        part,
        aim,
        heated,
        (),
        overheated_c(work),
        max(
            corner_c(heated, grid, part, task.middle_mm),
            _web_c(heated, grid, task, job),
        ),
        temper,
        found,
        float(surface[zone].min()),
        float(fresh[zone].min()),
        middle_core,
        max(hard_depth_mm(found, task.middle_mm, demand, wall, least) - removed_mm, 0.0),
        hard_stretch_mm(finished, part.zone_mm, demand),
        softest_place(found, part, stock.supply_hrc, job.asked.part),
        _bow_mm(cooled, task, part, job),
        _corner_hrc(cooled, stock, task),
        wall.true_mm - removed_mm,
        crack_of(work, job),
        removed_mm,
        flame_skin_mm(heated, grid, task.middle_mm),
        _jominy_mm(cooled, task.middle_mm),
    )
    bath = bath_check(task, (heated, grid), work, job)
    met = checks(outcome, job, demand)
    return replace(outcome, checks=met if bath is None else (*met, bath))


def _jominy_mm(cooled: Cooled, along_mm: float) -> tuple[float, float]:
    """Return the end-quench distance of surface and core; NaN of what never came to heat."""
    grid = cooled.grid
    here = int(np.argmin(np.abs(grid.along_mm - along_mm)))
    steel = grid.field(cooled.distance_mm)[grid.active[:, here], here]
    return float(steel[-1]), float(steel[0])


def _corner_hrc(cooled: Cooled, stock: Stock, task: FlameJob) -> float:
    """Return the hardness as quenched of a corner at the middle of the zone, NaN of a round."""
    edges = np.cumsum([section.length_mm for section in task.sections])
    at = min(int(np.searchsorted(edges, task.middle_mm)), edges.size - 1)
    if not task.outlines or task.outlines[at] is None:
        return float("nan")
    found = draw(harden(cooled.at_corner, stock, task.bath))
    return float(np.interp(task.middle_mm, found.along_mm, found.surface()))


def _bow_mm(cooled: Cooled, task: FlameJob, part: Stretch, job: Job) -> tuple[float, float]:
    """Return the bow at the middle and at nine in ten, out of one-sided flame and bath."""
    hot = cooled.peak_c > 500.0
    passed = cooled.time_700_500_s[hot & np.isfinite(cooled.time_700_500_s)]
    mean_s = float(np.exp(np.mean(np.log(passed)))) if passed.size else np.inf
    bath = float(bath_side_k(mean_s, part.thickest_mm, 1.0))
    side = float(np.hypot(bath, cooled.heated.uneven_k))
    reach = task.heated_mm[1] - task.heated_mm[0]
    middle_mm = float(bow_mm(side, part.thickest_mm, reach, job.asked.part.length_mm))
    return HALF * middle_mm, NINETY * middle_mm
