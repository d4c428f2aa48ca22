import json
import math

import pytest

from selector.errors import OutOfRangeError, Problem, RequirementError
from selector.versus.record import VersusOut
from selector.versus.versus import versus
from tests.dog import FEW, asked, only

CATALOG = only(*FEW)
CAREFUL = "c45/cold-drawn/through-torch.oil/oven-200c-60min"
SIMPLE = "42crmo4/annealed/subcontract-vacuum.oil/furnace-200c-60min"
REQUEST = asked({"workshop.subcontract": True, "load.failure_cost": 200})


@pytest.fixture(scope="module")
def found():
    return versus(REQUEST, CAREFUL, SIMPLE, CATALOG)


def test_both_sides_are_those_of_the_advice(advice):
    first, second = advice.options[:2]
    comparison = versus(asked(), first.id, second.id, CATALOG)
    for side, option in ((comparison.first, first), (comparison.second, second)):
        assert side.id == option.id
        assert side.score == pytest.approx(option.score, abs=1e-3)
        assert side.cost.p50 == pytest.approx(
            float(sorted(option.judged.prediction.bill.cost)[256]), rel=0.01
        )


def test_it_says_what_each_costs_needs_and_risks(found):
    assert sum(found.first.items.values()) == pytest.approx(found.first.cost.p50, rel=0.02)
    assert any("Oxy-propane" in need for need in found.first.needs)
    assert any("a firm" in need for need in found.second.needs)
    assert any("cracks in the quench" in risk for risk in found.first.risks)
    assert "oil-fire" in found.first.cautions


def test_the_risk_of_a_crack_is_said_once():
    fierce = versus(
        asked({"workshop.bath": [{"medium": "water"}], "workshop.subcontract": True}),
        CAREFUL.replace(".oil", ".water"), SIMPLE, CATALOG,
    ).first  # fmt: skip
    (crack,) = [gate for gate in fierce.gates if gate.name == "cracking"]
    assert crack.verdict != "pass"
    assert crack.text not in fierce.risks
    assert sum("crack" in risk for risk in fierce.risks) == 1


def test_the_headline_states_the_quantity_where_cheap_with_care_loses(found):
    turn = next(s for s in found.swaps if s.axis == "quantity" and s.by == "cost")
    assert f"From {turn.at:.0f} pieces on 4140 (42CrMo4) is the cheaper." in found.headline


def test_a_firm_is_weighed_when_named_though_nothing_was_to_be_sent_out(found):
    alone = versus(asked(), CAREFUL, SIMPLE, CATALOG)
    assert "though nothing was to be sent out" in alone.headline
    assert "though nothing" not in found.headline
    assert alone.second.cost == found.second.cost


def test_one_steel_treated_two_ways_is_said_by_its_route():
    comparison = versus(REQUEST, SIMPLE.replace("subcontract-vacuum", "through-torch").replace(
        "furnace-200c", "oven-200c"), SIMPLE, CATALOG)  # fmt: skip
    last = comparison.headline.rsplit(". ", maxsplit=1)[-1]
    assert "heated all over by torch or forge)" in last or "send out to harden" in last


def test_turned_about_it_says_the_same(found):
    about = versus(REQUEST, SIMPLE, CAREFUL, CATALOG)
    assert about.headline == found.headline
    for one, other in zip(found.swaps, about.swaps, strict=True):
        assert one.axis == other.axis
        if one.axis in {"quantity", "hourly rate"}:
            assert one.at == other.at


def test_failure_stands_beside_the_cost_and_not_in_it(found):
    with_price = found.first
    free = versus(asked({"workshop.subcontract": True}), CAREFUL, SIMPLE, CATALOG).first
    assert free.failure_cost is None
    assert with_price.failure_cost.p50 <= 200
    assert with_price.cost == free.cost


def test_the_curve_falls_with_quantity(found):
    for costs in (found.first_cost, found.second_cost):
        middle = [cost.p50 for cost in costs]
        assert middle == sorted(middle, reverse=True)
    assert len(found.quantity) == len(found.first_cost)


def test_unknown_toughness_leaves_the_chance_of_failing_unknown():
    raw = "c45/cold-drawn/through-torch.oil/torch-150c-5min"
    comparison = versus(asked(), CAREFUL, raw, CATALOG)
    assert comparison.second.failing.p50 is None
    turn = comparison.swaps[-1]
    assert turn.at is None
    assert "unknown" in turn.text


def test_it_is_plain_data(found):
    again = VersusOut.model_validate(json.loads(found.model_dump_json()))
    assert again.swaps == found.swaps
    assert not any(math.isinf(swap.high) for swap in again.swaps)


def test_an_unknown_option_is_refused():
    with pytest.raises(
        RequirementError, match="option must be the id of a known option; got 'x'"
    ):
        versus(asked(), CAREFUL, "x", CATALOG)


def test_an_option_beyond_what_is_modelled_is_refused_with_its_limit(monkeypatch):
    def refused(*_):
        raise OutOfRangeError(Problem("start", "below 1700 °C", "1717 °C", "Cool it."))

    monkeypatch.setattr("selector.versus.side.predict", refused)
    with pytest.raises(RequirementError, match=r"computed; got .*1700 °C, here it is 1717"):
        versus(REQUEST, CAREFUL, SIMPLE, CATALOG)
