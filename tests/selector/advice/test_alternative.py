from selector.advice.alternative import (
    KIND_WORDS,
    PLACES,
    _keeps,
    alternatives,
    barred,
    kind_of,
    needs_no_heat,
)
from selector.advice.order import set_back_words
from selector.advice.output import advice_out
from selector.decision.preference import LESS_SURE
from tests.dog import GONE
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


def test_cheap_is_cheaper_than_what_stands_first_and_than_the_better_steel():
    for slugs in (("c45", "42crmo4", "115crv3"), ("c45", "16mncr5", "100mncrw4")):
        found = advised({}, *slugs)
        cost = {"first": found.options[0].judged.value("cost")}
        for item in alternatives(found):
            cost[item.kind] = found.options[item.place - 1].judged.value("cost")
        cheap = cost.pop("cheap", None)
        dearer = [cost[kind] for kind in ("first", "better") if kind in cost]
        assert cheap is None or cheap < min(dearer)


def test_no_steel_is_the_better_for_coming_out_wrong_more_often(advice):
    first = advice.options[0].judged.passing_all
    better = [a for a in alternatives(advice) if a.kind == "better"]
    assert all(a.passing_all >= first - LESS_SURE for a in better)
    # A worse one that is as little work stands in the list, and is not offered as better.
    worse = [o for o in advice.options if o.judged.passing_all < first - LESS_SURE]
    assert not any(_keeps(advice, "better", option) for option in worse)


def test_nothing_that_is_set_back_stands_beside_the_first(advice):
    for item in alternatives(advice):
        assert not set_back_words(advice, advice.options[0], advice.options[item.place - 1])


def test_a_part_that_needs_no_heat_is_offered_none_and_not_told_what_is_not_open():
    plain = {"zone.0.hardness": GONE, "zone.0.wear": "none", "load.torque": GONE}
    found = advised(plain, "c45", "42crmo4", "115crv3")
    assert needs_no_heat(found)
    assert any(kind_of(option.treatment) in {"cheap", "better"} for option in found.options)
    assert not {item.kind for item in alternatives(found)} & {"cheap", "better"}
    assert barred(found) == ()


def test_what_stays_soft_or_is_sold_for_other_parts_is_no_reason_worth_a_line():
    found = advised({}, "c45", "42crmo4", "115crv3", "hs2-9-1-8")
    turned_down = " ".join(item.gate.text for item in found.rejected)
    assert "ready made; this part is none" in turned_down
    said = " ".join(barred(found))
    assert "ready made; this part is none" not in said
    assert " HB" not in said


def test_a_workshop_without_heat_is_not_told_that_it_cannot_harden():
    said = barred(advised({"workshop.heat": [], **SENT_OUT}, "42crmo4", "16mncr5", "115crv3"))
    assert not any("steel" in text.split(":")[0] for text in said)


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


def test_where_no_bar_as_bought_is_hard_enough_that_is_all_that_is_said():
    hard = {"zone.0.hardness": {"min": "57 HRC"}}
    for steels in (("11smn30", "115crv3"), ("42crmo4", "115crv3", "x153crmov12")):
        said = [text for text in barred(advised(hard, *steels)) if "No hardening" in text]
        assert all("no bar as bought is hard enough" in text for text in said)
        assert not any("D2" in text or "EN1A" in text for text in said)
