"""One way of flame hardening one bar, followed through: what comes out, and what it fails."""

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Condition
from selector.composition import middle
from selector.duty import Demand
from selector.flame_check import checks
from selector.flame_history import Cooled, Job, heat, quench
from selector.flame_map import Hardened, Stock, draw, draw_along, drawn_hrc, harden
from selector.flame_outcome import OVER_RANGE_C, OVERHEATED_C, Check, Outcome, Setup
from selector.flame_reading import hard_depth_mm, hard_stretch_mm, softest_place, within
from selector.flame_residual import RESIDUAL_HEAT, RunBack, dipped_and_drawn
from selector.flame_section import hole_lead_k
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.hazards.one_sided import bath_side_k, bow_mm
from selector.heat.boiling import Bath
from selector.heat.grid import Grid
from selector.heat.operator import Heated, seen_cell
from selector.heat.torch import wrap_fraction
from selector.metallurgy.temper_curve import parameter_k
from selector.preparation import supply_hrc
from selector.process import DELAY_S
from selector.surroundings import Surroundings
from selector.torch_job import Stretch, flame_of, operator, outlines, stretch
from selector.treatment import NO_TEMPER, Temper, Treatment, temper_ceilings, tempers

Floats = NDArray[np.float64]

# Hardness in HV of a cold-drawn bar once soft, where the catalogue has no soft condition of the
# steel (estimated from carbon bar sold both ways). [-]
DRAWN_TO_SOFT = 0.85
# What a corner is ahead of the flats by, over what a round's rim is ahead of its core, under an
# even flux: by the parabola for a square, by a computed cross-section for a hexagon. [-]
CORNER = {"round": 0.0, "tube": 0.0, "square": 1.0, "flat": 1.0, "hexagon": 0.4}
# Drawn below this, nobody knows how tough hardened steel is. Common practice. [°C]
LEAST_DRAW_C = 175.0
# Median of the absolute of a standard normal draw, and its 90 % point.
HALF, NINETY = 0.674, 1.645


def bath_of(work: Treatment, around: Surroundings) -> Bath:
    """Return the bath a treatment is quenched in, as this workshop keeps it.

    Parameters
    ----------
    work : Treatment
        What is quenched.
    around : Surroundings
        The workshop.

    Returns
    -------
    Bath
        Medium, temperature and motion.
    """
    slug = work.medium.slug if work.medium else "air"
    kept = next((b for b in around.asked.workshop.bath if b.medium == slug), None)
    if kept is None:
        return Bath(slug, None, "none" if slug == "air" else "moderate")  # type: ignore[arg-type]
    return Bath(slug, kept.temperature, kept.agitation)  # type: ignore[arg-type]


def _volume_l(work: Treatment, around: Surroundings) -> float | None:
    """Return how much the workshop's bath holds, if it was said."""
    slug = work.medium.slug if work.medium else "air"
    kept = next((b for b in around.asked.workshop.bath if b.medium == slug), None)
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


def _web_c(heated: Heated, grid: Grid, job: Job, around: Surroundings) -> float:
    """Return how hot the steel between a cross-hole and the end gets, 0 without one. [°C]."""
    part, hottest = around.asked.part, 0.0
    away = stretch(around.asked, around.hard, around.leading.sections[0]).turned_round
    for feature in part.feature:
        if feature.kind != "cross-hole" or feature.at is None or not feature.size:
            continue
        at_mm = part.length_mm - feature.at if away else feature.at
        if job.heated_mm[0] > 0.0 or at_mm > job.heated_mm[1]:
            continue
        web = seen_cell(grid, 0.5 * max(at_mm - 0.5 * feature.size, 0.0))
        row = heated.temperature_c[grid.cells().tolist().index(web)]
        thick_mm = job.sections[0].outer_mm
        washed = float(wrap_fraction(job.flame.width_mm, thick_mm)) * heated.level
        flame = (washed * job.flame.exchange, job.flame.flame_c)
        lead = hole_lead_k(thick_mm, at_mm, feature.size, flame, job.operator.stop_c)
        hottest = max(hottest, lead + float(np.interp(heated.heat_s, heated.time_s, row)))
    return hottest


