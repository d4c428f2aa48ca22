"""A batch on an existing Dask cluster: the same function for each part, on whatever worker."""

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Any

from catalog.text import visible
from selector.batch.answer import answered, failed
from selector.batch.overlay import Overlay
from selector.batch.program import differing, program
from selector.batch.task import Done, Task
from selector.errors import Problem, RequirementError

if TYPE_CHECKING:
    from distributed import Client

OPTION = "--scheduler"
# A scheduler that has not answered by then is not there.
_ANSWERS_WITHIN = "15s"


def connected(address: str) -> "Client":
    """Return the client of a scheduler whose workers have this very program.

    Parameters
    ----------
    address : str
        Such as "tcp://10.0.0.5:8786".

    Returns
    -------
    Client
        To be closed by the caller.

    Raises
    ------
    RequirementError
        When Dask is not installed, nobody answers, there is no worker, or one has another
        program.
    """
    client = _client(address)
    try:
        _refuse_strangers(client)
    except BaseException:
        client.close()
        raise
    return client


def _client(address: str) -> "Client":
    """Return the client of a scheduler that answers."""
    try:
        from distributed import Client  # noqa: PLC0415 - an extra, and slow to load
    except ImportError as error:
        step = 'Install it: pip install "temperwright[cluster]".'
        raise _refused("used with the package distributed", "none installed", step) from error
    rule = "the address of a running Dask scheduler"
    step = "Start it with `dask scheduler`, and name what it prints, such as tcp://host:8786."
    try:
        return Client(address, timeout=_ANSWERS_WITHIN, set_as_default=False)
    except (OSError, ValueError, RuntimeError) as error:
        raise _refused(rule, f"{address!r} ({_first_line(error)})", step) from error


def _refused(rule: str, got: str, step: str) -> RequirementError:
    """Return the error of a scheduler that cannot be used."""
    return RequirementError(Problem(OPTION, rule, visible(got), step))


def _first_line(error: Exception) -> str:
    """Return what an error says, short enough for one line."""
    text = str(error).strip().split("\n")[0] or type(error).__name__
    return text if len(text) <= 80 else text[:77] + "..."


def _refuse_strangers(client: "Client") -> None:
    """Refuse a cluster without workers, or with one whose answers may differ from ours."""
    theirs = client.run(program, on_error="return")
    rule = "a scheduler whose workers have this very temperwright"
    if not theirs:
        raise _refused("a scheduler with workers", "none", "Start some with `dask worker`.")
    for worker, answer in sorted(theirs.items()):
        if isinstance(answer, Exception):
            step = "Install temperwright there as it is here."
            raise _refused(rule, f"on {worker}: {_first_line(answer)}", step)
        other = differing(program(), answer)
        if other:
            raise _refused(rule, f"on {worker}: {other}", "Install the same on both.")


def on_cluster(tasks: Iterable[Task], overlay: Overlay, client: "Client") -> Iterator[Done]:
    """Yield each part as it is done; what a lost worker had is done again by another.

    Parameters
    ----------
    tasks : iterable of Task
        The parts.
    overlay : Overlay
        The user's catalogue files, sent with each part: no worker needs the folders.
    client : Client
        As `connected` returns it.

    Yields
    ------
    tuple
        Part and the JSON that is kept of it, in the order they are done.
    """
    from distributed import as_completed  # noqa: PLC0415

    wanted = program()
    running: dict[str, Task] = {}
    futures: list[Any] = []
    for task in tasks:
        # The part itself is the name, so that whoever asks again gets what is there.
        name = f"temperwright-{task.key(wanted, overlay)}"
        running[name] = task
        futures.append(client.submit(answered, task, overlay, wanted, key=name))
    for future in as_completed(futures, loop=client.loop):
        task = running.pop(future.key)
        error = future.exception()
        if error is None:
            yield task, future.result()
        else:
            text = f"No worker could work it out: {_first_line(error)}"
            out = failed(task, task.key(wanted, overlay), text)
            yield task, out.model_dump_json().encode()
        future.release()
