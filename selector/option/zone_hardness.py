"""Hardness of the working zone, its core and the rest of the part, by what the route does."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.hardening.as_quenched import AsQuenched
from selector.hardening.bath_response import POSITIONS
from selector.hardening.composition import Composition
from selector.hardening.hard_depth import Limit, hard_depth_mm
from selector.hardening.kind import by_composition
from selector.hardening.model_range import ranges_left
from selector.hardening.tempered import aged_hrc, austempered, tempered
from selector.job.job import Job, per_job
from selector.job.process import temper_peak_c
from selector.job.treatment import Temper, Treatment
from selector.option.layered import cased, nitrided
from selector.option.local_hardness import beside, local_hardness
from selector.option.plating import chromed
from selector.option.preparation import Prepared, prepare
from selector.option.skin import skinned
from selector.option.zone import ZoneHardness, working_radius_mm
from selector.sampling import Normals

Floats = NDArray[np.float64]


def _tempered_points(ready: Prepared, temper: Temper) -> AsQuenched:
    """Return the points of the quench after the temper; shape (samples, points)."""
    job = ready.job
    if ready.fresh is None:
        msg = f"{ready.treatment.label} has no quench"
        raise ValueError(msg)
    if temper.means == "none":
        return ready.fresh
    return _tempered(job, ready.alike, temper)


@per_job
def _tempered(job: Job, alike: Treatment, temper: Temper) -> AsQuenched:
    """Return the points of the quench after the temper, for all bars that harden alike."""
    ready = prepare(alike, job)
    if ready.fresh is None:
        msg = f"{alike.label} has no quench"
        raise ValueError(msg)
    peak_c = temper_peak_c(temper, job.asked.workshop, ready.normals)
    bar = ready.steel_as_heated, ready.composition
    return after_temper(bar, ready.fresh, peak_c, temper, ready.normals)


def after_temper(
    bar: tuple[Steel, Composition],
    fresh: AsQuenched,
    peak_c: Floats,
    temper: Temper,
    normals: Normals,
) -> AsQuenched:
    """Return a quench after a temper that reached `peak_c`; shape (samples, points)."""
    steel, composition = bar
    if temper.means == "salt":
        hrc = austempered(composition, fresh.turned_hrc, peak_c, normals)
        return replace(fresh, turned_hrc=hrc)
    time_s = temper.time_s * temper.cycles
    hrc = tempered(steel, composition, fresh.turned_hrc, peak_c, time_s, normals)
    return replace(fresh, turned_hrc=hrc)


def _as_supplied(ready: Prepared) -> ZoneHardness:
    """Return the hardness of a part that no heat changes."""
    job = ready.job
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
        "hardness of the bar as sold"
        if ready.treatment.route.process == "none"
        else "hardness of the bar annealed",
        source,
    )


def _quenched(ready: Prepared, temper: Temper) -> ZoneHardness:
    """Return the hardness of a part that is heated evenly and quenched whole."""
    job = ready.job
    sections, count, lead = job.asked.part.section, len(POSITIONS), job.lead_section
    # The zone that leads decides; the weakest of its sections is looked at.
    here = slice(lead * count, (lead + 1) * count)
    hrc = _tempered_points(ready, temper).hrc
    zone = Zone(hrc[:, here], _fresh_hrc(ready)[:, here], POSITIONS)
    # Torsion and bending live on the outer fibres; a mean over the section is close to them.
    outer = hrc.reshape(len(hrc), len(sections), count)[:, :, :3].mean(axis=2)
    return _assembled(ready, temper, zone, outer)


def _fresh_hrc(ready: Prepared) -> Floats:
    """Return the points as quenched. [HRC]."""
    if ready.fresh is None:
        msg = f"{ready.treatment.label} has no quench"
        raise ValueError(msg)
    return ready.fresh.hrc


def _local(ready: Prepared, temper: Temper) -> ZoneHardness:
    """Return the hardness of a part whose places were heated and quenched each its own way."""
    job = ready.job
    local = local_hardness(ready, temper, _tempered_points(ready, temper))
    zone = Zone(local.zone, local.fresh, local.places)
    whole = _assembled(ready, temper, zone, local.outer)
    depth = whole.depth_mm
    if local.layer_mm is not None:
        depth = np.minimum(depth, local.layer_mm)
    # The zone is as hard as its ends are.
    all_hard = len(job.hard) == len(job.asked.part.section)
    is_local = ready.treatment.route.extent == "local"
    surface = whole.surface
    if is_local or all_hard:
        surface = np.column_stack([surface, local.ends]).min(axis=1)
    outer = local.outer.copy()
    if is_local:
        # What bears the load beside the hard zone is its soft ring, apart from the shank.
        ring = beside(job)
        outer[:, ring] = np.minimum(outer[:, ring], local.ring[:, None])
    return replace(whole, surface=surface, depth_mm=depth, sections=outer)


@dataclass(frozen=True, slots=True, eq=False)
class Zone:
    """The leading section from rim to core, tempered and as quenched. [HRC]."""

    hrc: Floats
    fresh_hrc: Floats
    places: tuple[float, ...]


def _assembled(ready: Prepared, temper: Temper, zone: Zone, outer: Floats) -> ZoneHardness:
    """Return surface, core, depth and sections with where they come from."""
    job = ready.job
    shanks = [i for i in range(len(job.asked.part.section)) if i not in job.hard]
    fresh, core = ready.fresh, zone.hrc[:, -1]
    inwards_mm = working_radius_mm(job) * (1.0 - np.array(zone.places))
    limit = Limit.of(ready.treatment.steel, job.leading.floor_hrc)
    removed_mm = job.asked.part.stock_removal or 0.0
    depth = hard_depth_mm(zone.hrc, zone.fresh_hrc, inwards_mm, limit)
    return ZoneHardness(
        _under(zone.hrc, inwards_mm, removed_mm),
        core,
        outer[:, shanks].min(axis=1) if shanks else core,
        np.maximum(depth - removed_mm, 0.0),
        outer,
        f"{fresh.relation if fresh else ''}{_then(temper)}",
        fresh.source if fresh else "",
        (*(fresh.validity if fresh else ()), *temper_validity(ready.treatment.steel, temper)),
    )


def _then(temper: Temper) -> str:
    """Return what follows the quench, in words."""
    if temper.means == "salt":
        return f"; bainite of salt at {temper.temperature_c:.0f} °C"
    return "" if temper.means == "none" else f"; then tempered {temper.label}"


def _under(hrc: Floats, inwards_mm: Floats, removed_mm: float) -> Floats:
    """Return the hardness of the finished face, under what is ground off. [HRC]."""
    if removed_mm <= inwards_mm[0]:
        return np.asarray(hrc[:, 0])
    k = int(np.clip(np.searchsorted(inwards_mm, removed_mm), 1, inwards_mm.size - 1))
    part = (removed_mm - inwards_mm[k - 1]) / (inwards_mm[k] - inwards_mm[k - 1])
    return np.asarray(hrc[:, k - 1] + min(part, 1.0) * (hrc[:, k] - hrc[:, k - 1]))


def temper_validity(steel: Steel, temper: Temper) -> tuple[str, ...]:
    """Return which limits of the tempering model are left; none where the steel has a curve."""
    own_curve = steel.tempered is not None and not by_composition(steel)
    if temper.means in {"none", "salt"} or own_curve:
        return ()
    return ranges_left(
        "tempering.tempered_hardness",
        steel,
        temperature_c=temper.temperature_c,
        time_s=temper.time_s * temper.cycles,
    )


def _aged(ready: Prepared, temper: Temper) -> ZoneHardness:
    """Return the hardness of an age-hardened part, even through its section."""
    job = ready.job
    aged = ready.treatment.steel.aged
    if aged is None:
        msg = f"{ready.treatment.steel.slug} has no aged table"
        raise ValueError(msg)
    reached = temper_peak_c(temper, job.asked.workshop, ready.normals)[:, 0]
    hrc = aged_hrc(aged, reached, ready.normals)
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


def zone_hardness(ready: Prepared, temper: Temper) -> ZoneHardness:
    """Return the hardness of the part by what its route does. [HRC]."""
    process = ready.treatment.route.process
    if process == "case":
        return cased(ready, temper)
    if process == "nitride":
        return nitrided(ready)
    if process == "chrome":
        return chromed(ready)
    if process == "age":
        return _aged(ready, temper)
    local = ready.torched is not None or ready.treatment.route.extent == "local"
    if ready.fresh is None:
        return _as_supplied(ready)
    found = _local(ready, temper) if local else _quenched(ready, temper)
    surface = skinned(found.surface, ready.job, ready.alike)
    return replace(found, surface=surface)
