"""The page of an advice as text, and whether it is one page."""

import io

from rich.console import Console

from selector.commands.page import MOST_LINES, print_advice

WIDTH = 110


def page(record, width=WIDTH, **more):
    written = io.StringIO()
    print_advice(record, Console(file=written, width=width), **more)
    return written.getvalue()


def assert_one_page(record):
    lines = page(record).rstrip("\n").split("\n")
    assert len(lines) <= MOST_LINES == 60
    assert max(map(len, lines)) <= WIDTH
    first = [c for c in record.cautions if c.first_screen]
    assert len(first) <= 6
    assert sum(c.harm == "kills" for c in first) <= 3
    assert not any("nan" in line.split() for line in lines)
