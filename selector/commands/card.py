"""`temperwright card`: one option as a sheet to work by at the bench."""

from pathlib import Path
from typing import Annotated, Literal

import typer

from selector.commands.exit_code import NO_ANSWER
from selector.commands.given import CatalogFolders
from selector.commands.terminal import refusing_bad_input


def card(
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    out: Annotated[Path, typer.Option(help="The sheet: .pdf or .html.")],
    option: Annotated[
        str | None,
        typer.Argument(help="Option id, as `advise` prints it; its first if absent."),
    ] = None,
    paper: Annotated[
        Literal["a4", "letter"], typer.Option(help="What it is printed on.")
    ] = "a4",
    catalog: CatalogFolders = None,
) -> None:
    """Write the bench card of an option: drawing, steps with ticks, figures, cautions.

    Raises
    ------
    Exit
        1 where no option is left to make a card of; 2 when the input is wrong.
    """
    from selector.commands.filter import checked_catalog  # noqa: PLC0415
    from selector.commands.handed import hand_over  # noqa: PLC0415

    with refusing_bad_input():
        from selector.commands.progress import bar  # noqa: PLC0415
        from selector.handover.card import card as card_of  # noqa: PLC0415
        from selector.handover.card import template_of  # noqa: PLC0415
        from selector.handover.chosen import chosen  # noqa: PLC0415
        from selector.handover.sheet import checked_suffix  # noqa: PLC0415
        from selector.requirement import read_requirement  # noqa: PLC0415

        checked_suffix(out)
        asked, known = read_requirement(part), checked_catalog(catalog or ())
        with bar() as progress:
            made_for = chosen(asked, known, option, progress)
        hand_over(template_of(made_for), lambda today, version: card_of(
            made_for, paper, today, version), out, paper)  # fmt: skip
    if made_for.record is None and not asked.safety_critical:
        typer.echo(made_for.headline, err=True)
        raise typer.Exit(NO_ANSWER)
