import pytest

from tests.procedure import steps_of


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
