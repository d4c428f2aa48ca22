"""`temperwright steels`: what is in the catalogue."""

from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.terminal import console, print_json, print_paragraph, refusing_bad_input

if TYPE_CHECKING:
    from catalog import Steel


def _matches(steel: "Steel", text: str) -> bool:
    """Return whether any name, family or kind of a steel holds a text."""
    from catalog.steel import plain  # noqa: PLC0415

    key = plain(text)
    fields = (*steel.names(), steel.slug, steel.family, steel.kind)
    return any(key in plain(field) for field in fields)


def steels(
    text: Annotated[str, typer.Argument(help="Part of a name, family or kind.")] = "",
    as_json: Annotated[bool, typer.Option("--json", help="As JSON.")] = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="Each number with its source.")
    ] = False,
) -> None:
    """List steels with their names in every system."""
    with refusing_bad_input():
        from catalog import load_catalog  # noqa: PLC0415

        found = [s for s in load_catalog().steels.values() if _matches(s, text)]
    if as_json:
        print_json("[" + ",\n".join(s.model_dump_json(exclude_none=True) for s in found) + "]")
        return
    out = console()
    for steel in found:
        names = ", ".join(dict.fromkeys(steel.designations.every()))
        conditions = ", ".join(condition.name for condition in steel.condition)
        out.print(f"[bold]{steel.name}[/bold] [dim]{steel.kind}[/dim]  {names}")
        print_paragraph(f"{steel.summary} Sold {conditions}.", out)
        if explain:
            from selector.commands.origin import print_origins  # noqa: PLC0415

            print_origins(steel, out)
    if not found:
        out.print(f"No steel has {text!r} in a name; try a shorter part of it.", markup=False)
