from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.flame.case import follow
from selector.flame.check import (
    asked_words,
    checks,
    crack_of,
    edge_notes,
    left_out,
    most_words,
    slack_words,
)
from selector.flame.outcome import OVERHEATED_C, SAFE, Setup
from selector.job.job import resolved
from selector.torch.reading import Ring
from tests.dog import GONE, asked, work

CATALOG = load_catalog()
WORK = work("c45", "local-torch", "warm-water", "oxy-propane")


def job(changes=None):
    return resolved(asked(changes), CATALOG, count=1)


ASKED = job().leading


@pytest.fixture(scope="module")
def dog():
    return job()


@pytest.fixture(scope="module")
def done(dog):
    return follow(WORK, dog, Setup(past_mm=12.5), dog.leading)


def failed(out, there, demand=None):
    found = checks(out, there, demand or there.leading)
    return {check.name for check in found if not check.met}


def test_a_good_outcome_meets_all(done, dog):
    assert failed(done, dog) == set()


@pytest.mark.parametrize(
    ("change", "name"),
    [
        ({"surface_hrc": 40.0}, "hard"),
        ({"surface_hrc": 64.0}, "not_too_hard"),
        ({"depth_mm": 0.0}, "depth"),
        ({"ring": Ring(40.0, 5.0, 10.0, 50.0)}, "ring"),
        ({"bow_mm": (0.5, 1.2)}, "movement"),
    ],
)
def test_each_demand_can_fail(done, dog, change, name):
    assert failed(replace(done, **change), dog) == {name}


@pytest.mark.parametrize(
    ("weakest", "words"),
    [
        ("", "outside the zone, softest at 40 mm, it bears 50 N m before it twists throughout"),
        ("the slot at 60 mm", "the slot at 60 mm is its weakest place and bears 50 N m before"),
    ],
)
def test_the_torque_is_called_what_it_is(done, dog, weakest, words):
    weak = replace(done, ring=Ring(40.0, 5.0, 10.0, 50.0, weakest))
    said = next(c.text for c in checks(weak, dog, dog.leading) if c.name == "ring")
    assert said.startswith(words)


def test_a_burnt_corner_fails(done, dog):
    assert done.overheated_c < OVERHEATED_C
    hot = replace(done, corner_c=done.overheated_c + 5.0)
    assert failed(hot, dog) == {"corner"}


def test_a_part_that_nothing_holds_fails(done):
    free = job({"workshop.turns_part": False})
    assert failed(done, free) == {"held"}
    held = job({"workshop.turns_part": False, "workshop.held_by": "tongs"})
    assert failed(done, held) == set()


def test_an_oil_steel_in_water_may_crack():
    brine = work("100mncrw4", "local-torch", "water", "oxy-propane")
    there = job({"workshop.bath": [{"medium": "water"}]})
    out = follow(brine, there, Setup(), there.leading)
    assert "cracking" in {check.name for check in out.failed}


def test_a_risk_of_cracking_is_told_with_its_reason_also_where_it_is_no_bar(done):
    rich = work("c80u", "local-torch", "water", "oxy-propane")
    plain = job({"part.feature": []})
    likely = replace(done, crack=crack_of(rich, plain))
    checked = {check.name: check for check in checks(likely, plain, ASKED)}
    assert checked["cracking"].met
    assert checked["cracking"].text.startswith("cracking some, 2 to 10 in 100 (its carbon")
    assert 0.0 < checked["cracking"].margin < SAFE


@pytest.mark.parametrize(
    ("window", "words"),
    [
        ({"min": "50 HRC"}, "50 HRC (48 with slack)"),
        ({"min": "50 HRC", "must": True}, "50 HRC"),
        (None, "54 HRC (45 at least)"),
    ],
)
def test_what_was_asked_is_told_as_it_was_written(window, words):
    lead = job({"zone.0.hardness": window if window else GONE}).leading
    assert asked_words(lead) == words


@pytest.mark.parametrize(
    ("window", "words"),
    [
        ({"min": "50 HRC", "max": "56 HRC"}, "56 HRC (59 with slack)"),
        ({"min": "50 HRC", "max": "56 HRC", "must": True}, "56 HRC"),
        ({"min": "50 HRC"}, None),
    ],
)
def test_the_most_that_is_asked_is_told_with_what_still_passes(window, words):
    assert most_words(job({"zone.0.hardness": window}).leading) == words


def test_a_near_miss_is_not_rounded_into_what_was_asked(done, dog):
    found = checks(replace(done, surface_hrc=47.7), dog, ASKED)
    text = next(c.text for c in found if c.name == "hard")
    assert text == "47.7 HRC at the softest place of the zone, asked 50 HRC (48 with slack)"


def test_only_what_the_slack_saves_is_told_to_be_within_it(done):
    assert slack_words(replace(done, surface_hrc=51.0), ASKED) == ""
    near = slack_words(replace(done, surface_hrc=49.0), ASKED)
    assert near == "; 50 HRC was asked, 1.0 under it is within the slack"


def test_more_depth_than_there_is_steel_is_not_met(done, dog):
    through = replace(done, depth_mm=done.wall_mm)
    deep = replace(ASKED, depth_mm=20.0)
    check = next(c for c in checks(through, dog, deep) if c.name == "depth")
    assert not check.met
    assert (
        check.text == "hard through, 12 mm to middle or bore, asked 20: there is no more steel"
    )
    enough = replace(ASKED, depth_mm=done.wall_mm)
    assert "depth" not in failed(through, dog, enough)


def test_the_narrowest_demand_is_the_margin(done, dog):
    narrow = replace(done, surface_hrc=48.3)
    least = min(c.margin for c in checks(narrow, dog, ASKED))
    assert least == pytest.approx(0.1)
    assert replace(done, checks=checks(narrow, dog, ASKED)).margin == least


def test_a_second_hard_zone_apart_is_named(done):
    """The ends of a shaft are hardened in two heats; the sections between lie soft."""
    window = {"min": "50 HRC"}
    sections = [{"shape": "round", "size": 25, "length": n} for n in (30, 120, 30)]
    ends = [{"section": [n], "wear": "sliding", "hardness": window} for n in (1, 3)]
    apart = job({"part.section": sections, "zone": ends})
    assert left_out(done, apart)[0].startswith("section 3, which lies apart and asks 50 HRC")
    beside = job({"part.section": sections, "zone": ends[:1]})
    assert left_out(done, beside) == ()


def test_an_edge_beside_a_hole_is_told(done):
    holed = job({"part.feature": [{"kind": "cross-hole", "at": 33, "size": 5}]})
    assert "cross-hole at 33 mm" in edge_notes(done, holed)[0]
    far = job({"part.feature": [{"kind": "cross-hole", "at": 100, "size": 5}]})
    assert edge_notes(done, far) == ()


def test_an_edge_beside_a_step_is_told(done, dog):
    steps = zip(done.part.sections, (25.0, 20.0), strict=True)
    sections = tuple(replace(section, outer_mm=outer) for section, outer in steps)
    stepped = replace(done, part=replace(done.part, sections=sections))
    assert "the step at 30 mm" in edge_notes(stepped, dog)[0]
