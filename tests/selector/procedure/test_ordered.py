import numpy as np
import pytest

from selector.procedure.ordered import order
from tests.procedure import at, doing, steps_of


@pytest.mark.parametrize(
    ("steel", "route", "medium", "said"),
    [
        ("42crmo4", "subcontract-nitride", None, ("nitride to at least", "HV 1", "core + 50")),
        ("42crmo4", "subcontract-induction", "polymer", ("0 to 30 mm", "80 %", "do not heat")),
        ("42crmo4", "subcontract-laser", "spray", ("laser harden 0 to", "80 %", "do not heat")),
        ("16mncr5", "subcontract-carburise", "oil", ("case", "550 HV", "temper about")),
        ("x153crmov12", "subcontract-vacuum", "air", ("Rockwell", "2 times", "marked face")),
    ],
)  # fmt: skip
def test_an_order_says_all_that_a_firm_must_know(steel, route, medium, said):
    prehard = "prehard" if route == "subcontract-nitride" else None
    steps = steps_of(steel, route, medium, {"workshop.subcontract": True}, prehard)
    (order,) = at(steps, "order")
    assert order.action.startswith("Write on the order: steel ")
    for words in said:
        assert words in order.action
    assert not at(steps, "temper")


@pytest.mark.parametrize(
    ("steel", "route", "medium", "depth"),
    [
        ("16mncr5", "subcontract-carburise", "oil", "mm to 550 HV"),
        ("42crmo4", "subcontract-induction", "polymer", "mm or more to 80 %"),
        ("42crmo4", "subcontract-nitride", None, "mm to core + 50 HV"),
    ],
)
def test_the_short_order_names_the_depth_beside_the_window(steel, route, medium, depth):
    prehard = "prehard" if route == "subcontract-nitride" else None
    steps = steps_of(steel, route, medium, {"workshop.subcontract": True}, prehard)
    (order,) = at(steps, "order")
    assert depth in order.short


def test_a_window_on_an_order_is_four_points_wide_at_least():
    narrow = {
        "zone.0.hardness": {"min": "57 HRC", "max": "58 HRC"},
        "workshop.subcontract": True,
    }
    step = order(doing("x153crmov12", "subcontract-vacuum", "air", narrow))
    low, high = step.hardness_hrc
    assert low == pytest.approx(57, abs=0.1)
    assert high - low >= 4


def test_a_part_that_is_not_ground_after_goes_out_to_size():
    sent = {"workshop.subcontract": True}
    ground = {**sent, "part.finish_after": ["surface-grinder"]}
    steps = steps_of("42crmo4", "subcontract-vacuum", "oil", ground)
    assert any(s.action.startswith("Leave 0.10 mm a side") for s in steps)
    assert steps[-1].means == "surface grinder"
    for stock, words, length in (
        (None, "to size, 25 mm thick", 25.0),
        (0.2, "Leave 0.20", 0.2),
    ):
        changes = sent if stock is None else {**sent, "part.stock_removal": stock}
        steps = steps_of("42crmo4", "subcontract-vacuum", "oil", changes)
        (ready,) = [s for s in steps if s.check and "wired to the part" in s.check]
        assert words in ready.action
        assert ready.length_mm == length


def test_a_window_that_is_not_met_is_not_ordered():
    beyond = {
        "zone.0.hardness": {"min": "62 HRC", "max": "66 HRC"},
        "workshop.subcontract": True,
    }
    do = doing("42crmo4", "subcontract-vacuum", "oil", beyond)
    low, high = order(do).hardness_hrc
    assert low < float(np.median(do.prediction.surface_hrc)) < high < 62
