"""A batch from its list to its summary: what is done is kept, what is left is worked out."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from selector.batch.overlay import Overlay
from selector.batch.program import program
from selector.batch.record import BatchOut, PartOut
from selector.batch.store import Store
from selector.batch.summary import as_summed, csv_of, summary
from selector.batch.task import Done, Task

SUMMARY, TABLE = "summary.json", "summary.csv"
# Takes how many parts are done, of how many, and how many of those are new.
Progress = Callable[[int, int, int], None]
Worker = Callable[[Iterable[Task], Overlay], Iterator[Done]]


@dataclass(frozen=True, slots=True)
class Batch:
    """A batch that is done: its summary, where it was written, how many parts were new."""

    out: BatchOut
    written: tuple[Path, ...]
    new: int


def run(
    tasks: Sequence[Task],
    overlay: Overlay,
    store: Store,
    worker: Worker,
    loss: float,
    progress: Progress,
) -> Batch:
    """Work out the parts of a batch that are not done, and write the summary of all.

    Parameters
    ----------
    tasks : sequence of Task
        The parts.
    overlay : Overlay
        The user's catalogue files.
    store : Store
        Where it is written; what is there already is not done again.
    worker : callable
        Works parts out and yields them as they are done.
    loss : float
        How much score a part may lose on the smallest rack. [-]
    progress : callable
        Told after each part.

    Returns
    -------
    Batch
        Its files are written.
    """
    by = program()
    keys = {task.place: task.key(by, overlay) for task in tasks}
    # Parts that are the same word for word are worked out once.
    unlike = {keys[task.place]: task for task in tasks}
    answers: dict[str, PartOut] = {}
    for key in unlike:
        kept = store.kept(key)
        if kept is not None:
            answers[key] = as_summed(kept)
    left = [task for key, task in unlike.items() if key not in answers]
    progress(len(answers), len(unlike), 0)
    for new, (task, content) in enumerate(worker(left, overlay), start=1):
        answers[keys[task.place]] = as_summed(store.keep(content, task.place))
        progress(len(answers), len(unlike), new)
    parts = {task.place: answers[keys[task.place]] for task in tasks}
    out = summary(tasks, parts, store.file_of, loss)
    written = (
        store.write(TABLE, csv_of(out).encode()),
        store.write(SUMMARY, (out.model_dump_json(indent=1) + "\n").encode()),
    )
    return Batch(out, written, len(left))
