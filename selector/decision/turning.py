"""Where the first place changes hands: at which weight of a criterion, at which price."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.decision.near_tie import leaders
from selector.decision.standing import Standing, expected
from selector.requirement.priority import CRITERIA, Criterion

Floats = NDArray[np.float64]
# A weight is tried at so many places, a price up to so many times what it is.
_STEPS, _DEAREST = 11, 10.0
_HALVINGS = 6


@dataclass(frozen=True, slots=True)
class Turn:
    """How far a criterion's weight goes each way before another option is first.

    `below` and `above` are the weights where that happens, `under` and `over` the place in the
    standing, from 0, of who is first there; None where the first stays first to the end.
    """

    criterion: Criterion
    now: float
    below: float | None
    under: int | None
    above: float | None
    over: int | None


def moved(weights: Floats, at: int, value: float) -> Floats:
    """Return weights with one of them set, the others in proportion.

    Parameters
    ----------
    weights : ndarray
        Weights that add up to 1; shape (criteria,). [-]
    at : int
        Place of the one that is set.
    value : float
        Its weight, between 0 and 1. [-]

    Returns
    -------
    ndarray
        Adding up to 1. Where the one had all the weight, the others share the rest evenly. [-]
    """
    others = np.delete(weights, at)
    rest = (
        others / others.sum() if others.sum() > 0.0 else np.full(len(others), 1 / len(others))
    )
    return np.insert((1.0 - value) * rest, at, value)


def turns(standing: Standing, weights: Floats) -> tuple[Turn, ...]:
    """Return for each criterion between which weights the first stays first.

    Parameters
    ----------
    standing : Standing
        What the order is made from: all options, or two of them for their change of places.
    weights : ndarray
        The user's weights; shape (criteria,). [-]

    Returns
    -------
    tuple of Turn
        One a criterion, in their order.
    """
    # All that is tried goes through one product; then all brackets are halved together.
    now = [float(w) for w in weights]
    tried = [np.unique(np.append(np.linspace(0.0, 1.0, _STEPS), w)) for w in now]
    firsts = np.split(
        _first(standing, weights, [(k, t) for k, row in enumerate(tried) for t in row]),
        np.cumsum([len(row) for row in tried])[:-1],
    )
    found: dict[tuple[int, int], tuple[float, float, int]] = {}
    for k, (places, first) in enumerate(zip(tried, firsts, strict=True)):
        here = int(np.searchsorted(places, now[k]))
        for way in (-1, 1):
            course = range(here + way, -1 if way < 0 else len(places), way)
            other = next((j for j in course if first[j] != first[here]), None)
            if other is not None:
                found[k, way] = (float(places[other - way]), float(places[other]), -1)
    found = _halved(standing, weights, found)
    rows = []
    for k, criterion in enumerate(CRITERIA):
        below, above = found.get((k, -1)), found.get((k, 1))
        rows.append(
            Turn(
                criterion, now[k],
                below and 0.5 * (below[0] + below[1]), below and below[2],
                above and 0.5 * (above[0] + above[1]), above and above[2],
            )
        )  # fmt: skip
    return tuple(rows)


def _first(standing: Standing, weights: Floats, tried: list[tuple[int, float]]) -> Floats:
    """Return who is first with one weight set, for each criterion and weight tried."""
    sets = np.array([moved(weights, k, t) for k, t in tried])
    return np.asarray(leaders(standing.claims, expected(standing, sets))[0])


def _halved(
    standing: Standing,
    weights: Floats,
    found: dict[tuple[int, int], tuple[float, float, int]],
) -> dict[tuple[int, int], tuple[float, float, int]]:
    """Return brackets (still first, no more first, who is) narrowed."""
    if not found:
        return found
    keys = list(found)
    first = int(_first(standing, weights, [(0, float(weights[0]))])[0])
    for _ in range(_HALVINGS):
        middles = [0.5 * (found[key][0] + found[key][1]) for key in keys]
        who = _first(
            standing, weights, [(k, t) for (k, _), t in zip(keys, middles, strict=True)]
        )
        for key, middle, place in zip(keys, middles, who, strict=True):
            still, gone, last = found[key]
            found[key] = (middle, gone, last) if place == first else (still, middle, int(place))
    ends = _first(standing, weights, [(key[0], found[key][1]) for key in keys])
    return {
        key: (found[key][0], found[key][1], int(place))
        for key, place in zip(keys, ends, strict=True)
    }


def dearest(standing: Standing, weights: Floats) -> tuple[float, int] | None:
    """Return how many times dearer the first may become before another is first.

    Parameters
    ----------
    standing : Standing
        What the order is made from, the first of the advice in row 0.
    weights : ndarray
        The user's weights; shape (criteria,). [-]

    Returns
    -------
    tuple of float and int, or None
        The factor and who is first beyond it, from 0; None where it stays first at ten times.
    """
    return _crossing(standing, weights, lambda factor: standing.priced(0, factor), _DEAREST)


def cheapest(standing: Standing, weights: Floats) -> float | None:
    """Return to what share of its cost the second of two must fall to be first, None if never.

    Parameters
    ----------
    standing : Standing
        Two options.
    weights : ndarray
        The user's weights; shape (criteria,). [-]

    Returns
    -------
    float or None
        A factor below 1; None where it stays second at a tenth. [-]
    """
    found = _crossing(
        standing, weights, lambda factor: standing.priced(1, factor), 1.0 / _DEAREST
    )
    return found[0] if found else None


def _crossing(
    standing: Standing,
    weights: Floats,
    priced: Callable[[float], Standing],
    end: float,
) -> tuple[float, int] | None:
    """Return the price factor between 1 and an end where the first place changes hands."""

    def first(factor: float) -> int:
        again = priced(factor)
        return int(leaders(again.claims, expected(again, weights[None]))[0, 0])

    now = int(leaders(standing.claims, expected(standing, weights[None]))[0, 0])
    places = np.geomspace(1.0, end, _STEPS)
    still = 1.0
    for place in places[1:]:
        gone = float(place)
        if first(gone) != now:
            break
        still = gone
    else:
        return None
    for _ in range(_HALVINGS):
        middle = (still * gone) ** 0.5
        still, gone = (middle, gone) if first(middle) == now else (still, middle)
    return (still * gone) ** 0.5, first(gone)
