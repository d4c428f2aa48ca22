"""A progress bar on stderr, where somebody watches."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager


@contextmanager
def bar() -> Iterator[Callable[[str, float], None] | None]:
    """Give a function that moves a bar; None where stderr is no terminal."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console  # noqa: PLC0415
    from rich.progress import BarColumn, Progress, TextColumn  # noqa: PLC0415

    from catalog.text import visible  # noqa: PLC0415

    columns = (TextColumn("{task.description}", markup=False), BarColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as progress:
        task = progress.add_task("Reading the catalogue", total=1.0)

        def move(text: str, fraction: float) -> None:
            progress.update(task, description=visible(text), completed=fraction)

        yield move
