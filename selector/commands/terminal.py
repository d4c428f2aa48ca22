"""What all commands share: the terminal, and how bad input ends (exit 2, no traceback)."""

import json
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from textwrap import fill
from typing import TYPE_CHECKING

import typer

from selector.commands.exit_code import BAD_INPUT

if TYPE_CHECKING:
    from rich.console import Console

# Figures stand to the right of their names.
NAMED = 14
# Of a table of few columns and what stands below it.
WIDEST = 100


def console(*, stderr: bool = False, widest: int = 110) -> "Console":
    """Return a terminal that is plain, and `widest` columns wide, where the output is none."""
    from rich.console import Console  # noqa: PLC0415

    width = None if sys.stdout.isatty() else widest
    return Console(stderr=stderr, highlight=False, width=width, soft_wrap=False)


@contextmanager
def refusing_bad_input() -> Iterator[None]:
    """Turn the errors of bad input into their lines on stderr and exit code 2."""
    from catalog import CatalogError  # noqa: PLC0415
    from catalog.text import visible  # noqa: PLC0415
    from selector.errors import SelectorError  # noqa: PLC0415

    try:
        yield
    except (SelectorError, CatalogError) as error:
        typer.echo(visible(str(error)), err=True)
        raise typer.Exit(BAD_INPUT) from error


def print_json(text: str) -> None:
    """Print JSON; where the stream cannot hold its letters, escaped as JSON allows.

    Parameters
    ----------
    text : str
        JSON.
    """
    try:
        text.encode(sys.stdout.encoding or "utf-8")
    except UnicodeEncodeError:
        text = json.dumps(json.loads(text), indent=2)
    typer.echo(text)


def print_paragraph(text: str, out: "Console", indent: int = 3) -> None:
    """Print a paragraph whose later lines stand further in than its first.

    Parameters
    ----------
    text : str
        Plain text: brackets are only brackets.
    out : Console
        Where to.
    indent : int
        Blanks before the first line.
    """
    _print_filled(text, " " * indent, " " * (indent + 2), out)


def print_section(head: str, texts: Iterable[str], out: "Console") -> None:
    """Print paragraphs under a head, with a blank line after; nothing where there are none.

    Parameters
    ----------
    head : str
        The head.
    texts : iterable of str
        Plain text.
    out : Console
        Where to.
    """
    texts = list(texts)
    if not texts:
        return
    out.print(head, style="bold")
    for text in texts:
        print_paragraph(text, out)
    out.print()


def print_rows(heads: tuple[str, ...], rows: Iterable[tuple[str, ...]], out: "Console") -> None:
    """Print a narrow table under its heads, with a blank line after.

    Parameters
    ----------
    heads : tuple of str
        Of the columns.
    rows : iterable of tuple of str
        Plain text, as many as there are heads.
    out : Console
        Where to.
    """
    table = [heads, *rows]
    widths = [max(len(cell) for cell in column) for column in zip(*table, strict=True)]
    for number, row in enumerate(table):
        cells = (cell.ljust(wide) for cell, wide in zip(row, widths, strict=True))
        line = f"   {'  '.join(cells)}".rstrip()
        out.print(line, style=None if number else "bold", markup=False, soft_wrap=True)
    out.print()


def print_figure(name: str, text: str, out: "Console") -> None:
    """Print a figure beside its name; what does not fit goes under it.

    Parameters
    ----------
    name, text : str
        Plain text: brackets are only brackets.
    out : Console
        Where to.
    """
    _print_filled(text, f"   {name}".ljust(NAMED), " " * NAMED, out)


def _print_filled(text: str, first: str, later: str, out: "Console") -> None:
    """Print text in the width there is; a long word stays whole, so that it can be copied."""
    filled = fill(
        text, out.width, initial_indent=first, subsequent_indent=later,
        break_on_hyphens=False, break_long_words=False,
    )  # fmt: skip
    out.print(filled, markup=False, soft_wrap=True)
