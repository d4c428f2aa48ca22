"""The advice against cases of practice, where the environment names a file of them."""

import os
from pathlib import Path

import pytest

from tests.benchmarks.practice_cases import measure

FILE = os.environ.get("TEMPERWRIGHT_CASES")
LEAST_SHARE = 0.75
LEAST_CAUTIONED = 0.9
MOST_ON_SCREEN = 6

pytestmark = pytest.mark.skipif(
    FILE is None, reason="TEMPERWRIGHT_CASES names no file of cases of practice"
)


@pytest.fixture(scope="module")
def answer():
    return measure(Path(FILE))


def test_an_acceptable_answer_is_among_the_first_three_in_three_of_four(answer):
    assert answer.run >= 40
    assert answer.good / answer.run >= LEAST_SHARE


def test_nothing_that_practice_refuses_is_recommended(answer):
    assert answer.wrong == ()


def test_a_refused_way_of_working_comes_with_its_caution(answer):
    assert answer.processes >= 20
    assert answer.cautioned / answer.processes >= LEAST_CAUTIONED


def test_the_first_screen_holds_few_cautions(answer):
    assert answer.mean_on_screen <= MOST_ON_SCREEN
