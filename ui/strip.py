"""Small drawings in a line of figures: a range on its scale, a hundred squares, half days.

They take the colours of the page by class; the figures stand beside them as text, so readers
are told nothing here.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

_TALL = 18.0


@dataclass(frozen=True, slots=True)
class Scale:
    """What a strip runs between, with the stretch that is asked for and a limit, if any."""

    low: float
    high: float
    asked: tuple[float, float] | None = None
    limit: float | None = None

    def at(self, value: float) -> float:
        """Return the place of a value along the strip, 0 to 100."""
        share = (value - self.low) / (self.high - self.low)
        return 100.0 * min(max(share, 0.0), 1.0)


def scale_over(
    values: Iterable[float | None],
    asked: tuple[float, float] | None = None,
    limit: float | None = None,
) -> Scale:
    """Return the scale that holds values with a little room at both ends.

    Parameters
    ----------
    values : iterable of float
        What is to be shown; unknown ones are None.
    asked : tuple of float, optional
        The stretch that is asked for.
    limit : float, optional
        What must not be passed.

    Returns
    -------
    Scale
        Never without width.
    """
    every = [v for v in (*values, *(asked or ()), limit) if v is not None] or [0.0, 1.0]
    low, high = min(every), max(every)
    room = 0.08 * (high - low) or 1.0
    return Scale(max(low - room, 0.0) if low >= 0 else low - room, high + room, asked, limit)


def bar(low: float | None, middle: float | None, high: float | None, scale: Scale) -> str:
    """Return a range from 5 to 95 in 100 with its middle, on a scale.

    Parameters
    ----------
    low, middle, high : float
        The range.
    scale : Scale
        What it runs between.

    Returns
    -------
    str
        SVG; only the scale where the range is unknown.
    """
    parts = [f"<line class='s-rail' x1='0' x2='100' y1='{_TALL / 2}' y2='{_TALL / 2}'/>"]
    if scale.asked is not None:
        left, right = map(scale.at, scale.asked)
        parts.append(
            f"<rect class='s-asked' x='{left:.1f}' y='1' width='{max(right - left, 0.8):.1f}' "
            f"height='{_TALL - 2}'/>"
        )
    if low is not None and middle is not None and high is not None:
        parts.append(
            f"<line class='s-range' x1='{scale.at(low):.1f}' x2='{scale.at(high):.1f}' "
            f"y1='{_TALL / 2}' y2='{_TALL / 2}'/>" + _upright("s-middle", scale.at(middle), 2.0)
        )
    if scale.limit is not None:
        parts.append(_upright("s-limit", scale.at(scale.limit), 0.0))
    return _svg("".join(parts), f"0 0 100 {_TALL}", "strip")


def _upright(kind: str, at: float, gap: float) -> str:
    """Return an upright line across the strip."""
    return f"<line class='{kind}' x1='{at:.1f}' x2='{at:.1f}' y1='{gap}' y2='{_TALL - gap}'/>"


def ticks(scale: Scale) -> str:
    """Return the figures under a strip; they are read from the text beside it, not from here.

    Parameters
    ----------
    scale : Scale
        What it runs between.

    Returns
    -------
    str
        HTML.
    """
    step = _step(scale.high - scale.low)
    first = math.ceil(scale.low / step)
    marks = [n * step for n in range(first, math.floor(scale.high / step) + 1)]
    spans = "".join(f"<span style='left:{scale.at(v):.1f}%'>{v:g}</span>" for v in marks)
    return f"<div class='tw-ticks' aria-hidden='true'>{spans}</div>"


def _step(span: float) -> float:
    """Return a round step that divides a span into three to six."""
    power = 10.0 ** math.floor(math.log10(span / 3.0))
    return next(power * n for n in (5, 2, 1) if span / (power * n) >= 2.5)


def squares(share: float) -> str:
    """Return a hundred squares, filled as many as come out right."""
    right = min(max(round(100 * share), 0), 100)
    cells = "".join(
        f"<rect class='{'s-on' if n < right else 's-off'}' x='{4 * (n // 4) + 0.5}' "
        f"y='{4 * (n % 4) + 0.5}' width='3' height='3'/>"
        for n in range(100)
    )
    return _svg(cells, "0 0 100 16", "squares")


def half_days(days: float) -> str:
    """Return a square for each half day, up to two weeks."""
    count = min(max(round(2 * days), 1), 28)
    shown = max(count, 12)
    step = 100.0 / shown
    cells = "".join(
        f"<rect class='{'s-on' if n < count else 's-pale'}' x='{n * step:.2f}' y='3' "
        f"width='{0.8 * step:.2f}' height='10'/>"
        for n in range(shown)
    )
    return _svg(cells, "0 0 100 16", "strip")


def _svg(inside: str, box: str, kind: str) -> str:
    """Return a drawing that fills the width it is given."""
    ratio = "xMinYMid meet" if kind == "squares" else "none"
    return (
        f"<svg class='tw-{kind}' viewBox='{box}' preserveAspectRatio='{ratio}' "
        f"aria-hidden='true' focusable='false'>{inside}</svg>"
    )
