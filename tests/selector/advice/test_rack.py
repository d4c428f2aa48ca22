import pytest

from selector.advice.rack import rack
from selector.advice.would_change import would_change
from tests.once import advised


def bars(*steels):
    return {"workshop.stock": [{"steel": s, "size": "30 mm"} for s in steels]}


def test_every_bar_has_its_place_or_what_stopped_it():
    found = advised(bars("42CrMo4", "304", "unknown"), "42crmo4", "x5crni18-10", "unknown")
    one, two, three = rack(found)
    assert one.bar == "42CrMo4 30 mm"
    assert found.options[one.place - 1].id == one.id
    assert two.place is None
    assert two.verdict == "fail"
    assert two.why
    assert three.verdict == "unknown"
    assert "coupon" in three.why or "file" in three.why


def test_a_name_that_means_several_steels_is_asked_back():
    found = advised(bars("drill rod"), "c105u", "100mncrw4", "x100crmov5")
    (bar,) = rack(found)
    assert bar.place is None
    assert "make sure which" in bar.why


def test_an_empty_rack_says_nothing():
    assert rack(advised({}, "42crmo4")) == ()


@pytest.mark.parametrize(
    ("changes", "word"),
    [
        ({"load.torque": None}, "none is given, so strength is not judged"),
        ({"zone.0.hardness": None}, "was taken from the duty"),
        ({}, "Your own prices"),
    ],
)
def test_what_was_assumed_may_change_the_answer(changes, word):
    found = advised(changes, "42crmo4", "c45")
    assert any(word in text for text in would_change(found))
    if changes:
        assert not any(word in text for text in would_change(advised({}, "42crmo4", "c45")))


@pytest.mark.parametrize(
    ("size", "label"), [("1000 mm", "C45 1000 mm"), ("3/8 in", "C45 9.5 mm"), (None, "C45")]
)
def test_a_bar_is_called_by_its_size_in_plain_figures(size, label):
    rack_of = {"steel": "C45"} if size is None else {"steel": "C45", "size": size}
    (bar,) = rack(advised({"workshop.stock": [rack_of]}, "c45"))
    assert bar.bar == label


def test_a_bar_thinner_than_the_part_is_said_to_be_so_and_made_nothing_of():
    rods = {"workshop.stock": [{"steel": "C45", "size": s} for s in (10, 30)]}
    found = advised(rods, "c45", "42crmo4")
    thin, thick = rack(found)
    assert (thin.place, thin.verdict) == (None, "fail")
    assert thin.why == "the bar in the rack is 10 mm; the part takes 25 mm"
    assert thick.place is not None
    assert all(o.treatment.stock is None or o.treatment.stock.size != 10 for o in found.options)


def test_a_bar_that_is_out_is_judged_by_the_simplest_of_what_was_looked_at_and_says_which():
    bare = {**bars("EN3B"), "workshop.heat": [], "workshop.subcontract": False}
    (bar,) = rack(advised(bare, "070m20"))
    assert bar.verdict == "fail"
    assert bar.why.startswith("used as it is: needs ")


def test_a_bar_that_costs_too_much_is_judged_by_the_cheapest_way_that_comes_right():
    asked = {**bars("42CrMo4"), "limit.budget": 1, "limit.currency": "EUR"}
    found = advised(asked, "42crmo4")
    (bar,) = rack(found)
    dear = [item for item in found.rejected if item.gate.name == "budget"]
    near = max(dear, key=lambda item: item.nearness(1.0))
    assert f"costs about {near.cost:.0f} of the 1 EUR" in bar.why
    assert near.cost < max(item.cost for item in dear)
