import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.bath_response import POSITIONS
from selector.job.job import resolved
from selector.option.preparation import cooled_points, prepare
from tests.dog import asked, work

CATALOG = load_catalog()


def test_a_quenched_part_has_a_hardness_at_every_point(job):
    ready = prepare(work("42crmo4"), job)
    # At a torch the two ends of the part are looked at besides.
    assert ready.fresh.hrc.shape == (job.count, 2 * len(POSITIONS) + 2)
    assert np.isfinite(ready.fresh.hrc).all()
    assert ready.heat.target_c == ready.treatment.steel.hardened.temperature_c.middle
    assert ready.crack.risk is not None


@pytest.mark.parametrize("names", [("c45", "as-bought"), ("42crmo4", "subcontract-nitride")])
def test_a_part_that_is_not_quenched_has_none(job, names):
    ready = prepare(work(*names, medium=None, source=None), job)
    assert ready.fresh is None
    assert ready.heat is None
    assert ready.crack.risk is None
    assert not ready.crack.cracked.any()


def test_nothing_cools_without_a_bath(job):
    assert cooled_points(work(route="as-bought", medium=None, source=None), job) is None


def test_every_section_cools_at_every_position(job):
    points = cooled_points(work(), job)
    assert points.place.tolist() == [*POSITIONS, *POSITIONS]
    assert points.distance_mm.shape == (job.count, 2 * len(POSITIONS))
    # Two sections of one size cool alike.
    np.testing.assert_array_equal(*np.split(points.distance_mm, 2, axis=1))


def test_a_disc_cools_as_a_plate_of_its_thickness():
    disc = [{"shape": "round", "size": 60, "length": 8}]
    part = {"part.section": disc, "zone": [{"section": [1], "wear": "sliding"}],
            "part.feature": []}  # fmt: skip
    found = cooled_points(work(), resolved(asked(part), CATALOG))
    bar = {"part.section": [{"shape": "round", "size": 30, "length": 90}]}
    thick = cooled_points(work(), resolved(asked({**part, **bar}), CATALOG))
    assert (found.distance_mm[:, -1] < thick.distance_mm[:, -1]).all()


def test_points_are_shared_by_steels_of_like_heat_and_not_by_baths_or_kinds(job):
    crmo, ni = (cooled_points(work(slug), job) for slug in ("42crmo4", "817m40"))
    assert crmo is ni
    assert cooled_points(work("42crmo4", medium="water"), job) is not crmo
    assert cooled_points(work("x40crmov5-1"), job) is not crmo


def test_one_draw_is_the_middle(job):
    once = resolved(asked(), CATALOG, count=1)
    middle, drawn = prepare(work(), once), prepare(work(), job)
    assert middle.fresh.hrc.shape[0] == 1
    assert middle.fresh.hrc[0, 0] == pytest.approx(np.median(drawn.fresh.hrc[:, 0]), abs=1.0)


def test_compositions_are_drawn_once_for_a_steel(job):
    first = prepare(work(route="through-torch"), job)
    second = prepare(work(route="local-torch"), job)
    assert first.composition is second.composition


@pytest.mark.parametrize(
    ("other", "shared"),
    [
        (work("c45", "local-torch"), False),
        (work("c45", "through-torch", condition="cold-drawn"), True),
        (work("c45", medium="water"), False),
        (work("c45", source="muffle-furnace"), False),
        (work("42crmo4"), False),
    ],
    ids=["in its zone alone", "other bar", "another bath", "another source", "another steel"],
)
def test_what_is_heated_and_quenched_alike_is_worked_out_once(other, shared):
    job = resolved(asked(), CATALOG)
    one, two = prepare(work("c45"), job).fresh, prepare(other, job).fresh
    assert (one is two) is shared
    alone = prepare(other, resolved(asked(), CATALOG)).fresh
    np.testing.assert_array_equal(two.hrc, alone.hrc)


@pytest.mark.parametrize("steel", ["42crmo4", "100cr6", "100mncrw4"])
def test_martempering_oil_hardens_as_oil_does_and_moves_the_part_less(steel):
    baths = [{"medium": medium} for medium in ("oil", "hot-oil", "hot-salt")]
    kiln = [{"source": "kiln"}, {"source": "kitchen-oven"}]
    job = resolved(asked({"workshop.heat": kiln, "workshop.bath": baths}), CATALOG)
    ways = {"oil": "through-furnace", "hot-oil": "marquench-oil", "hot-salt": "marquench"}
    ready = {m: prepare(work(steel, route, m, "kiln"), job) for m, route in ways.items()}
    hrc = {m: float(np.median(r.fresh.hrc[:, 0])) for m, r in ready.items()}
    # The reading error of a bench tester lies between like baths.
    assert abs(hrc["hot-oil"] - hrc["oil"]) < 1.5
    assert hrc["hot-salt"] <= hrc["hot-oil"]
    moved = {m: float(np.median(r.movement.raw_mm)) for m, r in ready.items()}
    assert moved["hot-oil"] == pytest.approx(0.5 * moved["oil"], rel=0.02)
    assert moved["hot-salt"] < moved["hot-oil"]
