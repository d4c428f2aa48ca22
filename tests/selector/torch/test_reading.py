import numpy as np
import pytest

from selector.job.demand import Demand
from selector.torch.hardness_map import HardnessMap
from selector.torch.part import stretch
from selector.torch.reading import (
    hard_stretch_mm,
    softest_place,
    wall_at,
    within,
)
from tests.dog import asked

ALONG = np.arange(1.0, 60.0, 2.0)
ACROSS = np.linspace(0.5, 12.0, 24)


def demand(floor=None):
    return Demand(0, (0,), None, None, floor, None, 0.0, derived=False, reason="")


def painted(surface_by_mm, core_drop=0.0):
    """A map whose surface is given along the bar and which falls evenly to its core."""
    surface = np.array([surface_by_mm(z) for z in ALONG])
    hrc = surface[None, :] - core_drop * (1.0 - ACROSS / ACROSS[-1])[:, None]
    return HardnessMap(ACROSS, ALONG, hrc, hrc, np.ones_like(hrc), hrc)


HARD_END = painted(lambda z: 55.0 if z < 30.0 else 18.0 if z < 40.0 else 30.0)


def test_a_zone_narrower_than_the_cells_still_has_one():
    assert within(ALONG, (10.2, 10.4)).sum() == 1
    assert ALONG[within(ALONG, (0.0, 6.0))].tolist() == [1.0, 3.0, 5.0]


def test_the_hard_stretch_ends_where_the_surface_falls_below_what_is_asked():
    """From 55 HRC at 29 mm to 18 at 31, 50 are passed at 29.27 mm."""
    low, high = hard_stretch_mm(HARD_END, (0.0, 30.0), demand(50.0))
    assert low == 0.0
    assert high == pytest.approx(29.0 + 2.0 * 5.0 / 37.0)


def test_a_zone_that_is_soft_throughout_has_no_hard_stretch():
    assert hard_stretch_mm(HARD_END, (32.0, 38.0), demand(50.0)) == (35.0, 35.0)


def test_of_a_zone_that_is_soft_at_its_middle_the_hard_end_is_said():
    found = painted(lambda z: 60.0 if z < 6.0 else 44.0)
    low, high = hard_stretch_mm(found, (0.0, 25.0), demand(48.0))
    assert low == 0.0
    assert 5.0 < high < 7.0


def test_a_hard_stretch_in_the_middle_reaches_between_the_cells():
    found = painted(lambda z: 55.0 if 20.0 < z < 40.0 else 45.0)
    assert hard_stretch_mm(found, (20.0, 40.0), demand(50.0)) == (20.0, 40.0)


def test_a_hard_stretch_reaches_the_far_end_of_the_part():
    even = painted(lambda _z: 55.0)
    assert hard_stretch_mm(even, (0.0, 60.0), demand(50.0)) == (0.0, 60.0)


def test_the_wall_of_a_tube_and_of_a_flat_is_what_steel_there_is():
    """A bored section ends at its bore; a flat of 8 mm is 4 mm to its middle."""
    tube = stretch(asked({"part.section.0.bore": 16, "part.section.1.bore": 16}), (0,))
    flats = {f"part.section.{n}.{k}": v for n in (0, 1)
             for k, v in (("shape", "flat"), ("size", 8), ("width", 40))}  # fmt: skip
    flat = stretch(asked(flats), (0,))
    for part, deep in ((tube, 4.5), (flat, 4.0)):
        assert wall_at(part, 15.0).true_mm == deep


def test_the_ring_is_found_with_its_width_and_torque():
    part = stretch(asked({"part.section.0.size": 24, "part.section.1.size": 24}), (0,))
    ring = softest_place(HARD_END, part, 30.0)
    assert 30.0 <= ring.at_mm < 40.0
    assert ring.width_mm == pytest.approx(10.0, abs=1.0)
    assert ring.hrc == 18.0
    whole = softest_place(painted(lambda _z: 30.0), part, 30.0)
    assert whole.width_mm == 0.0
    # Less than one HRC under the bar as bought is no ring.
    assert softest_place(painted(lambda _z: 29.5), part, 30.0).width_mm == 0.0
    assert ring.torque_nm < whole.torque_nm


def test_the_thinnest_section_bears_least_whatever_its_hardness():
    part = stretch(asked({"part.section.0.size": 24, "part.section.1.size": 12}), (0,))
    thick = stretch(asked({"part.section.0.size": 24, "part.section.1.size": 24}), (0,))
    even = painted(lambda _z: 30.0)
    thin_nm, thick_nm = (softest_place(even, p, 30.0).torque_nm for p in (part, thick))
    assert thin_nm == pytest.approx(thick_nm / 8.0, rel=1e-6)


def test_a_hole_and_not_the_softest_place_may_set_the_torque():
    drilled = {"part.feature": [{"kind": "cross-hole", "at": 50, "size": 12}],
               "part.section.0.size": 24, "part.section.1.size": 24}  # fmt: skip
    want = asked(drilled)
    part = stretch(want, (0,))
    plain, holed = (softest_place(HARD_END, part, 30.0, p) for p in (None, want.part))
    assert holed.weakest == "the cross hole at 50 mm"
    assert plain.weakest == ""
    assert holed.torque_nm < 0.5 * plain.torque_nm
    assert (holed.at_mm, holed.hrc) == (plain.at_mm, plain.hrc)
