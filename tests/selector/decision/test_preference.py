from itertools import pairwise

import numpy as np
import pytest

from selector.advice.advise import advise
from selector.decision.drawback import drawbacks, set_back
from selector.decision.near_tie import NEAR
from selector.decision.preference import (
    LESS_SURE,
    before_by_ease,
    in_order,
    sets_mark,
    sure_enough,
    tie_break,
    ties_with,
)
from selector.duty.merit import SELDOM, USUAL
from tests.dog import asked, only


@pytest.fixture(scope="module")
def options():
    return advise(asked(), only("c45", "42crmo4", "115crv3", "c60")).options


def test_nothing_stands_far_below_what_comes_after(options):
    for place, option in enumerate(options):
        later = [other.score for other in options[place + 1 :]]
        assert not later or option.score >= max(later) - NEAR


def test_what_comes_first_is_about_as_sure_as_what_scores_best(options):
    best = max(options, key=lambda option: option.score - set_back(option, asked()))
    assert sure_enough(options[0]) >= sets_mark(best)


def test_a_tie_is_no_tie_with_what_fails_more_often(options):
    surer = max(options, key=lambda option: option.judged.passing_all)
    less = min(options, key=lambda option: option.judged.passing_all)
    apart = surer.judged.passing_all - less.judged.passing_all
    assert (sure_enough(less) >= surer.judged.passing_all) is (apart <= LESS_SURE)
    assert tie_break(surer, asked()) < (np.inf, 0)


def test_what_ties_is_near_and_sure_enough(options):
    first = options[0]
    assert ties_with(first, first, asked())
    for option in options[1:]:
        apart = first.score - option.score
        tie = ties_with(option, first, asked())
        assert not (tie and apart > NEAR)
        assert not (tie and sure_enough(option) < sets_mark(first))


def test_ease_alone_puts_no_better_score_first(options):
    for before, behind in pairwise(options):
        if before_by_ease(before, behind, asked()):
            assert tie_break(before, asked()) < tie_break(behind, asked())
            assert 0.0 <= behind.score - before.score <= NEAR
        assert not before_by_ease(before, before, asked())


def test_the_order_does_not_hang_on_the_order_given(options):
    assert in_order(options[::-1], asked()) == list(options)


def test_a_bar_in_the_rack_goes_before_a_near_tie():
    known = only("41cr4", "42crmo4")
    free = advise(asked(), known, route="local-torch").options
    rack = {"workshop.stock": [{"steel": "41Cr4"}]}
    racked = advise(asked(rack), known, route="local-torch").options
    assert free[0].treatment.steel.slug == "42crmo4"
    assert racked[0].treatment.steel.slug == "41cr4"


def test_what_is_seldom_used_wins_no_tie_by_being_easy_to_buy():
    struck = {
        "load.impact": "hammered", "zone.0.wear": "edge-impact", "part.feature": [],
        "zone.0.hardness": {"min": "54 HRC", "max": "60 HRC"},
    }  # fmt: skip
    found = advise(asked(struck), only("100mncrw4", "60wcrv8")).options
    hands = {
        option.treatment.steel.slug: tie_break(option, asked(struck))[0]
        for option in found
        if option.judged.value("custom") <= SELDOM or option.treatment.steel.slug == "60wcrv8"
    }
    assert hands["60wcrv8"] < hands["100mncrw4"] == 0.0


def test_what_is_less_usual_wins_no_tie_by_being_easy_to_buy():
    edged = {"part.feature": [{"kind": "edge", "at": "0 mm"}]}
    struck = asked({**edged, "load.impact": "hammered", "zone.0.wear": "edge-impact"})
    hands = {
        option.treatment.steel.slug: tie_break(option, struck)[0]
        for option in advise(struck, only("c55", "60wcrv8")).options
    }
    assert hands["c55"] == hands["60wcrv8"] < 0.0


def test_what_rusts_wins_no_tie_by_being_easy_to_buy():
    pin = {
        "part.feature": [], "zone.0.wear": "sliding", "zone.0.hardness": None,
        "load": {"impact": "none", "cycles": "static"},
        **{f"part.section.{n}.size": "8 mm" for n in (0, 1)},
    }  # fmt: skip
    dry, damp = asked(pin), asked({**pin, "limit.corrosion": "mild"})
    found = advise(dry, only("115crv3")).options
    usual = next(option for option in found if option.judged.value("custom") >= USUAL)
    assert drawbacks(usual, damp)
    assert tie_break(usual, dry)[0] < tie_break(usual, damp)[0]
