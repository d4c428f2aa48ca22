"""The tables of the form name what the requirement asks, and when."""

from selector.requirement.question import question
from ui import fields


def asked_somewhere():
    """Every place that a table of the form names, rows by their blocks."""
    lines = (*fields.WHAT, *fields.LOADS, *fields.SELDOM, *fields.JUDGED, fields.SKILL)
    plain = {path for line in lines for path in line}
    zone = {f"zone.{path}" for line in fields.ZONE for path in line}
    rows = {
        f"{block}.{path}"
        for block, (_, of) in fields.ROWS.items()
        for line in of
        for path in line
    }
    return plain | zone | rows


def test_every_place_is_a_question_of_the_requirement():
    tables = (fields._WIDTHS, fields._WHEN, fields._MONEY, fields._SIDE_BY_SIDE)
    for path in asked_somewhere().union(*tables):
        assert question(path) is not None, path
        assert question(path).title, path


def test_what_seldom_is_asked_depends_on_its_row(claw):
    heat = "workshop.heat.1"
    for source, asked in (
        ("hand-torch", {"source", "ceiling", "gas_flow", "tip"}),
        ("kiln", {"source", "ceiling", "chamber"}), (None, {"source"}),
    ):  # fmt: skip
        claw["workshop"]["heat"] = [{"source": source} if source else {}]
        line = fields.ROWS["workshop.heat"][1][0]
        assert {path for path in line if fields.is_asked(claw, f"{heat}.{path}")} == asked
    assert fields.is_asked(claw, "load.torque_over")
    del claw["part"]["section"][1]
    assert not fields.is_asked(claw, "load.torque_over")


def test_what_is_closed_is_no_longer_asked(claw):
    assert fields.is_asked(claw, "zone.1.hardness.min")
    assert fields.is_asked(claw, "zone.1.depth")
    assert not fields.is_asked(claw, "zone.1.mate.hardness")
    claw["zone"][0] = {"section": [1], "wear": "none", "depth": "1 mm"}
    assert not fields.is_asked(claw, "zone.1.hardness.min")
    assert fields.is_asked(claw, "zone.1.depth")


def test_money_is_asked_in_the_currency_of_the_prices():
    assert fields.title("limit.budget") == "A good part may cost, EUR"
    assert fields.title("part.name") == "Name"
