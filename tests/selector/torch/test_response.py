import numpy as np
import pytest

from catalog import load_catalog
from selector.job.geometry import POSITIONS
from selector.job.job import resolved
from selector.job.process import hardening_heat, quench
from selector.torch.response import heated_share, torched, torched_points
from tests.dog import asked, work

CATALOG = load_catalog()
JOB = resolved(asked(), CATALOG)
OIL = quench(CATALOG.media["oil"], JOB.asked.workshop, JOB.mass_kg)
C45 = work("c45", "local-torch", "oil")


def near(size=25, light="shade", **changes):
    sizes = {f"part.section.{n}.size": size for n in (0, 1)}
    return resolved(asked({**sizes, "workshop.light": light, **changes}), CATALOG)


def test_the_rim_is_as_hot_as_the_operator_made_it():
    heat = hardening_heat(C45, JOB.asked.workshop, JOB.shared())
    found = torched(C45, JOB)
    assert found.peak_c.shape == (512, found.in_zone)
    np.testing.assert_allclose(found.peak_c[:, :1], heat.peak_c, atol=30.0)


def test_steels_of_one_heat_share_what_is_read_and_bins_differ_by_their_heat():
    one, other = (torched(work(s, "local-torch"), JOB) for s in ("c45", "42crmo4"))
    targets = [work(s).steel.hardened.temperature_c.middle for s in ("c45", "42crmo4")]
    assert targets[0] != targets[1] or one is other
    np.testing.assert_allclose(
        (one.peak_c - other.peak_c).mean(), targets[0] - targets[1], atol=3.0
    )


def test_one_place_lies_at_the_depth_asked_for():
    found = torched(C45, near(**{"zone.0.depth": 2}))
    assert found.places[1] == pytest.approx(1 - 2 / 12.5)
    assert len(found.places) == len(POSITIONS)


def test_a_depth_out_of_reach_is_held_for_as_long_as_the_table_goes():
    usual, deep = (
        float(np.median(torched(C45, near(40, **{"zone.0.depth": d})).at[:, 1]))
        for d in (0.5, 15)
    )
    assert deep >= usual


def test_a_thin_end_before_a_thick_body_is_held_until_its_edge_is_hot_and_hardens():
    """The body drinks the heat of the edge: common practice holds the heat for it."""
    sizes = {"part.section.0.size": 10, "part.section.1.size": 30, "load.torque": "20 N m"}
    spigot = resolved(asked({**sizes, "part.feature": []}), CATALOG)
    plain, held = (torched(C45, job) for job in (near(10), spigot))
    assert np.median(held.at[:, 1]) > np.median(plain.at[:, 1]) + 1.0
    bath = quench(CATALOG.media["water"], spigot.asked.workshop, spigot.mass_kg)
    wet = work("c45", "local-torch", "water")
    edge = torched_points(wet, spigot, bath).distance_mm[:, -1]
    rim = torched_points(wet, spigot, bath).distance_mm[:, 0]
    np.testing.assert_allclose(np.median(edge), np.median(rim), rtol=0.5)


def test_who_is_misled_by_the_sun_heats_hotter():
    shade, sun = (torched(C45, near(light=light)) for light in ("shade", "sun"))
    assert np.median(sun.peak_c) > np.median(shade.peak_c) + 20


def test_the_ring_is_drawn_further_the_hotter_it_was():
    found = torched(C45, JOB)
    assert (found.ring_s(760.0) > found.ring_s(700.0)).mean() > 0.99


def test_points_lie_on_the_end_quench_bar():
    points, found = torched_points(C45, JOB, OIL), torched(C45, JOB)
    assert points.distance_mm.shape == found.peak_c.shape
    assert (np.diff(np.median(points.distance_mm[:, :5], axis=0)) > 0.0).all()
    assert (points.log_sd < 0.1).all()


def test_a_shank_that_draws_heat_cools_a_short_end_faster_than_a_long_bar():
    """What an even start in a long bar cannot show."""
    short, long = (
        torched_points(C45, near(**{"part.section.0.length": length}), OIL)
        for length in (12, 80)
    )
    core = len(POSITIONS) - 1
    assert np.median(short.centre_s[:, core]) < 0.9 * np.median(long.centre_s[:, core])


def test_a_thin_part_is_heated_through():
    assert heated_share(C45, near(12)) == 1.0


def test_what_is_hard_by_position_is_columns_by_section():
    far = {"zone.0.section": [2], "zone.1.section": [1]}
    found = torched(C45, resolved(asked(far), CATALOG))
    assert found.hard == (1,)
    assert len(found.columns) == 2 * len(POSITIONS) + found.ends
