from dataclasses import replace

import pytest

from selector.procedure.tempering import tempering_steps
from tests.procedure import KILN, doing

LOCAL = ("42crmo4", "local-torch", "oil")
KILN_ALONE = {"workshop.heat": [{"source": "kiln"}]}
OVEN = {"workshop.heat": [{"source": "oxy-propane"}, {"source": "kitchen-oven"}]}


def test_a_temper_says_means_degrees_minutes_times_and_colour_with_its_time():
    (step,) = tempering_steps(doing(*LOCAL))
    assert step.temperature_c >= 200
    assert step.times == 1
    assert step.action.startswith("At once, while hand-warm: temper ")
    assert f"shows {step.colour} after the" in step.check


def test_a_flame_tempers_from_behind_the_zone():
    do = doing(*LOCAL, {"workshop.heat": [{"source": "oxy-propane"}]}, means="torch")
    assert "behind the zone" in tempering_steps(do)[0].action


def test_rust_free_steel_shows_no_colour_to_go_by():
    kiln = {"workshop.heat": [{"source": "kiln"}]}
    (step,) = tempering_steps(doing("x30cr13", "through-furnace", "air", kiln))
    assert step.colour is None


def test_what_stays_too_hard_is_tempered_hotter_unless_that_makes_it_brittle():
    (alloyed,) = tempering_steps(doing(*LOCAL, OVEN))
    (plain,) = tempering_steps(doing("c45", "through-furnace", "water", KILN))
    assert "brittle" in alloyed.otherwise
    assert f"once more at {plain.temperature_c + 25:.0f} °C" in plain.otherwise


@pytest.mark.parametrize("route", ["as-bought", "subcontract-nitride"])
def test_what_has_no_temper_has_no_such_step(route):
    assert tempering_steps(doing("42crmo4", route, None)) == []


def test_a_struck_body_hardened_with_its_end_is_drawn_further_by_flame():
    crayon = {"workshop.measure": ["crayon"]}
    struck = {**crayon, "load.impact": "hammered", "zone.1.name": "body"}
    first, further = tempering_steps(doing("100cr6", "through-torch", "oil", struck))
    assert further.temperature_c > first.temperature_c
    assert "Draw the body further with a soft flame" in further.action
    assert "wet rag" in further.action
    assert len(tempering_steps(doing("100cr6", "through-torch", "oil", crayon))) == 1


def test_a_thin_flat_is_clamped_in_its_temper_where_that_was_reckoned_with():
    blade = {
        "part.section": [{"shape": "flat", "size": 2.0, "width": 25.0, "length": 180.0}],
        "part.feature": [],
        "zone": [{"section": [1], "wear": "sliding", "severity": "medium"}],
        "load": {"impact": "none", "cycles": "static"},
        "workshop.heat": [{"source": "kiln"}],
    }
    (step,) = tempering_steps(doing("100mncrw4", "through-furnace", "oil", blade))
    assert "clamped between two flat plates" in step.action


def test_a_part_waits_in_boiling_water_for_the_one_furnace_to_cool():
    (step,) = tempering_steps(doing("c45", "through-furnace", "water", KILN_ALONE))
    assert "in the pottery kiln" in step.action
    assert "in boiling water" in step.action
    assert "boiling water" not in tempering_steps(doing(*LOCAL, OVEN))[0].action


def test_a_temper_past_the_colours_is_told_by_what_the_workshop_has():
    plate = {"workshop.heat": [{"source": "oxy-propane"}], "zone.0.hardness": {"min": "20 HRC"}}
    for measure, words in ((["eye"], "red"), (["eye", "crayon"], "crayon mark")):
        do = doing(*LOCAL, {**plate, "workshop.measure": measure}, means="torch")
        hot = replace(do.temper, temperature_c=500.0)
        done = replace(do, prediction=replace(do.prediction, temper=hot))
        assert words in tempering_steps(done)[0].check


@pytest.mark.parametrize(
    ("steel", "quenched_out"),
    [("41cr4", True), ("51crv4", True), ("5160", True), ("c45", False), ("42crmo4", False),
     ("817m40", False), ("x40crmov5-1", False), ("x30cr13", False), ("60wcrv8", False)],
)  # fmt: skip
def test_only_steel_that_slow_cooling_makes_brittle_is_quenched_out_of_a_high_temper(
    steel, quenched_out
):
    medium = "air" if steel.startswith("x") else "oil"
    do = doing(steel, "through-furnace", medium, KILN)
    hot = replace(do.temper, temperature_c=500.0, means="furnace")
    action = tempering_steps(replace(do, prediction=replace(do.prediction, temper=hot)))[
        0
    ].action
    assert ("into oil or water" in action) is quenched_out
    assert ("cool in air" in action) is not quenched_out
