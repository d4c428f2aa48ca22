"""`temperwright app`: the page, for this machine alone unless `--host` names another."""

import importlib.util
import os
import subprocess
import sys
from pathlib import Path
from typing import Annotated

import typer

from selector.commands.exit_code import BAD_INPUT
from selector.commands.given import CatalogFolders
from selector.commands.terminal import refusing_bad_input

_LOOPBACK = ("127.0.0.1", "localhost", "::1")
_WIDER = (
    "Anyone who reaches {host} sees and changes the parts and workshops kept here; nothing is "
    "encrypted."
)


def app(
    part: Annotated[
        Path | None, typer.Argument(help="Requirement file to open, TOML or JSON.")
    ] = None,
    catalog: CatalogFolders = None,
    port: Annotated[int, typer.Option(help="Port to listen on.")] = 8501,
    host: Annotated[
        str, typer.Option(help="Address to listen on; this machine alone if left out.")
    ] = "127.0.0.1",
    browser: Annotated[bool, typer.Option(help="Open it in the browser.")] = True,
) -> None:
    """Open the page in a browser; stop it with Ctrl-C."""
    if importlib.util.find_spec("ui") is None:
        typer.echo("The page is not installed; reinstall temperwright.", err=True)
        raise typer.Exit(BAD_INPUT)
    with refusing_bad_input():
        _check(part, catalog or [])
    typer.echo(f"temperwright is at http://{host}:{port} (Ctrl-C stops it)")
    if host not in _LOOPBACK:
        typer.echo(_WIDER.format(host=host), err=True)
    command = [sys.executable, "-m", "ui.serve", "--port", str(port), "--host", host]
    command += [] if part is None else ["--part", str(part)]
    command += [] if browser else ["--no-browser"]
    kept = os.pathsep.join(str(folder.resolve()) for folder in catalog or [])
    try:
        code = subprocess.run(  # noqa: S603
            command, check=False, env={**os.environ, "TEMPERWRIGHT_CATALOG": kept}
        ).returncode
    except KeyboardInterrupt:
        code = 0
    raise typer.Exit(code)


def _check(part: Path | None, catalog: list[Path]) -> None:
    """Refuse a file that is none and a catalogue with faults; slips are mended on the page."""
    from selector.requirement.read import parsed_file  # noqa: PLC0415

    if part is not None:
        parsed_file(part)
    if catalog:
        from selector.commands.filter import checked_catalog  # noqa: PLC0415

        checked_catalog(catalog)
