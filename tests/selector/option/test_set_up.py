from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.option.set_up import HOLDS_S, ONCE_EVEN_S, alike, at_torch, bath_of
from selector.option.torched import torched
from tests.dog import asked, treatment_of

CATALOG = load_catalog()
JOB = resolved(asked(), CATALOG)


def work(steel="42crmo4", medium="oil", condition=None):
    return treatment_of(JOB, steel, "local-torch", medium, condition)


def at(steel="42crmo4", medium="oil"):
    return at_torch(JOB, alike(work(steel, medium)))


def one_heat(steel="42crmo4", medium="oil"):
    return torched(JOB.middle(), alike(work(steel, medium)))


def test_the_set_up_lies_in_the_range_of_the_steel_and_of_the_flame():
    chosen, span = at().set_up, work().steel.hardened.temperature_c
    assert span.low - 5.0 <= chosen.heat_c <= span.high + 5.0
    assert chosen.hold_s in HOLDS_S
    assert chosen.past_mm == at().past_mm


def test_carbide_is_held_for():
    """Spheroidised tool steel dissolves in minutes, medium carbon steel in seconds."""
    rich, lean = (at(steel, "warm-water").set_up.hold_s for steel in ("115crv3", "c45"))
    assert rich > lean


@pytest.mark.parametrize(("steel", "each_s"), [("c45", 2.0), ("115crv3", 5.0)])
def test_a_thick_part_heated_all_over_is_held_so_long_that_it_is_even(steel, each_s):
    for size in (10, 16, 25):
        wide = {f"part.section.{n}.size": f"{size} mm" for n in (0, 1)}
        own = {"part.feature": [], "workshop.heat": [{"source": "oxy-propane"}]}
        job = resolved(asked({**wide, **own}), CATALOG)
        chosen = at_torch(job, alike(treatment_of(job, steel, "through-torch", "warm-water")))
        assert chosen.set_up.hold_s >= min(each_s * chosen.task.part.thickest_mm, HOLDS_S[-1])


@pytest.mark.parametrize("route", ["local-torch", "through-torch"])
def test_thin_work_is_out_of_the_flame_half_a_minute_after_it_is_even(route):
    for size in (5, 8, 12):
        thin = {f"part.section.{n}.size": f"{size} mm" for n in (0, 1)}
        own = {"part.feature": [], "workshop.heat": [{"source": "hand-torch"}]}
        job = resolved(asked({**thin, **own}), CATALOG)
        rod = alike(treatment_of(job, "115crv3", route, "warm-water"))
        assert at_torch(job, rod).set_up.hold_s <= 5.0 * size + ONCE_EVEN_S


def test_bars_that_harden_alike_share_a_set_up():
    hot, cold = (work("c45", "warm-water", name) for name in ("hot-rolled", "cold-drawn"))
    assert alike(hot) == alike(cold)


def test_a_local_route_heats_the_hard_sections_alone():
    assert at().hard == JOB.hard
    assert at().lead_probe == 0


def test_a_treatment_without_a_quench_has_no_bath():
    bought = CATALOG.routes["as-bought"]
    plain = replace(work(), route=bought, medium=None)
    assert bath_of(plain, JOB.asked.workshop, JOB.mass_kg) is None
    with pytest.raises(ValueError, match="no torch, or no bath"):
        at_torch(JOB, plain)


def test_the_samples_scatter_about_the_middle():
    many, one = torched(JOB, alike(work())), one_heat()
    assert many.set_up == one.set_up
    assert np.median(many.rim_c) == pytest.approx(one.rim_c[0], abs=8.0)
    assert many.zone.peak_c.shape[0] == JOB.count


def test_the_library_is_read_alike_at_probes_and_cells():
    assert one_heat().field.peak_c.max() >= one_heat().zone.peak_c.max() - 1.0


def test_a_heated_end_is_hot_to_its_middle():
    assert one_heat().heated_share == 1.0


def test_a_misread_heat_costs_tool_steel_more_than_alloy_steel():
    assert 0.0 <= at().misread_hrc < at("c105u", "warm-water").misread_hrc


def test_water_bows_more_than_oil():
    oil, water = (one_heat("c45", medium).bow for medium in ("oil", "warm-water"))
    assert 0.0 < oil.median_mm < water.median_mm


def test_edges_are_hotter_than_the_zone():
    part = one_heat()
    assert part.hottest_c > part.set_up.heat_c
    assert 5.0 < part.to_heat_s < 200.0
    assert part.uneven_k < 60.0


def test_the_dog_holds_heat_enough_to_temper_its_claws():
    route = treatment_of(JOB, "c45", "residual-heat", "warm-water")
    assert at_torch(JOB, alike(route)).dip.colour_after_s(200.0) is not None
