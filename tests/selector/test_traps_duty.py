"""Traps of the trade: the temper, and what the part is for."""

import pytest

from selector.need.need import need
from selector.requirement import requirement_from
from tests.dog import varied
from tests.traps import (
    CHISEL,
    FURNACE,
    PIN,
    SPRINGY,
    SQUARE,
    TORCH,
    ask,
    cautions,
    hardened,
    kinds_of,
    said,
    why_not,
)

# Plain, spring, tool and alloy steel: what edges that are struck are made of.
STRUCK = ("c45", "c60", "115crv3", "51crv4", "60wcrv8", "42crmo4")


def test_a_struck_edge_is_tempered_beyond_straw_over_a_soft_head():
    found = ask(CHISEL, steels=STRUCK)
    assert hardened(found)
    for option in hardened(found):
        assert option.temper.means != "none"
        assert option.temper.temperature_c >= 225
    assert found.options[0].hardness.shank.p50 < 48
    assert "struck-head-chips" in cautions(found)


@pytest.mark.parametrize(
    ("ceiling", "words"),
    [
        (180, "a struck end tempered at 175 °C only: straw chips"),
        (200, "a struck end tempered at 200 °C only: straw chips"),
    ],
)
def test_a_low_temper_is_refused_where_nothing_hotter_is_to_be_had(ceiling, words):
    oven = {"source": "kitchen-oven", "ceiling": ceiling}
    shop = {"workshop.heat": [{"source": "induction"}, oven]}
    window = {"zone.0.hardness": {"min": "50 HRC", "max": "56 HRC"}}
    found = ask(CHISEL, shop, window, steels=("c60",), route="local-torch")
    assert not found.options
    assert any(words in reason for reason in why_not(found, "c60", "local-torch"))


@pytest.mark.parametrize("steel", ["42crmo4", "817m40", "4340"])
def test_alloy_steel_is_not_tempered_to_blue(steel):
    found = ask(CHISEL, steels=(steel,))
    assert said(found.remarks, "Do not temper", "to blue", "above 400 °C")
    assert "temper-window-alloy" in cautions(found)
    for option in hardened(found):
        assert option.temper.temperature_c <= 230 or option.temper.temperature_c > 400


def test_a_kitchen_oven_is_not_asked_to_temper_at_400():
    found = ask(SPRINGY, steels=("51crv4", "c75s", "c45"))
    assert said(found.remarks, "kitchen oven", "250 to 290 °C")
    assert "51crv4" not in {option.steel_slug for option in found.options}
    for option in found.options:
        assert option.temper.means != "oven" or option.temper.temperature_c <= 290


@pytest.mark.parametrize(
    "means",
    [FURNACE, {"workshop.measure": ["magnet", "crayon"]}],
    ids=["furnace", "crayon-guided flame"],
)
def test_a_furnace_or_a_crayon_gives_the_hot_draw(means):
    found = ask(SPRINGY, means, steels=("51crv4",))
    drawn = [option for option in hardened(found) if option.temper.temperature_c >= 400]
    assert drawn
    assert {option.temper.means for option in drawn} <= {"furnace", "torch"}


def test_nothing_is_straightened_before_it_is_tempered():
    found = ask({"part.section.0.length": 200, "limit.runout": "0.1 mm"}, steels=("42crmo4",))
    assert hardened(found)
    assert {"straighten-warm", "as-quenched-glass-brittle"} <= cautions(found)
    steps = {item.id: item.step for item in found.cautions}
    assert steps["straighten-warm"] == "tempering"


@pytest.mark.parametrize(
    ("changes", "tempting"),
    [
        ({"part.section.0.length": 300}, True),
        ({"load.bending": "20 N m"}, True),
        ({}, False),
    ],
    ids=["slender", "bent", "stubby"],
)
def test_hardening_is_not_sold_as_stiffness(changes, tempting):
    found = ask(changes, steels=("42crmo4", "c45"))
    assert said(found.remarks, "does not make it stiffer", "diameter") == tempting


def test_a_square_is_not_the_better_for_60_hrc():
    steels = ("115crv3", "100mncrw4", "c45")
    hard = {
        "zone": [
            {"section": [1], "wear": "none", "hardness": {"min": "59 HRC", "max": "62 HRC"}},
            {"section": [2], "wear": "none"},
        ],
        "load.impact": "hammered",
    }
    found = ask(SQUARE, hard, steels=steels)
    assert not found.options
    assert said(found.remarks, "39 HRC (ISO 3315:2018)", "60 HRC", "Harder is not stronger")
    assert any(reason.startswith("snap:") for reason in why_not(found, "100mncrw4", *TORCH))
    # At the hardness of the standard the same steels serve under the same blows.
    hard["zone"][0]["hardness"] = {"min": "39 HRC", "max": "52 HRC"}
    assert hardened(ask(SQUARE, hard, steels=steels))


def test_prehard_bar_falls_short_of_a_driving_square():
    for window in ({}, {"zone.0.hardness": {"min": "39 HRC", "must": True}}):
        found = ask(SQUARE, window, steels=("42crmo4",))
        assert found.zones[0].floor_hrc == pytest.approx(39, abs=0.3)
        assert "prehard" not in kinds_of(found, "42crmo4")
        assert any("hard_enough" in reason for reason in why_not(found, "42crmo4", "prehard"))
        assert said(found.remarks, "at least 39 HRC")


def test_the_part_meant_to_wear_is_made_the_softer():
    mate = {"material": "shaft of 42CrMo4"}
    loser = ask({"zone.0.mate": {**mate, "should_wear": "part"}}, steels=("c45",))
    either = ask({"zone.0.mate": {**mate, "should_wear": "either"}}, steels=("c45",))
    assert loser.zones[0].high_hrc < either.zones[0].high_hrc
    assert "the one that wears" in loser.zones[0].reason


KEY = {
    "part.section": [
        {"shape": "square", "size": 6.35, "length": 10},
        {"shape": "round", "size": 20, "length": 40},
    ],
    "zone": [{"section": [1], "wear": "none"}, {"section": [2], "wear": "none"}],
}


@pytest.mark.parametrize(
    ("torque", "borne"), [("113 N m", False), ("30 N m", True)], ids=["ultimate", "working"]
)
def test_the_ultimate_torque_of_a_hard_key_is_no_working_torque(torque, borne):
    """113 N m twists off a 6.35 mm square of 57 HRC: no hardness is said to bear it."""
    found = need(requirement_from(varied({**KEY, "load.torque": torque}, PIN)))
    assert (found.verdict != "no_hardness_bears_it") == borne
    square = found.sections[0]
    assert ("no hardness stands the torque" in square.text) != borne
    if borne:
        # And the harder is not the stronger: there is a top as well.
        assert square.least.p50 < square.most.p50 < 57
