import json
from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.output import FIND_OUT, advice_out, schema
from selector.advice.record import AdviceOut
from selector.record import Spread
from selector.requirement.priority import CRITERIA
from tests.dog import asked, only


@pytest.fixture(scope="module")
def answer(advice):
    return advice_out(advice)


@pytest.fixture(scope="module")
def data(answer):
    return json.loads(answer.model_dump_json())


def test_the_keys_others_build_on_are_there(data):
    assert {"options", "rejected", "apart", "assumptions", "cautions", "verdict"} <= set(data)
    for option in data["options"]:
        assert {
            "id", "steel", "family", "condition", "route", "temper", "gates", "score",
            "hardness",
        } <= set(option)  # fmt: skip
        assert {"surface", "core", "depth_mm"} <= set(option["hardness"])
        for quantity in ("surface", "core", "depth_mm"):
            assert {"p05", "p50", "p95"} <= set(option["hardness"][quantity])
    for caution in data["cautions"]:
        assert {"id", "text"} <= set(caution)


def test_an_option_id_is_steel_condition_route_temper(answer):
    for option in answer.options:
        steel, condition, route, temper = option.id.split("/")
        assert (steel, condition, temper) == (
            option.steel_slug, option.condition, option.temper.label,
        )  # fmt: skip
        assert route == ".".join(filter(None, (option.route, option.medium)))


def spreads(option):
    """Yield every predicted number of an option."""
    for name in ("surface", "core", "shank", "depth_mm"):
        yield name, getattr(option.hardness, name)
    yield "movement", option.movement_mm
    yield "cost", option.cost.spread


def test_every_figure_of_an_option_has_relation_unit_and_source(answer):
    for option in answer.options:
        for name, spread in spreads(option):
            assert isinstance(spread, Spread), name
            assert spread.unit, name
            assert spread.relation, name
            assert spread.source, name
            assert spread.p05 <= spread.p50 <= spread.p95, name


def test_options_come_in_their_order_best_first(answer):
    assert [option.place for option in answer.options] == [
        *range(1, len(answer.options) + 1),
    ]
    assert all(option.score_p05 <= option.score_p95 for option in answer.options)


def test_every_option_is_valued_on_every_criterion(answer):
    for option in answer.options:
        assert tuple(option.criteria) == CRITERIA
        for value in option.criteria.values():
            assert 0 <= value.merit <= 1
            assert 0 <= value.clipped_share <= 1
    assert [row.criterion for row in answer.ranges] == list(CRITERIA)
    assert sum(row.weight for row in answer.ranges) == pytest.approx(1)


def test_no_option_holds_a_failed_or_unknown_gate(answer):
    for option in answer.options:
        assert {gate.verdict for gate in option.gates} <= {"pass", "marginal"}


def test_what_is_rejected_says_why(answer):
    assert answer.rejected
    for item in answer.rejected:
        assert item.gate
        assert item.verdict == "fail"
        assert len(item.text) > 10
        assert item.find_out is None


def test_each_way_that_is_rejected_stands_there_once(advice, answer):
    ways = [f"{r.treatment.label} {r.gate.text}" for r in advice.rejected]
    listed = [
        f"{item.steel_slug}/{way} {item.text}"
        for item in answer.rejected
        for way in (
            f"{item.condition}/{item.route}" + (f".{item.medium}" if item.medium else ""),
            *item.also,
        )
    ]
    assert sorted(listed) == sorted(ways)
    assert sum(len(item.routes) for item in answer.rejected) == len(advice.rejected)
    assert len(answer.rejected) < len(advice.rejected)
    # Two of one steel differ in what is said of them.
    said = [item.model_dump(exclude={"condition", "route", "route_name", "route_kind", "medium",
                                     "also"}) for item in answer.rejected]  # fmt: skip
    assert len({str(one) for one in said}) == len(said)


def test_what_stands_apart_says_what_to_find_out():
    changes = {"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True}
    answer = advice_out(advise(asked(changes), only("unknown", "c45")))
    assert answer.apart
    assert {item.find_out for item in answer.apart} == {FIND_OUT["response"]}
    assert {item.verdict for item in answer.apart} == {"unknown"}


def test_no_more_options_are_held_than_asked_for(advice, answer):
    short = advice_out(advice, top=1)
    assert short.options == answer.options[:1]
    assert short.rejected == answer.rejected


def test_why_the_first_is_first_is_said_where_there_are_two(advice, answer):
    assert answer.why_first
    alone = replace(advice, options=advice.options[:1], comparisons=())
    assert advice_out(alone).why_first is None


def test_json_holds_no_number_that_is_none(data):
    text = json.dumps(data, allow_nan=False)
    assert "NaN" not in text


def test_it_comes_back_from_json_as_it_went(answer):
    assert AdviceOut.model_validate_json(answer.model_dump_json()) == answer


def test_the_schema_names_every_key(data):
    described = schema()
    assert set(described["properties"]) == set(data)
    assert set(described["$defs"]["OptionOut"]["properties"]) == set(data["options"][0])


def test_every_caution_is_one_of_the_list_and_belongs_to_a_step(answer):
    known = load_catalog().cautions
    for caution in answer.cautions:
        assert caution.text == known[caution.id].fact.text
        assert caution.step == known[caution.id].step


def test_what_a_failure_costs_stands_apart_from_the_cost_of_making(answer):
    assert all(option.failure_cost is None for option in answer.options)
    dear = advice_out(advise(asked({"load.failure_cost": 1000}), only("42crmo4", "c45")))
    for option in dear.options:
        assert option.failure_cost.p50 == pytest.approx(
            1000 * option.failure_cost.inputs["chance"], abs=1.0
        )
        assert "failure" not in " ".join(option.cost.items)
