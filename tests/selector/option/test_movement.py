import numpy as np
import pytest

from selector import sampling
from selector.option.movement import (
    Movement,
    Permitted,
    movement,
    movement_words,
    permitted_movement,
)
from tests.dog import GONE, asked, work

NORMALS = {**sampling.shared(), **sampling.of_steel("c45")}


def of(changes=None, **names):
    return movement(work(**names), asked(changes), NORMALS)


def bow(changes=None, **names):
    return float(np.median(of(changes, **names).raw_mm))


def test_what_is_not_heated_does_not_move():
    moved = of(route="as-bought", medium=None, source=None)
    assert not moved.raw_mm.any()
    assert not moved.moved_mm.any()
    assert moved.growth_mm == 0


def test_a_longer_or_thinner_part_bows_more():
    assert bow({"part.section.1.length": 600}) > bow()
    thin = {"part.section.0.size": 12, "part.section.1.size": 12}
    assert bow(thin) > bow()


def test_water_bows_more_than_oil():
    assert bow(medium="water") > bow(medium="oil")


def test_drawn_bar_bows_more_than_rolled():
    assert bow(condition="cold-drawn") > bow(condition="hot-rolled")


def test_a_turning_part_bows_less_than_one_heated_from_one_side():
    local = {"steel": "42crmo4", "route": "local-torch"}
    assert bow({"workshop.turns_part": True}, **local) < bow(
        {"workshop.turns_part": False}, **local
    )


def test_straightening_never_makes_it_worse():
    moved = of({"part.section.1.length": 600, "limit.runout": 0.1})
    assert (moved.moved_mm <= moved.raw_mm).all()
    left = moved.raw_mm <= moved.permitted_mm
    np.testing.assert_array_equal(moved.moved_mm[left], moved.raw_mm[left])
    assert (moved.moved_mm[~left] < moved.raw_mm[~left]).all()


def test_growth_follows_the_working_section():
    one, two = of(), of({"part.section.0.size": 50})
    assert two.growth_mm == pytest.approx(2 * one.growth_mm)
    assert of(route="subcontract-nitride", medium=None, source=None).growth_mm == 0


def test_a_disc_dishes_across_its_breadth():
    disc = {
        f"part.section.{n}.{key}": v
        for n in (0, 1)
        for key, v in (("size", 100), ("length", 3))
    }
    thick = {
        f"part.section.{n}.{key}": v
        for n in (0, 1)
        for key, v in (("size", 100), ("length", 20))
    }
    assert bow(disc) > bow(thick)


def test_a_stated_run_out_stands_and_an_assumed_one_says_so():
    assert permitted_movement(asked({"limit.runout": "0.05 mm"})) == Permitted(
        0.05, stated=True
    )
    usual = permitted_movement(asked())
    assert usual.mm > 0
    assert not usual.stated


def test_a_tool_that_fits_into_nothing_may_bow_more_than_what_slides():
    tool = {"zone.0.wear": "edge-impact", "load.torque": GONE, "part.feature": []}
    slid = {**tool, "zone.0.wear": "sliding"}
    assert permitted_movement(asked(tool)).mm > permitted_movement(asked(slid)).mm


def test_stock_to_grind_permits_more_movement():
    ground = {"part.finish_after": ["surface-grinder"], "limit.runout": 0.05}
    little, much = (
        permitted_movement(asked({**ground, "part.stock_removal": stock})).mm
        for stock in (0.3, 0.6)
    )
    assert 0.05 < little < much
    lapped = {**ground, "part.finish_after": ["lap"], "part.stock_removal": 0.6}
    assert permitted_movement(asked(lapped)) == Permitted(0.05, stated=True)


def test_a_flat_is_clamped_while_it_is_drawn_and_comes_out_straighter():
    sizes = {"size": 4, "length": 100}
    rounds, flats = (
        {
            "part.section.0": {"shape": shape, **sizes, **extra},
            "part.section.1": {"shape": shape, **sizes, **extra},
            "part.feature": [],
            "limit.runout": 0.02,
        }
        for shape, extra in (("round", {}), ("flat", {"width": 20}))
    )
    bar, flat = of(changes=rounds), of(changes=flats)
    left = [float(np.median(m.moved_mm / m.raw_mm)) for m in (bar, flat)]
    assert left == pytest.approx([0.4, 0.2])


@pytest.mark.parametrize(
    ("moved", "permitted", "words"),
    [
        (0.0096, 0.005, "bows 0.010 of the 0.005 mm you allow"),
        (0.0051, 0.005, "bows 0.0051 of the 0.005 mm you allow"),
        (0.004, 0.05, "bows under 0.01 of the 0.05 mm you allow"),
        (0.03, 0.05, "bows 0.03 of the 0.05 mm you allow"),
    ],
)
def test_a_bow_is_said_as_fine_as_what_is_allowed(moved, permitted, words):
    found = Movement(np.full(3, moved), np.full(3, moved), 0.0, permitted, stated=True)
    assert movement_words(found) == words
