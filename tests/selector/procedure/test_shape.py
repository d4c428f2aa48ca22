"""Corners are rounded, hot holes packed, and a disc is told from a bar."""

from selector.procedure.bar import bar_size
from selector.procedure.shape import is_plate, rounded
from tests.procedure import doing, steps_of


def test_a_hole_that_stays_cold_is_not_plugged_and_one_in_the_zone_is():
    cold, hot = (
        steps_of("42crmo4", "local-torch", "oil", {"part.feature": [hole]})
        for hole in ({"kind": "cross-hole", "at": at_mm, "size": 6.0} for at_mm in (110.0, 9.0))
    )
    assert not any("Pack" in step.action for step in cold)
    assert any("Pack the hole Ø6 at 9 mm" in step.action for step in hot)


def test_a_shoulder_gets_the_radius_of_the_drawing():
    stepped = {"part.section.1.size": 20.0, "part.section.1.fillet": 2.0}
    do = doing("c45", "local-torch", "oil", stepped)
    assert "the shoulder at 30 mm to R2" in rounded(do).action


def test_a_disc_is_told_from_a_bar():
    do = doing("c45", "through-torch", "oil")
    assert not is_plate(do)
    assert bar_size(do) == "Ø27 or over"


def test_each_shoulder_gets_its_own_radius():
    sizes = [
        {"shape": "round", "size": size, "length": 30.0, "fillet": radius}
        for size, radius in ((26.0, None), (20.0, 2.0), (16.0, None), (30.0, 1.0))
    ]
    step = rounded(doing("c45", "local-torch", "oil", {"part.section": sizes}))
    assert "the shoulders at 30 and 60 mm to R2, at 90 mm to R1, break" in step.action
    assert step.length_mm == 2.0


def test_places_are_listed_as_a_sentence_lists_them():
    sections = [
        {"shape": "round", "size": size, "length": 30.0} for size in (10.0, 20.0, 12.0, 8.0)
    ]
    do = doing("c45", "local-torch", "oil", {"part.section": sections, "zone.1.section": [2]})
    assert "the shoulders at 30, 60 and 90 mm to R" in rounded(do).action
