import pytest

from selector.torch.course import least_past_mm
from selector.torch.heating import heatings
from selector.torch.overheating import hottest_edge_c
from tests.tasks import size, task


def hottest(changes, holes=()):
    part = task(changes=changes)
    return hottest_edge_c(heatings(part, least_past_mm(part)), 840.0, 0.0, holes)


@pytest.mark.parametrize("shape", ["square", "hexagon"])
def test_a_corner_runs_ahead_of_a_round(shape):
    round_c = hottest(size(20))
    cornered = {**size(20), "part.section.0.shape": shape}
    assert hottest(cornered) >= round_c


def test_the_web_beside_a_hole_runs_ahead():
    assert hottest(size(20), ((8.0, 6.0),)) >= hottest(size(20))


def test_a_thin_neck_gets_hotter_than_the_zone_behind_it():
    neck = {"part.section.0.size": 30, "part.section.1.size": 8}
    assert hottest(neck) > hottest(size(30))
