"""What is sold, or lies in the rack, can be cut to the part or not."""

from dataclasses import replace

import pytest

from selector.job.ready_hard import TURNED_HRC, delivered_hrc
from selector.job.sold import (
    is_forged,
    is_used_as_sold,
    stock_rule,
    too_thin,
    unfit_bar,
)
from selector.requirement import requirement_from
from selector.requirement.workshop import Stock
from tests.dog import asked, varied, work

ROUND = {"shape": "round", "size": 12, "length": 60}
FLAT = {"shape": "flat", "size": 2, "width": 20, "length": 120}


def plain(*sections, **changes):
    """Return a requirement of these sections, the first worked, without features."""
    zones = [{"section": [n + 1], "wear": "none"} for n in range(len(sections))]
    given = {"part.section": list(sections), "part.feature": [], "zone": zones, "load": {
        "impact": "none", "cycles": "static"}}  # fmt: skip
    return requirement_from(varied({**given, **changes}))


def sold(treatment, **changes):
    """Return a treatment with its supply condition altered."""
    condition = treatment.condition.model_copy(update=changes)
    return type(treatment)(
        treatment.steel, condition, treatment.route, medium=treatment.medium,
        source=treatment.source, stock=treatment.stock,
    )  # fmt: skip


STRIP = work("c75s", "prehard-bar", None, None, condition="prehard")


@pytest.mark.parametrize(
    ("sections", "more", "word"),
    [
        ([FLAT], {}, None),
        ([FLAT], {"part.feature": [{"kind": "edge", "at": 0}]}, None),
        ([FLAT], {"part.feature": [{"kind": "thread", "at": 5}]}, "cannot be cut"),
        ([ROUND], {}, "no round bar"),
    ],
    ids=["flat", "ground edge", "thread", "round"],
)
def test_plate_bought_hard_serves_flat_parts_alone(sections, more, word):
    assert delivered_hrc(STRIP.condition) > TURNED_HRC
    gate = stock_rule(plain(*sections, **more), STRIP)
    assert (gate is None) == (word is None)
    assert word is None or word in gate.text


WEAR_PLATE = work("wear-plate-400", "prehard-bar", None, None, condition="prehard")


@pytest.mark.parametrize(
    ("name", "plate", "thick", "bends"),
    [
        ("V-spring of a lock", STRIP, 2, False),
        ("V-spring of a lock", WEAR_PLATE, 6, False),
        ("V-spring of a lock", work("c75s", "as-bought", None, None), 2, True),
        ("Flat spring", STRIP, 2, True),
    ],
    ids=["spring strip", "wear plate", "soft strip", "laid flat"],
)
def test_strip_bought_hard_is_not_bent_sharp(name, plate, thick, bends):
    gate = stock_rule(plain({**FLAT, "size": thick}, **{"part.name": name}), plate)
    assert (gate is None) == bends
    assert bends or "bent sharp" in gate.text


def test_soft_plate_gives_discs_as_thick_as_it_is():
    plate = sold(work("100mncrw4", "as-bought", None, None), shapes=("flat",))
    thick = plate.condition.size_mm.high
    disc = {"shape": "round", "size": 3 * thick, "length": thick - 1}
    assert stock_rule(plain(disc), plate) is None
    assert "no round bar" in stock_rule(plain(ROUND), plate).text
    assert "sold up to" in stock_rule(plain({**disc, "length": thick + 1}), plate).text


def test_hard_wire_is_one_straight_round():
    wire = sold(STRIP, shapes=("round",))
    thinner = {**ROUND, "size": 1.5}
    assert stock_rule(plain({**ROUND, "size": 2}), wire) is None
    gate = stock_rule(plain({**ROUND, "size": 2}, thinner), wire)
    assert gate.text == "bar bought hard is one plain round; this part is not"


