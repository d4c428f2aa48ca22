import pytest

from selector.procedure.supplied import RELIEF_C
from tests.dog import GONE
from tests.procedure import at, steps_of


@pytest.mark.parametrize(
    ("steel", "route", "condition", "said"),
    [
        ("c45", "as-bought", "cold-drawn", "bows when one side"),
        ("42crmo4", "prehard-bar", "prehard", "carbide"),
        ("music-wire", "prehard-bar", "prehard", "wind or bend it cold"),
        ("linear-shaft", "buy-hard-element", None, "abrasive disc"),
    ],
)
def test_what_is_left_as_bought_is_machined_and_not_heated(steel, route, condition, said):
    steps = steps_of(steel, route, None, None, condition)
    assert said in " ".join(step.action for step in steps)
    assert not {"heat", "quench", "temper"} & {step.stage for step in steps}


SPRING = {"part.name": "Latch spring", "part.feature": [], "zone.0.wear": "none",
          "zone.0.hardness": GONE}  # fmt: skip


@pytest.mark.parametrize(("heat", "said"), [(["kitchen-oven"], "oven"), ([], "sent out")])
def test_a_spring_of_hard_wire_is_relieved_once_it_is_wound(heat, said):
    heats = {"workshop.heat": [{"source": name} for name in heat]}
    steps = steps_of("music-wire", "prehard-bar", None, {**SPRING, **heats}, "prehard")
    (relief,) = at(steps, "temper")
    assert relief.temperature_c == RELIEF_C
    assert relief.means == said
    assert steps[-1].stage == "check"


PLATE = {
    "part.section": [{"shape": "flat", "size": 8.0, "width": 50.0, "length": 300.0}],
    "part.feature": [{"kind": "cross-hole", "at": "30 mm", "size": "9 mm"}],
    "zone": [{"section": [1], "wear": "abrasive", "severity": "heavy"}],
    "load": {"impact": "none", "cycles": "static"},
}


@pytest.mark.parametrize(
    ("steel", "thick", "features", "said", "unsaid"),
    [
        ("c75s", 1.5, [], "grind its edges, bend it cold and wide", "drill"),
        ("wear-plate-500", 8.0, PLATE["part.feature"], "drill the holes with cobalt", "bend"),
        ("wear-plate-500", 8.0, [], "grind its edges", "drill"),
        (
            "wear-plate-500",
            8.0,
            [{"kind": "slot", "at": "30 mm"}],
            "slots by a thin disc",
            "bend",
        ),
    ],
)
def test_plate_bought_hard_is_not_bent_and_its_holes_want_other_drills(
    steel, thick, features, said, unsaid
):
    plate = {**PLATE, "part.section.0.size": thick, "part.feature": features}
    (cut,) = at(steps_of(steel, "prehard-bar", None, plate, "prehard"), "finish")
    assert said in cut.action
    assert unsaid not in cut.action


def _bar(size, length, **more):
    one = [{"shape": "round", "size": size, "length": length}]
    zone = [{"section": [1], "wear": "sliding", "severity": "light"}]
    bare = {"impact": "none", "cycles": "static"}
    return {"part.section": one, "part.feature": [], "zone": zone, "load": bare, **more}


@pytest.mark.parametrize(
    ("steel", "changes", "said", "unsaid"),
    [
        ("linear-shaft", _bar(25.0, 300.0), "centre the ends in the soft core", "press"),
        ("linear-shaft", _bar(25.0, 300.0, **{"limit.runout": "0.005 mm"}),
         "within 0.005 mm, else grind it between centres", "press"),
        ("linear-shaft", _bar(20.0, 20.0), "press or glue it in", "centre"),
        ("dowel-pin", _bar(6.0, 20.0), "press or glue it in", "core"),
        ("hss-blank", _bar(10.0, 100.0, **{
            "part.name": "Tool bit", "part.feature": [{"kind": "edge", "at": "0 mm"}],
        }), "grind its edge", "press"),
    ],
)  # fmt: skip
def test_a_hard_element_is_pressed_in_only_where_it_is_short(steel, changes, said, unsaid):
    (fitted,) = at(steps_of(steel, "buy-hard-element", None, changes), "finish")
    assert said in fitted.action
    assert unsaid not in fitted.action


def test_a_hard_element_is_ordered_ground_to_its_size():
    ground = _bar(20.0, 150.0, **{"part.stock_removal": "0.2 mm"})
    ground["zone"][0]["severity"] = "heavy"
    steps = steps_of("linear-shaft", "buy-hard-element", None, ground)
    assert "Ø20 × 150 mm" in at(steps, "order")[0].action


def test_a_spring_of_wire_has_no_edge_to_break_and_its_size_is_its_size():
    steps = steps_of("music-wire", "prehard-bar", None, SPRING, "prehard")
    assert not any("every edge" in step.action for step in steps)
    assert "or over" not in steps[0].action
