"""Holding the garbage collector back while an advice is computed."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def held_back() -> Iterator[None]:
    """Let no collection run within; a decorator as well.

    An advice makes many small objects and no cycles worth finding: looking for them took a
    tenth of its time. Where several threads hold back at once the first to end lets go.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
