"""A letter as a document for a word processor, to be changed further by hand."""

import io
import json
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from selector.handover.sheet import PAPERS_MM, TEMPLATES, Paper

if TYPE_CHECKING:
    from docx.document import Document
    from docx.text.paragraph import Paragraph

# Fonts that a word processor has, or has another as wide of; the sheet's own may not be there.
SERIF, SANS = "Times New Roman", "Arial"
MARGIN_MM, PICTURE_MM, LOGO_MM = 20.0, 132.0, 14.0
INK, GREY, RED = "16191D", "59626B", "B0341C"
PIXELS_PER_INCH = 200.0


def document(data: dict[str, Any], paper: Paper = "a4") -> bytes:
    """Return a letter as DOCX.

    Parameters
    ----------
    data : dict
        As `made.letter_data` gives it.
    paper : str
        "a4" or "letter".

    Returns
    -------
    bytes
        Headings, paragraphs, a table and the picture as PNG; texts are texts.
    """
    import docx  # noqa: PLC0415 - slow to load
    from docx.shared import Mm, Pt  # noqa: PLC0415

    from selector.handover.harmless import harmless  # noqa: PLC0415

    told = harmless(data)
    made = docx.Document()
    wide, high = PAPERS_MM[paper]
    page = made.sections[0]
    page.page_width, page.page_height = Mm(wide), Mm(high)
    page.left_margin = page.right_margin = Mm(MARGIN_MM)
    page.top_margin = page.bottom_margin = Mm(12.0)
    normal = made.styles["Normal"]
    normal.font.name, normal.font.size = SERIF, Pt(10)
    normal.paragraph_format.space_after = Pt(4)
    made.core_properties.title, made.core_properties.author = _short(told)
    _letterhead(made, told)
    _words(made.add_heading("", level=1), told["reference"], size=12)
    _words(made.add_paragraph(), told["date"], colour=GREY)
    _words(made.add_paragraph(), told["greeting"])
    for section in told["sections"]:
        _section(made, section, told)
    if told["terms"]:
        _head(made, "Terms")
        _words(made.add_paragraph(), " ".join(told["terms"]))
    _signatures(made, told["sign"])
    _words(made.add_paragraph(), " ".join(told["small_print"]), colour=GREY, size=7.5)
    file = io.BytesIO()
    made.save(file)
    return file.getvalue()


def _short(told: dict[str, Any]) -> tuple[str, str]:
    """Return title and author as short as a document's properties hold."""
    return told["title"][:250], told["author"][:250]


def _letterhead(made: "Document", told: dict[str, Any]) -> None:
    """Write who sends it."""
    if told["logo"] is not None:
        _picture(made, bytes(told["logo"]["bytes"]), told["logo"]["kind"], high_mm=LOGO_MM)
    if told["sender"] is not None:
        _words(made.add_paragraph(), told["sender"]["name"], size=17, bold=True)
        _words(made.add_paragraph(), " · ".join(told["sender"]["lines"]), colour=GREY, size=9)


def _section(made: "Document", section: dict[str, Any], told: dict[str, Any]) -> None:
    """Write a section, with the table of ways or the picture where it has them."""
    if section["key"] == "ways" and told["table"] is None:
        return
    _head(made, section["head"])
    if section["key"] == "ways":
        _table(made, told["table"])
    for runs in section["paragraphs"]:
        paragraph = made.add_paragraph()
        for run in runs:
            strange = run["marked"]
            text = f"{run['text']}†" if strange else run["text"]
            _words(paragraph, text, colour=RED if strange else INK, bold=strange)
    if section["key"] == "proposal" and told["picture"] is not None:
        _picture(made, told["picture"]["svg"].encode(), "svg", wide_mm=PICTURE_MM)


def _head(made: "Document", text: str) -> None:
    """Write the head of a section."""
    _words(made.add_heading("", level=2), text, colour=GREY, size=10, bold=True, sans=True)


def _table(made: "Document", told: dict[str, Any]) -> None:
    """Write the ways side by side."""
    heads = ["", *told["heads"]]
    table = made.add_table(rows=1, cols=len(heads), style="Light Shading")
    for cell, head in zip(table.rows[0].cells, heads, strict=True):
        _words(cell.paragraphs[0], head, size=9, bold=True, sans=True)
    for row in told["rows"]:
        cells = table.add_row().cells
        for cell, text in zip(cells, [row["name"], *row["cells"]], strict=True):
            _words(cell.paragraphs[0], text, size=9, sans=True, bold=row["strong"])


def _signatures(made: "Document", signed: Sequence[str]) -> None:
    """Write the lines to sign on, side by side."""
    if signed:
        row = made.add_table(rows=1, cols=len(signed)).rows[0]
        for cell, words in zip(row.cells, signed, strict=True):
            _words(cell.paragraphs[0], f"\n_________________________\n{words}", colour=GREY)


def _words(
    paragraph: "Paragraph",
    text: str,
    *,
    colour: str = INK,
    size: float = 10,
    bold: bool = False,
    sans: bool = False,
) -> None:
    """Write words into a paragraph."""
    from docx.shared import Pt, RGBColor  # noqa: PLC0415

    run = paragraph.add_run(text)
    run.font.size, run.font.color.rgb, run.font.bold = (
        Pt(size),
        RGBColor.from_string(colour),
        bold,
    )
    run.font.name = SANS if sans else SERIF


def _picture(
    made: "Document",
    content: bytes,
    kind: str,
    *,
    wide_mm: float | None = None,
    high_mm: float | None = None,
) -> None:
    """Place a picture as dots, which every word processor shows, whatever kind it was."""
    from docx.shared import Mm  # noqa: PLC0415

    size = {
        name: Mm(value) for name, value in (("width", wide_mm), ("height", high_mm)) if value
    }
    made.add_picture(io.BytesIO(_dots(content, kind)), **size)


def _dots(content: bytes, kind: str) -> bytes:
    """Return a picture as PNG, by the typesetter of the other sheets."""
    import typst  # noqa: PLC0415

    from selector.handover.fonts import fonts, read  # noqa: PLC0415

    made = typst.compile(
        TEMPLATES / "picture.typ",
        format="png",
        ppi=PIXELS_PER_INCH,
        font_paths=read(fonts().folders),
        sys_inputs={"data": json.dumps(list(content)), "kind": kind},
    )
    return bytes(made)
