from selector.flame.condition import conditions, handling
from selector.option.set_up import alike
from selector.option.torched import torched
from tests.once import flamed

UNHELD = {"workshop.turns_part": False}


def said(changes=None, steel="C45"):
    return " / ".join(flamed(changes, steel).best.conditions)


def test_nothing_that_holds_the_part_is_a_condition():
    answer = flamed(UNHELD)
    part = torched(answer.job.middle(), alike(answer.best.treatment))
    assert any("hold" in text for text in handling(answer.job.asked.workshop, part))


def test_a_still_part_that_heats_unevenly_is_to_be_turned():
    assert "turned in the flame" in said(UNHELD)
    assert "turned in the flame" not in said()


def test_a_heat_stopped_early_is_looked_at():
    """C60 a little under its heat does not harden."""
    eye = {"workshop.measure": ["eye"], "zone.0.hardness": {"min": "57 HRC", "max": "62 HRC"}}
    text = said(eye, "C60")
    assert "early" in text or "right" in text


def test_a_thermocouple_leaves_less_to_chance_than_the_eye_in_the_sun():
    eye, wire = (
        flamed({"workshop.measure": measure, "workshop.light": light}, "C45")
        for measure, light in ((["eye"], "sun"), (["thermocouple"], "dim"))
    )
    assert len(wire.best.conditions) <= max(len(eye.best.conditions), 1)


def test_only_the_leading_families_get_every_error():
    answer = flamed()
    option = answer.best.option
    few, every = (conditions(answer.job, option, every=flag) for flag in (False, True))
    assert set(few) <= set(every)


def test_a_zone_apart_gets_a_heat_of_its_own():
    third = {"shape": "round", "size": 25, "length": 20}
    apart = {
        "part.section": [
            {"shape": "round", "size": 25, "length": 30},
            {"shape": "round", "size": 25, "length": 120},
            third,
        ],
        "zone": [
            {"section": [n], "wear": "sliding", "severity": "medium",
             "hardness": {"min": "50 HRC", "max": "56 HRC"}}
            for n in (1, 3)
        ],
    }  # fmt: skip
    answer = flamed(apart, "42CrMo4")
    assert any("heat of its own" in text for text in answer.best.conditions)
