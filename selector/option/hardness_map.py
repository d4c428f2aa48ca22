"""The hardness map of an option at a torch: its own forecast at the middle, cell by cell."""

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from selector.hardening.as_quenched import AsQuenched, as_quenched
from selector.hardening.composition import middle
from selector.hardening.heating_course import REFERENCE_C
from selector.hardening.stock import rest_hv, stock_of
from selector.hardening.tempered import tempered
from selector.job.job import Job, per_part
from selector.job.process import hardening_heat
from selector.job.treatment import Temper, Treatment
from selector.metallurgy.tempering import equivalent_time
from selector.option.torched import meant_torched
from selector.torch.hardness_map import HardnessMap
from selector.torch.section import place_in_radius

Floats = NDArray[np.float64]


@per_part
def hardness_map(job: Job, work: Treatment, temper: Temper) -> HardnessMap:
    """Return the hardness of every place of a part at a torch."""
    part, normals = meant_torched(job, work), job.of_steel(work.steel.slug)
    heat = hardening_heat(work, job.asked.workshop, normals)
    if heat is None:
        msg = f"{work.label} is not quenched"
        raise ValueError(msg)
    history, grid, met = part.field, part.grid, part.field.heat(heat)
    points = history.points(place_in_radius(grid))
    composition = middle(work.steel)
    fresh = as_quenched(work.steel, composition, met, points, normals)
    stock, after, more_s = stock_of(work.steel, work.condition), fresh, 0.0
    if temper.means != "none":
        time_s, at_c = temper.time_s * temper.cycles, np.array([[temper.temperature_c]])
        hrc = tempered(work.steel, composition, fresh.turned_hrc, at_c, time_s, normals)
        after = replace(fresh, turned_hrc=hrc)
        more_s = float(equivalent_time([temper.temperature_c] * 2, [0.0, time_s], REFERENCE_C))

    def mixed(points: AsQuenched, tempered_s: float) -> Floats:
        return grid.field(points.mixed(rest_hv(history.tempered_s + tempered_s, stock))[0])

    return HardnessMap(
        grid.across_mm,
        grid.along_mm,
        mixed(after, more_s),
        mixed(fresh, 0.0),
        grid.field(fresh.share[0]),
        grid.field(history.peak_c[0]),
    ).ground(part.part, job.asked.part.stock_removal or 0.0)
