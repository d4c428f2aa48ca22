"""The traps of the trade, each put to the whole job: a plausible part in, advice out.

Each is what a naive answer would do. Where a sentence of practice is checked, it is the
catalogue's or the project's own sentence.
"""

import inspect
import re
from dataclasses import replace
from types import MappingProxyType
from typing import Any

import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.advice.record import AdviceOut
from selector.errors import RequirementError
from selector.job.job import resolved
from selector.need.need import need
from selector.option import caution as of_options
from selector.option.preparation import prepare
from selector.record import OptionOut
from selector.requirement import requirement_from
from tests.dog import GONE, only, varied, work

# A plain pin in a shop with a good torch, a kitchen oven, water and oil.
PIN = """
safety_use = "could hurt"
[part]
name = "pin"
[[part.section]]
shape = "round"
size = 16
length = 80
[[zone]]
section = [1]
wear = "sliding"
severity = "medium"
[load]
impact = "none"
cycles = "static"
[workshop]
heat = [{ source = "oxy-propane" }, { source = "kitchen-oven" }]
bath = [{ medium = "water" }, { medium = "oil" }]
measure = ["magnet"]
"""
CHISEL = {
    "part.section": [
        {"shape": "hexagon", "size": 16, "length": 30},
        {"shape": "hexagon", "size": 16, "length": 120},
    ],
    "part.feature": [{"kind": "edge", "at": 0}],
    "zone": [
        {"section": [1], "wear": "edge-impact", "severity": "medium"},
        {"section": [2], "wear": "none"},
    ],
    "load.impact": "hammered",
}
SQUARE = {
    "part.section": [
        {"shape": "square", "size": 12.7, "length": 15},
        {"shape": "round", "size": 22, "length": 60},
    ],
    "zone": [{"section": [1], "wear": "none"}, {"section": [2], "wear": "none"}],
    "load.torque": "150 N m",
    "load.impact": "light",
}
OIL_ONLY = {"workshop.bath": [{"medium": "oil"}]}
WATER_ONLY = {"workshop.bath": [{"medium": "water"}]}
SENT_OUT = {"workshop.subcontract": True}
FURNACE = {"workshop.heat": [{"source": "oxy-propane"}, {"source": "muffle-furnace"}]}
TORCH = {"through-torch", "local-torch", "residual-heat"}


def ask(*changes: dict[str, Any], steels: tuple[str, ...] = (), **looked_at: str) -> AdviceOut:
    """Return the advice on the pin, changed; the rest is filled in."""
    asked = requirement_from(varied({k: v for c in changes for k, v in c.items()}, PIN))
    known = only(*steels) if steels else load_catalog()
    return advice_out(advise(asked, known, **looked_at))


def why_not(found: AdviceOut, steel: str, *kinds: str) -> set[str]:
    """Return why a steel is turned down for some kinds of route, all if none is named."""
    reasons = {
        f"{item.gate}: {item.text}"
        for item in found.rejected
        if item.steel_slug == steel and (not kinds or item.route_kind in kinds)
    }
    assert reasons, f"nothing was turned down for {steel}"
    return reasons


def kinds_of(found: AdviceOut, steel: str) -> set[str]:
    """Return the kinds of route by which a steel is still an option."""
    return {option.route_kind for option in found.options if option.steel_slug == steel}


def hardened(found: AdviceOut) -> list[OptionOut]:
    """Return the options that are heated and quenched."""
    return [option for option in found.options if option.route_kind in TORCH]


def cautions(found: AdviceOut) -> set[str]:
    return {item.id for item in found.cautions}


def said(sentences: tuple[str, ...], *words: str) -> bool:
    """Return whether one sentence holds all the words."""
    return any(all(word in sentence for word in words) for sentence in sentences)


# A. The steel cannot do it


