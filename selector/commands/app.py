"""`temperwright app`: the page, on this machine only."""

import importlib.util
import subprocess
import sys
from pathlib import Path
from typing import Annotated

import typer


def app(
    port: Annotated[int, typer.Option(help="Port on this machine.")] = 8501,
) -> None:
    """Open the page in a browser on this machine; stop it with Ctrl-C."""
    spec = importlib.util.find_spec("ui")
    if spec is None or spec.submodule_search_locations is None:
        typer.echo("The page is not installed; reinstall temperwright.", err=True)
        raise typer.Exit(2)
    page = Path(next(iter(spec.submodule_search_locations))) / "app.py"
    typer.echo(f"temperwright is at http://127.0.0.1:{port} (Ctrl-C stops it)")
    command = [
        sys.executable, "-m", "streamlit", "run", str(page),
        "--server.port", str(port),
        "--server.address", "127.0.0.1",
        "--server.headless", "true",
        "--server.fileWatcherType", "none",
        "--browser.gatherUsageStats", "false",
    ]  # fmt: skip
    try:
        code = subprocess.run(command, check=False).returncode  # noqa: S603
    except KeyboardInterrupt:
        code = 0
    raise typer.Exit(code)
