"""A card leaves out a caution only where a step of it says the same."""

import pytest

from selector.handover.said_once import SAID_BY, said_by_steps
from selector.record import StepOut
from tests.whole_requirement import KNOWN

FURNACE = StepOut(stage="temper", action="Temper", means="pottery kiln, a furnace")
PLATE = StepOut(stage="temper", action="Temper", means="thick steel plate, heated from below")


def test_what_maims_is_never_left_out():
    assert all(KNOWN.cautions[key].harm == "spoils" for key in SAID_BY)


@pytest.mark.parametrize("key", SAID_BY)
def test_a_caution_is_left_out_where_a_step_has_its_words(key):
    assert key not in said_by_steps([PLATE])
    for words in SAID_BY[key]:
        step = StepOut(stage="heat", action=f"First this, {words} and that")
        assert key in said_by_steps([step, PLATE])


def test_what_is_heated_evenly_is_not_tempered_by_zones():
    assert "temper-by-zone" in said_by_steps([FURNACE])
    assert "temper-by-zone" not in said_by_steps([FURNACE, PLATE])
