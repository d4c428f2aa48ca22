"""Hardness of the working zone, its core and the rest of the part, by what the route does."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.hardening import as_quenched
from selector.hardening.model_range import ranges_left
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.job.geometry import POSITIONS
from selector.job.job import Job
from selector.job.process import temper_peak_c
from selector.job.treatment import Temper
from selector.metallurgy.hardenability import heat_curve
from selector.option.local_hardness import beside, local_hardness
from selector.option.preparation import Prepared, cooled_points

Floats = NDArray[np.float64]
# Depth of a flame- or induction-hardened layer: to 0.8 of the required surface hardness in HV
# (ISO 18203).
FLAME_LIMIT = 0.8


def working_radius_mm(job: Job) -> float:
    """Return half the thickness of the working zone's thickest section, in mm.

    Parameters
    ----------
    job : Job
        Part and demands.

    Returns
    -------
    float
        Radius, or half a thickness. [mm]
    """
    return 0.5 * max(job.asked.part.section[i].size for i in job.leading.sections)


def _tempered_points(ready: Prepared, temper: Temper, job: Job) -> Floats:
    """Return hardness at sections × positions; shape (draws, points). [HRC]."""
    if ready.fresh is None:
        msg = f"{ready.treatment.label} has no quench"
        raise ValueError(msg)
    if temper.means == "none":
        return ready.fresh.hrc
    fresh = ready.fresh
    return job.once(
        ("tempered", *ready.alike, temper),
        lambda: as_quenched.tempered(
            ready.treatment.steel,
            ready.composition,
            fresh,
            temper_peak_c(temper, job.asked.workshop, ready.normals),
            temper.time_s * temper.cycles,
            ready.normals,
        ),
    )


@dataclass(frozen=True, slots=True, eq=False)
class ZoneHardness:
    """Hardness of the working zone, its core, the shank and every section. [HRC]."""

    surface: Floats
    core: Floats
    shank: Floats
    depth_mm: Floats
    sections: Floats
    relation: str
    source: str
    validity: tuple[str, ...] = ()


def _as_supplied(ready: Prepared, job: Job) -> ZoneHardness:
    """Return the hardness of a part that no heat changes."""
    supply = ready.supply_hrc
    condition = ready.treatment.condition
    radius = working_radius_mm(job)
    depth = condition.depth_mm.value if condition.depth_mm else radius
    span = condition.hardness_hrc or condition.hardness_hb
    source = span.source if span else "none"
    core = supply if condition.depth_mm is None else np.full(supply.shape, 20.0)
    return ZoneHardness(
        supply,
        core,
        core,
        np.full(supply.shape, depth),
        np.repeat(core[:, None], len(job.asked.part.section), axis=1),
        "hardness of the bar as sold",
        source,
    )


def _quenched(ready: Prepared, temper: Temper, job: Job) -> ZoneHardness:
    """Return the hardness of a part that is quenched whole."""
    points = _tempered_points(ready, temper, job)
    sections = job.asked.part.section
    grid = points.reshape(len(points), len(sections), len(POSITIONS))
    lead = job.leading
    # The zone that leads decides; the weakest of its sections is looked at.
    index = max(lead.sections, key=lambda i: sections[i].size)
    zone = grid[:, index, :]
    depth = _depth_mm(zone, working_radius_mm(job), lead.floor_hrc)
    # Torsion and bending live on the outer fibres; a mean over the section is close to them.
    outer = grid[:, :, :3].mean(axis=2)
    return _told(ready, temper, job, (zone[:, 0], zone[:, -1], depth), outer)


def _local(ready: Prepared, temper: Temper, job: Job) -> ZoneHardness:
    """Return the hardness of a part that is heated and quenched in its zone."""
    points = _tempered_points(ready, temper, job)
    found = local_hardness(ready, temper, job, points)
    depth = _depth_mm(found.zone, working_radius_mm(job), job.leading.floor_hrc, found.places)
    if found.layer_mm is not None:
        depth = np.minimum(depth, found.layer_mm)
    # The zone is as hard as its ends are.
    surface = np.column_stack([found.zone[:, 0], found.ends]).min(axis=1)
    told = _told(ready, temper, job, (surface, found.zone[:, -1], depth), found.outer)
    # What bears the load beside the hard zone is its soft ring, told apart from the shank.
    outer, ring = found.outer.copy(), beside(job)
    outer[:, ring] = np.minimum(outer[:, ring], found.ring[:, None])
    return replace(told, sections=outer)


def _told(
    ready: Prepared,
    temper: Temper,
    job: Job,
    zone: tuple[Floats, Floats, Floats],
    outer: Floats,
) -> ZoneHardness:
    """Return surface, core, depth and sections with where they come from."""
    surface, core, depth = zone
    shanks = [i for i in range(len(job.asked.part.section)) if i not in job.hard]
    fresh = ready.fresh
    return ZoneHardness(
        surface,
        core,
        outer[:, shanks].min(axis=1) if shanks else core,
        depth,
        outer,
        f"{fresh.relation if fresh else ''}; then tempered {temper.label}",
        fresh.source if fresh else "",
        (*(fresh.validity if fresh else ()), *_temper_validity(ready, temper)),
    )


def _temper_validity(ready: Prepared, temper: Temper) -> tuple[str, ...]:
    """Return which limits of the tempering model are left; none where the steel has a curve."""
    steel = ready.treatment.steel
    own_curve = steel.tempered is not None and not as_quenched.by_composition(steel)
    if temper.means == "none" or own_curve:
        return ()
    return ranges_left(
        "tempering.tempered_hardness",
        steel,
        temperature_c=temper.temperature_c,
        time_s=temper.time_s * temper.cycles,
    )


def _depth_mm(
    zone_hrc: Floats,
    radius_mm: float,
    floor_hrc: float | None,
    places: tuple[float, ...] = POSITIONS,
) -> Floats:
    """Return how deep the zone stays above 0.8 of the asked hardness in HV. [mm]."""
    hv = hv_from_hrc(zone_hrc, outside="extend")
    asked = hv[:, 0]
    if floor_hrc is not None:
        asked = np.full(len(hv), float(hv_from_hrc(floor_hrc, outside="extend")))
    limit = FLAME_LIMIT * asked
    depths = radius_mm * (1 - np.array(places))
    depths[0] = 0.0
    hard = hv >= limit[:, None]
    # First position that is too soft; the crossing lies between it and the one before.
    soft_at = np.where(hard.all(axis=1), len(POSITIONS), np.argmin(hard, axis=1))
    last = np.clip(soft_at - 1, 0, len(POSITIONS) - 1)
    nxt = np.clip(soft_at, 0, len(POSITIONS) - 1)
    rows = np.arange(len(hv))
    drop = hv[rows, last] - hv[rows, nxt]
    part = np.where(drop > 0, (hv[rows, last] - limit) / np.where(drop > 0, drop, 1.0), 0.0)
    between = depths[last] + np.clip(part, 0, 1) * (depths[nxt] - depths[last])
    found = np.where(soft_at >= len(POSITIONS), radius_mm, between)
    return np.asarray(np.where(soft_at == 0, 0.0, found))


def case_softening_hrc(temper: Temper) -> float:
    """Return what a low temper takes off a carburised case, in HRC.

    Parameters
    ----------
    temper : Temper
        Drawn at 150 to 220 °C.

    Returns
    -------
    float
        Common practice: about a point for each 30 °C above 150 °C. [HRC]
    """
    return max(0.0, (temper.temperature_c - 150.0) * 0.035)


def _cased(ready: Prepared, temper: Temper, job: Job) -> ZoneHardness:
    """Return the hardness of a case-hardened part: hard case, core of its own hardenability."""
    route = ready.treatment.route
    normals = ready.normals
    span, depth_span = route.surface_hrc, route.depth_mm
    if span is None or depth_span is None:
        msg = f"{route.slug} needs surface_hrc and depth_mm"
        raise ValueError(msg)
    hard = span.middle + 0.25 * (span.high - span.low) * normals["as_quenched"]
    surface = np.clip(hard, span.low - 2, span.high + 2) - case_softening_hrc(temper)
    ratio = np.sqrt(depth_span.high / max(depth_span.low, 0.02))
    middle_mm = depth_span.low * ratio
    depth = middle_mm * np.exp(0.5 * np.log(ratio) * np.clip(normals["depth"], -2, 2))
    core = _core_hrc(ready, job)
    return ZoneHardness(
        surface,
        core,
        core,
        depth,
        np.repeat(core[:, None], len(job.asked.part.section), axis=1),
        "published surface hardness and depth of the route; core by the end-quench curve",
        span.source,
        ranges_left("hardenability.heat_curve", ready.treatment.steel),
    )


def _core_hrc(ready: Prepared, job: Job) -> Floats:
    """Return the core hardness of a carburised steel after its quench. [HRC]."""
    sections = job.asked.part.section
    thick = max(job.hard, key=lambda i: sections[i].size)
    points = cooled_points(ready.treatment, job)
    if points is None:
        return ready.supply_hrc
    centre = points.only(thick * len(POSITIONS) + len(POSITIONS) - 1)
    curve = job.once(
        ("core", *ready.alike), lambda: heat_curve(ready.composition, centre.distance_mm)
    )
    core = curve.hrc[:, 0] + (curve.sd_hrc * ready.normals["core"][:, None])[:, 0]
    return np.asarray(np.maximum(core, ready.supply_hrc))


def _nitrided(ready: Prepared, job: Job) -> ZoneHardness:
    """Return the hardness of a nitrided part: hard layer on the core as it was."""
    layer = ready.treatment.steel.nitrided
    if layer is None:
        msg = f"{ready.treatment.steel.slug} has no nitrided table"
        raise ValueError(msg)
    normals = ready.normals
    vickers = layer.surface_hv.middle + 0.25 * (
        layer.surface_hv.high - layer.surface_hv.low
    ) * np.clip(normals["as_quenched"], -2, 2)
    # A short nitrocarburise leaves the thin layer of its route, not a long nitride's depth.
    route_span = ready.treatment.route.depth_mm
    thin = route_span is not None and route_span.high < layer.depth_mm.low
    span = route_span if route_span is not None and thin else layer.depth_mm
    depth = span.middle + 0.25 * (span.high - span.low) * np.clip(normals["depth"], -2, 2)
    core = ready.supply_hrc
    return ZoneHardness(
        np.asarray(hrc_from_hv(vickers, outside="extend")),
        core,
        core,
        np.asarray(depth),
        np.repeat(core[:, None], len(job.asked.part.section), axis=1),
        "published hardness and depth of the nitrided layer; core as sold",
        layer.surface_hv.source,
    )


def _aged(ready: Prepared, temper: Temper, job: Job) -> ZoneHardness:
    """Return the hardness of an age-hardened part, even through its section."""
    aged = ready.treatment.steel.aged
    if aged is None:
        msg = f"{ready.treatment.steel.slug} has no aged table"
        raise ValueError(msg)
    points = np.array(aged.curve_hrc.points)
    reached = temper_peak_c(temper, job.asked.workshop, ready.normals)[:, 0]
    hrc = np.interp(reached, points[:, 0], points[:, 1]) + 0.8 * ready.normals["tempering"]
    radius = working_radius_mm(job)
    return ZoneHardness(
        np.asarray(hrc),
        np.asarray(hrc),
        np.asarray(hrc),
        np.full(hrc.shape, radius),
        np.repeat(np.asarray(hrc)[:, None], len(job.asked.part.section), axis=1),
        "published ageing curve of the steel",
        aged.curve_hrc.source,
    )


def _ground(layer: ZoneHardness, job: Job) -> ZoneHardness:
    """Return what grinding leaves of a layer: less of it, and the core where none is left."""
    removed = job.asked.part.stock_removal
    if not removed:
        return layer
    depth = np.maximum(layer.depth_mm - removed, 0.0)
    surface = np.where(depth > 0, layer.surface, layer.core)
    return replace(layer, depth_mm=depth, surface=surface)


def zone_hardness(ready: Prepared, temper: Temper, job: Job) -> ZoneHardness:
    """Return the hardness of the part by what its route does.

    Parameters
    ----------
    ready : Prepared
        The treatment, heated and quenched.
    temper : Temper
        How it is drawn.
    job : Job
        Part, workshop, draws.

    Returns
    -------
    ZoneHardness
        Over the draws. [HRC]
    """
    process = ready.treatment.route.process
    if process == "case":
        return _ground(_cased(ready, temper, job), job)
    if process == "nitride":
        return _ground(_nitrided(ready, job), job)
    if process == "age":
        return _aged(ready, temper, job)
    if ready.fresh is not None and ready.treatment.route.extent == "local":
        return _local(ready, temper, job)
    if ready.fresh is not None:
        return _quenched(ready, temper, job)
    return _as_supplied(ready, job)
