"""`temperwright check`: audit the shipped catalogue, or a folder of your own over it."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.exit_code import BAD_INPUT
from selector.commands.terminal import refusing_bad_input

if TYPE_CHECKING:
    from catalog import Catalog


def check(
    folder: Annotated[Path | None, typer.Argument(help="Your own catalogue folder.")] = None,
    coverage: Annotated[
        bool,
        typer.Option("--coverage", help="What each steel lacks, and what is done without."),
    ] = False,
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
    if coverage:
        _print_coverage(known)


def _print_coverage(known: "Catalog") -> None:
    """Print what each steel lacks for its own routes, and the share that is there."""
    from catalog.coverage import (  # noqa: PLC0415
        gaps,
        read_share,
        untried_cold,
        wanted_count,
    )
    from catalog.text import visible  # noqa: PLC0415

    lacking = list(gaps(known))
    for gap in lacking:
        typer.echo(visible(f"{gap.steel}: {gap.key}: not there; {gap.instead}"))
    wanted = wanted_count(known)
    complete = len(known.steels) - len({gap.steel for gap in lacking})
    typer.echo(
        f"{wanted - len(lacking)} of {wanted} values that its own routes ask of a steel are "
        f"there; {complete} of {len(known.steels)} steels have all."
    )
    untried, strong = untried_cold(known)
    typer.echo(
        f"Service in frost: {strong - len(untried)} of {strong} steels hardened for strength "
        "have a transition; of the others it is unknown once they are hardened, and judged by "
        "carbon where they are soft."
    )
    read, part, every = read_share(known)
    typer.echo(
        f"Read in print: {read} of {every} values ({read / every:.0%}), {part} more in part."
    )
