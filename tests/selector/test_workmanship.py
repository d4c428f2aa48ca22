"""More of what a toolroom hand would sign: how the work is done, and what it is made of."""

from dataclasses import replace
from types import MappingProxyType

import numpy as np
import pytest

from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.figure import median
from selector.option.temper_choice import STRUCK_LEAST_TEMPER_C
from selector.requirement import requirement_from
from selector.wording import shown
from tests.dog import only
from tests.trade import BARE, KILN, advised, flat, part, round_

TORCH = {
    "heat": [{"source": "oxy-propane"}, {"source": "kitchen-oven"}],
    "bath": [{"medium": "water"}, {"medium": "oil"}],
    "measure": ["eye", "magnet"],
    "light": "dim",
    "turns_part": True,
    "held_by": "lathe",
}
FIRM = {**TORCH, "subcontract": True}
WORN = [{"section": [1], "wear": "sliding", "severity": "medium"}]

HAMMER = part(
    "Planishing hammer",
    [round_(30, 15), flat(28, 30, 40), round_(26, 15)],
    [
        {"section": [1, 3], "wear": "edge-impact", "severity": "medium"},
        {"section": [2], "wear": "none"},
    ],
    TORCH, "C55",
    part={"feature": [{"kind": "cross-hole", "at": 35, "size": 14}]},
    load={"impact": "hammered"},
)  # fmt: skip
HAMMER_STEELS = ("c55", "42crmo4", "817m40", "115crv3")


def test_the_face_of_a_hammer_is_hard_and_its_eye_is_not():
    for option in advised(HAMMER, among=HAMMER_STEELS).options:
        if option.treatment.hardens:
            assert option.choice.temper.temperature_c >= STRUCK_LEAST_TEMPER_C, option.id
            body = option.judged.prediction.section_hrc[:, 1]
            limit = [g for g in option.judged.gates if g.name == "not_too_hard"]
            assert np.median(body) <= 48 or any(g.verdict != "pass" for g in limit), option.id


@pytest.mark.parametrize("place", [0, 1, 2])
def test_every_option_says_how_it_is_done(place):
    found = advice_out(advised(HAMMER, among=HAMMER_STEELS))
    steps = {step.stage: step for step in found.options[place].procedure}
    assert {"heat", "quench", "temper"} <= steps.keys()
    assert steps["heat"].colour
    assert steps["quench"].means
    assert steps["temper"].temperature_c >= STRUCK_LEAST_TEMPER_C
    assert steps["temper"].minutes


SPINDLE_KEY = part(
    "Key of a mixer", [{"shape": "square", "size": 8, "length": 32}],
    [{"section": [1], "wear": "none",
      "mate": {"material": "spindle", "hardness": "28 HRC", "should_wear": "part"}}],
    TORCH, "O1", load={"torque": "60 N m", "impact": "light"},
)  # fmt: skip


def test_a_key_is_the_cheap_loser_as_bought():
    first = advised(SPINDLE_KEY, among=("080m40", "s235", "100mncrw4", "c45")).options[0]
    assert first.treatment.route.process == "none"
    assert first.treatment.steel.kind != "oil-tool"
    assert median(first.judged.prediction.surface_hrc) < 28


PIN = part("Pin of a linkage", [round_(10, 50)], WORN, TORCH, "silver steel")


def test_an_oven_tempers_before_a_flame():
    heated = [o for o in advised(PIN, among=("115crv3", "c55", "100mncrw4")).options
              if o.treatment.hardens and o.treatment.route.extent == "whole"]  # fmt: skip
    assert heated
    assert {o.choice.temper.means for o in heated} == {"oven"}


def test_without_an_oven_a_plate_heated_from_below_goes_before_the_flame():
    shop = {**TORCH, "heat": [{"source": "oxy-propane"}]}
    thin, thick = (
        part("Pin of a linkage", [round_(size, 50)], WORN, shop, "silver steel")
        for size in (12, 14)
    )
    means = {
        advised(p, among=("115crv3",)).options[0].choice.temper.means for p in (thin, thick)
    }
    assert means == {"plate"}


WHEEL = part(
    "Pinion of a hoist winder", [round_(48, 22, bore=14)],
    [{"section": [1], "wear": "rolling-contact", "severity": "medium"}],
    {**KILN, "heat": [{"source": "kiln"}, {"source": "kitchen-oven"}]}, "16MnCr5",
    part={"feature": [{"kind": "teeth", "at": 11, "size": 4}], "shape_class": "gear"},
    load={"impact": "light", "cycles": "fatigue"},
)  # fmt: skip


