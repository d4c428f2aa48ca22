import pytest

from selector.advice.advise import advise
from selector.advice.doing import bar_words, bought_as, doing_words
from tests.dog import GONE, asked, only
from tests.once import advised


def said(changes, route, *steels):
    found = advise(asked(changes), only(*steels), route=route)
    return {doing_words(found, option) for option in found.options}


OIL = {"workshop.bath": [{"medium": "oil"}]}
FURNACE = {
    **OIL,
    "workshop.heat": [{"source": "muffle-furnace"}],
    "workshop.protect": ["foil"],
}
PACK = {**FURNACE, "load.torque": "20 N m", "zone.0.hardness": {"min": "55 HRC"}}


@pytest.mark.parametrize(
    ("changes", "route", "steel", "words"),
    [
        (OIL, "through-torch", "42crmo4", "heat all over by torch, quench in oil, temper at"),
        (OIL, "local-torch", "42crmo4", "heat the end alone by torch, quench in oil"),
        (FURNACE, "through-furnace", "42crmo4", "heat all over in the furnace, quench in oil"),
        (PACK, "pack-carburise", "16mncr5", "pack-carburise in the furnace, quench in oil"),
        ({"workshop.subcontract": True}, "subcontract-vacuum", "42crmo4", "send out to harden"),
    ],
)
def test_what_is_done_is_said_as_at_the_bench(changes, route, steel, words):
    found = said(changes, route, steel)
    assert found
    assert all(text.startswith(words) for text in found)


def test_an_end_that_tempers_itself_is_quenched_out_at_its_colour():
    for text in said({"workshop.bath": [{"medium": "warm-water"}]}, "residual-heat", "c45"):
        assert text.startswith("quench the end in warm water, let the colour run down, quench")


def test_a_bar_is_called_by_what_it_is_bought_by_and_the_rack_is_named():
    rack = {"workshop.stock": [{"steel": "EN24", "condition": "annealed"}]}
    found = advised(rack, "817m40")
    words = [bar_words(found, option) for option in found.options]
    assert words
    assert any(text == "EN24 (817M40), annealed, from the rack" for text in words)


def test_a_bar_of_the_rack_whose_state_nobody_gives_is_in_one_state_on_the_page():
    rack = {
        "workshop.stock": [{"steel": "EN8"}],
        "zone.0.hardness": {"max": "60 HRC"},
        "zone.0.wear": "none",
        "load.torque": GONE,
    }
    found = advised(rack, "080m40")
    words = {
        option.treatment.route.process: bar_words(found, option)
        for option in (*found.options, *found.outdone)
        if option.treatment.route.extent == "whole"
    }
    assert words["none"].startswith("EN8 (080M40) from the rack, taken as ")
    assert words["quench"] == "EN8 (080M40) from the rack"


def test_a_pre_hardened_bar_is_called_so():
    soft = {"zone.0.hardness": {"min": "28 HRC"}, "zone.0.wear": "none"}
    found = advised(soft, "42crmo4", "817m40")
    kinds = {
        option.treatment.condition.name: bar_words(found, option) for option in found.options
    }
    assert kinds["prehard"].startswith("pre-hardened ")


@pytest.mark.parametrize(
    ("currency", "name"),
    [("EUR", "4140 (42CrMo4)"), ("GBP", "4140 (42CrMo4)"), ("USD", "4140 (42CrMo4)")],
)
def test_a_steel_is_named_as_it_is_bought_where_the_user_pays(currency, name):
    found = advised({"limit.currency": currency}, "42crmo4")
    assert bought_as(found, found.options[0].treatment.steel) == name
    assert name in bar_words(found, found.options[0])
