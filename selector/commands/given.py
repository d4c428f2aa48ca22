"""Options that several commands share, with the words of their help."""

from pathlib import Path
from typing import Annotated

import typer

CatalogFolders = Annotated[
    list[Path] | None, typer.Option(help="Your own catalogue folder; may be repeated.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Everything as JSON.")]
HardeningHeat = Annotated[
    str | None, typer.Option(help="Hardening heat; else the middle of the steel's range.")
]
