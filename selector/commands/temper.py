"""`temperwright temper`: a steel's hardness by tempering temperature."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.exit_code import NO_ANSWER
from selector.commands.given import AsJson, CatalogFolders, HardeningHeat
from selector.commands.plotted import check_plot, save_plot
from selector.commands.terminal import (
    WIDEST,
    console,
    print_json,
    print_rows,
    print_section,
    refusing_bad_input,
)

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from selector.specimen.record import TemperedOut


def temper(  # noqa: PLR0913, PLR0917 - one argument an option of the command
    steel: Annotated[str, typer.Argument(help="The steel, by any name.")],
    held: Annotated[
        str | None,
        typer.Option("--for", help="Time of all tempers together; else an hour each."),
    ] = None,
    quenched: Annotated[
        str | None,
        typer.Option(help="Hardness as quenched; else a thin round in its own bath."),
    ] = None,
    to: Annotated[str | None, typer.Option(help="Hardness wanted: which temper?")] = None,
    heat: HardeningHeat = None,
    at: Annotated[
        list[str] | None, typer.Option(help="Only this temper; may be repeated.")
    ] = None,
    catalog: CatalogFolders = None,
    plot: Annotated[
        Path | None, typer.Option(help="Plot hardness by temperature: .png, .svg or .pdf.")
    ] = None,
    as_json: AsJson = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="What computes the hardness, and its source.")
    ] = False,
) -> None:
    """Show hardness by tempering temperature, with its range, colour and brittle windows.

    Exit 0 with the rows, 1 when no temper gives the hardness wanted, 2 when the input is wrong.

    Raises
    ------
    Exit
        With the code above.
    """
    with refusing_bad_input():
        from selector.commands.filter import checked_catalog  # noqa: PLC0415
        from selector.requirement import argument as given  # noqa: PLC0415
        from selector.specimen.aged import aged  # noqa: PLC0415
        from selector.specimen.tempered import tempered, thin_piece  # noqa: PLC0415

        check_plot(plot)
        known = checked_catalog(catalog or ())
        heat_c = None if heat is None else given.temperature_c("--heat", heat)
        time_s = None if held is None else given.duration_s("--for", held)
        fresh_hrc = None if quenched is None else given.hardness_hrc("--quenched", quenched)
        wanted_hrc = None if to is None else given.hardness_hrc("--to", to)
        at_c = [given.temperature_c("--at", text) for text in at or ()]
        asked = given.steel("STEEL", steel, known)
        if asked.aged is not None and heat_c is None and fresh_hrc is None:
            answer = aged(known, asked, time_s, wanted_hrc, at_c)
        else:
            piece = thin_piece(known, asked, heat_c)
            answer = tempered(piece, time_s, fresh_hrc, wanted_hrc, at_c)
        save_plot(plot, lambda: _figure(answer))
    if as_json:
        print_json(answer.model_dump_json(indent=2))
    else:
        _print(answer, explain=explain)
    if answer.wanted is not None and answer.wanted.temperature_c is None:
        raise typer.Exit(NO_ANSWER)


def _figure(answer: "TemperedOut") -> "Figure":
    """Return hardness by temperature as a plot."""
    from selector.specimen.plot import tempered_figure  # noqa: PLC0415

    return tempered_figure(answer)


def _print(answer: "TemperedOut", *, explain: bool) -> None:
    """Print the answer."""
    from selector.specimen.output import hardness_words, origin_words  # noqa: PLC0415

    out = console(widest=WIDEST)
    out.print(answer.headline, style="bold", markup=False)
    if answer.wanted is not None:
        out.print(answer.wanted.text, markup=False)
    out.print()
    rows = [
        (
            f"{row.temperature_c:.0f} °C",
            *hardness_words(row.hrc),
            row.colour or "",
            "brittle" if row.embrittled else "",
        )
        for row in answer.rows
    ]
    print_rows(("temper", "hardness", "range", "colour", ""), rows, out)
    brittle = [
        f"{window.low_c:.0f} to {window.high_c:.0f} °C ({window.source}, {window.at})"
        for window in answer.embrittlement
    ]
    print_section("Brittle if tempered at", brittle, out)
    print_section("Outside the range of the model", answer.origin.validity, out)
    print_section("Taken as", answer.assumed, out)
    if explain:
        print_section("Where the hardness comes from", origin_words(answer.origin), out)
