import pytest

from tests.procedure import KILN, at, steps_of

BATHS = {**KILN, "workshop.bath": [{"medium": "oil"}, {"medium": "hot-salt"}],
         "workshop.subcontract": True}  # fmt: skip


def test_the_cold_comes_between_quench_and_temper():
    stages = [s.stage for s in steps_of("100cr6", "through-furnace-cold", "oil", BATHS)]
    assert stages.index("quench") < stages.index("freeze") < stages.index("temper")
    (cold,) = at(steps_of("100cr6", "through-furnace-cold", "oil", BATHS), "freeze")
    assert cold.temperature_c == -75.0
    assert "deep-cold" in cold.cautions


def test_a_plain_quench_has_no_cold_step():
    assert not at(steps_of("100cr6", "through-furnace", "oil", BATHS), "freeze")


@pytest.mark.parametrize(
    ("steel", "route", "medium", "says"),
    [
        ("100cr6", "subcontract-cold", "oil", "cool on to -80 °C or below right after"),
        ("51crv4", "subcontract-austemper", "hot-salt", "austemper to"),
        ("42crmo4", "subcontract-salt", "hot-salt", "harden in salt"),
        ("42crmo4", "subcontract-flame", "polymer", "flame harden 0 to"),
        ("42crmo4", "subcontract-chrome", None, "hard chrome"),
    ],
)
def test_an_order_says_what_the_firm_is_to_do(steel, route, medium, says):
    (order,) = at(steps_of(steel, route, medium, BATHS), "order")
    assert says in order.action


def test_bainite_needs_no_temper_and_its_salt_is_the_one_chosen():
    steps = steps_of("51crv4", "austemper", "hot-salt", BATHS)
    (quench,) = at(steps, "quench")
    assert "salt" in quench.action
    assert quench.temperature_c >= 300.0
    assert not at(steps, "temper")
