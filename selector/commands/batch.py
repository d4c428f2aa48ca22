"""`temperwright batch`: many parts at once, on all cores or on a cluster."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from time import monotonic
from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.exit_code import BAD_INPUT, NO_ANSWER, STOPPED, UNFORESEEN
from selector.commands.given import AsJson, CatalogFolders
from selector.commands.terminal import console, print_json, refusing_bad_input

if TYPE_CHECKING:
    from selector.batch.record import BatchOut
    from selector.batch.run import Progress, Worker


def batch(  # noqa: PLR0913, PLR0917 - one argument an option of the command
    parts: Annotated[Path, typer.Argument(help="Folder of part files, or a list as CSV.")],
    out: Annotated[Path, typer.Option(help="Folder for the results; what is there is kept.")],
    base: Annotated[
        Path | None, typer.Option(help="Part file under the lines of a list that name none.")
    ] = None,
    loss: Annotated[
        float, typer.Option(min=0.0, max=1.0, help="Score a part may lose on the fewest bars.")
    ] = 0.05,
    jobs: Annotated[
        int | None, typer.Option(min=1, help="Processes on this machine; all cores if absent.")
    ] = None,
    scheduler: Annotated[
        str | None, typer.Option(help="An existing Dask cluster: the scheduler's address.")
    ] = None,
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
) -> None:
    """Advise on many parts: a summary, the fewest bars that serve all, loads to share.

    A batch that was stopped goes on where it was; a part that has changed is done again.
    Exit 0 when every part has its advice, 1 when some have no option left, 2 when the list or
    the file of a part is at fault, 70 when an error of ours left a part without an answer.

    Raises
    ------
    Exit
        With the code above.
    """
    with refusing_bad_input():
        from selector.batch.listing import listed  # noqa: PLC0415
        from selector.batch.overlay import overlay_of  # noqa: PLC0415
        from selector.batch.run import run  # noqa: PLC0415
        from selector.batch.store import Store  # noqa: PLC0415
        from selector.commands.filter import checked_catalog  # noqa: PLC0415

        tasks = listed(parts, base)
        checked_catalog(catalog or ())
        overlay, store = overlay_of(catalog or ()), Store(out, parts)
        try:
            with _worker(scheduler, jobs) as worker, _counted() as progress:
                done = run(tasks, overlay, store, worker, loss, progress)
        except KeyboardInterrupt as stopped:
            typer.echo("Stopped. The same command goes on from there.", err=True)
            raise typer.Exit(STOPPED) from stopped
    if as_json:
        print_json(done.out.model_dump_json(indent=2))
    else:
        from selector.commands.batch_page import print_batch  # noqa: PLC0415

        print_batch(done, console())
    code = _code(done.out)
    if code:
        raise typer.Exit(code)


@contextmanager
def _worker(scheduler: str | None, jobs: int | None) -> "Iterator[Worker]":
    """Give what works out the parts: a cluster, or processes of this machine."""
    if scheduler is None:
        from selector.batch.local import cores, on_this_machine  # noqa: PLC0415

        count = jobs or cores()
        yield lambda tasks, overlay: on_this_machine(tasks, overlay, count)
        return
    from selector.batch.cluster import connected, on_cluster  # noqa: PLC0415

    with connected(scheduler) as client:
        yield lambda tasks, overlay: on_cluster(tasks, overlay, client)


@contextmanager
def _counted() -> "Iterator[Progress]":
    """Give a function that moves a bar by the parts that are done, with the time left."""
    from selector.commands.progress import bar  # noqa: PLC0415

    with bar() as move:
        yield _mover(move, monotonic())


def _mover(move: Callable[[str, float], None] | None, start_s: float) -> "Progress":
    """Return what shows how many parts are done; nothing where nobody watches."""
    from selector.wording import minutes_words  # noqa: PLC0415

    def show(done: int, every: int, new: int) -> None:
        if move is None:
            return
        text = f"{done} of {every} parts"
        if new > 0 and done < every:
            left_s = (monotonic() - start_s) / new * (every - done)
            text += f", about {minutes_words(left_s)} left"
        move(text, done / every)

    return show


def _code(out: "BatchOut") -> int:
    """Return how the run ends: by the worst that became of a part."""
    worst = {"failed": UNFORESEEN, "bad_input": BAD_INPUT, "no_option": NO_ANSWER}
    return next((code for reason, code in worst.items() if reason in out.counts), 0)
