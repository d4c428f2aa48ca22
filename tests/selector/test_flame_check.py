from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.flame_case import follow
from selector.flame_check import checks, edge_notes
from selector.flame_outcome import OVERHEATED_C, Setup
from selector.flame_reading import Ring
from selector.surroundings import surroundings
from tests.dog import asked, work

CATALOG = load_catalog()
WORK = work("c45", "local-torch", "warm-water", "oxy-propane")


def around(changes=None):
    return surroundings(asked(changes), CATALOG, count=1)


@pytest.fixture(scope="module")
def dog():
    return around()


@pytest.fixture(scope="module")
def done(dog):
    return follow(WORK, dog, Setup(past_mm=12.5), dog.leading)


def failed(out, there, demand=None):
    found = checks(out, WORK, there, demand or there.leading)
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


def test_a_burnt_corner_fails(done, dog):
    assert done.overheated_c < OVERHEATED_C
    hot = replace(done, corner_c=done.overheated_c + 5.0)
    assert failed(hot, dog) == {"corner"}


def test_a_part_that_nothing_holds_fails(done):
    free = around({"workshop.turns_part": False})
    assert failed(done, free) == {"held"}
    held = around({"workshop.turns_part": False, "workshop.held_by": "tongs"})
    assert failed(done, held) == set()


def test_an_oil_steel_in_water_may_crack():
    brine = work("100mncrw4", "local-torch", "water", "oxy-propane")
    there = around({"workshop.bath": [{"medium": "water"}]})
    out = follow(brine, there, Setup(), there.leading)
    assert "cracking" in {check.name for check in out.failed}


def test_an_edge_beside_a_hole_is_told(done):
    holed = around({"part.feature": [{"kind": "cross-hole", "at": 33, "size": 5}]})
    assert "cross-hole at 33 mm" in edge_notes(done, holed)[0]
    far = around({"part.feature": [{"kind": "cross-hole", "at": 100, "size": 5}]})
    assert edge_notes(done, far) == ()


def test_an_edge_beside_a_step_is_told(done, dog):
    steps = zip(done.part.sections, (25.0, 20.0), strict=True)
    sections = tuple(replace(section, outer_mm=outer) for section, outer in steps)
    stepped = replace(done, part=replace(done.part, sections=sections))
    assert "the step at 30 mm" in edge_notes(stepped, dog)[0]
