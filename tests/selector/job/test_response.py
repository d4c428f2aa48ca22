import pytest

from selector.job.response import answers, carbon_fits, limited
from tests.dog import asked, work

ASKED = asked()


@pytest.mark.parametrize(
    ("steel", "route", "medium", "says"),
    [
        ("42crmo4", "through-furnace-cold", "oil", "too little soft austenite"),
        ("100cr6", "through-furnace-cold", "oil", None),
        ("42crmo4", "normalise", "air", "nothing tempers it"),
        ("c45", "normalise", "air", None),
        ("x5crni18-10", "anneal", None, "no soft state"),
        ("s235", "through-furnace", "water", ""),
        ("c45", "subcontract-chrome", None, None),
    ],
)
def test_a_steel_answers_to_its_routes_alone(steel, route, medium, says):
    condition = "cold-drawn" if steel == "x5crni18-10" else None
    gate = answers(ASKED, work(steel, route, medium, None, condition=condition))
    assert (gate is None) == (says is None)
    if says:
        assert says in gate.text


def test_a_heat_that_leaves_it_soft_minds_no_limitation_of_a_quench():
    assert limited(ASKED, work("c45", "anneal", None, "kiln")) is None


def test_a_core_rich_in_carbon_is_no_core():
    gate = carbon_fits(ASKED, work("c45", "pack-carburise", "oil", "kiln"))
    assert gate.name == "core"


def test_cast_iron_is_spoken_of_as_what_it_is():
    said = answers(asked(), work("cast-iron", "through-torch", "oil", condition="unknown"))
    assert said.verdict == "unknown"
    assert "Never in water" in said.text
    plain = answers(asked(), work("unknown", "through-torch", "oil", condition="unknown"))
    assert plain.text.startswith("grade unknown: ")
