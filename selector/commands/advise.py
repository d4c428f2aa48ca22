"""`temperwright advise`: the main job."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from selector.commands.given import AsJson, CatalogFolders
from selector.commands.terminal import console, print_json, refusing_bad_input

if TYPE_CHECKING:
    from selector.advice.record import AdviceOut

NO_OPTION = 1
TOP = 8


def advise(  # noqa: PLR0913, PLR0917 - one argument an option of the command
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    top: Annotated[
        int | None, typer.Option(min=1, help="The list of options, so many of them.")
    ] = None,
    show_all: Annotated[
        bool, typer.Option("--all", help="Everything: the page, the list, what is out.")
    ] = False,
    cautions: Annotated[
        Literal["first", "all"], typer.Option(help="The worst few, or all of them in full.")
    ] = "first",
    steel: Annotated[str | None, typer.Option(help="Only this steel, by any name.")] = None,
    route: Annotated[str | None, typer.Option(help="Only this route, by slug or kind.")] = None,
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
    as_csv: Annotated[bool, typer.Option("--csv", help="The ranked options as CSV.")] = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="Each number: relation, inputs, source.")
    ] = False,
    compare: Annotated[
        bool, typer.Option("--compare", help="Also rank by methods of other families.")
    ] = False,
) -> None:
    """Rank steels and hardening routes for a part, with reasons.

    Exit 0 when advice is given (a referral or a coupon plan included), 1 when no option is
    left, 2 when the input is wrong.

    Raises
    ------
    Exit
        With the code above.
    """
    from selector.commands.filter import (  # noqa: PLC0415
        checked_catalog,
        known_route,
        known_steel,
    )
    from selector.commands.progress import bar  # noqa: PLC0415

    with refusing_bad_input():
        from selector import advise as run  # noqa: PLC0415
        from selector.advice.output import advice_out  # noqa: PLC0415
        from selector.requirement import read_requirement  # noqa: PLC0415

        asked = read_requirement(part)
        known = checked_catalog(catalog or ())
        known_steel(steel, known)
        known_route(route, known)
        with bar() as progress:
            advice = run(asked, known, steel=steel, route=route, progress=progress)
        shown = advice_out(advice, None if as_json or as_csv else top or TOP, compare=compare)
    if as_json:
        print_json(shown.model_dump_json(indent=2))
    elif as_csv:
        from selector.advice.table import option_table  # noqa: PLC0415

        typer.echo(option_table(shown).to_csv(index=False), nl=False)
    else:
        listed = compare or top is not None
        _print(shown, whole=show_all, listed=listed, every=cautions == "all")
        if explain:
            from selector.commands.origin import print_origins  # noqa: PLC0415

            print_origins(shown, console())
    if shown.verdict == "no_option":
        raise typer.Exit(NO_OPTION)


def _print(shown: "AdviceOut", *, whole: bool, listed: bool, every: bool) -> None:
    """Print everything, or the list of options with what is out, or the one page."""
    from selector.commands.full_page import print_whole  # noqa: PLC0415
    from selector.commands.page import print_advice, print_all  # noqa: PLC0415

    if whole:
        print_all(shown, console())
    elif listed:
        print_whole(shown, console())
    else:
        print_advice(shown, console(), every_caution=every)
