"""Sweeps of the compiled step: the matrix of each direction, eliminated once, solved twice."""

from collections.abc import Callable
from typing import NamedTuple, TypeVar

import numpy as np
from numba import njit
from numpy.typing import NDArray

from selector.heat.grid import Mesh

Floats = NDArray[np.float64]
Function = TypeVar("Function", bound=Callable[..., object])

FAST = {"contract", "reassoc", "nsz", "arcp"}  # NaN stays NaN, so that it can be seen


class Work(NamedTuple):
    """Scratch arrays of one run: fields, factors of both sweeps, wall values, curve shares."""

    field: Floats
    factor: Floats
    wall: Floats
    mix: Floats


def compiled(function: Function) -> Function:
    """Return a function compiled for use by other compiled functions only.

    Without a wrapper for callers from outside it compiles in half the time.

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
        cache=True,
        nogil=True,
        error_model="numpy",
        fastmath=FAST,
        no_cpython_wrapper=True,
        no_cfunc_wrapper=True,
    )
    return made(function)  # type: ignore[no-any-return]


@compiled
def _bond(mesh: Mesh, stiff: Floats, across: bool, out: Floats) -> None:
    """Set the exchange of each cell with its surroundings through walls of one direction."""
    for i in range(out.shape[0]):
        for j in range(out.shape[1]):
            out[i, j] = 0.0
    for w in range(stiff.size):
        if mesh.wall_across[w] == across:
            out[mesh.wall_row[w], mesh.wall_column[w]] += mesh.wall_area[w] * stiff[w]


@compiled
def factor(mesh: Mesh, slope: Floats, scale: float, work: Work) -> None:
    """Eliminate both one-way matrices 1 - scale A, once for the two stages of a step.

    Parameters
    ----------
    mesh : Mesh
        Cells and walls. [-]
    slope : ndarray
        Slope of theta with enthalpy in each cell. [-]
    scale : float
        The method's gamma times the step. [-]
    work : Work
        Wall exchange by theta in wall[1]; the factors are left in it. [-]

    Returns
    -------
    None
        Nothing. [-]

    References
    ----------
    .. [1] L. H. Thomas, elimination of tridiagonal systems, 1949 (from memory).
    """
    rows, columns = slope.shape
    bond = work.factor[6]
    inverse, below, above = work.factor[0], work.factor[1], work.factor[2]
    _bond(mesh, work.wall[1], True, bond)
    for i in range(rows):
        for j in range(columns):
            part = scale / mesh.volume[i, j]
            up = mesh.across[i, j] if i < rows - 1 else 0.0
            down = mesh.across[i - 1, j] if i > 0 else 0.0
            pivot = 1.0 + part * (up + down + bond[i, j]) * slope[i, j]
            if i > 0:
                below[i, j] = -part * down * slope[i - 1, j]
                pivot -= below[i, j] * above[i - 1, j]
            inverse[i, j] = 1.0 / pivot
            if i < rows - 1:
                above[i, j] = -part * up * slope[i + 1, j] * inverse[i, j]
    _factor_along(mesh, slope, scale, work)


@compiled
def _factor_along(mesh: Mesh, slope: Floats, scale: float, work: Work) -> None:
    """Eliminate the matrix of the sweep along."""
    rows, columns = slope.shape
    bond = work.factor[6]
    inverse, below, above = work.factor[3], work.factor[4], work.factor[5]
    _bond(mesh, work.wall[1], False, bond)
    for j in range(columns):
        for i in range(rows):
            part = scale / mesh.volume[i, j]
            up = mesh.along[i, j] if j < columns - 1 else 0.0
            down = mesh.along[i, j - 1] if j > 0 else 0.0
            pivot = 1.0 + part * (up + down + bond[i, j]) * slope[i, j]
            if j > 0:
                below[i, j] = -part * down * slope[i, j - 1]
                pivot -= below[i, j] * above[i, j - 1]
            inverse[i, j] = 1.0 / pivot
            if j < columns - 1:
                above[i, j] = -part * up * slope[i, j + 1] * inverse[i, j]


@compiled
def _sweep_across(work: Work, x: Floats) -> None:
    """Solve across in place."""
    rows, columns = x.shape
    inverse, below, above = work.factor[0], work.factor[1], work.factor[2]
    for j in range(columns):
        x[0, j] *= inverse[0, j]
    for i in range(1, rows):
        for j in range(columns):
            x[i, j] = (x[i, j] - below[i, j] * x[i - 1, j]) * inverse[i, j]
    for i in range(rows - 2, -1, -1):
        for j in range(columns):
            x[i, j] -= above[i, j] * x[i + 1, j]


@compiled
def _sweep_along(work: Work, x: Floats) -> None:
    """Solve along in place."""
    rows, columns = x.shape
    inverse, below, above = work.factor[3], work.factor[4], work.factor[5]
    for i in range(rows):
        x[i, 0] *= inverse[i, 0]
    for j in range(1, columns):
        for i in range(rows):
            x[i, j] = (x[i, j] - below[i, j] * x[i, j - 1]) * inverse[i, j]
    for j in range(columns - 2, -1, -1):
        for i in range(rows):
            x[i, j] -= above[i, j] * x[i, j + 1]


@compiled
def _give(mesh: Mesh, work: Work, slope: Floats, way: tuple[float, bool], x: Floats) -> None:
    """Leave in `work.wall[3]` the heat that walls of one direction gave off by its sweep."""
    for w in range(mesh.wall_row.size):
        if mesh.wall_across[w] == way[1]:
            i, j = mesh.wall_row[w], mesh.wall_column[w]
            bond = way[0] * mesh.wall_area[w] * work.wall[1, w]
            work.wall[3, w] = bond * slope[i, j] * x[i, j]


@compiled
def solve(mesh: Mesh, work: Work, slope: Floats, scale: float, x: Floats) -> None:
    """Solve both sweeps in place.

    Parameters
    ----------
    mesh : Mesh
        Cells and walls. [-]
    work : Work
        Factors; the heat each wall gave off by the sweeps is left in wall[3]. [-]
    slope : ndarray
        As given to `factor`. [-]
    scale : float
        As given to `factor`. [-]
    x : ndarray
        Right side, then solution. [-]

    Returns
    -------
    None
        Nothing. [-]

    References
    ----------
    .. [1] As `factor`.
    """
    _sweep_across(work, x)
    _give(mesh, work, slope, (scale, True), x)
    if x.shape[1] > 1:
        _sweep_along(work, x)
    _give(mesh, work, slope, (scale, False), x)
