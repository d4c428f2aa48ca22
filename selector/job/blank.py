"""The bar a part is cut from: of the shapes its steel is sold in, the one that wastes least."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Literal, get_args

import numpy as np

from selector.job.geometry import solid_mm2
from selector.kept import per_record
from selector.requirement.part import Part, Section

BarShape = Literal["round", "square", "hexagon", "flat"]
# A round no longer than this share of its diameter is cut from plate where plate is sold.
# Common practice. [-]
DISC = 0.5
# What the saw takes, and what is faced off both ends. Common practice. [mm]
CUT_LOSS_MM = 5.0
# Size of the bar about a section, over the size of the section; a tube is cut from solid bar.
_ABOUT: dict[tuple[BarShape, str], float] = {
    ("round", "square"): 2**0.5,
    ("round", "hexagon"): 2 / 3**0.5,
    ("square", "hexagon"): 2 / 3**0.5,
    ("hexagon", "square"): 3**0.5 / (3 - 3**0.5),
}


@dataclass(frozen=True, slots=True)
class Blank:
    """The bar a part is cut from, cut loss included; `width_mm` is of a flat."""

    shape: BarShape
    size_mm: float
    length_mm: float
    width_mm: float | None = None

    @property
    def volume_mm3(self) -> float:
        """Its volume."""
        return float(solid_mm2(self.shape, self.size_mm, self.width_mm) * self.length_mm)

    def thicker(self, by_mm: float, least_mm: float = 0.0) -> "Blank":
        """Return a bar so much thicker and wider, at least of the smallest size sold."""
        wide = None if self.width_mm is None else self.width_mm + by_mm
        size = max(self.size_mm + by_mm, least_mm)
        return replace(self, size_mm=size, width_mm=wide and max(wide, size))


def corners_mm(section: Section) -> float:
    """Return the round that a section is turned from; a flat is ground to its width. [mm]."""
    if section.shape == "flat":
        return section.across_mm
    return _ABOUT.get(("round", section.shape), 1.0) * section.size


@per_record(512)
def blank(part: Part, sold: Collection[str]) -> Blank:
    """Return the bar a part is cut from: of the shapes sold, the one of least volume.

    Parameters
    ----------
    part : Part
        The part.
    sold : collection of str
        Shapes that its bar is sold in; of one that is sold in no solid bar, a round.

    Returns
    -------
    Blank
        What is ground off later included, black skin not.
    """
    shapes = [shape for shape in get_args(BarShape) if shape in sold] or ["round"]
    bars = [_about(part, shape) for shape in shapes]
    return min(bars, key=lambda bar: bar.volume_mm3)


def _about(part: Part, shape: BarShape) -> Blank:
    """Return the bar of one shape that a part can be cut from."""
    length, off_mm = part.length_mm + CUT_LOSS_MM, 2 * (part.stock_removal or 0.0)
    if shape == "flat":
        thick = max(section.narrowest_mm for section in part.section)
        wide = max(_wide_mm(section) for section in part.section)
        if part.length_mm <= DISC * thick:
            return Blank(shape, part.length_mm + off_mm, wide + CUT_LOSS_MM, wide + off_mm)
        return Blank(shape, thick + off_mm, length, wide + off_mm)
    size = max(_size_mm(section, shape) for section in part.section)
    return Blank(shape, size + off_mm, length)


def _size_mm(section: Section, shape: BarShape) -> float:
    """Return the bar of a shape about a section. [mm]."""
    if section.shape == "flat":
        # Its corners lie inside a square; of a round or hexagon they are the diagonal.
        corners = float(np.hypot(section.size, section.width or section.size))
        return section.across_mm if shape == "square" else corners
    return _ABOUT.get((shape, section.shape), 1.0) * section.size


def _wide_mm(section: Section) -> float:
    """Return how wide a flat bar about a section is. [mm]."""
    wide = _ABOUT["square", "hexagon"] if section.shape == "hexagon" else 1.0
    return section.across_mm * wide
