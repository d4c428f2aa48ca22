"""A letter on a part given in inches has inches, °F and lb ft first, and may be changed."""

from selector.handover.letter.editable import strange_figures
from selector.handover.letter.record import Letter, Row, Section, Table
from selector.handover.letter.units import in_units
from tests.dog import asked

INCH = asked(
    {"part.section.0.size": "1 in", "part.section.0.length": "1 1/4 in",
     "part.section.1.size": "1 in", "part.section.1.length": "6 in"}
).part  # fmt: skip
LETTER = Letter(
    option="a/b/c/d",
    reference="pin, one piece",
    date="1 January 2026",
    greeting="Dear customer,",
    sections=(
        Section(key="duty", head="What it has to do",
                paragraphs=("It carries 90 N m; let it down at 225 °C, 1.5 mm deep.",)),
    ),
    table=Table(heads=("Proposed",), rows=(Row(name="hard", cells=("1.5 mm",)),)),
    is_offer=True,
    small_print=(),
)  # fmt: skip


def test_a_part_in_mm_has_its_letter_as_composed():
    assert in_units(LETTER, asked().part) is LETTER


def test_a_part_in_inches_has_those_first():
    made = in_units(LETTER, INCH)
    (section,) = made.sections
    said = (
        "It carries 66.4 lb ft / 90 N m; let it down at 435 °F / 225 °C, "
        "0.059 in / 1.5 mm deep."
    )
    assert section.paragraphs == (said,)
    assert made.table.rows[0].cells == ("0.059 in / 1.5 mm",)
    assert made.option == LETTER.option


def test_a_figure_in_inches_that_the_advice_does_not_hold_is_marked():
    made = in_units(LETTER, INCH)
    (section,) = made.sections
    assert strange_figures(made, made) == ()
    text = section.paragraphs[0].replace("435 °F", "450 °F").replace("0.059 in", "0.1 in")
    changed = made.model_copy(
        update={"sections": (section.model_copy(update={"paragraphs": (text,)}),)}
    )
    assert [line.split(": ")[1] for line in strange_figures(changed, made)] == [
        "450 °F",
        "0.1 in",
    ]
