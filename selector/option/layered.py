"""How hard a layer is that was brought in from outside, and the core under it."""

import numpy as np
from numpy.typing import NDArray

from selector.hardening.as_quenched import cased_core
from selector.hardening.bath_response import POSITIONS
from selector.hardening.model_range import ranges_left
from selector.hardness_scale import hrc_from_hv
from selector.job.treatment import Temper
from selector.metallurgy.carburising import carbon_at_depth, carbon_potential
from selector.option.layer import LayerRun, case_of, core_wt_pct, layer_run
from selector.option.preparation import Prepared, cooled_points
from selector.option.zone import ZoneHardness

Floats = NDArray[np.float64]
# Error of the hardness of a case by its carbon, as of the end-quench curves. [HRC]
CASE_SD_HRC = 1.5


def case_softening_hrc(temper: Temper) -> float:
    """Return what a low temper takes off a carburised case, in HRC. [HRC]."""
    # Common practice: about a point for each 30 °C above 150 °C.
    return max(0.0, (temper.temperature_c - 150.0) * 0.035)


def _deeper(run: LayerRun, ready: Prepared) -> Floats:
    """Return how much deeper than at its middle the layer grows, over the samples. [-]."""
    return np.asarray(np.exp(run.log_sd * np.clip(ready.normals["depth"], -2.5, 2.5)))


def _left_mm(run: LayerRun, deeper: Floats) -> Floats:
    """Return what grinding leaves of a layer. [mm]."""
    if run.depth_mm <= 0.0:
        return np.zeros(deeper.shape)
    return np.maximum((run.depth_mm + run.removed_mm) * deeper - run.removed_mm, 0.0)


def cased(ready: Prepared, temper: Temper) -> ZoneHardness:
    """Return the hardness of a case-hardened part: case by its carbon, core by its own."""
    job, work, normals = ready.job, ready.treatment, ready.normals
    span, curve = work.route.surface_hrc, case_of(job, work)
    run = layer_run(job, work)
    if span is None or run is None or work.route.carburiser is None:
        msg = f"{work.route.slug} needs surface_hrc and a carburiser"
        raise ValueError(msg)
    deeper, core = _deeper(run, ready), _core_hrc(ready)
    hard = span.middle + 0.25 * (span.high - span.low) * normals["as_quenched"]
    hard = np.clip(hard, span.low - 2, span.high + 2)
    if curve is not None:
        # What the quench gives the carbon that is left under what is ground off.
        medium, heat_c = work.route.carburiser, run.temperature_c
        carbon = carbon_at_depth(
            run.removed_mm / deeper,
            core_wt_pct(work.steel),
            carbon_potential(heat_c, medium),
            heat_c,
            run.hours,
            medium,
        )
        hard = np.minimum(hard, curve.at(carbon) + CASE_SD_HRC * normals["hardenability"])
    surface = np.maximum(hard - case_softening_hrc(temper), core)
    return ZoneHardness(
        surface,
        core,
        core,
        _left_mm(run, deeper),
        np.repeat(core[:, None], len(job.asked.part.section), axis=1),
        f"carbon by diffusion, {run.words}; case and core by the end-quench curve",
        span.source,
        ranges_left("hardenability.heat_curve", work.steel),
    )


def _core_hrc(ready: Prepared) -> Floats:
    """Return the core hardness of a carburised steel after its quench. [HRC]."""
    job = ready.job
    sections = job.asked.part.section
    thick = max(job.hard, key=lambda i: sections[i].size)
    points = cooled_points(ready.treatment, job)
    if points is None:
        return ready.supply_hrc
    centre = points.only(thick * len(POSITIONS) + len(POSITIONS) - 1)
    bar, sold_hrc = ready.treatment.steel, ready.supply_hrc
    core = cased_core(bar, ready.composition, centre, ready.normals, sold_hrc)
    return core.turned_hrc[:, 0]


def nitrided(ready: Prepared) -> ZoneHardness:
    """Return the hardness of a nitrided part: hard layer on the core as it was."""
    job, layer = ready.job, ready.treatment.steel.nitrided
    run = layer_run(job, ready.treatment)
    if layer is None or run is None:
        msg = f"{ready.treatment.steel.slug} has no nitrided table, or nothing is nitrided"
        raise ValueError(msg)
    span = layer.surface_hv
    vickers = span.middle + 0.25 * (span.high - span.low) * np.clip(
        ready.normals["as_quenched"], -2, 2
    )
    core, depth = ready.supply_hrc, _left_mm(run, _deeper(run, ready))
    hard = np.asarray(hrc_from_hv(vickers, outside="extend"))
    return ZoneHardness(
        np.where(depth > 0, hard, core),
        core,
        core,
        depth,
        np.repeat(core[:, None], len(job.asked.part.section), axis=1),
        f"published hardness of the layer, its depth by diffusion, {run.words}; core as sold",
        span.source,
    )
