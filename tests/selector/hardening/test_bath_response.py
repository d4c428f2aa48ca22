"""Simulated quenches under the draws: agreement with the bar, trends, error, cost."""

import numpy as np
import pytest

from catalog import load_catalog
from selector.errors import OutOfRangeError
from selector.hardening import bath_response as module
from selector.hardening import quenched_bar
from selector.hardening.bath_response import (
    POSITIONS,
    SIMULATED_MM,
    Start,
    centre_s,
    cooled,
    start_of,
)
from selector.heat.boiling import Bath, Quench
from selector.heat.conduction import conduct
from selector.heat.end_quench import end_quench_time_s
from selector.job.process import quench
from tests.dog import asked

MEDIA = load_catalog().media
START = Start(840.0)
MIDDLE = {"bath_bias": np.zeros(1), "delay": np.zeros(1)}
EDGES = np.array([-2.0, -1.0, 0.0, 1.0, 2.0])


def dip(medium="oil", motion="moderate", log_sd=0.13, delay_s=1.5):
    return Quench(Bath(medium, None, motion), 0.4, log_sd, delay_s)


def sampled(bath=0.0, delay=0.0):
    bias, late = np.broadcast_arrays(np.atleast_1d(bath), np.atleast_1d(delay))
    return {"bath_bias": bias, "delay": late}


@pytest.mark.parametrize("medium", ["water", "brine", "oil", "fast-oil", "polymer", "air"])
@pytest.mark.parametrize("size", [10.0, 40.0])
def test_the_middle_of_the_draws_is_the_quenched_bar(medium, size):
    found = cooled(np.array([size]), dip(medium), START, MIDDLE)
    bar = quenched_bar.bar_cooling(size, Bath(medium), START.heat_c)
    at = np.interp(POSITIONS, bar.radius_mm / bar.radius_mm[-1], bar.jominy_mm)
    np.testing.assert_allclose(found.distance_mm[0], np.clip(at, 1.5, 80.0), rtol=0.1)


@pytest.mark.parametrize("medium", ["water", "oil", "polymer", "warm-water", "air"])
def test_a_duller_bath_is_a_longer_distance(medium):
    found = cooled(np.array([16.0]), dip(medium, log_sd=0.3), START, sampled(EDGES))
    assert (np.diff(found.distance_mm, axis=0) <= 1e-9).all()
    assert found.distance_mm[0, -1] > found.distance_mm[-1, -1]


@pytest.mark.parametrize("motion", [("none", "moderate"), ("moderate", "violent")])
@pytest.mark.parametrize("medium", ["water", "oil"])
def test_a_stiller_bath_is_a_longer_distance(medium, motion):
    stiller, livelier = (
        cooled(np.array([20.0]), dip(medium, m), START, MIDDLE).distance_mm for m in motion
    )
    assert (stiller >= livelier - 0.05).all()
    assert stiller[0, -1] > livelier[0, -1]


def test_a_larger_section_never_cools_sooner():
    sizes = np.array([6.0, 12.0, 25.0, 50.0])
    grid = cooled(sizes, dip(), START, MIDDLE).distance_mm.reshape(4, len(POSITIONS))
    assert (np.diff(grid, axis=0) > 0).all()
    assert (np.diff(grid, axis=1) > 0).all()


@pytest.mark.parametrize("bias", [-1.5, 0.5, 1.5])
@pytest.mark.parametrize("medium", ["oil", "polymer"])
def test_the_response_meets_quenches_it_was_not_fitted_to(medium, bias):
    # A bath that is keener by the same share as the draw says, quenched itself.
    size, way = 20.0, dip(medium, log_sd=0.3)
    true = module._log_time(size, way.bath, START, (bias, way.log_sd, way.delay_s))
    found = cooled(np.array([size]), way, START, sampled(bias))
    assert np.log(found.time_s[0, -1]) == pytest.approx(true[-1], abs=0.04)


def test_the_way_to_the_bath_counts_only_where_a_part_cools_on_it():
    hand = dip(delay_s=4.0)
    wire, bar = (
        cooled(np.array([s]), hand, Start(760.0), sampled(0.0, [0.0, 1.5])).time_s[:, -1]
        for s in (2.0, 25.0)
    )
    assert wire[1] > 1.2 * wire[0]
    assert bar[1] == pytest.approx(bar[0], rel=0.02)