def test_leaded_bar_gets_no_quench_recipe():
    found = ask(
        {"workshop.stock": [{"steel": "12L14"}]}, SENT_OUT, FURNACE, steels=("11smnpb30",)
    )
    assert kinds_of(found, "11smnpb30") == set()
    (reason,) = why_not(found, "11smnpb30", "through-torch", "through-furnace")
    assert "never hardens" in reason
    assert "lead leaves as fume" in reason
    assert "lead-fume" in cautions(found)


def test_leaded_bar_may_stay_soft():
    found = ask({"zone.0.wear": "none"}, SENT_OUT, FURNACE, steels=("11smnpb30",))
    assert kinds_of(found, "11smnpb30") == {"as-bought"}


@pytest.mark.parametrize("steel", ["s235", "070m20", "c15"])
def test_mild_steel_wants_carbon_before_a_torch(steel):
    found = ask(steels=(steel,))
    for reason in why_not(found, steel, *TORCH):
        assert "carbon must be added first" in reason
    (cased,) = found.options
    assert cased.route_kind == "case"
    assert cased.hardness.surface.p50 > 50 > cased.hardness.core.p50


def test_no_flame_hardens_low_carbon_steel_and_high_carbon_cracks():
    found = ask(route="through-torch")
    steels = load_catalog().steels
    assert hardened(found)
    for option in hardened(found):
        assert steels[option.steel_slug].composition_wt_pct["C"].middle >= 0.30
    found = ask(WATER_ONLY, steels=("c45", "c60", "115crv3", "c100s"), route="through-torch")
    rates = {option.steel_slug: option.crack.high for option in found.options if option.crack}
    assert rates["c45"] < rates["c60"] <= rates["115crv3"]
    assert any("cracking" in reason for reason in why_not(found, "c100s"))


def test_is_carburised_before_it_is_hardened():
    found = ask(steels=("20nicrmo2-2",))
    for reason in why_not(found, "20nicrmo2-2", *TORCH):
        assert "carburise first" in reason
    assert kinds_of(found, "20nicrmo2-2") == {"case"}
    assert found.options[0].hardness.core.p50 < 45


@pytest.mark.parametrize("steel", ["x5crni18-10", "x5crnimo17-12-2"])
def test_austenitic_stainless_is_not_quench_hardened(steel):
    found = ask({"zone.0.wear": "none"}, FURNACE, SENT_OUT, steels=(steel,))
    assert kinds_of(found, steel) == {"as-bought"}
    for reason in why_not(found, steel, *TORCH, "through-furnace", "induction"):
        assert "only cold work does" in reason


def test_nitriding_wants_nitride_formers_and_a_tempered_core():
    found = ask(SENT_OUT, route="subcontract-nitride")
    for steel in ("c45", "115crv3"):
        assert any("No nitride formers" in reason for reason in why_not(found, steel))
    assert any(reason.startswith("core: annealed") for reason in why_not(found, "42crmo4"))
    assert found.options
    steels = load_catalog().steels
    for option in found.options:
        assert steels[option.steel_slug].composition_wt_pct["Cr"].middle >= 0.7
        assert option.condition == "prehard"


@pytest.mark.parametrize(
    ("steel", "heat"), [("x100crmov5", "940"), ("x153crmov12", "1010"), ("hs6-5-2", "1200")]
)
def test_air_hardening_and_high_speed_steel_are_not_for_a_torch(steel, heat):
    found = ask({"workshop.heat": [{"source": "oxy-acetylene"}]}, steels=(steel,))
    assert kinds_of(found, steel) == set()
    for reason in why_not(found, steel, "through-torch"):
        assert f"{heat}" in reason.split("°C")[0]


def test_a_furnace_does_for_a2_and_d2_but_not_for_high_speed_steel():
    steels = ("x100crmov5", "x153crmov12", "hs6-5-2")
    found = ask({"workshop.heat": [{"source": "heat-treat-oven"}]}, steels=steels)
    assert (
        kinds_of(found, "x100crmov5") == kinds_of(found, "x153crmov12") == {"through-furnace"}
    )
    assert kinds_of(found, "hs6-5-2") == set()


