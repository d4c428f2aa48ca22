"""What a toolroom hand would sign, each put to the whole job by a part of its own."""

import numpy as np
import pytest

from selector.advice.rack import rack
from tests.trade import BARE, FORGE, KILN, advised, flat, part, round_

SHARE = part(
    "Tine of a cultivator",
    [flat(12, 60, 70), flat(12, 60, 150)],
    [
        {"section": [1], "wear": "abrasive", "severity": "heavy"},
        {"section": [2], "wear": "none"},
    ],
    FORGE,
    "EN45",
    load={"impact": "light"},
)  # fmt: skip


def test_what_works_the_ground_is_spring_steel_tempered_tough():
    first = advised(SHARE, "EN45").options[0]
    assert first.treatment.steel.kind == "spring"
    lead = advised(SHARE, "EN45").job.leading
    assert (lead.low_hrc, lead.floor_hrc) == (44.0, 38.0)


def test_a_name_with_an_edge_is_an_edge_without_the_feature():
    plain = part(
        "Cold chisel", [round_(16, 30), round_(16, 120)],
        [{"section": [1], "wear": "edge-impact"}, {"section": [2], "wear": "none"}],
        FORGE, "C55", load={"impact": "hammered"},
    )  # fmt: skip
    held = {**plain, "part": {**plain["part"], "name": "Chisel holder"}}
    options = (advised(p, "C55").options for p in (plain, held))
    hardened = (next(o for o in ranked if o.treatment.hardens) for ranked in options)
    named, other = (option.judged.value("custom") for option in hardened)
    assert named < other == 1.0


SHAFT = part(
    "Pump shaft",
    [round_(16, 60), round_(16, 200)],
    [
        {"section": [1], "wear": "sliding", "severity": "medium"},
        {"section": [2], "wear": "none"},
    ],
    BARE,
    limit={"corrosion": "severe"},
)  # fmt: skip


def test_what_stands_severe_corrosion_is_offered_before_nothing():
    found = advised(SHAFT)
    assert {o.treatment.steel.corrosion for o in found.options} <= {"good", "chloride"}
    assert found.options[0].treatment.steel.corrosion == "chloride"


def test_a_stainless_edge_is_rinsed_and_not_refused():
    knife = part(
        "Fish knife", [flat(2, 30, 150)],
        [{"section": [1], "wear": "abrasive", "severity": "light"}],
        KILN, "420", limit={"corrosion": "severe"},
    )  # fmt: skip
    first = advised(knife, "420").options[0]
    gate = next(g for g in first.judged.gates if g.name == "corrosion")
    assert gate.verdict == "marginal"
    assert "rinsed" in gate.text


BOLT = part(
    "Draw bolt",
    [round_(12, 30, name="neck"), round_(30, 60)],
    [{"section": [1, 2], "wear": "none"}],
    BARE,
    load={"bending": "180 N m"},
)


def test_bending_over_one_section_leaves_the_others_alone():
    everywhere = advised(BOLT, "EN19").options[0].judged
    over = {**BOLT, "load": {**BOLT["load"], "bending_over": [2]}}
    there = advised(over, "EN19").options[0].judged
    assert there.value("strength") > everywhere.value("strength")


def test_the_section_that_fails_first_is_named():
    judged = advised(BOLT, "EN19").options[0].judged
    text = next(gate.text for gate in judged.gates if gate.name == "strength")
    assert "section 1 (neck)" in text


@pytest.mark.parametrize(("hardness", "material", "galls"), [
    ("190 HB", "steel bush", True), ("190 HB", "bronze bush", False),
    ("55 HRC", "steel bush", False),
])  # fmt: skip
def test_soft_steel_on_steel_as_soft_is_warned_of(hardness, material, galls):
    pin = part(
        "Hinge pin", [round_(12, 60)],
        [{"section": [1], "wear": "sliding", "mate": {"material": material,
                                                     "hardness": hardness}}],
        BARE,
    )  # fmt: skip
    judged = advised(pin, "C45").options[0].judged
    assert any("galls" in gate.text for gate in judged.gates) is galls


