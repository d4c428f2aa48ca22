"""What a drawing is told of hardness and heat; places in mm from the working end."""

from bisect import bisect_right
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Band:
    """A stretch that is hard, to a depth under its surface or right through.

    `hrc` is None where hardness is asked and not yet known; `words` stands in its strip.
    """

    from_mm: float
    to_mm: float
    depth_mm: float | None
    hrc: float | None
    words: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class Field:
    """A field along a part and across its steel; places not followed are as bought.

    `share` is the place between bore (0) and surface (1); `hrc` and `peak_c` have the shape
    (share, along).
    """

    along_mm: Floats
    share: Floats
    hrc: Floats
    peak_c: Floats


@dataclass(frozen=True, slots=True)
class Note:
    """A few words at a place along the part."""

    at_mm: float
    words: str


@dataclass(frozen=True, slots=True, eq=False)
class Marks:
    """All that is drawn besides the part.

    `limits_hrc` are the five bounds between the six steps of hardness, the third the least
    that serves; `rest` is said of what is not hard. `said` is what comes out, in a line or
    two, drawn at the hard zone; `notes` stand over the strip, `water_mm` is how far the part
    is dipped.
    """

    bands: tuple[Band, ...] = ()
    field: Field | None = None
    limits_hrc: tuple[float, ...] = (25.0, 40.0, 48.0, 50.0, 56.0)
    bought_hrc: float = 10.0
    rest: str = "as bought"
    said: tuple[str, ...] = ()
    notes: tuple[Note, ...] = ()
    heated_mm: tuple[float, float] | None = None
    heat_words: str = ""
    water_mm: float | None = None

    def step_of(self, hrc: float) -> int:
        """Return which of the six steps a hardness lies in, from 0."""
        return bisect_right(self.limits_hrc, hrc)
