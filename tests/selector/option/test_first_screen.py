import pytest

from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.option.first_screen import HARMS, MOST, MOST_OF, first_screen
from tests.dog import asked, only


def seen(changes, *steels, route=None):
    """Return the cautions of the first screen and the whole list, by id."""
    found = advise(asked(changes), only(*steels), route=route)
    listed = advice_out(found).cautions
    first = sorted((c for c in listed if c.first_screen), key=lambda c: c.rank)
    return [c.id for c in first], {c.id: c for c in listed}


FORGE = {"workshop.heat": [{"source": "forge"}], "workshop.bath": [{"medium": "oil"}]}
CHISEL = {"load.impact": "hammered", "zone.0.wear": "edge-impact"}


def test_the_worst_comes_first_and_only_so_many_of_it():
    first, known = seen(FORGE, "42crmo4")
    harms = [known[key].harm for key in first]
    assert harms == sorted(harms, key=HARMS.index)
    assert len(first) <= MOST
    assert harms.count("kills") <= MOST_OF["kills"] == 3
    assert [known[key].rank for key in first] == list(range(1, len(first) + 1))


def test_what_stands_on_the_first_screen_stands_in_the_whole_list_too():
    first, known = seen(FORGE, "42crmo4")
    assert set(first) < set(known)
    assert sum(c.first_screen for c in known.values()) == len(first)


def test_a_chip_from_a_struck_head_is_not_crowded_out():
    assert "struck-head-chips" in seen({**FORGE, **CHISEL}, "60wcrv8", route="through-torch")[0]


OIL = {"workshop.bath": [{"medium": "oil"}]}
COOKING = {"workshop.bath": [{"medium": "vegetable-oil"}]}


def test_cooking_oil_is_put_out_by_other_means_than_mineral_oil():
    _, mineral = seen(OIL, "100mncrw4", route="through-torch")
    _, cooking = seen(COOKING, "100mncrw4", route="through-torch")
    assert "fire-extinguisher" in mineral
    assert "vegetable-oil-fire" not in mineral
    assert "vegetable-oil-fire" in cooking
    assert "fire-extinguisher" not in cooking
    assert "powder or CO2" in mineral["fire-extinguisher"].brief
    assert "no foam, CO2" in cooking["vegetable-oil-fire"].brief


@pytest.mark.parametrize("medium", ["oil", "fast-oil", "warm-water"])
@pytest.mark.parametrize("route", ["local-torch", "through-torch"])
def test_nobody_is_told_to_go_right_under_and_to_move_the_end_up_and_down(medium, route):
    _, known = seen({"workshop.bath": [{"medium": medium}]}, "c45", "42crmo4", route=route)
    under = {"oil-fire", "half-dip-oil"} & set(known)
    ends = {"keep-moving-at-water-line", "end-dip-oil"} & set(known)
    assert not (under and ends)
    assert bool(ends) == (medium == "warm-water" and route == "local-torch")


def hole(at):
    return {**OIL, "part.feature": [{"kind": "cross-hole", "at": at, "size": "5 mm"}]}


def test_a_hole_that_stays_cold_is_not_plugged():
    _, near = seen(hole("8 mm"), "42crmo4", route="local-torch")
    _, far = seen(hole("100 mm"), "42crmo4", route="local-torch")
    _, whole = seen(hole("100 mm"), "42crmo4", route="through-torch")
    assert "plug-holes" in near
    assert "plug-holes" not in far
    assert "plug-holes" in whole


def test_the_bath_that_is_advised_is_not_forbidden_in_the_next_line():
    water = {"workshop.bath": [{"medium": "warm-water"}]}
    _, known = seen(water, "42crmo4", route="local-torch")
    assert "harsh-bath" in known
    assert "water-for-oil-steel" not in known


@pytest.mark.parametrize(
    ("source", "key"), [("oxy-acetylene", True), ("oxy-propane", False), ("hand-torch", False)]
)
def test_acetylene_is_spoken_of_where_there_is_some(source, key):
    heat = {**OIL, "workshop.heat": [{"source": source}]}
    small = {"part.section.0.size": 10, "part.section.1.size": 10, "load.torque": "2 N m"}
    _, known = seen({**heat, **small}, "42crmo4", route="local-torch")
    assert ("acetylene" in known) == key


def test_a_bar_bought_hard_is_cut_behind_a_guard():
    pin = {"part.feature": [], "load.torque": "1 N m", "zone.0.hardness": {"min": "58 HRC"}}
    found = advise(asked(pin), only("linear-shaft", "dowel-pin"))
    for option in found.options:
        assert "cut-off-disc" in first_screen(found.job, option.judged.prediction)


def test_a_part_without_an_option_brings_its_own(job):
    assert first_screen(job, None) == ()


def test_scrap_of_unknown_kind_may_hold_sodium_or_pressure():
    rack = {"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True}
    first, known = seen(rack, "unknown")
    assert "scrap-sealed" in first
    assert "unknown-steel-coupon" in known
