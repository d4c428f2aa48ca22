"""`temperwright check`: audit the shipped catalogue, or a folder of your own over it."""

from pathlib import Path
from typing import Annotated

import typer

from selector.commands.terminal import BAD_INPUT, refusing_bad_input


def check(
    folder: Annotated[Path | None, typer.Argument(help="Your own catalogue folder.")] = None,
) -> None:
    """Check that every file of the catalogue is sound, and say what of yours nothing reads."""
    with refusing_bad_input():
        from catalog import CatalogError, load_catalog  # noqa: PLC0415
        from catalog.audit import audit  # noqa: PLC0415
        from catalog.text import visible  # noqa: PLC0415
        from catalog.unread import unread  # noqa: PLC0415

        try:
            known = load_catalog(*([folder] if folder else []))
        except CatalogError as error:
            # What the sound files break among themselves is said in the same breath.
            more = audit(error.rest, whole=False) if error.rest is not None else ()
            raise CatalogError((*error.problems, *more)) from error
        faults = audit(known)
    for fault in faults:
        typer.echo(visible(fault), err=True)
    if faults:
        raise typer.Exit(BAD_INPUT)
    typer.echo(
        f"{len(known.steels)} steels, {len(known.routes)} routes, {len(known.media)} media, "
        f"{len(known.heat_sources)} heat sources, {len(known.cautions)} cautions, "
        f"{len(known.sources)} sources: no fault found."
    )
    for line in unread(known):
        typer.echo(visible(line))
