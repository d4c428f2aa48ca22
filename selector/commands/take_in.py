"""`temperwright import`: a stockholder's price list or your rack, from CSV."""

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from selector.commands.exit_code import BAD_INPUT
from selector.commands.given import CatalogFolders
from selector.commands.terminal import refusing_bad_input

if TYPE_CHECKING:
    from catalog.intake import Line, Row

_BAR = ("steel", "size", "condition", "evidence")


def take_in(
    what: Annotated[Literal["prices", "stock"], typer.Argument(help="What the list holds.")],
    file: Annotated[Path, typer.Argument(help="CSV with a column steel.")],
    out: Annotated[
        Path | None,
        typer.Option(help="Write it here: prices.toml of your folder, or bars for a part."),
    ] = None,
    catalog: CatalogFolders = None,
) -> None:
    """Show a price list or a rack line by line; with --out, write it if every line is sound."""
    with refusing_bad_input():
        from catalog.intake import price_file, price_lines, read_rows, stock_lines  # noqa: PLC0415
        from selector.commands.filter import checked_catalog  # noqa: PLC0415

        known, rows = checked_catalog(catalog or ()), read_rows(file)
        priced = what == "prices"
        lines = price_lines(rows, known) if priced else stock_lines(rows, known, _fault)
        text = price_file(known.prices, lines) if priced else _bars(rows.values())
    refused = [line for line in lines if line.refused is not None]
    _show(lines, f"{known.prices.currency} a kg" if priced else "")
    if refused or not lines:
        typer.echo(f"{len(refused)} of {len(lines)} lines refused: nothing written.", err=True)
        raise typer.Exit(BAD_INPUT)
    if out is None:
        typer.echo(f"{len(lines)} lines sound. `--out FILE` writes them.")
        return
    with refusing_bad_input():
        from selector.handover.written import write_whole  # noqa: PLC0415

        write_whole(out, text.encode())
    typer.echo(f"{len(lines)} lines written to {out}.")


def _show(lines: "list[Line]", unit: str) -> None:
    """Print what becomes of each line, and the reason of each refusal."""
    from catalog.text import visible  # noqa: PLC0415

    for line in lines:
        if line.taken is None:
            said, wrong = f"{line.number}: refused: {line.refused} ({line.text})", True
        elif unit:
            said, wrong = f"{line.number}: {line.taken[0]} {line.taken[1]:g} {unit}", False
        else:
            said, wrong = f"{line.number}: {line.text}", False
        typer.echo(visible(said), err=wrong)


def _bar(row: "Row") -> dict[str, str]:
    """Return what a line says of a bar; a size without a unit is in millimetres."""
    bar = {key: row[key] for key in _BAR if row.get(key)}
    if bar.get("size", "").replace(".", "", 1).isdigit():
        bar["size"] += " mm"
    return bar


def _fault(row: "Row") -> str:
    """Return what is wrong with a bar by the rules of a requirement, or nothing."""
    from pydantic import TypeAdapter  # noqa: PLC0415

    from selector.errors import RequirementError  # noqa: PLC0415
    from selector.requirement.read import value_from  # noqa: PLC0415
    from selector.requirement.workshop import Stock  # noqa: PLC0415

    try:
        value_from(TypeAdapter(Stock), _bar(row), "bar")
    except RequirementError as error:
        return "; ".join(str(error).splitlines())
    return ""


def _bars(rows: Iterable["Row"]) -> str:
    """Return a rack as it stands in the file of a part."""
    import json  # noqa: PLC0415

    # A string of JSON is one of TOML.
    tables = (
        "\n".join(
            [
                "[[workshop.stock]]",
                *(f"{key} = {json.dumps(value)}" for key, value in bar.items()),
            ]
        )
        for bar in map(_bar, rows)
    )
    return "\n\n".join(tables) + "\n"