def test_the_flame_is_chosen_by_what_comes_out():
    # A hand torch does not bring this bar to its heat; the forge does.
    shop = {**FORGE, "heat": [{"source": "hand-torch"}, {"source": "forge"}]}
    bar = part(
        "Drift", [round_(22, 120)],
        [{"section": [1], "wear": "sliding", "severity": "medium"}], shop, "O1",
    )  # fmt: skip
    sources = {
        option.treatment.source.slug
        for option in advised(bar, "O1").options
        if option.treatment.route.slug == "through-torch"
    }
    assert sources == {"forge"}


def test_each_bar_of_the_rack_shows_what_it_is_best_for():
    # Two of a family: one takes the place, the other still says what can be made of it.
    spacer = part("Spacer", [round_(20, 30)], [{"section": [1], "wear": "none"}], BARE,
                  "C45", "EN8", "EN3B", "S235")  # fmt: skip
    shown = rack(advised(spacer))
    assert len(shown) == 4
    assert all(bar.id is not None for bar in shown)
    assert any(bar.place is None and "does the same better" in bar.why for bar in shown)


def test_a_ring_counts_by_its_wall():
    ring = part(
        "Cam ring", [{"shape": "tube", "size": 44, "bore": 25, "length": 6}],
        [{"section": [1], "wear": "sliding", "severity": "medium"}], KILN, "O1",
    )  # fmt: skip
    solid = {**ring, "part": {"name": "Cam", "section": [round_(44, 60)]}}
    thin, thick = (advised(p, "O1").options[0].judged.value("custom") for p in (ring, solid))
    assert thin > thick


SENT = {"heat": [], "subcontract": True}
DIE = part(
    "Bottom die of a power hammer, hot",
    [{"shape": "square", "size": 60, "length": 80}],
    [{"section": [1], "wear": "edge-impact", "severity": "medium"}],
    SENT,
    load={"impact": "hammered"},
    limit={"service_temperature": 500},
)  # fmt: skip
DIE_STEELS = ("16mncr5", "x37crmov5-1", "100mncrw4", "c45", "wear-plate-500")


def test_a_hot_die_is_of_hot_work_steel_and_no_case_stands_the_heat():
    found = advised(DIE, among=DIE_STEELS)
    assert found.options[0].treatment.steel.slug == "x37crmov5-1"
    for option in found.options:
        # What softens is a makeshift, and says so.
        said = " ".join(g.text for g in option.judged.gates if g.name == "service_heat")
        assert option.choice.temper.temperature_c >= 530 or "redress it" in said
    assert any(
        "softens" in r.gate.text for r in found.rejected if r.gate.name == "service_heat"
    )
    assert (found.job.leading.low_hrc, found.job.leading.high_hrc) == (42.0, 52.0)


CRANK = part(
    "Crank of a hoist",
    [{"shape": "square", "size": 16, "length": 25}, round_(22, 120, fillet=3)],
    [{"section": [1], "wear": "none"}, {"section": [2], "wear": "none"}],
    {**FORGE, "stock": [{"steel": "EN24T", "size": 25, "evidence": "certificate"}]},
    load={"torque": "60 N m", "impact": "light", "cycles": "fatigue"},
) | {"safety_use": "lifting"}  # fmt: skip


def test_a_driving_square_that_lives_depend_on_is_certified_bar_of_the_rack():
    found = advised(CRANK, among=("817m40", "42crmo4", "115crv3", "31crv3"))
    assert found.verdict == "safety_referral"
    first = found.options[0].treatment
    assert (first.steel.slug, first.route.process) == ("817m40", "none")
    assert first.stock is not None
    assert len(found.options) <= 3


DOG = part(
    "Dog of a coupling",
    [round_(40, 20, bore=20)],
    [{"section": [1], "wear": "edge-impact", "severity": "medium"}],
    SENT,
    load={"torque": "80 N m", "impact": "light", "cycles": "fatigue"},
)  # fmt: skip