@pytest.mark.parametrize(
    ("name", "fits"),
    [
        ("Clevis bolts", True),
        ("Bolt for a clevis", True),
        ("Bolted shaft", False),
        ("Pump shaft", False),
        ("Spanner for a bolt", False),
        ("Scriber from an old bolt", False),
        ("Bush of a bolt", False),
    ],
)
def test_what_is_sold_ready_made_is_for_such_parts(name, fits):
    bolt = sold(work("42crmo4", "prehard-bar", None, None, "prehard"), sold_for=("bolt",))
    gate = stock_rule(plain(ROUND, **{"part.name": name}), bolt)
    assert (gate is None) == fits
    assert fits or gate.text == "sold as a bolt, ready made; this part is none"


def test_a_turned_part_is_turned_from_bar_that_can_be_turned():
    assert stock_rule(asked(), work("42crmo4", "local-torch", condition="prehard")) is None


def test_a_coil_spring_is_wound_of_wire_as_thick_as_it_is():
    bar = sold(work("835m30", "prehard-bar", None, None, condition="prehard"))
    assert bar.condition.size_mm.low > ROUND["size"]
    assert stock_rule(plain(ROUND), bar) is None
    gate = stock_rule(plain(ROUND, **{"part.shape_class": "coil-spring"}), bar)
    assert "a spring is wound" in gate.text


@pytest.mark.parametrize(
    ("heat", "size", "fits"),
    [("forge", 30.0, True), ("charcoal-forge", 30.0, True), ("oxy-propane", 30.0, False),
     ("forge", 26.0, False), ("oxy-propane", 36.0, True)],
)  # fmt: skip
def test_a_smith_draws_a_square_head_out_of_a_thinner_round(heat, size, fits):
    shop = {"workshop.heat": [{"source": heat}]}
    head = {"shape": "square", "size": 25, "length": 90}
    wanted = plain({"shape": "round", "size": 12, "length": 60}, head, **shop)
    black = {"name": "hot-rolled", "shapes": ("round",), "surface": "black"}
    rolled = STRIP.condition.model_copy(update=black)
    bar = Stock(steel="C55", size=size)
    assert (unfit_bar(wanted, bar, rolled) is None) == fits
    assert is_forged(wanted, bar, rolled) == (fits and size < 35.0)
    hard = rolled.model_copy(update={"name": "prehard"})
    assert not is_forged(wanted, bar, hard)


def test_bar_as_thick_as_a_hexagon_is_hexagon_bar_where_it_is_rolled():
    part = plain(
        {"shape": "round", "size": 8, "length": 20},
        {"shape": "hexagon", "size": 16, "length": 90},
    ).part
    bar = Stock(steel="C55", size=16)
    rolled = STRIP.condition.model_copy(update={"shapes": ("round",), "surface": "black"})
    ground = rolled.model_copy(update={"surface": "ground"})
    assert too_thin(part, bar, rolled) is None
    assert too_thin(part, bar, ground) is not None


@pytest.mark.parametrize(
    ("sections", "shapes", "bar", "takes"),
    [
        ([{"shape": "round", "size": 20, "length": 80}], ("round",), 10, 20),
        ([{"shape": "round", "size": 20, "length": 80}], ("round",), 20, None),
        ([{"shape": "round", "size": 20, "length": 80}], ("round",), None, None),
        ([{"shape": "square", "size": 10, "length": 80}], ("round", "square"), 10, None),
        ([{"shape": "square", "size": 10, "length": 80}], ("round",), 12, 14.2),
        ([{"shape": "hexagon", "size": 10, "length": 80}], ("round",), 11, 11.6),
        ([FLAT], ("round", "flat"), 2, None),
        ([FLAT], ("round",), 12, 20),
        ([{"shape": "round", "size": 60, "length": 12}], ("round", "flat"), 12, None),
        ([{"shape": "round", "size": 60, "length": 12}], ("round",), 12, 60),
        ([ROUND, {"shape": "square", "size": 10, "length": 15}], ("round", "square"), 13, 14.2),
        ([FLAT, {"shape": "square", "size": 10, "length": 15}], ("round", "flat"), 10, None),
        ([FLAT, {"shape": "round", "size": 10, "length": 90}], ("round", "flat"), 10, None),
        ([FLAT, {"shape": "round", "size": 10, "length": 90}], ("round", "flat"), 8, 10),
        ([FLAT, {"shape": "round", "size": 10, "length": 90}], ("round",), 10, 20),
        ([FLAT, {"shape": "square", "size": 20, "length": 15}], ("round", "flat"), 20, None),
    ],
    ids=["thin", "as thick", "no size", "square bar", "square of round", "hexagon of round",
         "strip", "flat of round", "disc of plate", "disc of round", "square end",
         "square end of plate", "round stem of plate", "plate thinner than its stem",
         "no plate sold", "square body"],
)  # fmt: skip
def test_a_bar_of_the_rack_is_as_thick_as_the_part_takes(sections, shapes, bar, takes):
    part = plain(*sections).part
    condition = STRIP.condition.model_copy(update={"shapes": shapes})
    gate = too_thin(part, Stock(steel="C75S", size=bar), condition)
    assert (gate is None) == (takes is None)
    if takes is not None:
        assert gate.text == f"the bar in the rack is {bar} mm; the part takes {takes:g} mm"


