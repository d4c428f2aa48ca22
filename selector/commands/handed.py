"""How a sheet is written by a command: made, put in its place whole, and said."""

from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

if TYPE_CHECKING:
    from selector.handover.sheet import Paper


def hand_over(
    template: str, data: Callable[[date, str], dict[str, Any]], out: Path, paper: "Paper"
) -> None:
    """Write a sheet, and say to the side what it does without.

    Parameters
    ----------
    template : str
        Its template.
    data : callable
        Returns what it holds, for a date and a version.
    out : Path
        Where to, its suffix the format.
    paper : str
        "a4" or "letter".
    """
    from selector.handover.sheet import checked_suffix, sheet  # noqa: PLC0415
    from selector.handover.version import version_of  # noqa: PLC0415
    from selector.handover.written import write_whole  # noqa: PLC0415

    today = datetime.now(UTC).astimezone().date()
    made = sheet(template, data(today, version_of()), checked_suffix(out), paper)
    write_whole(out, made.content)
    for remark in made.remarks:
        typer.echo(remark, err=True)
