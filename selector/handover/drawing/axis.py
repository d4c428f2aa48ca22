"""The axis of a part on paper: to scale in both directions, long plain stretches cut short."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

# Longer than so many diameters, a part is broken; a piece keeps so many at least. [-]
BROKEN_FROM, LEAST_PIECE = 12.0, 0.8
# So much must fall out for a break to be worth it, in diameters.
LEAST_REMOVED = 0.5
# Places nearer than this are one. [mm]
SAME_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch that is shown, and where it begins on paper."""

    from_mm: float
    to_mm: float
    left: float


@dataclass(frozen=True, slots=True)
class Axis:
    """Where each place along a part is drawn."""

    scale: float
    pieces: tuple[Piece, ...]

    def x(self, at_mm: float) -> float:
        """Return where a place is on paper; one that fell out lies at the break."""
        index = bisect_right([piece.from_mm for piece in self.pieces], at_mm) - 1
        piece = self.pieces[max(index, 0)]
        shown = min(max(at_mm, piece.from_mm), piece.to_mm)
        return piece.left + (shown - piece.from_mm) * self.scale

    @property
    def left(self) -> float:
        """Where the part begins on paper."""
        return self.pieces[0].left

    @property
    def right(self) -> float:
        """Where it ends."""
        last = self.pieces[-1]
        return last.left + (last.to_mm - last.from_mm) * self.scale

    @property
    def breaks(self) -> tuple[tuple[float, float], ...]:
        """From where to where on paper each break goes."""
        return tuple((self.x(a.to_mm), b.left) for a, b in pairwise(self.pieces))

    def shows(self, at_mm: float) -> bool:
        """Return whether a place is drawn."""
        slack = SAME_MM
        return any(p.from_mm - slack <= at_mm <= p.to_mm + slack for p in self.pieces)


def stretches(
    places_mm: Iterable[float], length_mm: float, thick_mm: float
) -> tuple[tuple[float, float], ...]:
    """Return which stretches of a part are shown.

    Parameters
    ----------
    places_mm : iterable of float
        Where something is: shoulders, features, ends of what is hard or heated. [mm]
    length_mm, thick_mm : float
        Of the part. [mm]

    Returns
    -------
    tuple of tuple of float
        All of it in one where it is no longer than 12 thicknesses. [mm]
    """
    if length_mm <= BROKEN_FROM * thick_mm:
        return ((0.0, length_mm),)
    inside = sorted({0.0, length_mm, *(p for p in places_mm if 0.0 < p < length_mm)})
    most = _most_gap(inside, BROKEN_FROM * thick_mm, LEAST_PIECE * thick_mm)
    shown: list[tuple[float, float]] = [(0.0, 0.0)]
    for start, end in pairwise(inside):
        if end - start > most + LEAST_REMOVED * thick_mm:
            shown[-1] = (shown[-1][0], start + 0.5 * most)
            shown.append((end - 0.5 * most, end))
        else:
            shown[-1] = (shown[-1][0], end)
    return tuple(shown)


def _most_gap(places_mm: list[float], wanted_mm: float, least_mm: float) -> float:
    """Return how long a plain stretch may be for the whole to be as long as wanted. [mm]."""
    gaps = [b - a for a, b in pairwise(places_mm)]
    low, high = least_mm, max(*gaps, least_mm)
    for _ in range(40):
        middle = 0.5 * (low + high)
        low, high = (
            (low, middle) if sum(min(g, middle) for g in gaps) > wanted_mm else (middle, high)
        )
    return low


def axis_of(
    shown_mm: tuple[tuple[float, float], ...], scale: float, left: float, gap: float
) -> Axis:
    """Return the axis of the stretches that are shown.

    Parameters
    ----------
    shown_mm : tuple
        From `stretches`. [mm]
    scale : float
        Paper to part.
    left, gap : float
        Where it begins on paper, and how wide a break is.

    Returns
    -------
    Axis
        Ready to be asked for places.
    """
    pieces = []
    for start, end in shown_mm:
        pieces.append(Piece(start, end, left))
        left += (end - start) * scale + gap
    return Axis(scale, tuple(pieces))
