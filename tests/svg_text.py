"""Where the texts of an SVG stand, by the widths of the font itself."""

import re
from dataclasses import dataclass
from functools import cache
from xml.etree import ElementTree as ET

from fontTools.ttLib import TTFont

from selector.handover.fonts import fonts

NAMES = {False: "SourceSansPro-Regular.ttf", True: "SourceSansPro-Bold.ttf"}
SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Spot:
    """One text and its box; a twentieth of an em may be shared with another."""

    text: str
    left: float
    top: float
    right: float
    bottom: float
    colour: str = "#000000"

    def meets(self, other: "Spot") -> bool:
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )


@cache
def widths(*, bold: bool) -> tuple[dict, dict, int]:
    folder = next(f for f in fonts().folders if (f / NAMES[bold]).exists())
    font = TTFont(folder / NAMES[bold])
    return font.getBestCmap(), font["hmtx"].metrics, font["head"].unitsPerEm


def true_width(text: str, size: float, *, bold: bool) -> float:
    """Return how wide a text is set; a letter the font lacks counts as an em."""
    cmap, metrics, per_em = widths(bold=bold)
    units = sum(metrics[cmap[ord(c)]][0] if ord(c) in cmap else per_em for c in text)
    return units * size / per_em


def spots(svg: str) -> list[Spot]:
    """Return the texts of an SVG where they stand."""
    return [_spot(element) for element in ET.fromstring(svg).iter(f"{SVG}text")]  # noqa: S314


def box(svg: str) -> tuple[float, float]:
    """Return how wide and high an SVG is."""
    _, _, wide, high = ET.fromstring(svg).get("viewBox").split()  # noqa: S314
    return float(wide), float(high)


def _spot(element: ET.Element) -> Spot:
    text = "".join(element.itertext())
    x, y, size = (float(element.get(key)) for key in ("x", "y", "font-size"))
    wide = true_width(text, size, bold=element.get("font-weight") == "700")
    before = {"middle": 0.5, "end": 1.0}.get(element.get("text-anchor"), 0.0) * wide
    over, under = 0.68 * size, 0.18 * size
    ink = element.get("fill")
    if element.get("transform"):
        return Spot(text, x - over, y - wide + before, x + under, y + before, ink)
    return Spot(text, x - before, y - over, x - before + wide, y + under, ink)


def tints(svg: str) -> list[Spot]:
    """Return the rectangles of an SVG that are filled, their colour as their text."""
    found = []
    for element in ET.fromstring(svg).iter(f"{SVG}rect"):  # noqa: S314
        x, y, wide, high = (float(element.get(k)) for k in ("x", "y", "width", "height"))
        if wide and element.get("fill", "none") != "none":
            found.append(Spot(element.get("fill"), x, y, x + wide, y + high))
    return found


Segment = tuple[float, float, float, float]
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")
_MOVE = re.compile(r"([MLHVA])([^MLHVAZ]*)|Z")


def segments(svg: str) -> list[Segment]:
    """Return the straight lines of an SVG that are stroked, hatching and fills left out."""
    found: list[Segment] = []
    root = ET.fromstring(svg)  # noqa: S314
    patterns = {id(e) for p in root.iter(f"{SVG}pattern") for e in p.iter()}
    for element in root.iter():
        if id(element) in patterns or element.get("stroke", "none") == "none":
            continue
        if element.tag == f"{SVG}line":
            x1, y1, x2, y2 = (float(element.get(key)) for key in ("x1", "y1", "x2", "y2"))
            found.append((x1, y1, x2, y2))
        elif element.tag == f"{SVG}path" and element.get("fill") == "none":
            found += _of_path(element.get("d"))
    return found


def _of_path(path: str) -> list[Segment]:
    found, x, y = [], 0.0, 0.0
    for match in _MOVE.finditer(path):
        if match[1] is None:
            continue
        values = [float(v) for v in _NUMBER.findall(match[2])]
        new = {"H": (values[0], y), "V": (x, values[-1])}.get(match[1], tuple(values[-2:]))
        if match[1] != "M":
            found.append((x, y, *new))
        x, y = new
    return found


def crosses(spot: Spot, line: Segment) -> bool:
    """Return whether a line runs through a text: Liang and Barsky's clipping."""
    x1, y1, x2, y2 = line
    first, last = 0.0, 1.0
    for step, low, high in (
        (x2 - x1, spot.left - x1, spot.right - x1),
        (y2 - y1, spot.top - y1, spot.bottom - y1),
    ):
        if step == 0.0:
            if low >= 0.0 or high <= 0.0:
                return False
            continue
        ends = sorted((low / step, high / step))
        first, last = max(first, ends[0]), min(last, ends[1])
    return first < last
