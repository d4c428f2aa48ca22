"""`temperwright steels`: what is in the catalogue."""

from typing import TYPE_CHECKING, Annotated

import typer

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


def _matches(steel: "Steel", text: str) -> bool:
    """Return whether any name, family or kind of a steel holds a text."""
    from catalog.steel import plain  # noqa: PLC0415

    key = plain(text)
    fields = (*steel.names(), steel.slug, steel.family, steel.kind)
    return any(key in plain(field) for field in fields)


def _cited(steels: "Iterable[Steel]", known: "Catalog") -> "Iterator[str]":
    """Yield the full reference of each source that steels name, in the order of the keys."""
    from catalog.quantity import sourced  # noqa: PLC0415

    for key in sorted({value.source for steel in steels for _, value in sourced(steel)}):
        source = known.sources[key]
        yield f"{key}: {source.citation}" + (f". {source.remark}" if source.remark else "")


def steels(
    text: Annotated[str, typer.Argument(help="Part of a name, family or kind.")] = "",
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="Each number with its source.")
    ] = False,
) -> None:
    """List steels with their names in every system."""
    with refusing_bad_input():
        from selector.commands.filter import checked_catalog  # noqa: PLC0415

        known = checked_catalog(catalog or ())
        matching = [s for s in known.steels.values() if _matches(s, text)]
    if as_json:
        print_json(
            "[" + ",\n".join(s.model_dump_json(exclude_none=True) for s in matching) + "]"
        )
        return
    out = console()
    for steel in matching:
        names = ", ".join(dict.fromkeys(steel.designations.every()))
        conditions = ", ".join(condition.name for condition in steel.condition)
        out.print(f"[bold]{steel.name}[/bold] [dim]{steel.kind}[/dim]  {names}")
        print_paragraph(f"{steel.summary} Sold {conditions}.", out)
        if explain:
            from selector.commands.origin import print_origins  # noqa: PLC0415

            print_origins(steel, out)
    if explain:
        print_section("Sources", _cited(matching, known), out)
    if not matching:
        out.print(f"No steel has {text!r} in a name; try a shorter part of it.", markup=False)
