"""`temperwright steels`: what is in the catalogue."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.exit_code import NO_ANSWER
from selector.commands.given import AsJson, CatalogFolders
from selector.commands.terminal import (
    console,
    print_json,
    print_paragraph,
    print_section,
    refusing_bad_input,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from catalog import Catalog, Steel


def _new(name: str, folder: Path) -> None:
    """Write a commented file for a steel of one's own, where there is none yet."""
    from catalog.template import write_template  # noqa: PLC0415

    with refusing_bad_input():
        path = write_template(name, folder)
    typer.echo(f"{path}: fill it in, then `temperwright check {folder}`.")


def _cited(steels: "Iterable[Steel]", known: "Catalog") -> "Iterator[str]":
    """Yield the full reference of each source that steels name, in the order of the keys."""
    from catalog.quantity import sourced  # noqa: PLC0415

    for key in sorted({value.source for steel in steels for _, value in sourced(steel)}):
        source = known.sources[key]
        yield f"{key}: {source.citation}" + (f". {source.remark}" if source.remark else "")


def _print(
    matching: "tuple[Steel, ...]", known: "Catalog", text: str, *, explain: bool
) -> None:
    """Print steels with their names, and what a name says besides."""
    out, mark = console(), known.look_up(text).mark
    if mark is not None:
        print_paragraph(f"{text}: {known.marks[mark].says}.", out)
    for steel in matching:
        names = ", ".join(dict.fromkeys(steel.designations.every()))
        conditions = ", ".join(condition.name for condition in steel.condition)
        out.print(f"[bold]{steel.name}[/bold] [dim]{steel.kind}[/dim]  {names}")
        print_paragraph(f"{steel.summary} Sold {conditions}.", out)
        if steel.assumed is not None:
            print_paragraph(f"By this name: {steel.assumed.differs.text}", out)
        if explain:
            from selector.commands.origin import print_origins  # noqa: PLC0415

            print_origins(steel, out)
    if explain:
        print_section("Sources", _cited(matching, known), out)


def steels(
    text: Annotated[str, typer.Argument(help="A name in any system, a family or a kind.")] = "",
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="Each number with its source.")
    ] = False,
    new: Annotated[
        str | None, typer.Option(help="Write a commented file for a steel of this name.")
    ] = None,
    into: Annotated[Path, typer.Option(help="Your catalogue folder, for --new.")] = Path(),
) -> None:
    """List steels with their names in every system, or write a file for one of your own."""
    if new is not None:
        _new(new, into)
        return
    with refusing_bad_input():
        from catalog.text import visible  # noqa: PLC0415
        from selector.commands.filter import checked_catalog  # noqa: PLC0415

        known = checked_catalog(catalog or ())
        matching = known.listed(text)
    if not matching:
        step = known.look_up(text).did_you_mean
        typer.echo(visible(f"No steel is called {text!r}. {step}"), err=True)
        raise typer.Exit(NO_ANSWER)
    if as_json:
        print_json(
            "[" + ",\n".join(s.model_dump_json(exclude_none=True) for s in matching) + "]"
        )
        return
    _print(matching, known, text, explain=explain)