@pytest.mark.parametrize(
    ("name", "serves"), [("Pin", True), ("Spinning tool, ball end", False)]
)
def test_no_form_is_ground_into_a_bought_shaft(name, serves):
    pin = {"shape": "round", "size": 12, "length": 60}
    shaft = work("linear-shaft", "buy-hard-element", None, None, condition="hard-element")
    gate = stock_rule(plain(pin, **{"part.name": name}), shaft)
    assert (gate is None) is serves


def test_what_is_sold_for_a_purpose_is_used_as_it_comes_or_made_over():
    wire = work("music-wire", "prehard-bar", None, None, condition="prehard")
    assert is_used_as_sold(wire)
    assert not is_used_as_sold(STRIP)


@pytest.mark.parametrize(("bar", "refused"), [(None, True), ({"size": "30 mm"}, False)])
def test_bar_is_not_bought_hardened_to_be_hardened_again_all_over(bar, refused):
    again = work("817m40", "through-torch", condition="prehard")
    held = None if bar is None else Stock(steel="EN24T", **bar)
    gate = stock_rule(plain(ROUND), replace(again, stock=held))
    assert (gate is not None) is refused
    assert gate is None or gate.text == "bought soft where all of it is hardened after"


def test_the_end_of_bar_bought_hardened_may_be_hardened_again():
    assert stock_rule(plain(ROUND), work("817m40", "local-torch", condition="prehard")) is None


def test_a_smith_spreads_a_chisel_end_out_of_round_bar():
    bit = {"shape": "flat", "size": 8, "width": 32, "length": 45}
    bar = {"shape": "round", "size": 28, "length": 600}
    steel = work("c55", "local-torch", "water", None, "hot-rolled")
    for fire, wide, forged in (
        ("forge", 32, True),
        ("hand-torch", 32, False),
        ("forge", 20, False),
    ):
        wanted = plain({**bit, "width": wide}, bar, **{"workshop.heat": [{"source": fire}]})
        held = Stock(steel="EN9", size=28.0)
        assert is_forged(wanted, held, steel.condition) is forged


@pytest.mark.parametrize(
    ("steel", "thick", "refused"),
    [
        ("30crnimo8", 3, True),
        ("55nicrmov7", 4, True),
        ("42crmo4", 6, False),
        ("42crmo4", 3, True),
        ("c75s", 1, False),
        ("wear-plate-400", 4, False),
    ],
)
def test_thin_flats_are_not_milled_out_of_thick_bar_bought_hard(steel, thick, refused):
    part = plain({"shape": "flat", "size": thick, "width": 12, "length": 40})
    gate = stock_rule(part, work(steel, "prehard-bar", None, None, condition="prehard"))
    assert (gate is not None and "nobody mills it" in gate.text) is refused


def test_a_pin_is_turned_out_of_thick_bar_bought_hard():
    part = plain({"shape": "round", "size": 4, "length": 40})
    assert (
        stock_rule(part, work("42crmo4", "prehard-bar", None, None, condition="prehard"))
        is None
    )


@pytest.mark.parametrize("section", [{"shape": "flat", "size": 10, "width": 65, "length": 450}])
def test_spring_wire_is_no_flat_bar(section):
    wire = work("54sicr6", "prehard-bar", None, None, condition="prehard")
    assert stock_rule(plain(section), wire) is not None
