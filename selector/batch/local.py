"""A batch on the cores of this machine: one process a core, each keeping what parts share."""

import gc
import multiprocessing
import os
import signal
import threading
from collections import deque
from collections.abc import Iterable, Iterator, Mapping
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from multiprocessing.connection import wait as wait_for

from selector.batch.answer import answered, failed
from selector.batch.overlay import Overlay, catalog_of
from selector.batch.program import program
from selector.batch.task import Done, Task

# So many parts are handed out for each process: none waits, and few are lost with one.
_AHEAD = 2


def cores() -> int:
    """Return how many cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def on_this_machine(tasks: Iterable[Task], overlay: Overlay, jobs: int) -> Iterator[Done]:
    """Yield each part as it is done, by so many processes.

    Parameters
    ----------
    tasks : iterable of Task
        The parts.
    overlay : Overlay
        The user's catalogue files.
    jobs : int
        Number of processes.

    Yields
    ------
    tuple
        Part and the JSON that is kept of it, in the order they are done.
    """
    waiting = deque(tasks)
    while waiting:
        broken: list[Task] = []
        yield from _until_broken(waiting, overlay, min(jobs, len(waiting)), broken)
        # A process that dies takes the whole pool with it: who killed it is tried alone.
        for task in broken:
            alone: list[Task] = []
            yield from _until_broken(deque([task]), overlay, 1, alone)
            for killer in alone:
                key = killer.key(program(), overlay)
                text = "The process that worked it out has died, twice: memory may be short."
                yield killer, failed(killer, key, text).model_dump_json().encode()


def _until_broken(
    waiting: deque[Task], overlay: Overlay, jobs: int, broken: list[Task]
) -> Iterator[Done]:
    """Yield parts as they are done until none waits, or a process dies: what it leaves."""
    # A fresh interpreter is the same on every system, and takes over no lock that is held.
    context = multiprocessing.get_context("spawn")
    pool = ProcessPoolExecutor(jobs, context, _enter, (overlay,))
    running: dict[Future[bytes], Task] = {}
    wanted: Mapping[str, str] = program()
    try:
        while waiting or running:
            while waiting and len(running) < _AHEAD * jobs:
                running[pool.submit(answered, waiting[0], overlay, wanted)] = waiting[0]
                waiting.popleft()
            done, _ = wait(running, return_when=FIRST_COMPLETED)
            for future in done:
                content = future.result()
                yield running.pop(future), content
    except BrokenProcessPool:
        broken.extend(running.values())
    finally:
        # What is being worked out ends with its process; nobody waits for it.
        pool.shutdown(wait=not running, cancel_futures=True)


def _enter(overlay: Overlay) -> None:
    """Prepare a process: it ends with whoever started it, and has the catalogue read."""
    if signal.getsignal(signal.SIGINT) is not signal.SIG_IGN:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    catalog_of(overlay)
    # What lasts to the end is never looked through for garbage.
    gc.collect()
    gc.freeze()


def _end_with_parent() -> None:
    """End this process when the one that started it does, however that ended."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        wait_for([parent.sentinel])
        os._exit(1)
