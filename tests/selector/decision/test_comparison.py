import subprocess

import numpy as np
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from selector.decision import comparison
from selector.decision.comparison import ahead, other_methods
from selector.decision.ranking import reference_ideal
from selector.requirement.priority import CRITERIA

COUNT = len(CRITERIA)
POINTS = arrays(float, COUNT, elements=st.floats(0.01, 1)).map(lambda w: w / w.sum())
MERIT = np.linspace(0.1, 0.9, 3 * COUNT).reshape(3, COUNT)
WEIGHTS = np.full(COUNT, 1 / COUNT)


def merits(options):
    return arrays(float, (options, COUNT), elements=st.floats(0, 1))


@given(merits(5), POINTS)
@settings(max_examples=10)
def test_other_methods_place_every_option_and_agree_on_one_that_dominates(merit, weights):
    merit = 0.1 + 0.6 * merit
    merit[2] = 0.95
    found = other_methods(merit, weights)
    assert len({heard.method for heard in found}) == len(found) >= 3
    for heard in found:
        assert len(heard.places) == 5
        assert heard.places[2] == 1


@given(merits(4), POINTS)
@settings(max_examples=10)
def test_their_reference_ideal_orders_as_ours(merit, weights):
    ours = reference_ideal(merit, weights)
    assume(np.diff(np.sort(ours)).min() > 1e-4)
    theirs = next(c for c in other_methods(merit, weights) if "reference ideal" in c.method)
    assert list(np.argsort(theirs.places)) == list(np.argsort(-ours))


def test_a_single_option_has_nothing_to_compare():
    assert other_methods(np.ones((1, COUNT)), np.full(COUNT, 1 / COUNT)) == ()


def test_a_second_process_answers_the_same():
    with ahead() as compare:
        assert compare(MERIT, WEIGHTS) == other_methods(MERIT, WEIGHTS)


def test_a_second_process_that_breaks_down_is_done_without(monkeypatch):
    monkeypatch.setattr(comparison.sys, "executable", "/bin/false")
    with ahead() as compare:
        assert compare(MERIT, WEIGHTS) == other_methods(MERIT, WEIGHTS)


def test_no_second_process_is_done_without(monkeypatch):
    def refused(*_args, **_kwargs):
        raise OSError

    monkeypatch.setattr(subprocess, "Popen", refused)
    with ahead() as compare:
        assert compare(MERIT, WEIGHTS) == other_methods(MERIT, WEIGHTS)


def test_a_second_process_ends_with_a_question_never_asked():
    with ahead():
        pass
