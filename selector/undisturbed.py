"""Computing an answer undisturbed: no search for garbage, no second thread."""

import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache

from threadpoolctl import ThreadpoolController


@lru_cache(maxsize=1)
def _libraries(_modules: int) -> ThreadpoolController:
    """Return the libraries of matrices that are loaded: looked for at every answer, 5 ms."""
    return ThreadpoolController()


@contextmanager
def undisturbed() -> Iterator[None]:
    """Let no collection run within, and one thread multiply matrices; a decorator as well.

    An answer makes many small objects and no cycles worth finding: looking for them took a
    tenth of its time. Its matrices are small too: a second thread waits longer than it works,
    and took two fifths of the processor time. Where several threads compute at once the first
    to end lets go.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        # A library comes with a module, so that their number says whether to look again.
        with _libraries(len(sys.modules)).limit(limits=1, user_api="blas"):
            yield
    finally:
        if was_on:
            gc.enable()
