"""Straight lines of what is drawn, so that no text is set across one."""

import re
from typing import NamedTuple

_MOVE = re.compile(r"([MLHVA])([^MLHVAZq]*)|Z|q[^MLHVAZq]*")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")


class Stroke(NamedTuple):
    """A straight line from one place to another."""

    x1: float
    y1: float
    x2: float
    y2: float


def strokes_of(path: str) -> list[Stroke]:
    """Return the lines of a path, an arc as its chord, curves left out.

    Parameters
    ----------
    path : str
        Path data of SVG in absolute places.

    Returns
    -------
    list of Stroke
        In their order.
    """
    found, x, y = [], 0.0, 0.0
    for match in _MOVE.finditer(path):
        if match[1] is None:
            continue
        values = [float(text) for text in _NUMBER.findall(match[2])]
        new = {"H": (values[0], y), "V": (x, values[-1])}.get(match[1])
        to_x, to_y = (values[-2], values[-1]) if new is None else new
        if match[1] != "M":
            found.append(Stroke(x, y, to_x, to_y))
        x, y = to_x, to_y
    return found


def crosses(stroke: Stroke, low: tuple[float, float], high: tuple[float, float]) -> bool:
    """Return whether a line runs through a rectangle.

    Parameters
    ----------
    stroke : Stroke
        The line.
    low, high : tuple of float
        Left upper and right lower corner.

    Returns
    -------
    bool
        True where some of it lies inside (Liang and Barsky's clipping).
    """
    first, last = 0.0, 1.0
    start, steps = stroke[:2], (stroke.x2 - stroke.x1, stroke.y2 - stroke.y1)
    for begin, step, least, most in zip(start, steps, low, high, strict=True):
        if step == 0.0:
            if not least < begin < most:
                return False
            continue
        ends = sorted(((least - begin) / step, (most - begin) / step))
        first, last = max(first, ends[0]), min(last, ends[1])
    return first < last
