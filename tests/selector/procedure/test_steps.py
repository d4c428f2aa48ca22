"""The procedures of parts of the trade, read as a strict toolroom hand would read them."""

import pytest

from catalog import load_catalog
from selector.procedure.steps import placed
from selector.record import StepOut
from tests.procedure import steps_of

KNOWN = load_catalog().cautions
O1 = ("100mncrw4", "through-furnace", "oil")


def stages(steps):
    return list(dict.fromkeys(step.stage for step in steps))


def at(steps, stage):
    return [step for step in steps if step.stage == stage]


def test_a_local_flame_goes_from_bar_to_check():
    steps = steps_of("42crmo4", "local-torch", "oil")
    assert stages(steps) == [
        "bar", "prepare", "set-up", "heat", "quench", "test", "temper", "check", "finish",
    ]  # fmt: skip
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    heat, hold = at(steps, "heat")
    assert heat.temperature_c == pytest.approx(840, abs=20)
    assert heat.colour == "cherry"
    assert "past where the magnet lets go" in heat.action
    assert hold.minutes < 3
    (quench,) = at(steps, "quench")
    assert quench.temperature_c == 50
    assert quench.volume_l > 5
    assert "all of it under" in quench.action


def test_every_caution_stands_at_one_step():
    steps = [StepOut(stage=stage, action="do") for stage in ("bar", "heat", "quench")]
    skimmed = [StepOut(stage="prepare", action="skim"),
               StepOut(stage="prepare", action="break every edge")]  # fmt: skip
    assert placed(skimmed, ("sharp-notch-quench",), KNOWN) == {2: ("sharp-notch-quench",)}
    ids = ("oil-fire", "dim-light", "local-codes", "kitchen-oven-fumes", "oil-fire")
    assert placed(steps, ids, KNOWN) == {
        1: ("local-codes", "kitchen-oven-fumes"),
        2: ("dim-light",),
        3: ("oil-fire",),
    }
