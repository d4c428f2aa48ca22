"""`temperwright fit`: the tempering coefficients anew, from a table of readings."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.terminal import refusing_bad_input

if TYPE_CHECKING:
    from selector.metallurgy.reading import Readings


def fit(
    table: Annotated[
        Path, typer.Argument(metavar="CSV", help="Readings of tempered hardness, CSV.")
    ],
    out: Annotated[Path | None, typer.Option(help="Write there, not to the terminal.")] = None,
) -> None:
    """Fit the tempering coefficients to a table of readings and print them as TOML.

    One row a reading: source, steel, tempering_time_s, tempering_temperature_c, tempered_hrc,
    c_wt, and mn_wt, si_wt, ni_wt, cr_wt, mo_wt, v_wt where they are known. The steels are also
    left out in turn, and how well the rest foretells them is told on stderr.
    """
    from selector.commands.progress import bar  # noqa: PLC0415

    with refusing_bad_input():
        from selector.metallurgy.fit import (  # noqa: PLC0415
            leave_one_steel_out_hrc,
            mean_error_hrc,
            tempering_toml,
        )

        given = _given(table)
        text = tempering_toml(given)
        with bar() as progress:
            left_out = leave_one_steel_out_hrc(given, progress)
        if out is None:
            typer.echo(text, nl=False)
        else:
            _write(out, text)
    error = mean_error_hrc(given, left_out)
    typer.echo(f"Steels left out are foretold within {error:.2f} HRC on average.", err=True)


def _given(path: Path) -> "Readings":
    """Return the readings of a file, refusing one that cannot be read."""
    from selector.errors import Problem, SelectorError  # noqa: PLC0415
    from selector.metallurgy.reading import enough, readings  # noqa: PLC0415

    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        step = "Give the path of a CSV file of readings."
        got = f"{str(path)!r} ({getattr(error, 'strerror', None) or 'not UTF-8'})"
        raise SelectorError(Problem("table", "a readable text file", got, step)) from error
    return enough(readings(text.splitlines()))


def _write(path: Path, text: str) -> None:
    """Write a file, refusing a place where that cannot be done."""
    from selector.errors import Problem, SelectorError  # noqa: PLC0415

    try:
        path.write_text(text, encoding="utf-8")
    except OSError as error:
        got = f"{str(path)!r} ({error.strerror})"
        step = "Name a file in a folder that exists."
        raise SelectorError(
            Problem("--out", "a file that can be written", got, step)
        ) from error
