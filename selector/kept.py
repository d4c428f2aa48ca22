"""Keeping what a function returns: by its records, or within so much memory."""

from collections import OrderedDict
from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import fields, is_dataclass
from functools import wraps
from threading import Lock
from typing import Any, ParamSpec, TypeVar

import numpy as np

P = ParamSpec("P")
T = TypeVar("T")
MEGABYTE = 2**20


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
    found: dict[int, int] = {}
    left: list[object] = [answer]
    while left:
        item = left.pop()
        if isinstance(item, np.ndarray):
            while isinstance(item.base, np.ndarray):
                item = item.base
            found[id(item)] = item.nbytes
        else:
            left += _parts(item)
    return sum(found.values())


def _parts(item: object) -> Iterable[object]:
    """Return what a record, sequence or mapping is made of."""
    if is_dataclass(item):
        return [getattr(item, part.name) for part in fields(item)]
    if isinstance(item, dict):
        return list(item.values())
    return item if isinstance(item, (tuple, list)) else ()


__all__ = ["array_bytes", "kept_within", "per_record"]
