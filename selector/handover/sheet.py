"""A sheet of paper: a template of `templates/` filled with data, as PDF or HTML.

Templates get data and never code: a text of the user stays a text whatever it holds. `name.typ`
is the sheet as PDF (typst), `name.html` as a page (Jinja2); both take the same data, which must
hold `title`; `drawings` maps names to SVG texts with their `alt`.
"""

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from selector.errors import Problem, RequirementError
from selector.handover.fonts import fonts, read
from selector.handover.harmless import harmless

if TYPE_CHECKING:
    from jinja2 import Environment

Paper = Literal["a4", "letter"]
TEMPLATES = Path(__file__).parent / "templates"
SUFFIXES = (".pdf", ".html")
# Width and height. [mm]
PAPERS_MM: Mapping[Paper, tuple[float, float]] = {
    "a4": (210.0, 297.0),
    "letter": (215.9, 279.4),
}
TYPST_PAPER: Mapping[Paper, str] = {"a4": "a4", "letter": "us-letter"}
_UNSHOWN = re.compile(r'the text `"(.+?)"` could not be displayed')


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet ready to be written, and what is to be said of it."""

    content: bytes
    remarks: tuple[str, ...] = ()


def checked_suffix(path: Path, suffixes: tuple[str, ...] = SUFFIXES) -> str:
    """Return how the name of a sheet ends.

    Parameters
    ----------
    path : Path
        Where the sheet is to go.
    suffixes : tuple of str
        How it may end.

    Returns
    -------
    str
        For instance ".pdf".

    Raises
    ------
    RequirementError
        When it ends otherwise.
    """
    suffix = path.suffix.lower()
    if suffix not in suffixes:
        rule = f"a {' or '.join(suffixes)} file"
        step = f"Name it for instance sheet{suffixes[0]}."
        raise RequirementError(Problem("--out", rule, repr(str(path)), step))
    return suffix


def sheet(name: str, data: Mapping[str, Any], suffix: str, paper: Paper = "a4") -> Sheet:
    """Return a sheet as the content of a file.

    Parameters
    ----------
    name : str
        Its template: "card" or another of `templates/`.
    data : mapping
        What it holds, of JSON's kinds.
    suffix : str
        ".pdf" or ".html".
    paper : str
        "a4" or "letter".

    Returns
    -------
    Sheet
        The file; said of it is which fonts or letters it does without.

    Raises
    ------
    TypstError
        When a template is wrong: a fault of ours.
    """
    if suffix == ".html":
        return Sheet(_html(name, data, paper).encode())
    return _pdf(name, data, paper)


def _html(name: str, data: Mapping[str, Any], paper: Paper) -> str:
    """Return a sheet as an HTML page that stands alone: no script, nothing fetched."""
    template = _environment().get_template(f"{name}.html")
    return template.render(**{**harmless(data), "paper": paper})


def pages(
    name: str, data: Mapping[str, Any], ppi: float, paper: Paper = "a4"
) -> tuple[bytes, ...]:
    """Return the pages of a sheet as pictures, to be looked at before it is printed.

    Parameters
    ----------
    name : str
        Its template.
    data : mapping
        What it holds, of JSON's kinds.
    ppi : float
        Dots of an inch of paper. [1/in]
    paper : str
        "a4" or "letter".

    Returns
    -------
    tuple of bytes
        PNG, a page each.
    """
    made = _typeset(name, _as_text(data, paper), system=True, format="png", ppi=ppi)
    return tuple(made) if isinstance(made, list) else (made,)


def _pdf(name: str, data: Mapping[str, Any], paper: Paper) -> Sheet:
    """Return a sheet as a tagged PDF with its fonts in it."""
    import typst  # noqa: PLC0415 - slow to load

    there = fonts()
    remarks = [there.remark] if there.remark else []
    text = _as_text(data, paper)

    def made(text: str, *, system: bool) -> bytes:
        return bytes(_typeset(name, text, system=system, pdf_standards=["ua-1"]))

    # A letter that our fonts lack is looked for in those of the machine, and else left out:
    # a PDF for all readers may hold none that it cannot show.
    try:
        return Sheet(made(text, system=False), tuple(remarks))
    except typst.TypstError as error:
        if not _UNSHOWN.search(error.diagnostic):
            raise
    try:
        return Sheet(made(text, system=True), tuple(remarks))
    except typst.TypstError as error:
        lost = set(_UNSHOWN.findall(error.diagnostic))
        remarks.append(f"No font at hand shows {' '.join(sorted(lost))}: written as ?.")
        return Sheet(made(_without(text, lost), system=True), tuple(remarks))


def _as_text(data: Mapping[str, Any], paper: Paper) -> str:
    """Return what a sheet holds as its template reads it."""
    held = {**harmless(data), "paper": TYPST_PAPER[paper]}
    return json.dumps(held, ensure_ascii=False, allow_nan=False)


def _typeset(name: str, text: str, *, system: bool, **how: Any) -> Any:  # noqa: ANN401
    """Return a template set with what it holds, with the fonts of the machine or ours alone."""
    import typst  # noqa: PLC0415 - slow to load

    return typst.compile(
        TEMPLATES / f"{name}.typ",
        root=TEMPLATES,
        font_paths=read(fonts().folders, system=system),
        sys_inputs={"data": text},
        **how,
    )


def _without(text: str, lost: set[str]) -> str:
    """Return a text with a question mark for each letter that no font shows."""
    return text.translate({ord(letter): "?" for run in lost for letter in _plain(run)})


def _plain(run: str) -> str:
    r"""Return a run of letters as the typesetter quotes it, its escapes `\u{…}` undone."""
    return re.sub(r"\\u\{([0-9a-f]+)\}", lambda match: chr(int(match[1], 16)), run)


@cache
def _environment() -> "Environment":
    """Return what fills HTML templates: all values escaped, a name without value is a fault."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined  # noqa: PLC0415

    return Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
