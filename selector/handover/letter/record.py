"""The shape of a letter as plain data: what templates are filled with."""

from typing import Literal

from selector.record import OptionOut, Plain

Tone = Literal["brief", "full"]
# What a section is called in the editable text and stands for in the letter.
Key = Literal["duty", "proposal", "ways", "difference", "check", "rests", "referral", "own"]


class Way(Plain):
    """One way to make the part: the one proposed, or another of its kind."""

    kind: str
    option: OptionOut


class Section(Plain):
    """A side head and its paragraphs; the ways have their table, too."""

    key: Key
    head: str
    paragraphs: tuple[str, ...]


class Row(Plain):
    """A row of the table of ways, a cell for each way.

    `strong` cells are set large, of a `bold` row the first one is set bold.
    """

    name: str
    cells: tuple[str, ...]
    strong: bool = False
    bold: bool = False


class Table(Plain):
    """The ways side by side, the proposed one first."""

    heads: tuple[str, ...]
    rows: tuple[Row, ...]


class Letter(Plain):
    """A letter before it is set: all that is printed but letterhead and picture."""

    option: str | None
    reference: str
    date: str
    greeting: str
    sections: tuple[Section, ...]
    table: Table | None
    is_offer: bool
    small_print: tuple[str, ...]
