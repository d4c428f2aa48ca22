import numpy as np
import pytest

from selector.duty import Demand
from selector.flame_map import FlameMap
from selector.flame_reading import hard_depth_mm, hard_stretch_mm, softest_place, within
from selector.torch_job import stretch
from tests.dog import asked

ALONG = np.arange(1.0, 60.0, 2.0)
ACROSS = np.linspace(0.5, 12.0, 24)


def demand(floor=None):
    return Demand(0, (0,), None, None, floor, None, 0.0, derived=False, reason="")


def painted(surface_by_mm, core_drop=0.0):
    """A map whose surface is given along the bar and which falls evenly to its core."""
    surface = np.array([surface_by_mm(z) for z in ALONG])
    hrc = surface[None, :] - core_drop * (1.0 - ACROSS / ACROSS[-1])[:, None]
    return FlameMap(ACROSS, ALONG, hrc, hrc, np.ones_like(hrc), hrc)


HARD_END = painted(lambda z: 55.0 if z < 30.0 else 18.0 if z < 40.0 else 30.0)


def test_a_zone_narrower_than_the_cells_still_has_one():
    assert within(ALONG, (10.2, 10.4)).sum() == 1
    assert ALONG[within(ALONG, (0.0, 6.0))].tolist() == [1.0, 3.0, 5.0]


def test_the_hard_stretch_ends_where_the_surface_goes_soft():
    assert hard_stretch_mm(HARD_END, 15.0, demand(50.0)) == (0.0, 29.0)


def test_a_soft_middle_has_no_hard_stretch():
    assert hard_stretch_mm(HARD_END, 35.0, demand(50.0)) == (35.0, 35.0)


def test_a_hard_stretch_in_the_middle_has_two_ends():
    found = painted(lambda z: 55.0 if 20.0 < z < 40.0 else 15.0)
    assert hard_stretch_mm(found, 30.0, demand(50.0)) == (21.0, 39.0)


def test_depth_ends_at_four_fifths_of_the_hardness_asked_for():
    """50 HRC are 513 HV; 0.8 of it, 410 HV, are 41.8 HRC: here 13.2 of 40 HRC to the core."""
    found = painted(lambda _z: 55.0, core_drop=40.0)
    assert hard_depth_mm(found, 15.0, demand(50.0)) == pytest.approx(
        12.0 * 13.2 / 40.0, abs=0.1
    )


def test_hard_through_is_the_whole_radius_and_soft_is_none():
    assert hard_depth_mm(HARD_END, 15.0, demand(50.0)) == 12.0
    assert hard_depth_mm(HARD_END, 35.0, demand(50.0)) == 0.0


def test_the_ring_is_found_with_its_width_and_torque():
    part = stretch(asked({"part.section.0.size": 24, "part.section.1.size": 24}), (0,))
    ring = softest_place(HARD_END, part, 30.0)
    assert 30.0 <= ring.at_mm < 40.0
    assert ring.width_mm == pytest.approx(10.0, abs=1.0)
    assert ring.hrc == 18.0
    whole = softest_place(painted(lambda _z: 30.0), part, 30.0)
    assert whole.width_mm == 0.0
    assert ring.torque_nm < whole.torque_nm


def test_the_thinnest_section_bears_least_whatever_its_hardness():
    part = stretch(asked({"part.section.0.size": 24, "part.section.1.size": 12}), (0,))
    thick = stretch(asked({"part.section.0.size": 24, "part.section.1.size": 24}), (0,))
    even = painted(lambda _z: 30.0)
    thin_nm, thick_nm = (softest_place(even, p, 30.0).torque_nm for p in (part, thick))
    assert thin_nm == pytest.approx(thick_nm / 8.0, rel=1e-6)
