from dataclasses import replace

import pytest

from catalog import load_catalog
from selector.job.supply import as_drawn, at_hand, at_hand_words, presumed, racked
from selector.requirement.workshop import Stock
from tests.dog import work

KNOWN = load_catalog()
STEELS = KNOWN.steels


def held(name, condition=None, size=None):
    (steel,) = KNOWN.find(name)
    return racked(Stock(steel=name, condition=condition, size=size), steel, KNOWN)


def in_conditions(bar):
    return tuple(condition.name for condition in bar.conditions)


def hardness_hb(bar):
    (condition,) = bar.conditions
    return condition.hardness_hb.low, condition.hardness_hb.high


@pytest.mark.parametrize(
    ("steel", "condition", "answer"),
    [
        ("c45", "cold-drawn", ("cold-drawn",)),
        ("c45", "normalised", ("hot-rolled",)),
        ("c45", "normalised, black", ("hot-rolled",)),
        ("42crmo4", "prehard", ("prehard",)),
        ("42crmo4", "normalised", ("annealed",)),
        ("115crv3", "hot-rolled", ("annealed",)),
        ("c45", "prehard", ()),
        ("115crv3", "hard-element", ()),
        ("c45", "as it came", ("hot-rolled", "cold-drawn")),
        ("c45", None, ("hot-rolled", "cold-drawn")),
        ("c45", "bright", ("cold-drawn",)),
        ("c45", "black bar", ("hot-rolled",)),
        ("BMS", None, ("cold-drawn",)),
        ("bright mild steel", None, ("cold-drawn",)),
        ("mild steel", None, ("hot-rolled", "cold-drawn")),
        ("linear-shaft", None, ("hard-element",)),
    ],
)
def test_a_bar_is_in_a_condition_its_steel_is_listed_in(steel, condition, answer):
    assert in_conditions(held(steel, condition)) == answer


def test_thin_plain_bar_is_taken_as_bright_unless_it_is_said_to_be_black():
    for slug in ("c45", "080m40", "070m20"):
        assert "hot-rolled" not in in_conditions(held(slug, size=20.0))
        assert "hot-rolled" in in_conditions(held(slug, size=40.0))
        assert in_conditions(held(slug, "black bar", size=20.0)) == ("hot-rolled",)
    assert in_conditions(held("115crv3", size=10.0)) == ("annealed",)


def test_every_steel_with_a_soft_condition_takes_every_soft_bar():
    for slug, steel in STEELS.items():
        soft = {c.name for c in steel.condition} & {"normalised", "hot-rolled", "annealed"}
        if soft:
            assert in_conditions(held(slug, "normalised"))


def test_what_is_judged_in_another_condition_is_said():
    stock = [held("c45", name) for name in ("normalised", "cold-drawn")]
    assert presumed(stock, KNOWN.marks) == ["C45 normalised: judged as hot-rolled bar."]


# Strength grades of BS 970-1; +QT of EN 10083 with Brinell by ISO 18265; sheets of 17-4PH.
@pytest.mark.parametrize(
    ("name", "size", "band"),
    [
        ("EN8Q", 40, (179, 229)),
        ("EN8R", 19, (201, 255)),
        ("EN16R", 100, (201, 255)),
        ("605M36S", 60, (223, 277)),
        ("EN24T", 30, (248, 302)),
        ("817M40T", 100, (248, 302)),
        ("EN24U", 30, (269, 331)),
        ("EN24V", 30, (293, 352)),
        ("EN24W", 20, (311, 375)),
        ("EN24X", 20, (341, 401)),
        ("EN24Z", 20, (444, 444)),
        ("EN24Y", 20, (363, 429)),
        ("708M40T", 40, (248, 302)),
        ("EN3P", 20, (152, 207)),
        ("42CrMo4+QT", 10, (331, 380)),
        ("42CrMo4+QT", 16, (331, 380)),
        ("42CrMo4+QT", 17, (298, 359)),
        ("42CrMo4 V", 80, (271, 331)),
        ("42CrMo4+QT", 200, (225, 271)),
        ("42CrMo4+QT", None, (225, 380)),
        ("C45+QT", 30, (193, 238)),
        ("34CrNiMo6+QT", 30, (325, 383)),
        ("17-4PH H900", 20, (388, 444)),
        ("17-4PH H1150", 20, (277, 352)),
    ],
)
def test_a_mark_of_strength_is_how_hard_the_bar_is(name, size, band):
    bar = held(name, size=size)
    assert in_conditions(bar) == ("prehard",)
    assert hardness_hb(bar) == band


@pytest.mark.parametrize(
    ("name", "condition"),
    [
        ("4140PH", "prehard"),
        ("4140 HT", "prehard"),
        ("C45+C", "cold-drawn"),
        ("1018 CD", "cold-drawn"),
        ("C45+N", "hot-rolled"),
        ("C45+A", "hot-rolled"),
        ("EN24 annealed", "annealed"),
        ("S235JR+AR", "hot-rolled"),
    ],
)
def test_a_bar_named_by_its_condition_is_in_it(name, condition):
    assert in_conditions(held(name)) == (condition,)


@pytest.mark.parametrize("label", ["T", "condition T", "+T", "t"])
def test_a_mark_may_stand_on_the_label(label):
    assert hardness_hb(held("EN24", label, 30)) == (248, 302)


def test_what_a_bar_is_said_to_be_goes_before_its_name():
    assert in_conditions(held("EN24T", "annealed")) == ("annealed",)
    assert hardness_hb(held("EN24T", "V", 30)) == (293, 352)


def test_pre_hardened_as_sold_keeps_the_hardness_of_its_listing():
    listed = next(c for c in STEELS["42crmo4"].condition if c.name == "prehard")
    assert held("42CrMo4 PH").conditions == (listed,)


def test_what_a_mark_is_taken_for_is_said_and_where_the_standard_ends():
    (small,) = presumed([held("EN24V", size=30)], KNOWN.marks)
    assert small == "EN24V: condition V of BS 970, 1000 to 1150 MPa; taken as 293 to 352 HB."
    (large,) = presumed([held("EN24V", size=80)], KNOWN.marks)
    assert large.endswith("The standard has it up to 63 mm: the middle may be softer.")


def test_the_composition_of_a_near_equivalent_is_said():
    (said,) = presumed([held("AISI 4140")], KNOWN.marks)
    assert said.startswith("AISI 4140: judged by the composition of that name. 4140 has 0.75")
    assert presumed([held("42CrMo4")], KNOWN.marks) == []


def test_a_bar_at_hand_is_had_before_any():
    racked = replace(work("60wcrv8"), stock=Stock(steel="60WCrV8"))
    assert at_hand(racked) > at_hand(work("c45")) > at_hand(work("60wcrv8"))
    assert at_hand_words(racked) == "in the rack"


@pytest.mark.parametrize(
    ("size", "low", "high"), [(8.0, 45.0, 50.0), (2.0, 54.0, 59.0), (0.2, 59.0, 60.0)]
)
def test_drawn_wire_is_the_harder_the_thinner_it_is(size, low, high):
    (wire,) = STEELS["music-wire"].condition
    sized = as_drawn(wire, size).hardness_hrc
    assert low <= sized.low <= sized.high <= high
    plain = STEELS["c45"].condition[0]
    assert as_drawn(plain, size) is plain
