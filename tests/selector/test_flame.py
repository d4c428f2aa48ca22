import numpy as np
import pytest

from catalog import load_catalog
from selector.flame import ORDER, flame_answer
from tests.dog import FEW, asked, only

CATALOG = load_catalog()
PREHARD_DOES = {
    "zone.0.hardness": {"min": "26 HRC", "max": "40 HRC"},
    "zone.0.wear": "sliding",
}


def best(changes=None, steel="C45", catalog=CATALOG):
    answer = flame_answer(asked(changes), catalog, steel)
    return answer, answer.best


@pytest.fixture(scope="module")
def answer():
    return flame_answer(asked(), only(*FEW, "080m40", "c80u"))


def test_the_families_stand_best_first(answer):
    places = [ORDER.index(verdict.word) for verdict in answer.verdicts]
    assert places == sorted(places)
    assert answer.word == answer.verdicts[0].word
    families = [verdict.treatment.steel.family for verdict in answer.verdicts]
    assert len(families) == len(set(families))


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
    assert "sticks at" in verdict.why


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
    answer, _ = best({"zone": plain})
    assert answer.word == "not_needed"


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


def test_a_crayon_is_the_change_where_only_the_reading_is_in_doubt():
    """Where a misread heat is the only condition, reading it better removes it."""
    window = {"zone.0.hardness": {"min": "50 HRC", "max": "60 HRC"}}
    _, verdict = best({"workshop.light": "sun", **window}, "817M40")
    assert verdict.word == "yes_if"
    assert verdict.change.text.startswith("read the heat by a temperature crayon")
    assert not verdict.change.at_hand
    assert verdict.change.outcome.failed == ()


def test_a_struck_part_is_told_of_the_heat_that_runs_back():
    """Common practice, no source: chisels and drifts are dipped and drawn in one heat."""
    answer, _ = best({"load.impact": "hammered"})
    assert answer.residual is not None
    assert answer.residual.treatment.route.slug == "residual-heat"
    assert answer.residual.why
    assert best()[0].residual is None


def test_a_disc_is_said_not_to_be_simulated():
    short = {f"part.section.{n}.length": "4 mm" for n in (0, 1)}
    answer = flame_answer(asked(short), CATALOG, "C45")
    assert answer.word == "coupon_first"
    assert "disc" in answer.why
    assert not answer.verdicts