@pytest.mark.parametrize("name", ["cast iron", "casting", "scrap"])
def test_a_casting_is_identified_before_any_quench(name):
    found = ask({"workshop.stock": [{"steel": name}], "workshop.only_stock": True})
    assert found.verdict == "coupon_first"
    assert not found.options
    assert "cast-iron-quench" in cautions(found)
    assert {item.gate for item in found.apart} == {"response"}
    assert all(item.find_out for item in found.apart)


# B. Wrong name, wrong bar


def test_drill_rod_may_be_three_steels_and_silver_steel_is_none_of_them():
    found = ask(
        {"workshop.stock": [{"steel": "drill rod"}]},
        steels=("c105u", "100mncrw4", "x100crmov5", "115crv3"),
    )
    assert said(found.assumptions, "drill rod", "C105U", "100MnCrW4", "X100CrMoV5", "make sure")
    assert not said(found.assumptions, "115CrV3")
    assert found.coupon


def test_silver_steel_hardens_in_oil_only_when_thin():
    thin = ask({"part.section.0.size": 6}, OIL_ONLY, steels=("115crv3",))
    assert "through-torch" in kinds_of(thin, "115crv3")
    thick = ask({"part.section.0.size": 30}, OIL_ONLY, steels=("115crv3",))
    assert kinds_of(thick, "115crv3") == set()
    (reason,) = why_not(thick, "115crv3", "through-torch") - {
        "medium: made for water: in air only thin edges harden, and unevenly"
    }
    # Its rim is fine pearlite: no depth of it has hardened.
    assert reason == "depth: needs 0.1 mm deep; predicted 0.0 mm"
    water = ask({"part.section.0.size": 30}, WATER_ONLY, steels=("115crv3",))
    best = next(option for option in water.options if option.route_kind == "through-torch")
    # A hard shell over a softer core.
    assert best.hardness.surface.p50 > 55
    assert best.hardness.core.p50 < 45


def test_the_letter_after_an_en_number_is_a_strength_condition():
    found = ask(SENT_OUT, {"workshop.stock": [{"steel": "EN16T"}]}, steels=("605m36",))
    assert said(found.remarks, "EN16T", "strength condition", "not nitriding")
    assert {option.condition for option in found.options} == {"prehard"}


# D. Quench


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
    found = ask(LONG_SHAFT)
    assert found.verdict == "leave_as_bought"
    assert found.options[0].route_kind == "prehard"
    assert not hardened(found)


def test_a_long_hard_shaft_is_bought_hard_because_it_would_bow():
    asked = {"zone.0.hardness": {"min": "50 HRC"}, "limit.runout": "0.05 mm"}
    found = ask(LONG_SHAFT, {"part.section.0.length": 400}, asked)
    assert found.options[0].route_kind == "buy-hard-element"
    assert not hardened(found)
    assert any(r.startswith("movement: bows 0.") for r in why_not(found, "c45", *TORCH))


# E. Temper and duty


def test_a_struck_edge_is_tempered_beyond_straw_over_a_soft_head():
    found = ask(CHISEL)
    assert hardened(found)
    for option in hardened(found):
        assert option.temper.means != "none"
        assert option.temper.temperature_c >= 225
    assert found.options[0].hardness.shank.p50 < 48
    assert "struck-head-chips" in cautions(found)