def job_of(work: Treatment, around: Surroundings, setup: Setup) -> tuple[Job, Stretch]:
    """Return the numbers of one heat and quench.

    Parameters
    ----------
    work : Treatment
        Steel, source, bath.
    around : Surroundings
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
    shop, source = around.asked.workshop, work.source
    if source is None:
        msg = f"{work.label} has no heat source"
        raise ValueError(msg)
    part = stretch(around.asked, around.hard, around.leading.sections[0])
    flame = flame_of(source, shop) if setup.flame is None else setup.flame
    hand = operator(source, shop, target_c(work) + setup.misread_c, setup.hold_s)
    if setup.turns is not None:
        hand = replace(hand, turns=setup.turns)
    start, end = part.zone_mm
    heated = (max(start - setup.past_mm, 0.0), min(end + setup.past_mm, part.length_mm))
    if start == 0.0:
        heated = (0.0, heated[1])
    return Job(
        part.sections,
        part.zone_mm,
        heated,
        flame.stronger(setup.strength),
        hand,
        bath_of(work, around),
        DELAY_S * shop.skill.delay,
        setup.collapse,
        bath_volume_l=_volume_l(work, around),
        outlines=outlines(part),
    ), part


def heated_for(
    work: Treatment, around: Surroundings, setup: Setup
) -> tuple[Job, Stretch, tuple[Heated, Grid]]:
    """Return the heating of a setup, computed once for all steels and baths that share it.

    Parameters
    ----------
    work : Treatment
        Steel, source, bath.
    around : Surroundings
        Part and workshop.
    setup : Setup
        How it is done.

    Returns
    -------
    tuple of Job, Stretch and (Heated, Grid)
        The numbers, the part, and its heating.
    """
    job, part = job_of(work, around, setup)
    source = work.source.slug if work.source else ""
    key = ("flame-heat", source, repr((job.operator, job.heated_mm, job.flame)))
    return job, part, around.once(key, lambda: heat(job))


def follow(work: Treatment, around: Surroundings, setup: Setup, demand: Demand) -> Outcome:
    """Return what comes out when a bar is hardened this way.

    Parameters
    ----------
    work : Treatment
        Steel, condition, source, bath.
    around : Surroundings
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
    job, part, (heated, grid) = heated_for(work, around, setup)
    aim = target_c(work)
    if not heated.reached:
        text = (
            f"sticks at {heated.ceiling_c:.0f} °C after {heated.heat_s:.0f} s, "
            f"short of the {aim:.0f} °C that the steel needs"
        )
        return Outcome(setup, part, aim, heated, (Check("reach", False, text),))
    key = ("flame-quench", repr((job, work.source.slug if work.source else "")))
    cooled: Cooled = around.once(key, lambda: quench(job, heated, grid))
    stock = _stock(work)
    hardened = harden(cooled, stock, job.bath)
    temper = setup.temper or _temper(work, around, hardened, demand)
    found = draw(hardened, temper)
    if work.route.slug == RESIDUAL_HEAT:
        same = ("flame-residual", key[1], f"{temper.temperature_c:g}")
        back: RunBack | None = around.once(
            same, lambda: dipped_and_drawn(job, heated, grid, temper.temperature_c)
        )
        if back is None:  # too little heat is left: it stays undrawn
            temper = NO_TEMPER
            found = draw(hardened)
        else:
            cooled = back.cooled
            temper = replace(temper, time_s=back.drawn.arrived_s)
            found = draw_along(harden(cooled, stock, job.bath), back.drawn)
    zone = within(found.along_mm, part.zone_mm)
    surface, fresh = found.surface(), found.surface(found.quenched_hrc)
    middle_core = float(np.interp(job.middle_mm, found.along_mm, found.core()))
    outcome = Outcome(
        setup,
        part,
        aim,
        heated,
        (),
        overheated_c(work),
        max(corner_c(heated, grid, part, job.middle_mm), _web_c(heated, grid, job, around)),
        temper,
        found,
        float(surface[zone].min()),
        float(fresh[zone].min()),
        middle_core,
        hard_depth_mm(found, job.middle_mm, demand),
        hard_stretch_mm(found, job.middle_mm, demand),
        softest_place(found, part, stock.supply_hrc),
        _bow_mm(cooled, job, part, around),
        _corner_hrc(cooled, stock, job),
    )
    return replace(outcome, checks=checks(outcome, work, around, demand))


