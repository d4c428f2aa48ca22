"""`temperwright fit`: the fitted coefficients anew, from a table of published figures."""

from collections.abc import Callable
from pathlib import Path
from typing import Annotated

import typer

from selector.commands.terminal import refusing_bad_input

Progress = Callable[[str, float], None] | None


def fit(
    table: Annotated[Path, typer.Argument(metavar="CSV", help="Published figures, CSV.")],
    out: Annotated[Path | None, typer.Option(help="Write there, not to the terminal.")] = None,
) -> None:
    """Fit the coefficients of tempering or hardenability anew and print them as TOML.

    Tempering, one row a reading: source, steel, tempering_time_s, tempering_temperature_c,
    tempered_hrc, c_wt, and mn_wt, si_wt, ni_wt, cr_wt, mo_wt, v_wt where known. Hardenability,
    one row a point of a band: grade, distance_mm, hrc_min, hrc_max, c_wt and the like. Steels
    and laboratories are also left out in turn; the error on those left out goes to stderr.
    """
    from catalog.text import visible  # noqa: PLC0415
    from selector.commands.progress import bar  # noqa: PLC0415
    from selector.handover.written import write_whole  # noqa: PLC0415

    with refusing_bad_input():
        lines = _lines(table)
        fitted = _bands if lines and "hrc_min" in lines[0] else _tempering
        with bar() as progress:
            text, said = fitted(lines, progress)
        text = visible(text)  # comments name the sources as the table spells them
        if out is None:
            typer.echo(text, nl=False)
        else:
            write_whole(out, text.encode())
    typer.echo(said, err=True)


def _tempering(lines: list[str], progress: Progress) -> tuple[str, str]:
    """Return tempering.toml, and how well steels and laboratories left out are predicted."""
    from catalog.text import visible  # noqa: PLC0415
    from selector.metallurgy.fitting import tempering as model  # noqa: PLC0415
    from selector.metallurgy.fitting.reading import enough, readings  # noqa: PLC0415

    given = enough(readings(lines))
    error_hrc = model.mean_error_hrc(given, model.left_out_hrc(given, "steel", progress))
    said = [_said("Steels", error_hrc)]
    laboratories = sorted(set(given.source))
    if len(laboratories) > 1:
        left_out = model.left_out_hrc(given, "source", progress)
        for name in laboratories:
            out = given.source == name
            error_hrc = model.mean_error_hrc(given.where(out), left_out[out])
            said.append(_said(f"Readings of {visible(name)}", error_hrc))
    return model.tempering_toml(given), "\n".join(said)


def _said(left_out: str, error_hrc: float) -> str:
    """Return the sentence on what was left out of the fit."""
    return f"{left_out} left out are predicted within {error_hrc:.2f} HRC on average."


def _bands(lines: list[str], progress: Progress) -> tuple[str, str]:
    """Return the tables of hardenability.toml, and how well grades left out are predicted."""
    from selector.metallurgy.fitting import hardenability as model  # noqa: PLC0415

    given = model.bands(lines)
    left_out = model.leave_one_grade_out_hrc(given, progress)
    return model.hardenability_toml(given), _said("Steels", float(abs(left_out).mean()))


def _lines(path: Path) -> list[str]:
    """Return the lines of a file, refusing one that cannot be read."""
    from selector.errors import Problem, SelectorError  # noqa: PLC0415

    try:
        return path.read_text(encoding="utf-8-sig").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        step = "Give the path of a CSV file of readings."
        got = f"{str(path)!r} ({getattr(error, 'strerror', None) or 'not UTF-8'})"
        raise SelectorError(Problem("table", "a readable text file", got, step)) from error
