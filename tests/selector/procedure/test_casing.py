from dataclasses import dataclass, replace

import pytest

from catalog import load_catalog
from selector.procedure.casing import cased_steps
from tests.procedure import KILN, at, doing, steps_of

ROUTES = load_catalog().routes


def test_a_pack_has_its_hours_and_a_second_heat():
    steps = steps_of("16mncr5", "pack-carburise", "oil", KILN)
    pack, hours = at(steps, "case")
    assert "never barium" in pack.action
    assert hours.temperature_c == pytest.approx(925)
    assert "from when it is hot through" in hours.short
    span = ROUTES["pack-carburise"].time_h
    assert 60 * span.low <= hours.minutes <= 60 * span.high
    assert at(steps, "heat")[0].temperature_c == 800
    assert "barium-poison" in pack.cautions


def test_every_step_of_a_case_has_a_figure_with_a_unit():
    packed = {**KILN, "part.feature": [{"kind": "cross-hole", "at": 20.0, "size": 5.0},
                                       {"kind": "thread", "at": 100.0}]}  # fmt: skip
    steps = steps_of("16mncr5", "pack-carburise", "oil", packed)
    assert any(step.action.startswith("Pack the hole") for step in steps)
    for step in (*steps, *steps_of("070m20", "case-compound", "water")):
        told = (step.temperature_c, step.minutes, step.length_mm, step.hardness_hrc)
        assert any(figure is not None for figure in told), step.action


def test_compound_is_dipped_red_and_outdoors():
    steps = steps_of("070m20", "case-compound", "water")
    assert "out of doors" in at(steps, "set-up")[0].action
    (dip,) = at(steps, "case")
    assert dip.times == 3
    assert "cyanide-refused" in dip.cautions


@dataclass(frozen=True)
class Run:
    temperature_c: float = 930.0
    hours: float = 5.5
    depth_mm: float = 0.6
    removed_mm: float = 0.1


class Reckoned:
    """A prediction whose case was grown by the hour."""

    def __init__(self, prediction, run):
        self._prediction, self.layer = prediction, run

    def __getattr__(self, name):
        return getattr(self._prediction, name)


@pytest.mark.parametrize(
    ("treatment", "run", "said"),
    [
        (("16mncr5", "pack-carburise", "oil", KILN), Run(), ("5.5 h", "930 °C", "0.7 mm deep")),
        (("070m20", "case-compound", "water"), Run(hours=0.25), ("5 min", "3 times over")),
        (("070m20", "case-compound", "water"), Run(hours=1.0), ("60 min", "lidded steel tin")),
    ],
)
def test_a_case_that_was_reckoned_gives_its_own_hours(treatment, run, said):
    do = doing(*treatment)
    steps = cased_steps(replace(do, prediction=Reckoned(do.prediction, run)))
    case = at(steps, "case")[-1]
    assert all(words in f"{case.action} {case.check}" for words in said)
    assert case.minutes * (case.times or 1) == pytest.approx(60 * run.hours)


def test_what_is_ground_off_a_case_is_left_on_and_only_what_was_left_is_turned_off():
    plain = steps_of("16mncr5", "pack-carburise", "oil", {**KILN, "part.stock_removal": 0.2})
    assert any(step.action.startswith("Leave 0.20 mm a side") for step in plain)
    assert "turn off" not in at(plain, "heat")[0].action
    thread = {**KILN, "part.feature": [{"kind": "thread", "at": 100.0}]}
    spared = steps_of("16mncr5", "pack-carburise", "oil", thread)
    assert "turn off what was left on" in at(spared, "heat")[0].action