def _corner_hrc(cooled: Cooled, stock: Stock, job: Job) -> float:
    """Return the hardness as quenched of a corner at the middle of the zone, NaN of a round."""
    if not any(job.outlines):
        return float("nan")
    found = draw(harden(cooled.at_corner, stock, job.bath))
    return float(np.interp(job.middle_mm, found.along_mm, found.surface()))


def _stock(work: Treatment) -> Stock:
    """Return the bar as it is bought, and how soft the steel gets."""
    supply = _bought_hrc(work, work.condition)
    kinds = {"annealed", "hot-rolled", "normalised"}
    soft = [_bought_hrc(work, c) for c in work.steel.condition if c.name in kinds]
    known = [hrc for hrc in soft if np.isfinite(hrc)]
    softest = min([*known, supply]) if known or work.condition.name != "cold-drawn" else np.nan
    if not np.isfinite(softest):
        hv = DRAWN_TO_SOFT * hv_from_hrc(supply, outside="extend")
        softest = float(hrc_from_hv(hv, outside="extend"))
    composition = {e: float(v[0, 0]) for e, v in middle(work.steel).items()}
    return Stock(work.steel, composition, work.condition.name, supply, softest)


def _bought_hrc(work: Treatment, condition: Condition) -> float:
    """Return the hardness of a condition as sold, NaN where the catalogue has none."""
    sold = supply_hrc(replace(work, condition=condition), {"supply_hardness": np.zeros(1)})
    return float(sold[0])


def _temper(
    work: Treatment, around: Surroundings, hardened: Hardened, demand: Demand
) -> Temper:
    """Return the temper that comes nearest to the middle of the hardness asked for."""
    ceilings = temper_ceilings(around.asked.workshop, around.bench.sources)
    offered = [t for t in tempers(work, ceilings) if t.temperature_c >= LEAST_DRAW_C]
    clear = [t for t in offered if not _embrittles(work, t.temperature_c)]
    if not clear:
        return NO_TEMPER
    low = demand.low_hrc if demand.low_hrc is not None else demand.floor_hrc
    high = demand.high_hrc if demand.high_hrc is not None else demand.ceiling_hrc
    known = [v for v in (low, high) if v is not None]
    aim = sum(known) / len(known) + (2.0 if high is None else 0.0) if known else 52.0
    full = hardened.turned_hrc[hardened.share > 0.99]
    rim = np.array([np.quantile(full, 0.9) if full.size else 40.0])
    at_k = [parameter_k(t.temperature_c, t.time_s * t.cycles) for t in clear]
    found = drawn_hrc(hardened.stock, np.repeat(rim, len(clear)), np.array(at_k))
    return clear[int(np.argmin(np.abs(found - aim)))]


def _embrittles(work: Treatment, temperature_c: float) -> bool:
    """Return whether a temper lies in a window the catalogue warns of."""
    return any(s.low <= temperature_c <= s.high for s in work.steel.embrittlement_c)


def _bow_mm(
    cooled: Cooled, job: Job, part: Stretch, around: Surroundings
) -> tuple[float, float]:
    """Return the bow at the middle and at nine in ten, out of one-sided flame and bath."""
    hot = cooled.peak_c > 500.0
    passed = cooled.time_700_500_s[hot & np.isfinite(cooled.time_700_500_s)]
    mean_s = float(np.exp(np.mean(np.log(passed)))) if passed.size else np.inf
    bath = float(bath_side_k(mean_s, part.thickest_mm, 1.0))
    side = float(np.hypot(bath, cooled.heated.uneven_k))
    reach = job.heated_mm[1] - job.heated_mm[0]
    middle_mm = float(bow_mm(side, part.thickest_mm, reach, around.asked.part.length_mm))
    return HALF * middle_mm, NINETY * middle_mm
