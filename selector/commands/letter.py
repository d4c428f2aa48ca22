"""`temperwright letter`: one page for the customer, from the advice's own figures."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from selector.commands.exit_code import NO_ANSWER
from selector.commands.given import CatalogFolders
from selector.commands.terminal import refusing_bad_input

if TYPE_CHECKING:
    from selector.handover.letter.answer import Answer
    from selector.handover.letter.made import Sender


def letter(  # noqa: PLR0913, PLR0917 - one argument an option of the command
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    option: Annotated[
        str | None, typer.Argument(help="Option id, as `advise` prints it; else its first.")
    ] = None,
    out: Annotated[
        Path | None, typer.Option(help="Write the letter there: .pdf, .html or .docx.")
    ] = None,
    workshop: Annotated[
        Path | None,
        typer.Option(help="Who writes: name, address, logo, terms; else workshop.toml beside."),
    ] = None,
    paper: Annotated[
        Literal["a4", "letter"], typer.Option(help="What it is printed on.")
    ] = "a4",
    tone: Annotated[Literal["brief", "full"], typer.Option(help="How much it says.")] = "full",
    text: Annotated[
        Path | None, typer.Option(help="Write the text there, to change before it is set.")
    ] = None,
    changed: Annotated[
        Path | None, typer.Option("--from", help="Set this text, as --text wrote it.")
    ] = None,
    catalog: CatalogFolders = None,
) -> None:
    """Write a letter to the customer: what, why, what else, what it costs and rests on.

    Exit 0 when it is written (a referral included), 1 when no option is left, 2 when the input
    is wrong.

    Raises
    ------
    Exit
        With the code above.
    """
    from selector.commands.filter import checked_catalog  # noqa: PLC0415

    with refusing_bad_input():
        from selector.handover.letter.answer import answer, checked_files  # noqa: PLC0415
        from selector.handover.written import write_whole  # noqa: PLC0415
        from selector.requirement import read_requirement  # noqa: PLC0415

        checked_files(out, text)
        asked, known = read_requirement(part), checked_catalog(catalog or ())
        sender = _sender(workshop, part)
        edited = None if changed is None else _read(changed)
        answered = answer(asked, known, option, tone, edited)
        if answered.letter is not None:
            if text is not None:
                write_whole(text, answered.text.encode(), "--text")
            if out is not None:
                made = answered.set(sender, (out.suffix.lower(), paper))
                write_whole(out, made.content)
                answered = answered.saying(made.remarks)
    _say(answered)
    if answered.letter is None:
        raise typer.Exit(NO_ANSWER)


def _sender(workshop: Path | None, part: Path) -> "Sender":
    """Return who writes, by the file named or the one beside the part."""
    from selector.handover.identity import read_identity, read_logo  # noqa: PLC0415
    from selector.handover.letter.made import Sender  # noqa: PLC0415

    beside = part.parent / "workshop.toml"
    path = workshop or (beside if beside.is_file() else None)
    if path is None:
        return Sender()
    who = read_identity(path)
    return Sender(who, None if who.logo is None else read_logo(who.logo))


def _read(path: Path) -> str:
    """Return the text that was changed."""
    from selector.handover.letter.editable import read_text  # noqa: PLC0415

    return read_text(path)


def _say(answered: "Answer") -> None:
    """Say what is to be said beside the letter, to the side of it."""
    for remark in answered.remarks:
        typer.echo(remark, err=True)
    if answered.letter is None:
        typer.echo(answered.headline)
