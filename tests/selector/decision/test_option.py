from dataclasses import replace

import numpy as np
import pytest

from selector.decision.option import Rejected, scorer_of
from selector.decision.ranking import reference_ideal
from selector.gate import Gate
from selector.job.job import resolved
from selector.requirement.priority import CRITERIA
from tests.dog import asked, work


def test_an_option_id_is_steel_condition_route_temper_and_unique(advice, few):
    assert len({option.id for option in advice.options}) == len(advice.options)
    for option in advice.options:
        steel, condition, route, temper = option.id.split("/")
        assert steel in few.steels
        assert condition in {c.name for c in few.steels[steel].condition}
        assert route.split(".")[0] in few.routes
        assert temper == option.choice.temper.label
        assert option.id == option.id.lower()


def test_a_sample_that_fails_counts_nothing(advice):
    for option in advice.options:
        assert not option.scores[~option.judged.passing].any()
        assert option.score <= option.judged.passing_all + 1e-12


def test_merits_are_shares_of_the_range(advice):
    for option in advice.options:
        assert option.merit.shape[1] == len(CRITERIA)
        assert ((option.merit >= 0) & (option.merit <= 1)).all()


def test_a_score_is_the_index_of_the_merits_where_all_gates_are_passed(advice):
    scorer = scorer_of(advice.job, advice.reference_cost)
    for option in advice.options:
        again = scorer.option(option.judged, option.choice)
        np.testing.assert_array_equal(again.scores, option.scores)
        index = reference_ideal(option.merit, scorer.weights)
        passing = option.judged.passing
        np.testing.assert_array_equal(option.scores[passing], index[passing])


def test_weights_are_those_asked_for_in_the_order_of_the_criteria(few):
    only_cost = asked({"priorities": {"points": {"cost": 1}}})
    scorer = scorer_of(resolved(only_cost, few), 40.0)
    assert [row.criterion for row in scorer.ranges] == list(CRITERIA)
    assert scorer.weights.tolist() == [float(name == "cost") for name in CRITERIA]


@pytest.mark.parametrize(("life", "words"), [(None, "window"), ("2", "life")])
def test_a_life_wanted_of_the_leading_zone_takes_the_place_of_the_window(few, life, words):
    changes = {} if life is None else {"zone.0.life_ratio": float(life)}
    scorer = scorer_of(resolved(asked(changes), few), 40.0)
    assert words in scorer.ranges[CRITERIA.index("hardness")].words


def test_what_is_not_known_counts_nothing(advice):
    option, scorer = advice.options[0], scorer_of(advice.job, advice.reference_cost)
    values = option.judged.values.copy()
    values[:5, 0] = np.nan
    passing = np.ones(len(values), dtype=bool)
    scores = scorer.option(replace(option.judged, values=values, right=passing), None).scores
    assert not scores[:5].any()
    assert (scores[5:] > 0).all()


def test_what_was_never_sampled_passes_in_no_sample():
    assert Rejected(work(), Gate("stock", "fail", "not sold")).share == 0.0