def test_a_dog_has_no_edge_and_is_of_tough_alloy_steel():
    first = advised(DOG, among=("42crmo4", "100mncrw4", "115crv3", "x100crmov5")).options[0]
    assert first.treatment.steel.slug == "42crmo4"


BLADE = part(
    "Blade of a screwdriver",
    [flat(4, 10, 40)],
    [{"section": [1], "wear": "sliding", "hardness": {"min": "50 HRC", "max": "56 HRC"}}],
    {**FORGE, "bath": [{"medium": "oil"}]},
    load={"torque": "5 N m", "impact": "light"},
)  # fmt: skip


def test_wear_plate_makes_no_tools_and_rare_steel_stands_behind():
    options = advised(BLADE, among=("wear-plate-500", "a6", "100mncrw4", "51crv4")).options
    slugs = [option.treatment.steel.slug for option in options]
    assert slugs[0] in {"100mncrw4", "51crv4"}


@pytest.mark.parametrize(("named", "hard"), [("Folded spring", False), ("Leaf spring", True)])
def test_strip_bought_hard_is_not_bent_sharp(named, hard):
    spring = part(
        named, [flat(2, 10, 60)], [{"section": [1], "wear": "none"}],
        {**FORGE, "bath": [{"medium": "oil"}]},
        load={"bending": "0.5 N m", "cycles": "fatigue"},
    )  # fmt: skip
    options = advised(spring, among=("c67s", "c75s")).options
    bought = [o for o in options if o.treatment.condition.name == "prehard"]
    assert bool([o for o in bought if o.treatment.route.process == "none"]) == hard


BUSH = part(
    "Bush beside a dear shaft",
    [round_(30, 30, bore=20)],
    [{"section": [1], "wear": "sliding",
      "mate": {"material": "shaft", "hardness": "45 HRC", "should_wear": "part"}}],
    KILN, "O1", "C45",
)  # fmt: skip


def test_what_should_wear_is_softer_than_its_dear_mate():
    first = advised(BUSH, among=("100mncrw4", "c45", "s235")).options[0]
    assert float(first.judged.prediction.surface_hrc.max()) < 45


def test_a_blank_of_the_rack_is_ground_to_a_graver():
    graver = part(
        "Graver for steel", [{"shape": "square", "size": 6, "length": 80}],
        [{"section": [1], "wear": "abrasive", "severity": "medium"}], BARE, "HSS blank",
        part={"feature": [{"kind": "edge", "at": 0}]}, load={"impact": "light"},
    )  # fmt: skip
    first = advised(graver, among=("hss-blank", "115crv3")).options[0]
    assert first.treatment.steel.slug == "hss-blank"
    assert first.treatment.stock is not None


def test_a_large_pin_has_a_skin_by_induction_as_deep_as_asked():
    pin = part(
        "Pin of a digger bucket", [round_(45, 200)],
        [{"section": [1], "wear": "sliding", "severity": "heavy", "depth": 1.5}], SENT,
        load={"bending": "1500 N m", "impact": "light", "cycles": "fatigue"},
    )  # fmt: skip
    found = advised(pin, among=("c55", "c45", "42crmo4", "100mncrw4", "x100crmov5"))
    assert found.options[0].treatment.route.kind == "induction"
    assert np.quantile(found.options[0].judged.prediction.depth_mm, 0.1) >= 1.5


def test_rich_strip_of_the_rack_makes_a_sickle():
    sickle = part(
        "Sickle", [flat(3, 30, 300)],
        [{"section": [1], "wear": "abrasive", "severity": "light"}],
        {**FORGE, "bath": [{"medium": "oil"}]}, "C75S", load={"impact": "light"},
    )  # fmt: skip
    first = advised(sickle, among=("c75s", "100mncrw4", "c45", "42crmo4")).options[0]
    assert first.treatment.steel.slug == "c75s"
