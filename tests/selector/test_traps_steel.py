"""Traps of the trade: steel that cannot do it, the wrong name, the wrong bar."""

import pytest

from catalog import load_catalog
from tests.dog import EVERY_KIND
from tests.traps import (
    FURNACE,
    OIL_ONLY,
    SENT_OUT,
    TORCH,
    WATER_ONLY,
    ask,
    cautions,
    hardened,
    kinds_of,
    said,
    why_not,
)


def test_leaded_bar_gets_no_quench_recipe():
    found = ask(
        {"workshop.stock": [{"steel": "12L14"}]}, SENT_OUT, FURNACE, steels=("11smnpb30",)
    )
    assert kinds_of(found, "11smnpb30") <= {"chrome"}
    (reason,) = why_not(found, "11smnpb30", "through-torch", "through-furnace")
    assert "never hardens" in reason
    assert "lead leaves as fume" in reason
    assert "lead-fume" in cautions(found)


def test_leaded_bar_may_stay_soft():
    found = ask({"zone.0.wear": "none"}, SENT_OUT, FURNACE, steels=("11smnpb30",))
    assert kinds_of(found, "11smnpb30") == {"as-bought", "chrome"}
    for route in ("anneal", "normalise"):
        (reason,) = why_not(found, "11smnpb30", route)
        assert "lead leaves as fume" in reason


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
    assert "as-bought" in kinds_of(found, steel) <= {"as-bought", "chrome"}
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
    ("steel", "heat"), [("x100crmov5", "950"), ("x153crmov12", "1010"), ("hs6-5-2", "1200")]
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
    rack = {"workshop.stock": [{"steel": name}], "workshop.only_stock": True}
    found = ask(rack, steels=(*EVERY_KIND, "cast-iron"))
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
