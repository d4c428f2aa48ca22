"""What all commands share: the terminal, and how bad input ends (exit 2, no traceback)."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

import typer

if TYPE_CHECKING:
    from rich.console import Console

BAD_INPUT = 2


def console(*, stderr: bool = False) -> "Console":
    """Return a terminal that is plain where the output is not one."""
    from rich.console import Console  # noqa: PLC0415

    width = None if sys.stdout.isatty() else 110
    return Console(stderr=stderr, highlight=False, width=width, soft_wrap=False)


@contextmanager
def refusing_bad_input() -> Iterator[None]:
    """Turn the errors of bad input into their lines on stderr and exit code 2."""
    from catalog import CatalogError  # noqa: PLC0415
    from selector.errors import SelectorError  # noqa: PLC0415

    try:
        yield
    except (SelectorError, CatalogError) as error:
        typer.echo(str(error), err=True)
        raise typer.Exit(BAD_INPUT) from error
