"""Keeping arrays between two bounds."""

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray


def bounded(values: ArrayLike, low: ArrayLike, high: ArrayLike) -> NDArray[Any]:
    """Return values held between two bounds: `np.clip`, which takes several times as long.

    Parameters
    ----------
    values, low, high : array_like
        Values and the bounds that they are held at. [any unit]

    Returns
    -------
    ndarray
        Of the shape they have together; what is not a number stays so. [any unit]
    """
    return np.asarray(np.minimum(np.maximum(values, low), high))
