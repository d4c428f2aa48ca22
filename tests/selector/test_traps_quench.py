"""Traps of the trade: the quench, and what a table would promise of a bar."""

import pytest

from selector.job.job import resolved
from selector.option.preparation import prepare
from selector.requirement import requirement_from
from tests.dog import EVERY_KIND, only, varied, work
from tests.traps import (
    FURNACE,
    OIL_ONLY,
    PIN,
    TORCH,
    WATER_ONLY,
    ask,
    cautions,
    hardened,
    kinds_of,
    said,
    why_not,
)


@pytest.mark.parametrize("steel", ["100mncrw4", "90mncrv8", "l6"])
def test_water_is_no_way_out_for_an_oil_hardening_steel(steel):
    wet = ask(WATER_ONLY, steels=(steel,))
    assert not hardened(wet)
    reasons = why_not(wet, steel, "through-torch")
    assert any(reason.startswith("cracking: risk of a quench crack high") for reason in reasons)
    assert "water-for-oil-steel" in cautions(wet)
    both = ask(steels=(steel,))
    assert {option.medium for option in hardened(both)} == {"oil"}
    assert "water-for-oil-steel" in cautions(both)


@pytest.mark.parametrize("medium", ["water", "oil"])
def test_is_not_cased(medium):
    found = ask(FURNACE, {"workshop.bath": [{"medium": medium}]}, steels=("42crmo4",))
    assert not {"case", "carburise"} & kinds_of(found, "42crmo4")
    reasons = why_not(found, "42crmo4", "carburise", "case")
    assert any("no soft core" in reason for reason in reasons)


LONG_SHAFT = {
    "part.section.0.size": 12,
    "part.section.0.length": 300,
    "zone.0.wear": "none",
    "zone.0.hardness": {"min": "28 HRC", "max": "32 HRC"},
    "limit.runout": "0.1 mm",
}


def test_a_long_shaft_at_30_hrc_is_bought_so_and_not_quenched():
    found = ask(LONG_SHAFT, steels=EVERY_KIND)
    assert found.verdict == "leave_as_bought"
    assert found.options[0].route_kind == "prehard"
    assert not hardened(found)


def test_a_long_hard_shaft_is_bought_hard_because_it_would_bow():
    asked = {"zone.0.hardness": {"min": "50 HRC"}, "limit.runout": "0.05 mm"}
    found = ask(LONG_SHAFT, asked, steels=EVERY_KIND)
    assert found.options[0].route_kind == "buy-hard-element"
    assert not hardened(found)
    assert any(r.startswith("movement: bows 0.") for r in why_not(found, "c45", *TORCH))


def test_a_30_mm_silver_steel_bar_in_oil_is_not_promised_hard():
    changes = {"part.section.0.size": 30, **OIL_ONLY, **FURNACE}
    job = resolved(requirement_from(varied(changes, PIN)), only("115crv3"), 1)
    bar = work("115crv3", "through-furnace", "oil", "muffle-furnace")
    reached = prepare(bar, job).fresh.hrc[0]
    # Published: such a bar stayed pearlite at 336 to 400 HV, 34 to 41 HRC; the forecast of a
    # quenched bar is off by 2.5 HRC as a rule.
    assert 34 - 2.5 <= reached.mean() <= 41 + 2.5


def test_a_blue_temper_of_42crmo4_is_counted_as_brittle():
    window = {"zone.0.hardness": {"min": "50 HRC", "max": "51 HRC"}, "zone.0.wear": "none"}
    found = ask(window, {"load.impact": "light"}, steels=("42crmo4",))
    blue = [o for o in hardened(found) if 250 <= o.temper.temperature_c <= 380]
    assert blue
    for option in blue:
        (snap,) = [gate for gate in option.gates if gate.name == "snap"]
        assert "lowered by a temper in its embrittlement window" in snap.text
    assert said(found.remarks, "embrittlement window of 42CrMo4", "a class lower")


def test_cold_drawn_bar_bows_more_than_rolled():
    shaft = {
        "part.section": [
            {"shape": "round", "size": 16, "length": 60},
            {"shape": "round", "size": 16, "length": 770},
        ],
        "zone.0.hardness": {"min": "25 HRC", "max": "62 HRC"},
        "limit.runout": "0.01 mm",
    }
    moved = {
        (item.condition, item.medium): float(item.text.split()[1])
        for bath in (OIL_ONLY, WATER_ONLY)
        for item in ask(shaft, bath, steels=("c45",), route="local-torch").rejected
        if item.gate == "movement"
    }
    assert moved["cold-drawn", "oil"] > moved["hot-rolled", "oil"]
    assert moved["hot-rolled", "water"] > moved["hot-rolled", "oil"]
