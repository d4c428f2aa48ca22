from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.flame.arrangement import arranged
from selector.flame.case import follow
from selector.flame.odds import limits, odds_of, steadied
from selector.job.job import resolved
from selector.job.process import ReadingError
from tests.dog import asked, work
from tests.once import flamed

CATALOG = load_catalog()
SURE, VAGUE = ReadingError(0.0, 0.0, 0.0), ReadingError(60.0, 30.0, 0.0)


@pytest.fixture(scope="module")
def case():
    there = resolved(asked({"zone.0.hardness": {"min": "50 HRC"}}), CATALOG, count=1)
    treatment = work("42crmo4", "local-torch", "oil", "oxy-propane")
    return treatment, there, there.leading, arranged(treatment, there, there.leading)


def test_a_vaguer_reading_leaves_no_less_to_chance(case):
    sure, vague = (list(odds_of(*case, error)) for error in (SURE, VAGUE))
    assert len(sure) <= len(vague)
    assert any("too early" in odd or "overshot" in odd for odd in vague)


def test_a_flame_that_is_drawn_back_anyhow_is_no_condition():
    """The operator takes as much of it as lets him stop in time."""
    thin = {f"part.section.{n}.size": 8 for n in (0, 1)}
    there = resolved(asked({**thin, "load.torque": "5 N m"}), CATALOG, count=1)
    treatment = work("42crmo4", "local-torch", "oil", "oxy-propane")
    out = arranged(treatment, there, there.leading)
    assert out.heated.level < 0.6
    assert not any(
        "flame" in odd for odd in odds_of(treatment, there, there.leading, out, VAGUE)
    )


def test_a_notch_at_the_edge_of_the_zone_is_a_condition(case):
    treatment, _, lead, out = case
    at = out.hard_mm[1]
    slot = {"part.feature": [{"kind": "slot", "at": f"{at:.1f} mm", "size": "3 mm"}]}
    near = resolved(asked(slot), CATALOG, count=1)
    assert "slot" in limits(out, near)[0]
    assert steadied(treatment, near, lead, out, ("anything",)) is None


def test_out_of_the_sun_is_the_change_where_only_its_light_is_in_doubt():
    """The eye needs no instrument in the shade."""
    window = {"zone.0.hardness": {"min": "50 HRC", "max": "60 HRC"}}
    verdict = flamed({"workshop.light": "sun", **window}, "817M40").best
    assert verdict.word == "yes_if"
    assert verdict.change.text.startswith("judge the heat in dim light")
    assert verdict.change.at_hand
    assert verdict.change.outcome.failed == ()


def test_a_crayon_is_the_change_where_the_eye_itself_is_in_doubt():
    unsteady = {"workshop.skill": {"bias": 2.5, "scatter": 2.5}}
    window = {"zone.0.hardness": {"min": "50 HRC", "max": "60 HRC"}}
    verdict = flamed({**unsteady, **window}, "817M40").best
    assert verdict.word == "yes_if"
    assert verdict.change.text.startswith("read the heat by a temperature crayon")
    assert not verdict.change.at_hand


def test_a_crayon_that_is_there_is_no_change(case):
    treatment, there, lead, out = case
    shop = there.asked.workshop.model_copy(update={"measure": ("eye", "crayon")})
    asked_of = there.asked.model_copy(update={"workshop": shop})
    assert steadied(treatment, replace(there, asked=asked_of), lead, out, ("any",)) is None


def test_no_change_is_looked_for_where_nothing_is_in_doubt(case):
    assert steadied(*case, ()) is None


def test_a_light_that_shifts_every_reading_one_way_leaves_no_error_the_other_way(case):
    """In the sun all heats are overshot: none is then stopped too early."""
    assert any("too early" in odd for odd in odds_of(*case, VAGUE))
    assert not any("too early" in odd for odd in odds_of(*case, ReadingError(5.0, 5.0, 60.0)))
    assert not any("overshot" in odd for odd in odds_of(*case, ReadingError(5.0, 5.0, -60.0)))


def test_what_the_flame_cannot_reach_is_not_overshot():
    """A torch that brings the heat and little more is no danger to the grain."""
    thin = {f"part.section.{n}.size": 10 for n in (0, 1)}
    torch = {"workshop.heat": [{"source": "hand-torch"}]}
    there = resolved(asked({**thin, **torch, "load.torque": "5 N m"}), CATALOG, count=1)
    treatment = work("42crmo4", "local-torch", "oil", "hand-torch")
    out = arranged(treatment, there, there.leading)
    assert out.heated.reached
    hotter = replace(out.setup, misread_c=500.0)
    assert not follow(treatment, there, hotter, there.leading).heated.reached
    found = odds_of(treatment, there, there.leading, out, ReadingError(0.0, 0.0, 500.0))
    assert not any("overshot" in odd for odd in found)


def test_a_bow_that_passes_in_a_bad_case_alone_is_a_condition(case):
    treatment, there, lead, out = case
    usual, bad = out.bow_mm
    limit = there.asked.limit.model_copy(update={"runout": 0.5 * (usual + bad)})
    tight = replace(there, asked=there.asked.model_copy(update={"limit": limit}))
    told = [odd for odd in odds_of(treatment, tight, lead, out, SURE) if "bows" in odd]
    assert told == [o for o in told if f"{bad:.2f} mm in a bad case" in o]
    assert told
    assert not any("bows" in odd for odd in odds_of(*case, SURE))