def test_a_gear_is_cased_over_a_tough_core():
    first = advised(WHEEL, among=("16mncr5", "100mncrw4", "42crmo4", "c45")).options[0]
    assert first.treatment.route.process == "case"
    outcome = first.judged.prediction
    assert median(outcome.core_hrc) < 45 < median(outcome.surface_hrc)


CUTTER = part(
    "D-bit", [round_(6, 20), round_(6, 60)],
    [
        {"section": [1], "wear": "abrasive", "severity": "medium",
         "hardness": {"min": "58 HRC", "max": "63 HRC"}},
        {"section": [2], "wear": "none"},
    ],
    {**TORCH, "bath": [{"medium": "water"}]}, "silver steel",
    part={"feature": [{"kind": "edge", "at": 0}]},
)  # fmt: skip


def test_thin_silver_steel_goes_into_water_edge_and_all():
    found = advised(CUTTER, among=("115crv3", "c55", "c45"))
    first = found.options[0].treatment
    assert (first.steel.slug, first.medium.slug) == ("115crv3", "water")


def test_a_thin_rod_holds_no_heat_to_temper_its_end():
    found = advised(CUTTER, among=("115crv3", "c55", "c45"))
    assert all("residual" not in o.treatment.route.temper for o in found.options)
    texts = [r.gate.text for r in found.rejected if "residual" in r.treatment.route.temper]
    assert any("too little heat behind the end" in text for text in texts)


DAMP = part("Pin of a sluice", [round_(10, 50)], WORN, TORCH, "silver steel",
            limit={"corrosion": "mild"})  # fmt: skip


def test_what_rusts_says_so_where_it_is_damp():
    for option in advised(DAMP, among=("115crv3", "x30cr13")).options:
        said = [gate.text for gate in option.judged.gates if gate.name == "corrosion"]
        assert bool(said) == (option.treatment.steel.corrosion == "none"), option.id
        assert all("oiled" in text for text in said)


PIVOT = part(
    "Pivot of a loader arm", [round_(45, 160)],
    [{"section": [1], "wear": "sliding", "severity": "medium"}], FIRM,
    load={"bending": "900 N m", "cycles": "fatigue", "impact": "light"},
)  # fmt: skip


def test_a_large_pin_is_alloy_bar_with_a_skin_before_tool_steel_hard_through():
    among = ("42crmo4", "16mncr5", "115crv3", "100mncrw4", "x100crmov5")
    first = advised(PIVOT, among=among).options[0].treatment
    assert first.steel.kind in {"alloy", "case-hardening"}


@pytest.mark.parametrize(("size", "sold"), [(12, True), (12.7, False)])
def test_a_shaft_bought_hard_is_of_a_size_that_it_is_sold_in(size, sold):
    rod = part("Guide rod", [round_(size, 200)], WORN, BARE)
    found = advised(rod, among=("linear-shaft", "c45"))
    bought = [o for o in found.options if o.treatment.condition.name == "hard-element"]
    assert bool(bought) == sold
    stepped = part("Guide rod", [round_(12, 100), round_(10, 60)], WORN, BARE)
    kinds = {
        o.treatment.condition.name for o in advised(stepped, among=("linear-shaft",)).options
    }
    assert "hard-element" not in kinds


@pytest.mark.parametrize("asked", [HAMMER, WHEEL, DAMP], ids=["struck", "cased", "damp"])
def test_few_cautions_that_can_kill_stand_on_the_first_screen(asked):
    among = HAMMER_STEELS if asked is HAMMER else ("115crv3", "16mncr5", "x30cr13")
    shown_first = [
        c for c in advice_out(advised(asked, among=among)).cautions if c.first_screen
    ]
    assert 0 < len(shown_first) <= 6
    assert sum(caution.harm == "kills" for caution in shown_first) <= 3


DEAR = part("Pin of a linkage", [round_(10, 50)], WORN, TORCH, "silver steel",
            limit={"budget": 12.0})  # fmt: skip


