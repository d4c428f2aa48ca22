from dataclasses import replace

import numpy as np
import pytest

from selector.flame.answer import ORDER, flame_answer
from selector.flame.answer import _rank as rank
from selector.flame.outcome import Check
from tests.dog import FEW, asked, only
from tests.once import flame_once, flamed

PREHARD_DOES = {
    "zone.0.hardness": {"min": "26 HRC", "max": "40 HRC"},
    "zone.0.wear": "sliding",
}


def best(changes=None, steel="C45"):
    answer = flamed(changes, steel)
    return answer, answer.best


@pytest.fixture(scope="module")
def answer():
    return flame_once(asked(), only(*FEW, "080m40", "c80u"))


def test_the_families_stand_best_first(answer):
    places = [ORDER.index(verdict.word) for verdict in answer.verdicts]
    assert places == sorted(places)
    assert answer.word == answer.verdicts[0].word
    families = [verdict.treatment.steel.family for verdict in answer.verdicts]
    assert len(families) == len(set(families))


def test_of_equal_verdicts_the_safer_stands_before_the_easier(answer):
    """What meets its narrowest demand by more stands first; ease only between equals."""

    def told(verdict, margin):
        checked = replace(verdict.outcome, checks=(Check("hard", True, "", margin),))
        return replace(verdict, word="yes", odds=(), outcome=checked)

    by_ease = {v.treatment.steel.slug: v for v in answer.verdicts if v.outcome is not None}
    easy, rare = by_ease["c45"], by_ease["c80u"]
    assert rank(told(rare, 1.5)) < rank(told(easy, 0.3))
    assert rank(told(easy, 1.5)) < rank(told(rare, 1.5))
    assert rank(told(easy, 1.46)) < rank(told(rare, 1.5))


def test_every_verdict_has_a_reason_and_every_figure_is_a_number(answer):
    for verdict in answer.verdicts:
        assert verdict.why
        out = verdict.outcome
        if out is not None and out.hardness is not None:
            figures = [out.surface_hrc, out.core_hrc, out.depth_mm, *out.bow_mm]
            assert np.isfinite(figures).all()


def test_the_right_steel_hardens():
    answer, verdict = best()
    assert answer.word in {"yes", "yes_if"}
    assert verdict.outcome.surface_hrc > 50.0
    assert verdict.outcome.depth_mm > 1.0


@pytest.mark.parametrize("steel", ["S235JR", "11SMn30", "070M20"])
def test_too_little_carbon_is_a_no(steel):
    """Flame hardening does not work on any metal."""
    answer, verdict = best(steel=steel)
    assert answer.word == "no"
    assert "carbon" in verdict.why.lower()


@pytest.mark.parametrize("steel", ["X100CrMoV5", "X153CrMoV12", "HS6-5-2C"])
def test_air_hardening_and_high_speed_steel_is_not_for_the_eye(steel):
    """Torch-hardening A2, D2 or HSS by colour."""
    answer, verdict = best(steel=steel)
    assert answer.word == "no"
    assert verdict.outcome is None
    assert "flame" in verdict.why
    assert verdict.change is None


def test_a_76_mm_die_is_out_of_a_hand_torchs_reach():
    """A torch for any size."""
    big = {f"part.section.{n}.size": 76 for n in (0, 1)}
    answer, verdict = best({**big, "workshop.heat": [{"source": "hand-torch"}]})
    assert answer.word == "no"
    assert "°C after 10 minutes" in verdict.why


def test_an_open_flame_is_held_for_seconds_not_by_the_inch():
    """No bright yellow "to be sure", no furnace soak in a flame."""
    _, verdict = best()
    assert verdict.outcome.setup.hold_s <= 180.0
    assert verdict.outcome.heated.hottest_c < 1000.0


def test_bar_that_is_hard_enough_needs_no_flame():
    answer, verdict = best(PREHARD_DOES, "42CrMo4")
    assert answer.word == "not_needed"
    assert verdict.treatment.condition.name == "prehard"
    assert "as bought" in verdict.why


def test_a_part_that_asks_for_no_hardness_needs_no_flame():
    plain = [{"section": [1], "wear": "none"}]
    answer, _ = best({"zone": plain}, steel=None)
    assert answer.word == "not_needed"
    assert answer.verdicts == ()


def test_an_unproved_bar_of_the_rack_wants_a_coupon():
    rack = {"workshop.only_stock": True, "workshop.stock": [{"steel": "EN8", "size": 25}]}
    answer, verdict = best(rack, "EN8")
    assert answer.word == "coupon_first"
    assert "coupon" in verdict.why


def test_an_unknown_bar_wants_a_coupon():
    rack = {"workshop.stock": [{"steel": "unknown", "size": 25}]}
    answer, _ = best(rack, "unknown")
    assert answer.word == "coupon_first"


def test_what_lives_depend_on_is_referred():
    answer, _ = best({"safety_use": "brake"})
    assert answer.word == "no"
    assert "qualified people" in answer.why


def test_a_workshop_without_a_flame_is_told_so():
    answer, verdict = best({"workshop.heat": [{"source": "kitchen-oven"}]})
    assert answer.word == "no"
    assert verdict is None
    assert "torch" in answer.why


