import itertools
import json
from dataclasses import replace

import jsonschema
import numpy as np
import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.headline import headline
from selector.advice.output import advice_out, schema
from selector.decision.near_tie import NEAR
from selector.decision.ranking import pairwise_share
from selector.errors import RequirementError
from tests.dog import FEW, GONE, asked, only


def ids(advice):
    return [option.id for option in advice.options]


def shares(options):
    return {
        (a.id, b.id): pairwise_share(a.scores, b.scores)
        for a, b in itertools.permutations(options, 2)
    }


@pytest.fixture(scope="module")
def fewer():
    return advise(asked(), only("42crmo4", "c45", "115crv3"))


def test_the_dog_has_options_rejected_ones_and_an_order(advice):
    assert len(advice.options) >= 4
    assert advice.rejected
    scores = [option.score for option in advice.options]
    assert scores[0] >= max(scores) - NEAR
    assert all(0 <= score <= 1 for score in scores)


def test_steels_that_come_or_go_change_no_score(advice, fewer):
    more = {option.id: option for option in advice.options}
    common = [option for option in fewer.options if option.id in more]
    assert len(common) >= 3
    for option in common:
        np.testing.assert_array_equal(option.scores, more[option.id].scores)
        np.testing.assert_array_equal(option.merit, more[option.id].merit)


def test_steels_that_come_or_go_change_neither_order_nor_shares(advice, fewer):
    common = set(ids(fewer)) & set(ids(advice))
    assert [i for i in ids(advice) if i in common] == [i for i in ids(fewer) if i in common]
    both = [shares([o for o in answer.options if o.id in common]) for answer in (advice, fewer)]
    assert both[0] == both[1]
    said = set(advice.shares) & set(fewer.shares)
    assert said
    assert {pair: advice.shares[pair] for pair in said} == {p: fewer.shares[p] for p in said}


def test_a_new_family_takes_its_place_among_the_old_ones(advice):
    grown = advise(asked(), only(*FEW, "c60", "51crv4"))
    families = {option.treatment.steel.family for option in advice.options}
    kept = [
        i
        for i, o in zip(ids(grown), grown.options, strict=True)
        if o.treatment.steel.family in families
    ]
    assert kept == ids(advice)
    assert len(grown.options) > len(advice.options)


def test_looking_at_one_steel_changes_no_score(advice, few):
    alone = advise(asked(), few, steel="42 CrMo 4")
    more = {option.id: option.score for option in advice.options}
    assert {o.treatment.steel.slug for o in alone.options} == {"42crmo4"}
    assert {o.id: o.score for o in alone.options if o.id in more} == {
        i: score for i, score in more.items() if i.startswith("42crmo4/")
    }


def test_looking_at_one_route(few):
    for name in ("local-torch", "prehard"):
        answer = advise(asked(), few, route=name)
        treatments = [*answer.options, *answer.rejected, *answer.apart]
        assert treatments
        for item in treatments:
            assert name in {item.treatment.route.slug, item.treatment.route.kind}


def test_the_same_question_has_the_same_answer(few, advice):
    again = advise(asked(), few)
    assert ids(again) == ids(advice)
    assert advice_out(again) == advice_out(advice)


def test_weights_change_the_order_and_nothing_else(advice, few):
    cheap = advise(asked({"priorities": {"points": {"cost": 1}}}), few)
    median = [float(np.median(o.judged.prediction.bill.cost)) for o in cheap.options]
    certain = [
        cost
        for cost, o in zip(median, cheap.options, strict=True)
        if o.judged.passing_all > 0.99
    ]
    assert certain == sorted(certain)
    assert {o.treatment.group for o in cheap.options} == {
        o.treatment.group for o in advice.options
    }


def test_progress_is_said_and_rises(few):
    said = []
    advise(asked(), few, steel="C45", progress=lambda text, share: said.append((text, share)))
    fractions = [share for _, share in said]
    assert fractions == sorted(fractions)
    assert 0 <= fractions[0] <= fractions[-1] <= 1
    assert any("C45" in text for text, _ in said)


