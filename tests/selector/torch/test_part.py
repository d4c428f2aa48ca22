import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.torch.part import (
    COLD_BEYOND_MM,
    PASTS,
    flame_of,
    round_like,
    stretch,
    torching,
)
from tests.dog import asked

SOURCES = load_catalog().heat_sources
SHOP = asked().workshop


def test_the_gas_flow_given_sets_the_flame():
    given = asked({"workshop.heat": [{"source": "oxy-propane", "gas_flow": "2.4 kg/h"}]})
    usual, rich = (flame_of(SOURCES["oxy-propane"], a.workshop) for a in (asked(), given))
    assert rich.gas_flow_l_per_min == pytest.approx(21.9, abs=0.1)
    assert rich.width_mm == pytest.approx(2**0.5 * usual.width_mm, rel=0.01)


@pytest.mark.parametrize(
    ("shape", "more", "like"),
    [
        ("round", {}, 20.0),
        ("square", {}, 20.0),
        ("hexagon", {}, 20.0),
        ("tube", {"bore": 8}, 20.0),
        ("flat", {"width": 60}, 30.0),
    ],
)
def test_a_section_heats_like_a_round_of_the_same_surface_for_its_steel(shape, more, like):
    section = {"shape": shape, "size": 20, "length": 30, **more}
    given = asked({"part.section.0": section}).part.section[0]
    assert round_like(given) == pytest.approx(like, rel=1e-3)


def test_the_far_end_is_left_out_and_the_zone_stands_first():
    found = stretch(asked({"part.section.1.length": 900}), (0,))
    assert found.zone_mm == (0.0, 30.0)
    assert found.length_mm == 30.0 + COLD_BEYOND_MM
    assert not found.turned_round


def test_a_zone_at_the_other_end_turns_the_part_round():
    found = stretch(asked({"part.section.1.length": 40}), (1,))
    assert found.zone_mm == (0.0, 40.0)
    assert found.turned_round
    assert [s.length_mm for s in found.sections] == [40.0, 30.0]


def test_a_zone_in_the_middle_stays_there():
    third = [{"shape": "round", "size": 25, "length": n} for n in (60, 20, 60)]
    found = stretch(asked({"part.section": third}), (1,))
    assert found.zone_mm == (60.0, 80.0)


@pytest.mark.parametrize(
    ("sizes", "zone", "least"),
    [
        ((30, 12), 0, 0.0),
        ((12, 30), 1, 0.0),
        ((30, 28), 0, PASTS[0]),
        ((12, 30), 0, PASTS[0]),
        ((30, 30), 0, PASTS[0]),
    ],
)
def test_beside_a_thin_neck_the_flame_may_stop_at_the_zone(sizes, zone, least):
    two = [{"shape": "round", "size": d, "length": 40} for d in sizes]
    part = stretch(asked({"part.section": two}), (zone,))
    assert part.pasts[0] == least
    assert part.pasts[-4:] == PASTS


@pytest.mark.parametrize(
    ("sizes", "least"), [((12, 30, 28), 0.0), ((28, 30, 12), 0.0), ((30, 12, 30), PASTS[0])]
)
def test_a_neck_counts_on_either_side_of_a_zone_in_the_middle(sizes, least):
    three = [{"shape": "round", "size": d, "length": 40} for d in sizes]
    assert stretch(asked({"part.section": three}), (1,)).pasts[0] == least


def test_a_flame_goes_off_a_free_end_and_never_off_a_shoulder():
    three = [{"shape": "round", "size": 6, "length": n} for n in (60, 40, 60)]
    for zone, free in (((1,), False), ((0,), True)):
        task = torching(
            asked({"part.section": three}), zone, zone[0], SOURCES["oxy-propane"], "low-alloy"
        )
        far_mm = task.reaches_mm[-1]
        assert far_mm > 1.5 * 6.0
        (low, high), (from_mm, to_mm) = task.heated_mm(far_mm), task.swept_mm(far_mm)
        assert high == to_mm
        assert from_mm < low if free else from_mm == low


def test_a_neck_is_seen_where_lengths_do_not_add_up_exactly():
    four = [
        {"shape": "round", "size": d, "length": f"{n} mm"}
        for d, n in ((12, 0.1), (12, 0.2), (30, 30.3), (12, 60))
    ]
    assert stretch(asked({"part.section": four}), (2,)).pasts[0] == 0.0


def test_zones_that_lie_apart_are_heated_one_by_one():
    third = [{"shape": "round", "size": 25, "length": n} for n in (10, 100, 20)]
    part = asked({"part.section": third})
    assert stretch(part, (0, 2)).zone_mm == (0.0, 10.0)
    far = stretch(part, (0, 2), 2)
    assert (far.zone_mm, far.turned_round) == ((0.0, 20.0), True)


def test_a_forge_needs_no_turning_and_no_bricks():
    still = asked({"workshop.turns_part": False})
    forge, flame = (
        torching(still, (0,), 0, SOURCES[s], "low-alloy") for s in ("forge", "oxy-propane")
    )
    assert (forge.turns, forge.hearth) == (True, False)
    assert (flame.turns, flame.hearth) == (False, True)


def test_an_edge_may_be_soft_beside_a_thicker_body_that_keeps_it_cold():
    blade = {"part.section.0": {"shape": "flat", "size": 3, "width": 12, "length": 36},
             "part.section.1.size": 12, "zone.0.wear": "edge-impact"}  # fmt: skip
    job = resolved(asked(blade), load_catalog())
    edge = stretch(job.asked, (0,))
    assert edge.zone_mm == (0.0, 36.0)
    # As far as the body is thick, a third of the edge at most.
    assert edge.judged_mm == (0.0, pytest.approx(24.0))
    # A journal that slides is hard up to its shoulder, and so is what is thicker than its body.
    slides = asked({**blade, "zone.0.wear": "sliding", "part.feature": []})
    assert stretch(slides, (0,)).judged_mm == (0.0, 36.0)
    assert stretch(asked({**blade, "part.section.1.size": 4}), (0,)).judged_mm == (0.0, 36.0)
