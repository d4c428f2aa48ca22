"""What `--explain` adds to a command: where each number comes from."""

from typing import TYPE_CHECKING

from selector.commands.terminal import print_section

if TYPE_CHECKING:
    from pydantic import BaseModel
    from rich.console import Console


def print_origins(record: "BaseModel", out: "Console") -> None:
    """Print every figure of a record with its relation, inputs and source.

    Parameters
    ----------
    record : BaseModel
        What the command answered.
    out : Console
        Where to.
    """
    from selector.advice.origin import origins  # noqa: PLC0415

    print_section("Where the numbers come from", origins(record), out)