@pytest.mark.parametrize(
    ("ceiling", "words"),
    [
        (180, "tempered below 180 °C: toughness unknown, and it is struck"),
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


SPRINGY = {
    "zone.0.wear": "none",
    "zone.0.hardness": {"min": "44 HRC", "max": "47 HRC"},
    "load.impact": "light",
}


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


# F. Case


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
        lost = whole.options[0].hardness.depth_mm.p50 - found.options[0].hardness.depth_mm.p50
        assert lost == pytest.approx(0.1, abs=0.01)
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


# G. Behaviour


def test_what_decides_is_asked_for_and_not_assumed():
    bare = {"safety_use": GONE, "workshop.heat": GONE, "part.section": GONE}
    with pytest.raises(RequirementError, match="safety_use must be given; got nothing") as told:
        ask(bare)
    assert {problem.field for problem in told.value.problems} == {
        "safety_use", "part.section", "workshop.heat",
    }  # fmt: skip


def test_a_torque_without_a_unit_is_asked_back():
    with pytest.raises(RequirementError, match=r"load.torque .* unit; got 90.* N m, lb ft"):
        ask({"load.torque": 90})


def test_an_unknown_bar_gets_a_coupon_plan():
    found = ask({"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True})
    assert found.verdict == "coupon_first"
    assert len(found.coupon) > 3
    assert "unknown-steel-coupon" in cautions(found)


@pytest.mark.parametrize(
    "changes",
    [
        {"zone.0.wear": "none", "load.bending": "20 N m"},
        {"zone.0.severity": "light", "part.section.0.length": 30},
        {
            "part.section": [{"shape": "flat", "size": 6, "width": 6, "length": 25}],
            "zone.0.wear": "none",
            "load.impact": "light",
        },
    ],
    ids=["stay", "lightly used bush", "key"],
)
def test_what_needs_no_hardening_is_left_as_bought(changes):
    found = ask(changes)
    assert found.verdict == "leave_as_bought"
    assert found.as_bought == found.options[0].id
    assert found.headline.startswith("No hardening needed. ")


def test_divided_practice_is_shown_with_what_decides():
    found = ask(CHISEL, steels=("42crmo4", "817m40"))
    assert said(found.remarks, "Practice is divided", "others go above 400 °C", "decides")
    found = ask(CHISEL, steels=("c45", "c60"))
    assert not said(found.remarks, "Practice is divided")


@pytest.mark.parametrize(
    ("points", "tied"),
    [({"days": 1}, True), ({"cost": 1}, False)],
    ids=["all take a day", "one is much the cheaper"],
)
def test_a_toss_up_is_called_one(points, tied):
    asked = {"priorities.points": points, "load.torque": "20 N m"}
    found = ask(asked, steels=("c45", "115crv3"), route="through-torch")
    first, second = found.options
    share = next(pair.share for pair in found.pairwise if pair.first == first.id)
    assert found.toss_up == (share < 0.60) == tied
    assert ("toss-up" in found.headline) == tied
    assert (second.steel in found.headline) == tied
    # Where all are alike in what counts, no order is made up.
    assert bool(found.other_methods) != tied


def test_other_methods_are_heard():
    found = ask(steels=("c45", "115crv3", "100mncrw4"))
    assert len(found.other_methods) >= 2
    for heard in found.other_methods:
        assert set(heard.order) == {option.id for option in found.options}
        assert heard.agrees_on_first == (heard.order[0] == found.options[0].id)


# It knows better than a table would


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


# Cautions that belong to a temper, a coating, a bolt; assumptions that belong to a model


@pytest.mark.parametrize(
    ("window", "hot"),
    [(("44 HRC", "47 HRC"), True), (("55 HRC", "58 HRC"), False)],
    ids=["hot temper", "low temper"],
)
def test_slow_cooling_is_warned_of_only_after_a_hot_temper(window, hot):
    asked = {"zone.0.hardness": {"min": window[0], "max": window[1]}, "zone.0.wear": "none"}
    found = ask(asked, FURNACE, steels=("51crv4",))
    assert all((option.temper.temperature_c >= 375) == hot for option in hardened(found))
    assert ("temper-embrittlement-slow-cool" in cautions(found)) == hot


def test_slow_cooling_is_not_warned_of_for_a_steel_with_molybdenum():
    found = ask(SPRINGY, FURNACE, steels=("42crmo4",))
    assert any(option.temper.temperature_c >= 375 for option in hardened(found))
    assert "temper-embrittlement-slow-cool" not in cautions(found)


@pytest.mark.parametrize(
    ("changes", "warned"),
    [
        ({"part.condition": "plated"}, True),
        ({"limit.corrosion": "mild"}, True),
        ({}, False),
    ],
    ids=["plated", "would be plated", "bare"],
)
def test_hydrogen_is_warned_of_where_hard_steel_is_plated(changes, warned):
    found = ask(changes, steels=("c45",))
    assert ("hydrogen-embrittlement" in cautions(found)) == warned


def test_hydrogen_is_not_warned_of_for_soft_bar():
    soft = {"part.condition": "plated", "zone.0.wear": "none"}
    found = ask(soft, steels=("c45",), route="as-bought")
    assert found.options
    assert "hydrogen-embrittlement" not in cautions(found)


def test_plating_of_unknown_kind_is_treated_as_cadmium():
    assert "cadmium" in cautions(ask({"part.condition": "plated"}, steels=("c45",)))


@pytest.mark.parametrize(
    ("changes", "warned"),
    [
        ({"part.condition": "welded", "part.feature": [{"kind": "thread"}]}, True),
        ({"part.feature": [{"kind": "thread"}, {"kind": "weld"}]}, True),
        ({"part.feature": [{"kind": "thread"}]}, False),
    ],
    ids=["welded", "to be welded", "thread alone"],
)
def test_a_welded_bolt_is_replaced(changes, warned):
    found = ask(changes, steels=("c45",))
    assert ("welding-high-strength-bolt" in cautions(found)) == warned


@pytest.mark.parametrize(
    ("steel", "words"),
    [
        ("31crmo12", ("31CrMo12", "Cr 3.05 wt %", "32 hardenability bands", "coupon")),
        ("51crv4", ("51CrV4", "V 0.175 wt %", "coupon")),
    ],
)
def test_a_leading_figure_outside_its_model_is_said_to_be(steel, words):
    asked = {"zone.0.hardness": {"min": "48 HRC"}, "zone.0.wear": "none"}
    found = ask(asked, FURNACE, steels=(steel,))
    assert hardened(found)
    assert said(found.assumptions, *words)
    assert hardened(found)[0].hardness.surface.validity


def test_a_figure_inside_its_model_says_nothing_of_it():
    found = ask(steels=("c45", "42crmo4"))
    assert all(not option.hardness.surface.validity for option in found.options)
    assert not said(found.assumptions, "stretch of the model")


def test_every_caution_of_the_list_is_raised_by_something():
    known = load_catalog()
    named = {
        key
        for group in (known.routes, known.media, known.heat_sources)
        for record in group.values()
        for key in record.cautions
    }
    named |= {
        limit.caution for steel in known.steels.values() for limit in steel.limitation
    } - {None}
    named |= set(re.findall(r'"([a-z]+(?:-[a-z]+)*)"', inspect.getsource(of_options)))
    assert set(known.cautions) <= named


@pytest.mark.parametrize(
    "ids",
    [
        *of_options.BY_CONDITION.values(),
        *of_options.BY_SHAPE.values(),
        *of_options.BY_MEANS.values(),
    ],
)
def test_a_caution_named_in_code_is_on_the_list(ids):
    assert set(ids) <= set(load_catalog().cautions)


def test_a_caution_that_is_not_on_the_list_is_a_loud_fault():
    known = only("c45")
    name = "through-torch"
    route = known.routes[name].model_copy(update={"cautions": ("no-such-caution",)})
    slipped = replace(known, routes=MappingProxyType({name: route}))
    with pytest.raises(KeyError, match="no-such-caution"):
        advice_out(advise(requirement_from(varied({}, PIN)), slipped))