def test_the_vapour_of_a_warm_still_bath_makes_the_response_uncertain():
    size = np.array([25.0])
    calm, stirred = (
        cooled(size, dip("warm-water", m, 0.3), START, MIDDLE) for m in ("none", "strong")
    )
    assert (calm.log_sd >= 0).all()
    assert calm.log_sd.max() > stirred.log_sd.max()
    assert cooled(size, dip("oil"), START, MIDDLE).log_sd.max() < 0.05


@pytest.mark.parametrize("slug", ["plates", "hot-salt"])
def test_a_medium_nobody_described_keeps_to_the_bar_charts(slug):
    bath = quench(MEDIA[slug], asked({"workshop.bath": []}).workshop, 0.5)
    found = cooled(np.array([6.0, 12.0]), bath, START, sampled(EDGES))
    assert found.distance_mm.shape == (5, 2 * len(POSITIONS))
    assert (np.diff(found.distance_mm, axis=0) <= 0).all()
    assert (found.log_sd == 0).all()
    np.testing.assert_array_equal(found.time_s, end_quench_time_s(found.distance_mm))


def test_beyond_the_end_quench_bar_the_time_goes_on():
    found = cooled(np.array([40.0, 80.0]), dip("air", "none"), START, MIDDLE)
    assert (found.distance_mm == 80.0).all()
    small, large = found.time_s[0, 0], found.time_s[0, -1]
    assert large > 1.5 * small


def test_the_centre_of_a_round_is_that_of_its_points():
    bath = Bath("oil")
    found = cooled(np.array([30.0]), dip(), START, MIDDLE)
    on_bar = quenched_bar.time_on_bar_s(found.distance_mm, found.time_s)
    assert centre_s(30.0, bath, START) == pytest.approx(on_bar[0, -1], rel=0.05)


@pytest.mark.parametrize(
    ("target", "near"), [(700, 760), (789, 800), (815, 800), (850, 840), (1050, 840)]
)
def test_a_start_is_the_nearest_that_is_simulated(target, near):
    assert start_of(target, "low-alloy") == Start(near)


def test_a_part_of_many_sizes_costs_few_histories(monkeypatch):
    count = []

    def counted(*given):
        count.append(1)
        return conduct(*given)

    monkeypatch.setattr("selector.heat.immersion.conduct", counted)
    for cached in (module._level, module._fitted):
        cached.cache_clear()
    sizes = np.array([10.0, 11.0, 13.0, 17.0, 23.0, 31.0])
    found = cooled(sizes, dip("fast-oil"), START, MIDDLE)
    # A level and its anchor for each of four rounds, a design for each end.
    assert len(count) <= 24
    centres = found.distance_mm[0, len(POSITIONS) - 1 :: len(POSITIONS)]
    assert (np.diff(centres) > 0).all()
    again = len(count)
    cooled(sizes, dip("fast-oil"), START, sampled(EDGES))
    assert len(count) == again


def test_one_point_of_many_keeps_its_place():
    points = cooled(np.array([10.0, 40.0]), dip(), START, sampled(EDGES))
    one = points.only(len(POSITIONS))
    assert one.place.tolist() == [POSITIONS[0]]
    np.testing.assert_array_equal(one.distance_mm[:, 0], points.distance_mm[:, len(POSITIONS)])
    assert one.time_s.shape == (5, 1)
    assert one.log_sd.shape == (1,)


@pytest.mark.parametrize("medium", ["air", "water"])
@pytest.mark.parametrize("size", SIMULATED_MM)
def test_the_least_and_the_largest_round_cool_in_finite_time(medium, size):
    found = cooled(
        np.array([size]), dip(medium, "none"), START, sampled([-2.0, 2.0], [2.0, -2.0])
    )
    assert np.isfinite(found.time_s).all()
    assert np.isfinite(found.log_sd).all()


@pytest.mark.parametrize("size", [0.004, 5000.0])
def test_foil_and_forgings_beyond_a_day_are_refused(size):
    with pytest.raises(OutOfRangeError, match=r"like round must be between 0.01 and 2000 mm"):
        cooled(np.array([20.0, size]), dip(), START, MIDDLE)
