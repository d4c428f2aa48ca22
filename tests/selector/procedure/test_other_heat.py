import pytest

from tests.procedure import KILN, at, steps_of


def test_an_aged_part_has_its_heat_and_no_quench():
    steps = steps_of("x5crnicunb16-4", "age-harden", None, KILN)
    (ageing,) = at(steps, "heat")
    assert 480 <= ageing.temperature_c <= 625
    assert not at(steps, "quench")


@pytest.mark.parametrize(
    ("steel", "condition"), [("c45", "cold-drawn"), ("42crmo4", "prehard")]
)
def test_an_annealed_part_cools_in_its_furnace(steel, condition):
    steps = steps_of(steel, "anneal", None, KILN, condition)
    (heat,) = at(steps, "heat")
    assert "an hour to 600 °C" in heat.action
    assert heat.minutes >= 60.0
    assert not at(steps, "quench")
    assert not at(steps, "temper")
