"""`temperwright quench`: a steel's hardness as quenched, from skin to middle."""

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

    from selector.specimen.record import QuenchedOut


def quench(  # noqa: PLR0913, PLR0917 - one argument an option of the command
    steel: Annotated[str, typer.Argument(help="The steel, by any name.")],
    section: Annotated[
        str, typer.Option(help='"round 30 mm", "flat 8 x 30 mm", "tube 24 x 10 mm" ...')
    ],
    bath: Annotated[str, typer.Option(help="What it is quenched in: water, oil, air ...")],
    heat: HardeningHeat = None,
    catalog: CatalogFolders = None,
    plot: Annotated[
        Path | None, typer.Option(help="Plot hardness by depth there: .png, .svg or .pdf.")
    ] = None,
    as_json: AsJson = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="What computes the hardness, and its source.")
    ] = False,
) -> None:
    """Show hardness as quenched from skin to middle, and how thick the steel hardens through.

    Exit 0 with the points, or with what a bar of unknown make may be; 1 for a steel that no
    quench hardens, 2 when the input is wrong.

    Raises
    ------
    Exit
        With the code above.
    """
    with refusing_bad_input():
        from selector.commands.filter import checked_catalog  # noqa: PLC0415
        from selector.requirement import argument as given  # noqa: PLC0415
        from selector.specimen.quenched import quenched  # noqa: PLC0415

        check_plot(plot)
        known = checked_catalog(catalog or ())
        answer = quenched(
            known,
            given.steel("STEEL", steel, known),
            given.section("--section", section),
            given.medium("--bath", bath, known),
            None if heat is None else given.temperature_c("--heat", heat),
        )
        if answer.points:
            save_plot(plot, lambda: _figure(answer))
    if as_json:
        print_json(answer.model_dump_json(indent=2))
    else:
        _print(answer, explain=explain)
    if plot is not None and not answer.points:
        typer.echo("No plot is written: nothing hardens.", err=True)
    if not answer.points and not answer.likely:
        raise typer.Exit(NO_ANSWER)


def _figure(answer: "QuenchedOut") -> "Figure":
    """Return hardness by depth as a plot."""
    from selector.specimen.plot import quenched_figure  # noqa: PLC0415

    return quenched_figure(answer)


def _print(answer: "QuenchedOut", *, explain: bool) -> None:
    """Print the answer."""
    from selector.specimen.output import (  # noqa: PLC0415
        hardness_words,
        origin_words,
        quench_words,
    )
    from selector.specimen.quenched import through_words  # noqa: PLC0415

    out = console(widest=WIDEST)
    out.print(answer.headline, style="bold" if answer.points else None, markup=False)
    if answer.likely:
        from selector.specimen.mixture import likely_rows  # noqa: PLC0415

        print_rows(("likely steel", "of such bars", "skin"), likely_rows(answer.likely), out)
    if answer.quench is None:
        return
    out.print(f"{quench_words(answer.quench)}\n", markup=False)
    rows = [
        (f"{point.from_surface_mm:.2f} mm", *hardness_words(point.hrc))
        for point in answer.points
    ]
    print_rows(("under skin", "hardness", "range"), rows, out)
    print_section("Hardened to half martensite", through_words(answer), out)
    if answer.origin is not None:
        print_section("Outside the range of the model", answer.origin.validity, out)
    print_section("Taken as", answer.assumed, out)
    if explain and answer.origin is not None:
        print_section("Where the hardness comes from", origin_words(answer.origin), out)
