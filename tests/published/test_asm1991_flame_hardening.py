"""ASM Handbook, vol. 4, Heat Treating, 1991, Flame Hardening (excerpt, read): "Depths of
hardening from about 0.8 to 6.4 mm (1/32 to 1/4 in.) or more can be obtained"; "for the through
hardening of work 75 mm or less in cross section, depending on the hardenability".
"""

from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.composition import middle
from selector.hardening.stock import Stock
from selector.heat.boiling import Bath
from selector.heat.grid import Section
from selector.heat.operator import Operator
from selector.heat.torch import torch
from selector.job.demand import Demand
from selector.torch.flame_history import FlameJob, heat_and_quench
from selector.torch.hardness_map import draw, harden
from selector.torch.reading import Wall, hard_depth_mm

NOTHING_ASKED = Demand(0, (0,), None, None, None, None, 0.0, derived=False, reason="")


def hardened(slug, diameter, gas, hold_s, medium):
    """The middle of a long zone under a head whose flames stand all round the bar."""
    steel = load_catalog().steels[slug]
    composition = {e: float(v[0, 0]) for e, v in middle(steel).items()}
    flame = replace(torch(gas), width_mm=2.0 * diameter)
    torching = FlameJob(
        (Section(diameter, 60.0), Section(diameter, 100.0)),
        (0.0, 40.0),
        (0.0, 50.0),
        flame,
        Operator(870.0, hold_s),
        Bath(medium, None, "strong"),
        delay_s=0.5,
    )
    bar = Stock(steel, composition, "normalised", 10.0, 5.0)
    return draw(harden(heat_and_quench(torching), bar, torching.bath))


@pytest.mark.parametrize("diameter_mm", [30.0, 40.0, 50.0, 75.0])
@pytest.mark.parametrize("gas", ["oxy-acetylene", "oxy-propane"])
def test_depth_of_a_flame_hardened_bar(gas, diameter_mm):
    found = hardened("c45", diameter_mm, gas, 0.0, "water")
    wall = Wall(diameter_mm / 2.0, 0.0, diameter_mm / 2.0)
    assert 0.8 <= hard_depth_mm(found, 20.0, NOTHING_ASKED, wall) <= 6.4


def test_a_hardenable_section_can_harden_through():
    found = hardened("817m40", 50.0, "oxy-propane", 240.0, "oil")
    column = found.column(20.0)
    assert np.nanmin(column) > 50.0