def test_right_and_inside_the_budget_are_two_shares():
    free = advised(PIN, among=("115crv3", "c55", "100mncrw4")).options[0]
    bound = advised(DEAR, among=("115crv3",)).options
    tried = bound or [r.option for r in advised(DEAR, among=("115crv3",)).rejected if r.option]
    assert free.judged.within_budget is None
    for option in tried:
        assert 0 <= option.judged.within_budget <= 1
        assert option.judged.passing_all == pytest.approx(float(np.mean(option.judged.right)))


def test_files_on_the_bench_change_no_hardness():
    checked = part("Pin of a linkage", [round_(10, 50)], WORN,
                   {**TORCH, "check": ["file"]}, "silver steel")  # fmt: skip
    plain = advised(PIN, among=("115crv3",)).options[0]
    filed = advised(checked, among=("115crv3",)).options[0]
    assert plain.id == filed.id
    assert np.array_equal(
        plain.judged.prediction.surface_hrc, filed.judged.prediction.surface_hrc
    )


def test_a_die_is_tempered_at_the_hard_end_and_a_drift_at_the_tough_one():
    window = {"min": "52 HRC", "max": "60 HRC"}
    die, drift = (
        part(name, [round_(22, 60)], [{"section": [1], "wear": wear, "hardness": window}],
             KILN, "O1", load={"impact": impact})
        for name, wear, impact in (
            ("Blanking die", "abrasive", "none"), ("Drift", "edge-impact", "hammered"),
        )
    )  # fmt: skip
    hard, tough = (
        median(advised(p, among=("100mncrw4",)).options[0].judged.prediction.surface_hrc)
        for p in (die, drift)
    )
    assert hard > 56 > tough, (shown(hard), shown(tough))


SPRING = part(
    "Flat return spring", [flat(1.2, 15, 90)],
    [{"section": [1], "wear": "none"}], KILN, "C75S",
    load={"bending": "0.8 N m", "cycles": "fatigue"},
)  # fmt: skip


def test_a_leaf_is_of_spring_steel_in_its_window():
    found = advised(SPRING, among=("c75s", "115crv3", "c45", "42crmo4"))
    first = found.options[0]
    assert first.treatment.steel.slug == "c75s"
    assert 42 <= median(first.judged.prediction.surface_hrc) <= 53


def test_a_nitrided_skin_is_as_hard_as_it_comes():
    found = advised(PIVOT, among=("31crmo12", "41cralmo7-10"))
    skins = [o for o in found.options if o.treatment.route.process == "nitride"]
    assert skins
    for option in skins:
        too_hard = [g for g in option.judged.gates if g.name == "not_too_hard"]
        assert all(g.verdict != "fail" for g in too_hard)
    hardest = max(median(o.judged.prediction.surface_hrc) for o in skins)
    assert hardest < 68 or "HV" in shown(hardest)


def test_a_bar_of_the_rack_is_paid_for_and_no_better_than_a_plain_one():
    spacer = part("Spacer", [flat(6, 30, 60)], [{"section": [1], "wear": "none"}], BARE,
                  "O1", "S235")  # fmt: skip
    options = advised(spacer, among=("100mncrw4", "s235")).options
    bars = {o.treatment.steel.slug: o.judged.prediction.bill.items["bar"] for o in options}
    # Gauge plate that lies there is not burned on a spacer.
    assert options[0].treatment.steel.slug == "s235"
    assert bars["100mncrw4"] > 2 * bars["s235"] > 0


def test_wire_made_for_springs_is_not_too_hard_for_one():
    known = only("c75s")
    strip = next(c for c in known.steels["c75s"].condition if c.name == "prehard")
    wire = strip.model_copy(update={
        "shapes": ("round",), "sold_for": ("spring",),
        "hardness_hrc": strip.hardness_hrc.model_copy(update={"min": 54.0, "max": 58.0}),
    })  # fmt: skip
    zones = [{"section": [1], "wear": "none"}]
    coil = part("Compression spring", [round_(2, 500)], zones, BARE,
                part={"shape_class": "coil-spring"}, load={"cycles": "fatigue"})  # fmt: skip
    found = {}
    for name, sold in (
        ("made for it", wire),
        ("hard", wire.model_copy(update={"sold_for": ()})),
    ):
        steel = known.steels["c75s"].model_copy(update={"condition": (sold,)})
        sole = replace(known, steels=MappingProxyType({"c75s": steel}))
        found[name] = advise(requirement_from(coil), sole).options
    assert len(found["made for it"]) == 1
    assert found["made for it"][0].judged.passing_all > 0.9
    assert not found["hard"]
