"""A card has the tests of its option, and a trial only where it is worth one."""

from dataclasses import replace
from functools import cache

from selector.handover.chosen import chosen
from selector.handover.trial_block import trial_block
from tests.dog import asked, only

LOCAL = "42crmo4/annealed/local-torch.oil/oven-225c-60min"


@cache
def found(evidence):
    stock = {"workshop.stock": [{"steel": "42CrMo4", "evidence": evidence}]}
    return chosen(asked(stock), only("42crmo4", "s235"), LOCAL)


def test_without_an_option_there_is_no_test():
    assert trial_block(replace(found("certificate"), option=None)) is None


def test_a_bar_that_nobody_proved_is_tried_first():
    assert trial_block(found("none"))["lines"]


def test_each_test_has_a_name_a_go_and_a_stop():
    tests = trial_block(found("certificate"))["tests"]
    assert {"after the bath", "after the temper"} <= {test["name"] for test in tests}
    assert all(test["go"] and test["stop"] for test in tests)
