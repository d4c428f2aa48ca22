import pytest

from selector.procedure.supplied import RELIEF_C
from tests.dog import GONE
from tests.procedure import at, steps_of


@pytest.mark.parametrize(
    ("steel", "route", "condition", "said"),
    [
        ("c45", "as-bought", "cold-drawn", "bows when one side"),
        ("42crmo4", "prehard-bar", "prehard", "carbide"),
        ("c75s", "prehard-bar", "prehard", "grind its edges, bend it cold"),
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
