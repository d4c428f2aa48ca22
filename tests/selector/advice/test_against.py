from dataclasses import replace

import numpy as np

from selector.advice.advise import PAIRED
from selector.advice.against import MOSTLY, SAID, against_shares, behind_because
from selector.requirement.workshop import Stock


def altered(option, **judged):
    return replace(option, judged=replace(option.judged, **judged))


def test_each_sentence_names_a_pair_that_contradicts_the_order(advice):
    said = against_shares(advice)
    leading = advice.options[:PAIRED]
    stark = [
        share
        for j, before in enumerate(leading)
        for behind in leading[j + 1 :]
        if (share := advice.shares[behind.id, before.id]) >= MOSTLY
    ]
    assert len(said) == min(len(stark), SAID)
    assert all(" beats number " in text for text in said)


def test_what_is_right_less_often_says_so(advice):
    first, second = advice.options[:2]
    half = np.arange(len(second.scores)) % 2 == 0
    worse = replace(altered(second, right=half), scores=second.scores * half)
    assert "right only 50 in 100" in behind_because(advice, first, worse)


def test_what_is_too_dear_too_often_says_so(advice):
    first, second = advice.options[:2]
    every = np.ones(len(first.scores), dtype=bool)
    never = altered(second, right=every, affordable=~every)
    said = behind_because(advice, altered(first, right=every, affordable=every), never)
    assert "inside the budget only under 1 in 100" in said


def test_a_near_tie_given_to_the_bar_at_hand_says_so(advice):
    first, second = advice.options[:2]
    held = replace(first.treatment, stock=Stock(steel="EN24", evidence="receipt"))
    racked = altered(first, prediction=replace(first.judged.prediction, treatment=held))
    better = replace(second, scores=first.scores + 0.01)
    assert "scores are level" in behind_because(advice, racked, better)


def test_what_few_sell_says_so_where_it_scores_better(advice):
    first = advice.options[0]
    bar = first.treatment.condition.model_copy(update={"availability": "rare"})
    work = replace(first.treatment, condition=bar)
    rare = altered(first, prediction=replace(first.judged.prediction, treatment=work))
    better = replace(rare, scores=first.scores + 0.01)
    assert behind_because(advice, first, better) == "hard to get, and so it stands behind"
    worse = replace(rare, scores=0.9 * first.scores)
    assert "hard to get" not in behind_because(advice, first, worse)


def test_what_loses_more_where_it_loses_says_so(advice):
    first = advice.options[0]
    worse = replace(first, scores=0.9 * first.scores)
    assert "loses more" in behind_because(advice, first, worse)
