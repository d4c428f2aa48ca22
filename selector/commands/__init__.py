"""The command line: one file a command, no arithmetic. Heavy imports wait inside them."""

import gc
import os
from collections.abc import Callable, Mapping
from typing import Annotated

import typer

from selector.commands.advise import advise
from selector.commands.app import app as app_command
from selector.commands.batch import batch
from selector.commands.card import card
from selector.commands.check import check
from selector.commands.ending import run
from selector.commands.example import example
from selector.commands.fit import fit
from selector.commands.flame import flame
from selector.commands.help import help_of
from selector.commands.letter import letter
from selector.commands.need import need
from selector.commands.quench import quench
from selector.commands.routes import routes
from selector.commands.schema import schema
from selector.commands.steels import steels
from selector.commands.take_in import take_in
from selector.commands.temper import temper
from selector.commands.trial import trial
from selector.commands.versus import versus

cli = typer.Typer(
    name="temperwright",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
)


def _print_version(asked: bool) -> None:
    """Print the version and end."""
    if asked:
        from importlib.metadata import PackageNotFoundError, version  # noqa: PLC0415 - slow

        try:
            typer.echo(f"temperwright {version('temperwright')}")
        except PackageNotFoundError:
            typer.echo("temperwright, not installed")
        raise typer.Exit


@cli.callback()
def temperwright(
    *,
    asked: Annotated[
        bool,
        typer.Option(
            "--version", help="Print the version.", callback=_print_version, is_eager=True
        ),
    ] = False,
) -> None:
    """Which steel and which hardening route for this part, in the workshop as it is."""
    del asked


COMMANDS: Mapping[str, Callable[..., object]] = {
    "advise": advise, "batch": batch, "need": need, "versus": versus, "card": card,
    "temper": temper, "quench": quench, "steels": steels, "routes": routes, "example": example,
    "check": check, "import": take_in, "schema": schema, "fit": fit, "flame": flame,
    "letter": letter, "app": app_command,
}  # fmt: skip
for _name, _command in COMMANDS.items():
    cli.command(_name, help=help_of(_command))(_command)
cli.add_typer(trial)


def main() -> None:
    """Run the command line."""
    # A command lives for seconds: to look for garbage takes longer than it is worth.
    gc.disable()
    # To look for plug-ins of the checks in all that is installed takes a tenth of a second.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    run(cli)
