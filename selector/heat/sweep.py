"""Sweeps of the compiled step: the matrix of each direction, eliminated once, solved twice."""

from collections.abc import Callable
from typing import TypeVar

import numpy as np

from selector.heat.compiler import njit
from selector.heat.layout import (
    ABOVE,
    ACROSS,
    ALONG,
    AREA,
    BELOW,
    BOND,
    CELL,
    DIRECTION,
    FIRST,
    INVERSE,
    LINK,
    PER_VOLUME,
    SLOPE,
    STIFF,
    SWEPT,
    Floats,
    Layout,
)

Function = TypeVar("Function", bound=Callable[..., object])

FAST = {"contract", "reassoc", "nsz", "arcp"}  # NaN stays NaN, so that it can be seen
# Of a function called in one place: its lines go into the caller's before compiling.
joined = njit(error_model="numpy", fastmath=FAST, inline="always")


def compiled(function: Function) -> Function:
    """Return a function compiled for use by other compiled functions only.

    Without a wrapper for callers from outside it compiles in half the time. The machine keeps
    only the loop that calls it.

    Parameters
    ----------
    function : callable
        Arithmetic on scalars and arrays. [-]

    Returns
    -------
    callable
        The same, compiled. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    made = njit(  # type: ignore[call-overload]
        nogil=True,
        error_model="numpy",
        fastmath=FAST,
        no_cpython_wrapper=True,
        no_cfunc_wrapper=True,
    )
    return made(function)  # type: ignore[no-any-return]


@compiled
def factor(part: Layout, direction: int, scale: float) -> None:
    """Eliminate the matrix 1 - scale A of one direction, once for the two stages of a step.

    Parameters
    ----------
    part : Layout
        The part; the elimination is left in it. [-]
    direction : int
        ACROSS or ALONG. [-]
    scale : float
        The method's gamma times the step. [-]

    Returns
    -------
    None
        Nothing. [-]

    References
    ----------
    .. [1] L. H. Thomas, elimination of tridiagonal systems, 1949 (from memory).
    """
    cell, wall, place, matrix = part.cell, part.wall, part.place, part.matrix[direction]
    for i in range(matrix.shape[1]):
        matrix[BOND, i] = 0.0
    for w in range(wall.shape[1]):
        if place[DIRECTION, w] == direction:
            matrix[BOND, place[CELL, w]] += wall[AREA, w] * wall[STIFF, w]
    count, step, wide, aside = part.rows, part.columns, part.columns, np.uint64(1)
    if direction == ALONG:
        count, step, wide, aside = wide, aside, count, step
    for p in range(count):
        for q in range(wide):
            k = part.columns + p * step + q * aside
            rate = scale * cell[PER_VOLUME, k]
            low = -rate * matrix[LINK, k - step] * cell[SLOPE, k - step]
            out = matrix[LINK, k] + matrix[LINK, k - step] + matrix[BOND, k]
            pivot = 1.0 + rate * out * cell[SLOPE, k] - low * matrix[ABOVE, k - step]
            high = -rate * matrix[LINK, k] * cell[SLOPE, k + step]
            matrix[BELOW, k] = low
            inverse = 1.0 / pivot
            matrix[INVERSE, k] = inverse
            matrix[ABOVE, k] = high * inverse


@compiled
def _sweep_across(part: Layout, x: Floats) -> None:
    """Solve across in place, row by row: within a row no cell waits for another."""
    rows, columns = np.int64(part.rows), np.int64(part.columns)
    shape = (rows + 2, columns)
    matrix, state = part.matrix[ACROSS], x.reshape(shape)
    inverse = matrix[INVERSE].reshape(shape)
    below, above = matrix[BELOW].reshape(shape), matrix[ABOVE].reshape(shape)
    for i in range(1, rows + 1):
        here, before = state[i], state[i - 1]
        low, per = below[i], inverse[i]
        for k in range(here.size):
            here[k] = (here[k] - low[k] * before[k]) * per[k]
    for i in range(rows, 0, -1):
        here, after, high = state[i], state[i + 1], above[i]
        for k in range(here.size):
            here[k] -= high[k] * after[k]


@compiled
def _sweep_along(part: Layout, x: Floats) -> None:
    """Solve along in place, all rows side by side: one alone would wait for itself."""
    matrix, columns, one = part.matrix[ALONG], part.columns, np.uint64(1)
    inverse, below, above = matrix[INVERSE], matrix[BELOW], matrix[ABOVE]
    for j in range(columns):
        k = columns + j
        for _ in range(part.rows):
            x[k] = (x[k] - below[k] * x[k - one]) * inverse[k]
            k += columns
    for j in range(columns):
        k = columns + columns - one - j
        for _ in range(part.rows):
            x[k] -= above[k] * x[k + one]
            k += columns


@compiled
def solve(part: Layout, direction: int, scale: float, stage: int) -> None:
    """Solve one direction in place.

    Parameters
    ----------
    part : Layout
        The part after `factor`, the right side in row FIRST or SECOND of its cells; the
        solution is left there, and the heat that walls gave off by it in row SWEPT. [-]
    direction : int
        ACROSS or ALONG. [-]
    scale : float
        As given to `factor`. [-]
    stage : int
        0 for row FIRST, 1 for SECOND. [-]

    Returns
    -------
    None
        Nothing. [-]

    References
    ----------
    .. [1] As `factor`.
    """
    cell, wall, place = part.cell, part.wall, part.place
    x = cell[FIRST + stage]
    if direction == ACROSS:
        _sweep_across(part, x)
    else:
        _sweep_along(part, x)
    for w in range(wall.shape[1]):
        if place[DIRECTION, w] == direction:
            k = place[CELL, w]
            wall[SWEPT, w] = scale * wall[AREA, w] * wall[STIFF, w] * cell[SLOPE, k] * x[k]