VERDICTS = [
    ({"safety_use": "brake"}, "safety_referral"),
    ({"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True}, "coupon_first"),
    ({"zone.0.hardness": {"min": "67 HRC", "must": True}}, "no_option"),
    (
        {
            "zone.0.wear": "none",
            "zone.0.hardness": {"max": "40 HRC"},
            "load.torque": "10 N m",
        },
        "leave_as_bought",
    ),
]


@pytest.mark.parametrize(("changes", "verdict"), VERDICTS, ids=[v for _, v in VERDICTS])
def test_verdict(changes, verdict):
    answer = advise(asked(changes), only("c45", "42crmo4", "unknown"))
    assert answer.verdict == verdict


def test_a_bar_of_unknown_hardness_is_no_option_even_where_nothing_is_asked():
    nothing = {
        "zone.0.wear": "none",
        "zone.0.hardness": GONE,
        "load.torque": GONE,
        "workshop.stock": [{"steel": "unknown"}],
    }
    found = advise(asked(nothing), only("unknown", "c45"))
    assert found.options
    assert not any(option.treatment.steel.kind == "unknown" for option in found.options)
    assert any(item.treatment.route.process == "none" for item in found.apart)


def test_the_bought_bar_keeps_its_place_in_the_ranking():
    answer = advise(asked(VERDICTS[-1][0]), only("c45", "42crmo4"))
    assert answer.as_bought in answer.options
    assert answer.as_bought.treatment.route.process == "none"


# A plate that grit wears: plate sold hard passes every gate, eight points under the window.
DRAW_PLATE = {
    "part.section": [{"shape": "flat", "size": 8, "width": 40, "length": 180}],
    "part.feature": GONE,
    "zone.1": GONE,
    "zone.0.wear": "abrasive",
    "zone.0.severity": "heavy",
    "zone.0.hardness": GONE,
    "load.torque": GONE,
    "load.impact": "none",
    "workshop.heat": [{"source": "muffle-furnace"}],
}


def test_bar_far_under_the_window_is_no_reason_to_call_hardening_needless():
    answer = advise(asked(DRAW_PLATE), only("100mncrw4", "wear-plate-500"))
    plate = next(o for o in answer.options if o.treatment.route.process == "none")
    assert plate.judged.verdict == "pass"
    hrc = np.median(plate.judged.prediction.surface_hrc)
    assert hrc < answer.job.leading.low_hrc - 5.0
    assert answer.as_bought is None
    assert answer.verdict == "harden"
    assert "without hardening" not in headline(answer)
    first = replace(answer, options=(plate,), shares={})
    assert first.verdict == "leave_as_bought"
    assert "No hardening needed" not in headline(first)
    assert "was aimed at" in headline(first)


def test_the_verdict_is_that_of_the_first_option():
    answer = advise(asked(VERDICTS[-1][0]), only("c45", "42crmo4"))
    bought = answer.as_bought
    harder = [o for o in answer.options if o.treatment.route.process != "none"][:1]
    pair = (*harder, bought)
    first_wins = {(a.id, b.id): 1.0 for a, b in itertools.permutations(pair, 2)}
    sure = replace(answer, options=pair, shares=first_wins)
    assert sure.verdict == "harden"
    assert "would do without hardening too" in headline(sure)


def test_a_catalogue_without_the_reference_steel_still_answers():
    answer = advise(asked(), only("c45", "115crv3"))
    assert answer.options
    assert answer.reference_cost > 0


def test_with_a_budget_the_reference_steel_is_an_option_like_others(few):
    budget = {"limit.budget": 150}
    every, without = advise(asked(budget), few), advise(asked(budget), only("c45", "817m40"))
    common = set(ids(every)) & set(ids(without))
    assert common
    assert [i for i in ids(every) if i in common] == [i for i in ids(without) if i in common]


def test_unknown_names_are_refused(few):
    with pytest.raises(RequirementError, match=r"workshop\.heat\.1\.source .*got 'dragon'"):
        advise(asked({"workshop.heat": [{"source": "dragon"}]}), few)


def test_json_keeps_to_its_schema(advice):
    data = json.loads(advice_out(advice).model_dump_json())
    jsonschema.Draft202012Validator.check_schema(schema())
    form = jsonschema.Draft202012Validator(schema())
    form.validate(data)
    assert [option["id"] for option in data["options"]] == ids(advice)
    bare = {k: v for k, v in data.items() if k not in {"verdict", "options", "rejected"}}
    with pytest.raises(jsonschema.ValidationError, match="verdict"):
        form.validate({**bare, "options": [], "rejected": []})


def test_top_cuts_the_list_and_nothing_else(advice):
    every, two = advice_out(advice), advice_out(advice, 2)
    assert two.options == every.options[:2]
    assert two.model_copy(update={"options": every.options}) == every


@pytest.mark.parametrize("looked_at", [{"steel": "C45"}, {"route": "as-bought"}], ids=str)
def test_the_whole_catalogue_answers_of_one_steel_or_route(looked_at):
    answer = advise(asked(), load_catalog(), **looked_at)
    assert len(set(ids(answer))) == len(answer.options)
