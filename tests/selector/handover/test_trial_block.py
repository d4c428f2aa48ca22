"""A card has a trial only where it is worth one, with go and stop of the coupon."""

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


def test_without_an_option_there_is_no_trial():
    assert trial_block(replace(found("certificate"), option=None)) == []


def test_a_bar_that_nobody_proved_is_tried_first():
    lines = trial_block(found("none"))
    assert "coupon" in lines[0]
    assert "Stop:" in lines[-1]
