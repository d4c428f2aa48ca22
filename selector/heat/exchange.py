"""What surrounds a part: heat leaving its walls by surface temperature and time."""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.grid import Grid
from selector.heat.steel_property import COLDEST_C, HOTTEST_C, KELVIN

Floats = NDArray[np.float64]
Holder = Literal["insulated", "tongs", "chuck"]

STEFAN = 5.670374e-8
# What a held end loses heat to: coefficient of the contact, W/(m² K), and the holder, °C.
# Estimated: tongs touch in a few places and warm up, a chuck grips all round and stays cool.
HOLDERS: Mapping[str, tuple[float, float]] = MappingProxyType(
    {"insulated": (0.0, 20.0), "tongs": (200.0, 150.0), "chuck": (1500.0, 40.0)}
)
# Every curve is heat flux out, W/m², at these surface temperatures. [°C]
SURFACE_C = np.linspace(COLDEST_C, HOTTEST_C, 901)


class Boundary(NamedTuple):
    """Heat leaving a wall: curves by surface temperature, mixed by shares linear in time.

    `knot_s` has shape (walls, knots), `share` (walls, knots, curves).
    """

    first_c: float
    per_c: float
    curve: Floats
    knot_s: Floats
    share: Floats


def convection(
    coefficient_w_per_m2_k: ArrayLike, ambient_c: float, emissivity: float = 0.0
) -> Floats:
    """Return the heat that leaves a surface by convection and radiation, as a curve.

    Curves may be added; a flux into the part is subtracted.

    Parameters
    ----------
    coefficient_w_per_m2_k : array_like
        Heat transfer coefficient, one or by `SURFACE_C`. [W/(m² K)]
    ambient_c : float
        Temperature of the medium and of what the surface sees. [°C]
    emissivity : float, optional
        Emissivity; oxidised steel 0.8, by EN 1993-1-2 0.7. [-]

    Returns
    -------
    ndarray
        Flux out at each of `SURFACE_C`, W/m². [-]

    Raises
    ------
    OutOfRangeError
        A coefficient is negative or not a number, or the ambient is not a number.

    Notes
    -----
    ``h (T - Ta) + ε σ (T⁴ - Ta⁴)``.

    References
    ----------
    .. [1] Newton's law of cooling and the law of Stefan and Boltzmann.

    Examples
    --------
    >>> float(convection(100.0, 20.0)[np.searchsorted(SURFACE_C, 820.0)])
    80000.0
    """
    h = np.asarray(coefficient_w_per_m2_k, dtype=float)
    if not np.all(h >= 0.0):
        worst = float(h[~(h >= 0.0)].flat[0])
        step = "Give the coefficient of the bath or gas."
        raise OutOfRangeError(
            Problem("coefficient_w_per_m2_k", "0 or above", f"{worst:g}", step)
        )
    if not np.isfinite(ambient_c):
        step = "Give the temperature of the bath or gas."
        raise OutOfRangeError(Problem("ambient_c", "a number", f"{ambient_c:g}", step))
    fourth = (SURFACE_C + KELVIN) ** 4 - (ambient_c + KELVIN) ** 4
    return np.asarray(h * (SURFACE_C - ambient_c) + emissivity * STEFAN * fourth)


@cache
def held_end(holder: Holder) -> Floats:
    """Return what the held end of a bar loses to what holds it, as a curve.

    Parameters
    ----------
    holder : {"insulated", "tongs", "chuck"}
        What holds the part. [-]

    Returns
    -------
    ndarray
        Flux out at each of `SURFACE_C`, W/m². [-]

    Raises
    ------
    OutOfRangeError
        The holder is not known.

    Notes
    -----
    Contact of 200 W/(m² K) to tongs of 150 °C, 1500 to a chuck of 40 °C: estimated.

    References
    ----------
    .. [1] Common practice, no source.

    Examples
    --------
    >>> bool(held_end("insulated").any())
    False
    """
    if holder not in HOLDERS:
        rule, step = f"one of {', '.join(HOLDERS)}", "Say what holds the part."
        raise OutOfRangeError(Problem("holder", rule, repr(holder), step))
    return convection(*HOLDERS[holder])


def steady(grid: Grid, curve_by_face: Mapping[str, Floats]) -> Boundary:
    """Return a boundary that does not change: one curve for each face of the grid.

    A face that is left out is insulated; so is a held end unless its tongs or chuck are given.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    curve_by_face : mapping of str to ndarray
        Face to curve. [-]

    Returns
    -------
    Boundary
        For the solver. [-]

    Raises
    ------
    OutOfRangeError
        The grid has no such face.

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    share = np.zeros((grid.wall_face.size, 2, max(len(curve_by_face), 1)))
    for n, face in enumerate(curve_by_face):
        on = grid.wall_face == face
        if not on.any():
            rule = f"one of {', '.join(np.unique(grid.wall_face))}"
            step = "Name a face that the part has."
            raise OutOfRangeError(Problem("curve_by_face", rule, face, step))
        share[on, :, n] = 1.0
    return mixed(list(curve_by_face.values()), share, np.array([0.0, 1.0]))


def mixed(curves: list[Floats], share: Floats, knot_s: ArrayLike) -> Boundary:
    """Return a boundary that changes in time, wall by wall.

    Parameters
    ----------
    curves : list of ndarray
        Curves at `SURFACE_C`. [-]
    share : ndarray
        Share of each curve at each knot, shape (walls, knots, curves). [-]
    knot_s : array_like
        Times between which the shares change straight, shape (knots,) or (walls, knots),
        ascending; held before the first and after the last. [s]

    Returns
    -------
    Boundary
        For the solver. [-]

    Raises
    ------
    OutOfRangeError
        A curve, share or time is not a number, or the times run backwards.

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    table = np.stack(curves) if curves else np.zeros((1, SURFACE_C.size))
    shares = np.ascontiguousarray(share, dtype=float)
    wide = np.broadcast_to(np.asarray(knot_s, dtype=float), shares.shape[:2])
    times = np.array(wide, order="C")
    sound = np.isfinite(table).all() and np.isfinite(shares).all() and np.isfinite(times).all()
    if not sound or np.any(np.diff(times, axis=-1) < 0.0):
        got = "a number missing, or a time before the one ahead of it"
        step = "Check the schedule and the curves."
        raise OutOfRangeError(Problem("knot_s", "finite and ascending", got, step))
    per = 1.0 / (SURFACE_C[1] - SURFACE_C[0])
    return Boundary(
        float(SURFACE_C[0]),
        float(per),
        np.ascontiguousarray(table, dtype=float),
        times,
        shares,
    )
