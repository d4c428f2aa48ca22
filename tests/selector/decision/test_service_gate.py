import pytest

from selector.decision.service_gate import service_gate
from selector.job.treatment import NO_TEMPER, Temper
from tests.dog import work

OVEN = Temper("oven", 225.0, 3600.0)


@pytest.mark.parametrize(
    ("steel", "route", "condition", "temper", "service_c", "verdict"),
    [
        ("16mncr5", "pack-carburise", None, OVEN, 400, "fail"),
        ("16mncr5", "pack-carburise", None, OVEN, 150, "pass"),
        ("42crmo4", "subcontract-nitride", "prehard", NO_TEMPER, 400, "pass"),
        ("42crmo4", "subcontract-nitride", "prehard", NO_TEMPER, 490, "fail"),
        ("42crmo4", "prehard-bar", "prehard", NO_TEMPER, 400, "pass"),
        ("42crmo4", "prehard-bar", "prehard", NO_TEMPER, 530, "fail"),
        # As hard as no temper above about 470 °C leaves it.
        ("835m30", "prehard-bar", "prehard", NO_TEMPER, 400, "pass"),
        ("835m30", "prehard-bar", "prehard", NO_TEMPER, 450, "fail"),
        ("897m39", "prehard-bar", "prehard", NO_TEMPER, 450, "pass"),
        ("x5crnicunb16-4", "prehard-bar", "prehard", NO_TEMPER, 450, "pass"),
        ("linear-shaft", "buy-hard-element", None, NO_TEMPER, 200, "fail"),
        ("wear-plate-500", "prehard-bar", None, NO_TEMPER, 200, "fail"),
        ("music-wire", "prehard-bar", None, NO_TEMPER, 200, "marginal"),
    ],
)
def test_what_was_hardened_softens_in_service(
    steel, route, condition, temper, service_c, verdict
):
    made = work(steel, route, None, None, condition)
    gate = service_gate(made, temper, service_c)
    assert gate is not None
    assert gate.verdict == verdict


def test_soft_bar_has_no_hardness_to_lose_and_cold_service_asks_nothing():
    assert service_gate(work("c45", "as-bought", None, None), NO_TEMPER, 380) is None
    assert service_gate(work("16mncr5", "pack-carburise", "oil"), OVEN, None) is None
    assert service_gate(work("music-wire", "prehard-bar", None, None), NO_TEMPER, 60) is None


@pytest.mark.parametrize(("temper_c", "struck", "verdict"), [
    (325.0, True, "marginal"), (325.0, False, "fail"), (225.0, True, "fail"),
])  # fmt: skip
def test_a_hot_tool_that_is_struck_is_redressed_if_it_was_drawn_to_blue(
    temper_c, struck, verdict
):
    drawn = Temper("plate", temper_c, 1200.0)
    gate = service_gate(work("42crmo4"), drawn, 450.0, struck=struck)
    assert gate is not None
    assert gate.verdict == verdict


@pytest.mark.parametrize(("steel", "service_c", "verdict"), [
    ("s235", 820, "marginal"), ("x5crni18-10", 820, None), ("s235", 450, "marginal"),
    ("42crmo4", 450, None),
])  # fmt: skip
def test_soft_bar_creeps_and_scales_where_it_is_hot(steel, service_c, verdict):
    """Heated now and then, 304 serves to 870 °C, alloy bar to 540 °C, plain bolts to 400 °C."""
    gate = service_gate(work(steel, "as-bought", None, None), NO_TEMPER, service_c)
    assert (gate and gate.verdict) == verdict
