"""`temperwright example`: a ready requirement to start from."""

from typing import Annotated

import typer

from selector.commands.terminal import refusing_bad_input


def example(
    name: Annotated[str | None, typer.Argument(help="Which; --list names them.")] = None,
    list_names: Annotated[bool, typer.Option("--list", help="Name the examples.")] = False,
) -> None:
    """Print a ready requirement file."""
    with refusing_bad_input():
        from catalog.example import example_names, example_text  # noqa: PLC0415
        from selector.errors import Problem, RequirementError  # noqa: PLC0415

        names = example_names()
        if list_names:
            typer.echo("\n".join(names))
            return
        wanted = name or names[0]
        if wanted not in names:
            step = f"Choose one of: {', '.join(names)}."
            raise RequirementError(Problem("example", "a shipped one", repr(wanted), step))
        typer.echo(example_text(wanted), nl=False)
