"""Traps of the trade: cautions of a temper, coating or bolt; the range of a model."""

import inspect
import re
from dataclasses import replace
from types import MappingProxyType

import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.option import caution as of_options
from selector.requirement import requirement_from
from tests.dog import only, varied
from tests.traps import FURNACE, PIN, SPRINGY, ask, cautions, hardened, said


@pytest.mark.parametrize(
    ("window", "hot"),
    [(("44 HRC", "47 HRC"), True), (("55 HRC", "58 HRC"), False)],
    ids=["hot temper", "low temper"],
)
def test_slow_cooling_is_warned_of_only_after_a_hot_temper(window, hot):
    asked = {"zone.0.hardness": {"min": window[0], "max": window[1]}, "zone.0.wear": "none"}
    found = ask(asked, FURNACE, steels=("51crv4",))
    assert all((option.temper.temperature_c >= 375) == hot for option in hardened(found))
    assert ("temper-embrittlement-slow-cool" in cautions(found)) == hot


def test_slow_cooling_is_not_warned_of_for_a_steel_with_molybdenum():
    found = ask(SPRINGY, FURNACE, steels=("42crmo4",))
    assert any(option.temper.temperature_c >= 375 for option in hardened(found))
    assert "temper-embrittlement-slow-cool" not in cautions(found)


@pytest.mark.parametrize(
    ("changes", "warned"),
    [
        ({"part.condition": "plated"}, True),
        ({"limit.corrosion": "mild"}, True),
        ({}, False),
    ],
    ids=["plated", "would be plated", "bare"],
)
def test_hydrogen_is_warned_of_where_hard_steel_is_plated(changes, warned):
    found = ask(changes, steels=("c45",))
    assert ("hydrogen-embrittlement" in cautions(found)) == warned


def test_hydrogen_is_not_warned_of_for_soft_bar():
    soft = {"part.condition": "plated", "zone.0.wear": "none"}
    found = ask(soft, steels=("c45",), route="as-bought")
    assert found.options
    assert "hydrogen-embrittlement" not in cautions(found)


def test_plating_of_unknown_kind_is_treated_as_cadmium():
    assert "cadmium" in cautions(ask({"part.condition": "plated"}, steels=("c45",)))


@pytest.mark.parametrize(
    ("changes", "warned"),
    [
        ({"part.condition": "welded", "part.feature": [{"kind": "thread"}]}, True),
        ({"part.feature": [{"kind": "thread"}, {"kind": "weld"}]}, True),
        ({"part.feature": [{"kind": "thread"}]}, False),
        ({"part.name": "Weld-on stud", "part.feature": [{"kind": "thread"}]}, True),
        ({"part.name": "Stud of a welding jig", "part.feature": [{"kind": "thread"}]}, False),
    ],
    ids=["welded", "to be welded", "thread alone", "by its name", "a jig"],
)
def test_a_welded_bolt_is_replaced(changes, warned):
    found = ask(changes, steels=("c45",))
    assert ("welding-high-strength-bolt" in cautions(found)) == warned


@pytest.mark.parametrize(
    ("steel", "words"),
    [
        ("31crmo12", ("31CrMo12", "Cr 3.05 wt %", "32 hardenability bands", "coupon")),
        ("51crv4", ("51CrV4", "V 0.175 wt %", "coupon")),
    ],
)
def test_a_leading_figure_outside_its_model_is_said_to_be(steel, words):
    asked = {"zone.0.hardness": {"min": "48 HRC"}, "zone.0.wear": "none"}
    found = ask(asked, FURNACE, steels=(steel,))
    assert hardened(found)
    assert said(found.assumptions, *words)
    assert hardened(found)[0].hardness.surface.validity


def test_a_figure_inside_its_model_says_nothing_of_it():
    found = ask(steels=("c45", "42crmo4"))
    assert all(not option.hardness.surface.validity for option in found.options)
    assert not said(found.assumptions, "stretch of the model")


def test_every_caution_of_the_list_is_raised_by_something():
    known = load_catalog()
    named = {
        key
        for group in (known.routes, known.media, known.heat_sources)
        for record in group.values()
        for key in record.cautions
    }
    named |= {
        limit.caution for steel in known.steels.values() for limit in steel.limitation
    } - {None}
    named |= set(re.findall(r'"([a-z]+(?:-[a-z]+)*)"', inspect.getsource(of_options)))
    assert set(known.cautions) <= named


@pytest.mark.parametrize(
    "ids",
    [
        *of_options.BY_CONDITION.values(),
        *of_options.BY_SHAPE.values(),
        *of_options.BY_MEANS.values(),
    ],
)
def test_a_caution_named_in_code_is_on_the_list(ids):
    assert set(ids) <= set(load_catalog().cautions)


def test_a_caution_that_is_not_on_the_list_is_a_loud_fault():
    known = only("c45")
    name = "through-torch"
    route = known.routes[name].model_copy(update={"cautions": ("no-such-caution",)})
    slipped = replace(known, routes=MappingProxyType({name: route}))
    with pytest.raises(KeyError, match="no-such-caution"):
        advice_out(advise(requirement_from(varied({}, PIN)), slipped))
