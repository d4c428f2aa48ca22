"""Keeping what a function returns: by its records, within so much memory, or on disk.

On disk lies what takes long to simulate: the next run on the same part reads it back. It holds
as long as every source that it may come from stays as it is. What is damaged there, or closed
to us, is worked out anew.
"""

import hashlib
import os
import sys
import time
from collections import OrderedDict
from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import fields, is_dataclass
from functools import cache, wraps
from importlib.metadata import version
from pathlib import Path
from threading import Lock
from typing import Any, ParamSpec, TypeVar

import numpy as np

from catalog.kept import NOTHING, read_back, write_down
from catalog.user_folder import cache_folder

P = ParamSpec("P")
T = TypeVar("T")
MEGABYTE = 2**20
_HERE = Path(__file__).parent
# Whatever heat at a torch or in a bath is worked out from.
_ROOMS = (
    "hardening", "hazards", "heat", "job", "mechanics", "metallurgy", "requirement", "torch",
)  # fmt: skip
_STARTED_S = time.time()
# What the folder may hold when a run begins, and what one run adds at most: a part takes some
# 30, and of many parts worked out one after another the early ones are asked for no more. [MB]
HOLDS_MB, ADDS_MB = 256, 128
_written = [0]


def per_record(most: int, kind: type = object) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Keep what a function makes of records that never change, the latest so many.

    Two records that are equal but not one and the same are worked out twice: to compare whole
    requirements or arrays, at every call, costs more than what is kept.

    Parameters
    ----------
    most : int
        How many answers are kept; the oldest goes first.
    kind : type, optional
        What is kept for: a first record of another kind is worked out at every call.

    Returns
    -------
    callable
        Marks a function of records, each frozen for good, and of flags.
    """

    def mark(work: Callable[P, T]) -> Callable[P, T]:
        # An answer holds on to what it was made of, so that no number is given out again.
        answers: dict[tuple[int, ...], tuple[Any, T]] = {}
        writing = Lock()

        @wraps(work)
        def kept(*args: P.args, **kwargs: P.kwargs) -> T:
            held = (*args, *kwargs.values())
            if not isinstance(held[0], kind):
                return work(*args, **kwargs)
            key = tuple(map(id, held))
            known = answers.get(key)
            if known is None:
                known = (held, work(*args, **kwargs))
                with writing:
                    answers[key] = known
                    if len(answers) > most:
                        del answers[next(iter(answers))]
            return known[1]

        return kept

    return mark


def kept_within(megabytes: float) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Keep what a function makes of hashable arguments, the least lately asked for goes first.

    Answers of one function may differ a thousandfold in size, so that a number of them bounds
    nothing. The latest is kept whatever its size.

    Parameters
    ----------
    megabytes : float
        What the arrays of all that is kept may take together; one that two answers share
        counts twice.

    Returns
    -------
    callable
        Marks a function whose answers never change.
    """

    def mark(work: Callable[P, T]) -> Callable[P, T]:
        answers: OrderedDict[tuple[Any, ...], tuple[T, int]] = OrderedDict()
        writing = Lock()
        taken = 0

        @wraps(work)
        def kept(*args: P.args, **kwargs: P.kwargs) -> T:
            nonlocal taken
            key = (args, *kwargs.items())
            known = answers.get(key)
            if known is None:
                answer = work(*args, **kwargs)
                with writing:
                    # Another thread may have answered meanwhile.
                    taken -= answers.pop(key, (answer, 0))[1]
                    answers[key] = known = (answer, array_bytes(answer))
                    taken += known[1]
                    while taken > megabytes * MEGABYTE and len(answers) > 1:
                        taken -= answers.popitem(last=False)[1][1]
                return answer
            # Another thread may have let it go meanwhile.
            with writing, suppress(KeyError):
                answers.move_to_end(key)
            return known[0]

        return kept

    return mark


def array_bytes(answer: object) -> int:
    """Return what the arrays of a record take, each once; of a view all that it holds on to.

    Parameters
    ----------
    answer : object
        An array, or a record, sequence or mapping of some, at any depth.

    Returns
    -------
    int
        Bytes.
    """
    counted: dict[int, int] = {}
    left: list[object] = [answer]
    while left:
        item = left.pop()
        if isinstance(item, np.ndarray):
            while isinstance(item.base, np.ndarray):
                item = item.base
            counted[id(item)] = item.nbytes
        else:
            left += _parts(item)
    return sum(counted.values())


def _parts(item: object) -> Iterable[object]:
    """Return what a record, sequence or mapping is made of."""
    if is_dataclass(item):
        return [getattr(item, part.name) for part in fields(item)]
    if isinstance(item, dict):
        return list(item.values())
    return item if isinstance(item, (tuple, list)) else ()


def kept_on_disk(work: Callable[P, T]) -> Callable[P, T]:
    """Keep on disk what a function makes of its arguments.

    Parameters
    ----------
    work : callable
        Simulates; its arguments are numbers, names and records of them, whose text says all
        that they are. What it returns can be pickled and never changes.

    Returns
    -------
    callable
        The same, worked out once for each arguments and sources.
    """

    @wraps(work)
    def kept(*args: P.args, **kwargs: P.kwargs) -> T:
        path = _path(f"{work.__module__}.{work.__qualname__} {args!r} {kwargs!r}")
        answer: T = NOTHING if path is None else read_back(path)
        if answer is NOTHING:
            answer = work(*args, **kwargs)
            if path is not None and _written[0] < ADDS_MB * MEGABYTE:
                _made_room(path.parent)
                _written[0] += write_down(path, b"", answer)
        elif path is not None:
            with suppress(OSError):
                os.utime(path)
        return answer

    return kept


def _path(asked: str) -> Path | None:
    """Return where an answer is kept, or None where none is."""
    stamp, place = _stamp(), cache_folder()
    if stamp is None or place is None:
        return None
    return place / "heat" / hashlib.sha256(stamp + asked.encode()).hexdigest()


@cache
def _stamp() -> bytes | None:
    """Return what changes when a source does; None where what runs may be an older one."""
    folders = (_HERE, _HERE.parent / "catalog", *(_HERE / room for room in _ROOMS))
    stamp = hashlib.sha256(f"{sys.version} {np.__version__} {version('numba')}".encode())
    try:
        for path in (path for folder in folders for path in sorted(folder.glob("*.py"))):
            if path.stat().st_mtime > _STARTED_S:
                return None
            stamp.update(f"\0{path.name}\0".encode())
            stamp.update(path.read_bytes())
    except OSError:
        return None
    return stamp.digest()


@cache
def _made_room(folder: Path) -> None:
    """Let go of what has not been asked for the longest, once a run."""
    with suppress(OSError):
        files = [(path.stat(), path) for path in folder.iterdir()]
        files.sort(key=lambda item: item[0].st_mtime, reverse=True)
        held = 0
        for stat, path in files:
            held += stat.st_size
            if held > HOLDS_MB * MEGABYTE:
                path.unlink()


__all__ = ["array_bytes", "kept_on_disk", "kept_within", "per_record"]
