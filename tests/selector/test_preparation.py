import numpy as np
import pytest

from catalog import load_catalog
from selector.geometry import POSITIONS
from selector.hardness_scale import hrc_from_hb
from selector.preparation import cooled_points, prepare, supply_hrc
from selector.surroundings import surroundings
from tests.dog import asked, work

CATALOG = load_catalog()


def supply(around, steel, condition):
    treatment = work(steel, "as-bought", None, None, condition)
    return supply_hrc(treatment, around.of_steel(steel)), treatment.condition


def test_bar_as_sold_lies_about_its_published_range(around):
    hrc, condition = supply(around, "42crmo4", "prehard")
    span = condition.hardness_hrc
    assert np.median(hrc) == pytest.approx(span.middle, abs=0.1)
    assert np.mean((hrc >= span.low) & (hrc <= span.high)) > 0.9


def test_bar_with_a_maximum_alone_comes_softer_than_it(around):
    hrc, condition = supply(around, "42crmo4", "annealed")
    assert condition.hardness_hb.min is None
    most = float(hrc_from_hb(condition.hardness_hb.high, outside="extend"))
    assert np.median(hrc) < most
    assert np.mean(hrc <= most) > 0.9


def test_bar_of_no_known_hardness_is_not_guessed(around):
    hrc, _ = supply(around, "unknown", "unknown")
    assert np.isnan(hrc).all()


def test_a_quenched_part_has_a_hardness_at_every_point(around):
    ready = prepare(work("42crmo4"), around)
    assert ready.fresh.hrc.shape == (around.count, 2 * len(POSITIONS))
    assert ready.heat.target_c == ready.treatment.steel.hardened.temperature_c.middle
    assert ready.crack.risk is not None


@pytest.mark.parametrize("names", [("c45", "as-bought"), ("42crmo4", "subcontract-nitride")])
def test_a_part_that_is_not_quenched_has_none(around, names):
    ready = prepare(work(*names, medium=None, source=None), around)
    assert ready.fresh is None
    assert ready.heat is None
    assert ready.crack.risk is None
    assert not ready.crack.cracked.any()


def test_nothing_cools_without_a_bath(around):
    assert cooled_points(work(route="as-bought", medium=None, source=None), around) is None


def test_every_section_cools_at_every_position(around):
    points = cooled_points(work(), around)
    assert points.position.tolist() == [*POSITIONS, *POSITIONS]
    assert set(points.size_mm) == {25.0}


def test_a_disc_cools_as_a_plate_of_its_thickness():
    disc = [{"shape": "round", "size": 60, "length": 8}]
    part = {"part.section": disc, "zone": [{"section": [1], "wear": "sliding"}],
            "part.feature": []}  # fmt: skip
    points = cooled_points(work(), surroundings(asked(part), CATALOG))
    assert (points.size_mm < 30).all()


def test_one_draw_is_the_middle(around):
    once = surroundings(asked(), CATALOG, count=1)
    middle, drawn = prepare(work(), once), prepare(work(), around)
    assert middle.fresh.hrc.shape[0] == 1
    assert middle.fresh.hrc[0, 0] == pytest.approx(np.median(drawn.fresh.hrc[:, 0]), abs=1.0)


def test_compositions_are_drawn_once_for_a_steel(around):
    first = prepare(work(route="through-torch"), around)
    second = prepare(work(route="local-torch"), around)
    assert first.composition is second.composition
