import pytest

from selector.advice.assumption import assumptions
from tests.dog import GONE
from tests.once import advised


def said(changes):
    return "\n".join(assumptions(advised(changes, "42crmo4", "c45")))


ASSUMED = [
    ("No run-out given", {"limit.runout": 0.1}),
    ("No budget given", {"limit.budget": 200}),
    ("strength is not judged", None),
    ("Heat is judged by eye", {"workshop.measure": ["eye", "thermocouple"]}),
    ("oil: moderate agitation", {"workshop.bath": [{"medium": "oil", "volume": 20}]}),
    ("derived from", {"zone.0.hardness": {"min": "50 HRC", "max": "56 HRC"}}),
]


@pytest.mark.parametrize(("words", "changes"), ASSUMED, ids=[words for words, _ in ASSUMED])
def test_it_is_said_where_it_was_not_said_and_only_there(words, changes):
    silent = {"load.torque": GONE, "zone.0.hardness": GONE}
    stated = {"zone.0.hardness": GONE, **(changes or {})}
    assert words in said(silent)
    assert words not in said(stated)


def test_an_assumed_figure_has_its_unit():
    text = said({"zone.0.hardness": GONE})
    assert "mm of bow" in text
    assert "HRC" in text
    assert "mm deep" in text
    assert "EUR" in text or "invented" in text


def test_a_budget_in_another_currency_is_said():
    text = said({"limit.budget": 200, "limit.currency": "SEK"})
    assert "SEK" in text
    assert "as they stand" in text


def test_a_shape_no_model_covers_is_said():
    assert "gear: shape not simulated" in said({"part.shape_class": "gear"})


def test_every_assumption_is_a_sentence(advice):
    for sentence in assumptions(advice):
        assert sentence[0].isupper() or sentence.split(":")[0] in {"oil", "warm-water"}
        assert sentence.endswith(".")


def test_the_bar_that_cost_is_judged_by_is_named_only_where_it_is_known():
    assert "pre-hardened 42CrMo4 as bought" in said({})
    without = "\n".join(assumptions(advised(None, "c45")))
    assert "No budget given" in without
    assert "42CrMo4" not in without


def test_a_hole_without_a_size_is_presumed_and_told():
    hole = {"kind": "cross-hole", "at": 100}
    assert "Feature 1, cross-hole: no size given, 3.8 mm" in said({"part.feature": [hole]})
    sized = {"part.feature": [{**hole, "size": 5}]}
    assert "no size given" not in said(sized)
    assert "no size given" not in said({"part.feature": [hole], "load.torque": GONE})


def test_what_a_part_is_taken_as_by_its_name_or_form_is_said():
    nothing_wears = {"zone.0.wear": "none", "zone.0.hardness": GONE}
    named = said({**nothing_wears, "part.name": "Latch spring"})
    assert "Taken as a spring, because it is called one." in named
    assert "Taken as a spring" not in said(nothing_wears)
    square = {"shape": "square", "size": "8 mm", "length": "30 mm"}
    zone = {"section": [1], "wear": "none"}
    key = {"part.section": [square], "part.feature": [], "zone": [zone]}
    assert "Zone 1: taken as a key" in said(key)
