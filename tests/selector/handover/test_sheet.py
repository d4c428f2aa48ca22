from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from selector.errors import RequirementError
from selector.handover.sheet import TEMPLATES, checked_suffix, sheet

HOSTILE = (
    '#strong[x] $x$ <script>alert("a")</script> & {{ 7*7 }} `code` *b* _i_ @ref \\ //',
    "escape \x1b[31m bell \x07 nul \x00 tab\t",
    "turned \u202eround\u202c \u2066x\u2069",
    "mixed שלום مرحبا",
    "你好 \U0001f600",
    "W" * 400,
    "a long name of many words " * 16,
)


def data(text: str) -> dict:
    return {
        "title": f"Title {text}",
        "subtitle": text,
        "picture": None,
        "paragraphs": [text, "Ø22 ≥ 5 µm −3 °C"],
        "lines": [{"number": 1, "action": text, "means": text, "check": text}],
        "foot": [text, "", "page 1"],
    }


def text_of(content: bytes, tmp_path: Path) -> str:
    (tmp_path / "sheet.pdf").write_bytes(content)
    return "\n".join(page.extract_text() for page in PdfReader(tmp_path / "sheet.pdf").pages)


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_hostile_text_stays_text(text, paper, tmp_path):
    made = sheet("paragraph", data(text), ".pdf", paper)
    shown = text_of(made.content, tmp_path)
    assert "Ø22 ≥ 5 µm −3 °C" in shown
    page = sheet("paragraph", data(text), ".html", paper).content.decode()
    assert "<script>" not in page
    assert "\x1b" not in page
    assert "49" not in page
    assert "\u202e" not in page


def test_markup_is_printed_as_it_is_written(tmp_path):
    shown = text_of(sheet("paragraph", data("#strong[x] $y$ <b>"), ".pdf").content, tmp_path)
    assert "#strong[x] $y$ <b>" in shown
    page = sheet("paragraph", data("#strong[x] $y$ <b>"), ".html")
    assert "#strong[x] $y$ &lt;b&gt;" in page.content.decode()


def test_a_pdf_is_tagged_titled_and_holds_its_fonts(tmp_path):
    (tmp_path / "sheet.pdf").write_bytes(sheet("paragraph", data("plain"), ".pdf").content)
    reader = PdfReader(tmp_path / "sheet.pdf")
    assert reader.metadata.title == "Title plain"
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
    fonts = reader.pages[0]["/Resources"]["/Font"]
    assert any("SourceSansPro" in fonts[name]["/BaseFont"] for name in fonts)


def test_paper_is_as_asked():
    wide = {
        paper: PdfReader(
            BytesIO(sheet("paragraph", data(""), ".pdf", paper).content)
        ).pages[0].mediabox.width
        for paper in ("a4", "letter")
    }  # fmt: skip
    assert float(wide["letter"]) > float(wide["a4"])


def test_letters_that_no_font_shows_are_said():
    made = sheet("paragraph", data("\U000f0000"), ".pdf")
    assert len(made.remarks) == 1
    assert "No font at hand shows" in made.remarks[0]


def test_fonts_that_are_missing_are_said(monkeypatch):
    monkeypatch.setattr("selector.handover.fonts._folder", lambda _: None)
    made = sheet("paragraph", data("plain"), ".pdf")
    assert "Source Sans Pro and Source Serif Pro not found" in made.remarks[0]
    assert made.content.startswith(b"%PDF")


def test_a_sheet_is_pdf_or_html_by_its_name():
    assert sheet("paragraph", data("x"), ".pdf").content.startswith(b"%PDF")
    assert sheet("paragraph", data("x"), ".html").content.startswith(b"<!DOCTYPE html>")
    assert checked_suffix(Path("a/Card.PDF")) == ".pdf"
    with pytest.raises(RequirementError, match=r"--out must be a .pdf or .html file.*card.doc"):
        checked_suffix(Path("card.doc"))


def test_templates_fetch_nothing():
    for template in TEMPLATES.iterdir():
        text = template.read_text(encoding="utf-8")
        assert "http" not in text.replace("http-equiv", ""), template
        assert "@preview" not in text, template
