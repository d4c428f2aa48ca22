"""The text of our own PDF files, read back a page at a time.

They write every letter as a number of two bytes, and beside each font which letter a number is.
Reading that alone takes a twentieth of the time of a reader that follows every line drawn.
"""

import re
from io import BytesIO

from pypdf import PageObject, PdfReader

# A string holds its own brackets in pairs, here two deep at most, and others escaped.
_BYTE = rb"[^\\()]|\\."
_INNER = rb"\((?:%s)*\)" % _BYTE
_STRING = rb"\(((?:%s|\((?:%s|%s)*\))*)\)" % (_BYTE, _BYTE, _INNER)
# What shows text, in the order of the page: a font taken, a string or pieces of one.
_SHOWN = re.compile(
    rb"/(\w+) [\d.]+ Tf|((?:%s|\[(?:%s|[-\d.\s])*\])\s*T[jJ])" % (_STRING, _STRING), re.DOTALL
)
_PIECE = re.compile(_STRING, re.DOTALL)
_ESCAPE = re.compile(rb"\\([0-7]{1,3}|.)", re.DOTALL)
_LETTERS = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
_PAIR = re.compile(r"<([0-9A-F]{4})> <([0-9A-F]+)>")


def pages_of(content: bytes) -> list[str]:
    """Return the text of each page, a blank between any two pieces of a font."""
    return [_text(page) for page in PdfReader(BytesIO(content)).pages]


def _text(page: PageObject) -> str:
    """Return the text of a page."""
    fonts = {name[1:]: _letters(font) for name, font in page["/Resources"]["/Font"].items()}
    drawn = page.get_contents().get_data()
    assert not re.search(rb"T[jJ]\s", _SHOWN.sub(b"", drawn)), "a text that is not read"
    said, letters = [], {}
    for found in _SHOWN.finditer(drawn):
        if found[1]:
            letters = fonts[found[1].decode()]
            continue
        pieces = b"".join(piece[1] for piece in _PIECE.finditer(found[2]))
        numbers = _ESCAPE.sub(_unescaped, pieces)
        pairs = zip(numbers[::2], numbers[1::2], strict=True)
        said.append("".join(letters[high << 8 | low] for high, low in pairs))
    return " ".join(said)


def _unescaped(found: re.Match[bytes]) -> bytes:
    """Return the byte that an escape in a string stands for."""
    name = found[1]
    return bytes([int(name, 8)]) if name.isdigit() else _LETTERS.get(name, name)


def _letters(font) -> dict[int, str]:
    """Return what each number of a font stands for."""
    table = font["/ToUnicode"].get_data().decode("ascii")
    assert "beginbfrange" not in table
    return {
        int(number, 16): bytes.fromhex(text).decode("utf-16-be")
        for line in re.findall(r"beginbfchar\n(.*?)endbfchar", table, re.DOTALL)
        for number, text in _PAIR.findall(line)
    }