def test_a_zone_that_is_the_whole_part_is_told_to_be_hardened_whole():
    short = {"part.section.1.length": 20, "part.feature": [], "zone.0.section": [1, 2]}
    answer, verdict = best(short)
    assert answer.word == "no"
    assert "whole" in verdict.why


def test_nothing_that_holds_the_part_is_a_condition_and_no_error():
    answer, verdict = best({"workshop.turns_part": False, "part.section.0.size": 8,
                            "part.section.1.size": 8, "load.torque": "2 N m"})  # fmt: skip
    assert answer.word == "yes_if"
    assert "hold" in verdict.why
    assert verdict.change.at_hand


def test_a_no_comes_with_the_change_that_turns_it():
    big = {f"part.section.{n}.size": 36 for n in (0, 1)}
    heat = [{"source": "hand-torch"}, {"source": "kitchen-oven"}]
    answer, verdict = best({**big, "workshop.heat": heat})
    assert answer.word == "no"
    assert "oxy-propane" in verdict.change.text
    assert verdict.change.outcome.failed == ()


def test_a_workshop_with_no_bath_is_told_to_set_one_up():
    answer, verdict = best({"workshop.bath": []})
    assert answer.word == "no"
    assert verdict.change.text.startswith("quench in cold water: ")


def test_a_bad_reading_is_named_as_what_must_not_happen():
    """In the sun a heat looks duller than it is."""
    found = {light: best({"workshop.light": light}, "100MnCrW4")[1] for light in ("dim", "sun")}
    hot = {light: verdict.outcome.corner_c for light, verdict in found.items()}
    assert hot["sun"] > hot["dim"] + 40.0
    assert found["sun"].word == "yes_if"
    assert any("overshot" in odd for odd in found["sun"].odds)


def test_progress_is_told():
    told = []
    flame_answer(
        asked(), only("c45", "42crmo4"), progress=lambda *told_of: told.append(told_of)
    )
    assert [part for _, part in told] == [0.0, 0.5]
    assert all("Heating" in text for text, _ in told)


def test_a_zone_that_is_the_whole_of_a_long_part_is_told_to_be_hardened_whole():
    long = {"part.section.1.length": 500, "part.feature": [], "zone.0.section": [1, 2]}
    answer, verdict = best(long)
    assert answer.word == "no"
    assert "harden it whole" in verdict.why


def test_what_must_not_go_wrong_is_told_beside_nothing_that_holds_the_part():
    loose = {"workshop.turns_part": False, "workshop.light": "daylight",
             "workshop.heat": [{"source": "hand-torch"}, {"source": "kitchen-oven"}],
             "part.section.0.size": 8, "part.section.1.size": 8,
             "load.torque": "2 N m"}  # fmt: skip
    _, verdict = best(loose, "080M40")
    _, held = best({**loose, "workshop.held_by": "tongs"}, "080M40")
    assert held.odds
    assert verdict.word == "yes_if"
    assert verdict.treatment.medium == held.treatment.medium
    assert verdict.odds == held.odds


def test_a_chisel_is_drawn_by_its_own_heat_in_a_steel_made_for_water():
    """The smith's way, common practice: as much again is heated behind the edge as is hard."""
    sections = [{"shape": "hexagon", "size": 16, "length": n} for n in (25, 125)]
    chisel = {
        "part.section": sections,
        "part.feature": [{"kind": "edge", "at": "0 mm"}],
        "zone.0.hardness": {"min": "52 HRC", "max": "58 HRC"},
        "zone.0.wear": "edge-impact",
        "load": {"impact": "hammered", "cycles": "occasional"},
        "workshop.bath": [{"medium": "water"}, {"medium": "oil"}],
    }
    back = flame_answer(asked(chisel), only("115crv3", "51crv4", "c45", "42crmo4")).residual
    assert back.treatment.steel.slug == "c45"
    assert back.word == "yes"
    assert back.outcome.temper.means == "residual"


def test_a_struck_part_is_told_of_the_heat_that_runs_back():
    """Common practice, no source: chisels and drifts are dipped and drawn in one heat."""
    answer, _ = best({"load.impact": "hammered"})
    assert answer.residual is not None
    assert answer.residual.treatment.route.slug == "residual-heat"
    assert answer.residual.why
    assert best()[0].residual is None


def test_a_second_hard_zone_apart_is_a_condition():
    """Both ends hard, the shank between them soft: one heat does one end."""
    sections = [{"shape": "round", "size": 25, "length": n} for n in (30, 150, 30)]
    ends = [{"section": [n], "wear": "sliding", "hardness": {"min": "50 HRC"}} for n in (1, 3)]
    answer, verdict = best({"part.section": sections, "zone": ends}, "42CrMo4")
    assert answer.word == "yes_if"
    assert any("section 3, which lies apart" in odd for odd in verdict.odds)


def test_a_disc_is_said_not_to_be_simulated():
    short = {f"part.section.{n}.length": "4 mm" for n in (0, 1)}
    answer = flamed(short)
    assert answer.word == "coupon_first"
    assert "disc" in answer.why
    assert not answer.verdicts
