"""The compiler of the inner loop, loaded without the linear algebra that the loop never calls.

As it loads, the compiler looks for a library of matrix products, and with that comes the whole
of scipy: a third of a second of each cold start. Not finding it, it does without.
"""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from numba import njit

_MATRIX_PRODUCTS = "scipy.linalg.cython_blas"


@contextmanager
def _hidden(module: str) -> Iterator[None]:
    """Let a module not be found for a while, unless it is loaded already."""
    if module in sys.modules:
        yield
        return
    # None is the import system's own sign for what is not there.
    sys.modules[module] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        del sys.modules[module]


with _hidden(_MATRIX_PRODUCTS):
    import numba.np.arraymath  # noqa: F401 - the part that looks for it

__all__ = ["njit"]
