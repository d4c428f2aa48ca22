"""Keeping what a function makes of records, each known by its identity alone."""

from collections.abc import Callable
from functools import wraps
from threading import Lock
from typing import Any, ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")


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
