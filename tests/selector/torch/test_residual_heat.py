import numpy as np
import pytest

from selector.heat.boiling import Bath
from selector.heat.grid import Section
from selector.heat.operator import Operator
from selector.heat.torch import torch
from selector.torch.flame_history import FlameJob, heat
from selector.torch.residual_heat import DIPS_S, dipped_and_drawn


def torching(zone=(0.0, 20.0), heated=(0.0, 60.0)):
    return FlameJob(
        (Section(12.0, 20.0), Section(12.0, 130.0)),
        zone,
        heated,
        torch("oxy-propane"),
        Operator(850.0, 20.0, hearth=True),
        Bath("water"),
    )


@pytest.fixture(scope="module")
def hot():
    return heat(torching())


def test_the_edge_is_hard_and_the_heat_comes_back_to_its_colour(hot):
    """Common practice, no source: a chisel is dipped for seconds and drawn within a minute."""
    back = dipped_and_drawn(torching(), *hot, 250.0)
    assert back is not None
    assert back.dip_s in DIPS_S
    assert 0.0 < back.drawn.arrived_s < 120.0
    assert back.drawn.peak_c[0] == pytest.approx(250.0, abs=15.0)
    peak = back.drawn.peak_c
    near = back.drawn.along_mm < 20.0
    assert np.all(np.diff(peak[near]) > -1.0)  # each place behind the edge is drawn farther


def test_every_hot_place_has_its_time_of_cooling(hot):
    back = dipped_and_drawn(torching(), *hot, 250.0)
    assert np.isfinite(back.cooled.distance_mm[back.cooled.peak_c >= 700.0]).all()


def test_too_little_heat_left_behind_is_told():
    """Nothing was heated behind the zone: no colour ever comes."""
    short = torching(heated=(0.0, 20.0))
    assert dipped_and_drawn(short, *heat(short), 320.0) is None


def test_a_zone_away_from_the_end_cannot_be_dipped(hot):
    assert dipped_and_drawn(torching(zone=(5.0, 20.0)), *hot, 250.0) is None
