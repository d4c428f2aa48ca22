"""Traps of the trade: hard cases and nitrided layers."""

import re

import pytest

from tests.traps import FURNACE, SENT_OUT, ask, cautions, hardened, kinds_of, said, why_not


@pytest.mark.parametrize(
    ("route", "needed"),
    [
        ("case-compound", {"cyanide-refused"}),
        ("pack-carburise", {"cyanide-refused"}),
        ("pack-carburise", {"barium-poison"}),
    ],
)
def test_case_hardening_comes_with_its_poisons_named(route, needed):
    found = ask(FURNACE, steels=("16mncr5", "s235"), route=route)
    assert found.options
    assert needed <= cautions(found)
    steps = {item.id: item.step for item in found.cautions}
    assert {steps[key] for key in needed} == {"before work"}


ROLLED = {
    "zone.0.wear": "rolling-contact",
    "load.cycles": "fatigue",
    "load.contact": "20 kN",
    "zone.0.depth": "0.6 mm",
}


def test_a_nitrided_shaft_under_rollers_is_an_eggshell():
    found = ask(ROLLED, SENT_OUT, steels=("42crmo4", "31crmo12", "18crnimo7-6"))
    assert "nitride" not in {option.route_kind for option in found.options}
    reasons = why_not(found, "42crmo4", "nitride")
    assert any("deep; predicted" in reason for reason in reasons)
    assert "carburise" in kinds_of(found, "18crnimo7-6")
    alone = ask(SENT_OUT, steels=("31crmo12",), route="subcontract-nitride")
    assert "nitride-layer-rolling" in cautions(alone)


@pytest.mark.parametrize(
    ("removed", "kept"), [("0.1 mm", True), ("1.5 mm", False)], ids=["within", "through"]
)
def test_a_case_is_not_ground_through(removed, kept):
    ground = {"part.stock_removal": removed, "part.finish_after": ["surface-grinder"]}
    found = ask(ground, SENT_OUT, steels=("16mncr5",), route="subcontract-carburise")
    assert bool(found.options) == kept
    if kept:
        assert "case-grind-through" in cautions(found)
        whole = ask(SENT_OUT, steels=("16mncr5",), route="subcontract-carburise")
        # What is ground off is grown on top: as much of the case is left.
        lost = whole.options[0].hardness.depth_mm.p50 - found.options[0].hardness.depth_mm.p50
        assert lost == pytest.approx(0.0, abs=0.05)
    else:
        assert any(re.match("hard_enough|depth", r) for r in why_not(found, "16mncr5"))


def test_nothing_is_finished_to_size_and_then_hardened():
    found = ask(steels=("100mncrw4",))
    assert hardened(found)
    assert said(found.remarks, "Do not finish to size first", "0.1 to 0.25 mm", "lap or grind")
    assert "finish-after-heat" in cautions(found)
    (text,) = [item.text for item in found.cautions if item.id == "finish-after-heat"]
    assert "creeps by microns for months" in text
    bought = ask({"zone.0.wear": "none"}, steels=("c45",), route="as-bought")
    assert "finish-after-heat" not in cautions(bought)
