from dataclasses import replace

from selector.advice.alternative import (
    DEARER,
    KIND_WORDS,
    PLACES,
    alternatives,
    barred,
    kind_of,
)
from selector.advice.output import advice_out
from selector.decision.drawback import unheard_of
from tests.once import advised

SENT_OUT = {"workshop.subcontract": True}


def test_alternatives_differ_in_kind_and_are_not_the_first(advice):
    found = alternatives(advice)
    kinds = [item.kind for item in found]
    assert len(set(kinds)) == len(kinds) <= 3
    assert advice.options[0].id not in {item.id for item in found}
    for item in found:
        option = advice.options[item.place - 1]
        assert option.id == item.id
        assert kind_of(option.treatment) == item.kind


def test_each_says_cost_work_risk_and_why_it_is_not_first(advice):
    for item in alternatives(advice):
        assert item.cost.p05 < item.cost.p95
        assert item.work_h > 0
        assert item.risk
        assert item.why_not_first


def test_a_firm_is_another_kind_of_answer():
    found = advised(SENT_OUT, "c45", "42crmo4")
    assert "sent_out" in {item.kind for item in alternatives(found)}


def test_a_kind_that_is_out_says_by_what():
    found = advised({}, "c45", "42crmo4")
    there = {kind_of(option.treatment) for option in found.options}
    said = barred(found)
    for kinds in PLACES:
        for kind in kinds:
            named = any(text.startswith(KIND_WORDS[kind]) for text in said)
            assert not (named and kind in there)
    assert any("the workshop says no" in text for text in said)
    assert not any("the workshop says no" in text for text in barred(advised(SENT_OUT, "c45")))


def test_nothing_is_put_beside_no_option():
    found = advised({"zone.0.hardness": {"min": "67 HRC", "must": True}}, "c45")
    assert alternatives(found) == barred(found) == ()
    record = advice_out(found)
    assert record.alternatives == record.would_change == ()


def test_a_cheap_way_costs_no_more_than_the_first_and_is_one_that_people_use(advice):
    by_cost = sorted(advice.options, key=lambda option: option.judged.value("cost"))
    for first in (by_cost[0], by_cost[-1]):
        rest = [option for option in by_cost if option is not first]
        turned = replace(advice, options=(first, *rest))
        for item in alternatives(turned):
            option = turned.options[item.place - 1]
            assert not unheard_of(option)
            times = option.judged.value("cost") / first.judged.value("cost")
            assert times <= {"cheap": 1.0, "better": DEARER}.get(item.kind, times)
    cheapest = replace(advice, options=(by_cost[0], *by_cost[1:]))
    assert "cheap" not in {item.kind for item in alternatives(cheapest)}
