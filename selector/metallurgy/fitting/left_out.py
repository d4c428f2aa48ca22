"""How well a fit does on what it has not seen: each group left out in turn."""

from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike, NDArray


def leave_one_out(
    group: NDArray[np.str_],
    miss_of: Callable[[NDArray[np.bool_]], ArrayLike],
    progress: Callable[[str, float], None] | None = None,
) -> NDArray[np.float64]:
    """Return the miss at each reading, its whole group left out of the fit.

    Parameters
    ----------
    group : ndarray of str
        Which steel or grade each reading is of. [-]
    miss_of : callable
        Takes the mask of what is left out; fits the rest, returns the misses of those. [-]
    progress : callable, optional
        Called with what is left out, and the share done so far. [-]

    Returns
    -------
    ndarray
        Misses, in the unit of `miss_of`. [-]

    References
    ----------
    .. [1] M. Stone, Cross-validatory choice and assessment of statistical predictions, J. Royal
       Statistical Society B 36, 1974, 111-147.
    """
    miss = np.empty(group.size)
    names = np.unique(group)
    for done, name in enumerate(names):
        if progress:
            progress(f"Leaving out {name}", done / len(names))
        out = group == name
        miss[out] = miss_of(out)
    return miss
