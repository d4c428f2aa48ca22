"""ASM Handbook, vol. 4, Heat Treating, 1991, Flame Hardening (excerpt, read): "Depths of
hardening from about 0.8 to 6.4 mm (1/32 to 1/4 in.) or more can be obtained"; "for the through
hardening of work 75 mm or less in cross section, depending on the hardenability".
"""

from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.as_quenched import as_quenched
from selector.hardening.composition import middle
from selector.hardening.hard_depth import Limit, hard_depth_mm
from selector.heat.boiling import Bath, Quench
from selector.heat.grid import Section
from selector.heat.torch import torch
from selector.job.job import resolved
from selector.metallurgy.hardening_heat import Heat
from selector.requirement.part import Section as PartSection
from selector.torch.history import Heats
from selector.torch.part import PATIENCE_S, Stretch, Torching
from selector.torch.response import library
from selector.torch.section import place_in_radius
from tests.dog import asked

CATALOG = load_catalog()
HEAT_C = 870.0
MIDDLE_MM = 20.0


def hardened(slug, diameter, gas, hold_s, medium):
    """From rim to axis at the middle of a zone under a head whose flames stand all round."""
    steel = CATALOG.steels[slug]
    sections = (Section(diameter, 60.0), Section(diameter, 100.0))
    shapes = tuple(
        PartSection(shape="round", size=diameter, length=s.length_mm) for s in sections
    )
    bar = Stretch(sections, shapes, (0.0, 2.0 * MIDDLE_MM), diameter, turned_round=False)
    flame = replace(torch(gas), width_mm=2.0 * diameter)
    task = Torching(
        bar, flame, "low-alloy", turns=True, hearth=False, patience_s=PATIENCE_S["flame"]
    )
    lib = library(task, 10.0, Quench(Bath(medium, None, "strong"), 0.0, 0.2, 0.5))
    stop_c, still = np.array([HEAT_C]), np.zeros(1)
    flame_log = lib.heatings.effective_log(still, stop_c)
    history = lib.read(Heats(stop_c, np.array([hold_s]), flame_log, still, still))
    meant = Heat(HEAT_C, stop_c[:, None], hold_s, 1.0, "normalised", medium)
    grid = lib.heatings.grid
    points = history.points(place_in_radius(grid))
    normals = resolved(asked(), CATALOG, count=1).of_steel(slug)
    fresh = as_quenched(steel, middle(steel), history.heat(meant), points, normals)
    at = int(np.argmin(np.abs(grid.along_mm - MIDDLE_MM)))
    return grid.across_mm[::-1], grid.field(fresh.hrc[0])[::-1, at]


@pytest.mark.parametrize("diameter_mm", [30.0, 40.0, 50.0, 75.0])
@pytest.mark.parametrize("gas", ["oxy-acetylene", "oxy-propane"])
def test_depth_of_a_flame_hardened_bar(gas, diameter_mm):
    radius_mm, hrc = hardened("c45", diameter_mm, gas, 0.0, "water")
    limit = Limit.of(CATALOG.steels["c45"], None)
    (depth,) = hard_depth_mm(hrc[None], hrc[None], diameter_mm / 2.0 - radius_mm, limit)
    assert 0.8 <= depth <= 6.4


def test_a_hardenable_section_can_harden_through():
    _, hrc = hardened("817m40", 50.0, "oxy-propane", 240.0, "oil")
    assert hrc.min() > 50.0
