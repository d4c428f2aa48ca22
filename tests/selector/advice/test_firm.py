from dataclasses import replace

import numpy as np
import pytest

from selector.advice.advise import advise
from selector.advice.firm import SELDOM_FIRST, WEIGHED, firm
from selector.advice.output import advice_out
from selector.advice.table import option_table
from selector.requirement.priority import CRITERIA
from tests.dog import asked, only


@pytest.fixture(scope="module")
def known(advice):
    return firm(advice)


def test_every_option_has_its_shares_in_the_order_of_the_advice(advice, known):
    assert [row.id for row in known.options] == [option.id for option in advice.options]
    assert [row.place for row in known.options] == list(range(1, len(known.options) + 1))
    assert sum(row.first for row in known.options) == pytest.approx(1.0, abs=0.01)
    assert sum(row.top_three for row in known.options) == pytest.approx(3.0, abs=0.01)


def test_the_sentence_says_share_and_price_of_the_first(known):
    assert "over outcomes and weights" in known.sentence.lower()
    often = known.options[0].first >= SELDOM_FIRST
    assert known.sentence.startswith("First ") is often
    if known.dearer is not None:
        assert f"until it costs {known.dearer.at:.0f} EUR" in known.sentence


def test_what_is_seldom_first_says_by_which_rule_it_stands_there(advice):
    # As merits stand the third would lead; it comes right too seldom.
    first, second, third, *others = advice.options
    right = np.arange(len(third.judged.right)) % 10 > 0
    better = replace(
        third,
        merit=np.ones_like(third.merit),
        judged=replace(third.judged, right=right),
    )
    known = firm(replace(advice, options=(first, second, better, *others)))
    assert known.options[0].first < SELDOM_FIRST
    assert known.sentence.startswith("Over outcomes and weights it is more often ")
    assert "it is right only 90 in 100" in known.sentence


def test_other_methods_that_begin_otherwise_are_named(advice):
    other = replace(advice.comparisons[0], places=(2, 1, *advice.comparisons[0].places[2:]))
    said = firm(replace(advice, comparisons=(other,))).against_shares[-1]
    assert said.startswith("1 of 1 other ways of weighing puts ")


def test_every_criterion_has_its_words_and_its_bounds(known):
    assert [turn.criterion for turn in known.turns] == list(CRITERIA)
    assert {turn.words for turn in known.turns} == set(WEIGHED.values())
    for turn in (*known.turns, *known.swaps):
        assert turn.below is None or turn.below <= turn.now
        assert turn.above is None or turn.above >= turn.now


def test_prices_of_change_lie_on_their_side(advice, known):
    if known.dearer is not None:
        assert known.dearer.factor > 1.0
        assert known.dearer.at > known.dearer.now
        assert known.dearer.first_then != advice.options[0].id
    if known.second_cheaper is not None:
        assert known.second_cheaper.at < known.second_cheaper.now


def test_it_is_worked_out_where_it_is_asked_for(advice, known):
    assert advice_out(advice).firm is None
    assert advice_out(advice, firmly=True).firm == known


def test_the_table_carries_shares_and_regret_where_they_are_known(advice):
    plain, firmly = (option_table(advice_out(advice, firmly=f)) for f in (False, True))
    more = [name for name in firmly.columns if name not in plain.columns]
    assert more == ["first_fraction", "top_three_fraction", "regret_eur"]
    assert firmly["first_fraction"].sum() == pytest.approx(1.0, abs=0.01)


def test_the_only_option_is_first_everywhere():
    alone = advise(asked(), only("42crmo4"), route="local-torch")
    assert len(alone.options) == 1
    known = firm(alone)
    assert known.options[0].first == 1.0
    assert known.swaps == ()
    assert known.dearer is known.second_cheaper is None


def test_nothing_ranked_is_nothing_firm():
    assert firm(advise(asked({"safety_use": "brake"}), only("42crmo4"))) is None
    assert firm(advise(asked(), only("s235"), route="austemper")) is None
