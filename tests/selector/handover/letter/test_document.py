"""A letter as DOCX, read back: its heads, its table, its marks and its pictures."""

import io

import docx
import pytest
from PIL import Image

from selector.handover.identity import Identity, Logo, read_logo
from selector.handover.letter.made import Sender, made
from selector.handover.letter.record import Letter, Row, Section, Table

LETTER = Letter(
    option="a/b/c/d",
    reference="pin, one piece",
    date="1 January 2026",
    greeting="Dear customer,",
    sections=(
        Section(key="duty", head="What it has to do", paragraphs=("It slides.", "A lot.")),
        Section(key="ways", head="Another way", paragraphs=()),
    ),
    table=Table(
        heads=("Proposed", "Cheaper"),
        rows=(Row(name="price", cells=("113 EUR", "77 EUR"), strong=True),),
    ),
    is_offer=True,
    small_print=("Prices are invented for demonstration.",),
)
NAMED = Identity(name="Works", terms=("Open for 30 days.",), signs="A. Smith")


def jpeg(*, headed: bool) -> bytes:
    """Return a JPEG, with or without the head that most programs write."""
    file = io.BytesIO()
    Image.new("RGB", (40, 20), "navy").save(file, "JPEG")
    content = file.getvalue()
    if headed:
        return content
    # The first segment after the two bytes of the start is the head.
    return content[:2] + content[4 + int.from_bytes(content[4:6], "big") :]


def read(letter: Letter, sender: Sender):
    """Return a letter as a word processor reads it."""
    return docx.Document(io.BytesIO(made(letter, sender, None, None, (".docx", "a4")).content))


def test_heads_table_terms_and_signatures_are_there():
    back = read(LETTER, Sender(NAMED))
    heads = {p.text: p.style.name for p in back.paragraphs if p.style.name.startswith("Head")}
    assert heads == {
        "pin, one piece": "Heading 1", "What it has to do": "Heading 2",
        "Another way": "Heading 2", "Terms": "Heading 2",
    }  # fmt: skip
    table, signed = back.tables
    assert [[cell.text for cell in row.cells] for row in table.rows] == [
        ["", "Proposed", "Cheaper"], ["price", "113 EUR", "77 EUR"],
    ]  # fmt: skip
    # A word processor that lacks the sheet's fonts would set it half as wide again.
    names = {run.font.name for p in back.paragraphs for run in p.runs}
    assert names <= {"Times New Roman", "Arial"}
    cells = [cell.text for cell in signed.rows[0].cells]
    text = "\n".join([*(p.text for p in back.paragraphs), *cells])
    for words in ("It slides.", "A lot.", "Open for 30 days.", "for Works, A. Smith",
                  "accepted by the customer", "Prices are invented"):  # fmt: skip
        assert words in text
    assert back.sections[0].page_width.mm == pytest.approx(210.0, abs=0.1)


@pytest.mark.parametrize("headed", [True, False])
def test_a_logo_of_any_kind_is_embedded(headed, tmp_path):
    file = tmp_path / "mark.jpg"
    file.write_bytes(jpeg(headed=headed))
    back = read(LETTER, Sender(NAMED, read_logo(file)))
    (shape,) = back.inline_shapes
    assert shape.height.mm == pytest.approx(14.0, abs=0.1)
    drawn = Logo(kind="svg", content=b'<svg xmlns="http://www.w3.org/2000/svg" width="9" '
                 b'height="9"><rect width="9" height="9"/></svg>')  # fmt: skip
    assert len(read(LETTER, Sender(NAMED, drawn)).inline_shapes) == 1
