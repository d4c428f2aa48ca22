import pytest

from selector.job.screening import (
    HOPELESS,
    RULES,
    heated_thickness,
    section_like,
)
from tests.dog import GONE, asked, work

LONG = {"part.section.0.length": 400}


def first_objection(treatment, changes=None):
    wanted = asked(changes)
    gates = (rule(wanted, treatment) for rule in RULES)
    return next((gate for gate in gates if gate), None)


def test_a_sound_treatment_meets_no_objection():
    assert first_objection(work()) is None
    assert first_objection(work("42crmo4", "local-torch")) is None
    assert first_objection(work(route="as-bought", medium=None, source=None)) is None


def test_a_steel_that_must_not_be_quenched_may_be_aged():
    furnace = {"workshop.heat": [{"source": "muffle-furnace"}]}
    aged = work(
        "x5crnicunb16-4", "age-harden", None, "muffle-furnace", condition="solution-treated"
    )
    assert first_objection(aged, furnace) is None


OBJECTIONS = [
    # steel that does not answer
    (work("s235"), {}, "response", "fail", "carbon"),
    (work("11smnpb30", "through-torch"), {}, "response", "fail", ""),
    (work("c45", "subcontract-nitride", None, None), {"workshop.subcontract": True},
     "response", "fail", ""),
    (work("c45", "case-compound", "water"), {}, "response", "fail", ""),
    (work("unknown"), {}, "response", "unknown", "coupon"),
    (work("unknown", "as-bought", None, None), {}, "response", "unknown", "file or test"),
    # heat the workshop has not, or that does not reach
    (work(source=None), {}, "equipment", "fail", "needs a heat source: torch or forge"),
    (work(medium=None), {}, "equipment", "fail", "needs a bath of water, "),
    (work(route="subcontract-vacuum", source=None), {}, "equipment", "fail", "firm"),
    (work("x153crmov12"), {}, "response", "fail", ""),
    (work(route="through-furnace", source="muffle-furnace"),
     {"part.section.0.size": 110, "part.section.0.length": 120}, "heating", "fail", "round"),
    # what hardens in air wants a soak that no open flame gives; a fire holds its heat
    (work("a6", "through-torch", "air", "hand-torch"), {}, "heating", "fail", "soak"),
    # what lives depend on
    (work(), {"safety_use": "brake"}, "safety", "fail", "brake"),
    (work(), {"safety_use": "lifting"}, "safety", "fail", "qualified"),
    # shape and stock
    (work("42crmo4", "local-torch"),
     {"zone.1": GONE, "part.section.1": GONE, "part.feature": []}, "shape", "fail", "whole"),
    (work("115crv3", "through-torch", "water"), {"part.section.0.size": 60},
     "stock", "fail", "60 mm"),
    (work("linear-shaft", "buy-hard-element", None, None), {}, "stock", "fail", "features"),
    (work("linear-shaft", "buy-hard-element", None, None),
     {"part.section.0.size": 30, "part.feature": []}, "stock", "fail", "one plain round"),
    (work("linear-shaft", "buy-hard-element", None, None),
     {"part.feature": [], "zone.0.wear": "abrasive"}, "stock", "fail", "an edge or form"),
    (work("dowel-pin", "buy-hard-element", None, None),
     {"part.section": [{"shape": "round", "size": "8 mm", "length": "400 mm"}],
      "part.feature": [], "zone.1": GONE}, "stock", "fail", "120 mm long; the part is 400 mm"),
    (work(), {"workshop.only_stock": True, "workshop.stock": [{"steel": "C60"}]},
     "stock", "fail", "rack"),
    # free-cutting steel is not struck
    (work("11smn30", "as-bought", None, None), {"load.impact": "hammered"},
     "snap", "fail", "split"),
    # a bath steel does not harden in air
    (work(medium="air"), {}, "medium", "fail", "oil|water"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("treatment", "changes", "name", "verdict", "word"),
    OBJECTIONS,
    ids=[f"{row[0].label}-{row[2]}-{n}" for n, row in enumerate(OBJECTIONS)],
)
def test_the_first_objection_names_gate_and_reason(treatment, changes, name, verdict, word):
    gate = first_objection(treatment, changes)
    assert (gate.name, gate.verdict) == (name, verdict)
    assert any(part in gate.text for part in word.split("|"))
    assert gate.share is None


def test_a_firm_may_do_it_where_sending_out_is_allowed():
    firm = work("42crmo4", "subcontract-vacuum", source=None)
    assert first_objection(firm, {"workshop.subcontract": True}) is None


def test_a_certified_bar_stays_open_for_what_lives_depend_on():
    bar = work("42crmo4", "prehard-bar", None, None, condition="prehard")
    assert first_objection(bar, {"safety_use": "brake"}) is None


def test_a_case_needs_a_wall_to_sit_on():
    thin = {"part.section.0.size": 2, "part.section.1.size": 2}
    gate = first_objection(work("s235", "case-compound", "water", condition="cold-drawn"), thin)
    assert gate.name in {"core", "stock"}


def test_a_drawn_spring_is_not_heated_again():
    spring = work(condition="cold-drawn")
    gate = first_objection(spring, {"part.shape_class": "coil-spring"})
    assert (gate.name, gate.verdict) == ("shape", "fail")
    kept = work(route="as-bought", medium=None, source=None, condition="cold-drawn")
    assert first_objection(kept, {"part.shape_class": "coil-spring"}) is None


def test_what_hardens_in_air_may_be_heated_in_a_fire():
    assert first_objection(work("a6", "through-torch", "air", "charcoal-forge")) is None


def test_reach_of_a_heat_source_ends_once_and_for_good():
    stopped, furnace = [], work(route="through-furnace", source="muffle-furnace")
    for size in range(5, 150, 5):
        wide = {"part.section.0.size": size, "part.section.1.size": size}
        gate = first_objection(furnace, wide)
        stopped.append(gate is not None and gate.name == "heating")
    assert stopped == sorted(stopped)
    assert True in stopped
    reach = furnace.source.section_mm.value
    assert stopped.index(True) * 5 + 5 > HOPELESS * reach >= stopped.index(True) * 5


def test_a_flame_is_not_refused_by_its_reach_but_judged_by_its_history():
    wide = {"part.section.0.size": 90, "part.section.1.size": 90}
    assert first_objection(work(source="hand-torch"), wide) is None


def section(**keys):
    sizes = {f"part.section.0.{key}": value for key, value in keys.items()}
    return asked(sizes).part.section[0]


def test_round_that_heats_alike():
    assert section_like(section()) == 25
    assert section_like(section(shape="square")) > 25
    assert section_like(section(shape="tube", bore=15)) == pytest.approx(10)
    thin = section(shape="flat", size=3, width=40)
    assert 3 < section_like(thin) < 40


def test_a_local_heat_needs_to_reach_the_zone_only():
    thick_shank = asked({"part.section.1.size": 80})
    assert heated_thickness(thick_shank, work("42crmo4", "local-torch")) == 25
    assert heated_thickness(thick_shank, work()) == 80


def test_a_laser_wants_cold_steel_behind_its_skin():
    made = work("c45", "subcontract-laser", "spray", None, condition="hot-rolled")
    sent = {"workshop.subcontract": True}
    assert first_objection(made, sent) is None
    thin = {**sent, "part.section": [{"shape": "flat", "size": 3, "width": 20, "length": 60}],
            "part.feature": [], "zone": [{"section": [1], "wear": "sliding"}]}  # fmt: skip
    gate = first_objection(made, thin)
    assert gate.name == "shape"
    assert "laser" in gate.text


@pytest.mark.parametrize(("service", "refused"), [("600 degC", True), ("200 degC", False)])
def test_leaded_bar_does_not_work_hotter_than_lead_melts(service, refused):
    made = work("11smnpb30", "as-bought", None, None, condition="cold-drawn")
    gate = first_objection(made, {"limit.service_temperature": service})
    assert (gate is not None and gate.name == "service_heat") is refused
