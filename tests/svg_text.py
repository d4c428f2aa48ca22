"""Where the texts of an SVG stand, by the widths of the font itself."""

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
    if element.get("transform"):
        return Spot(text, x - over, y - wide + before, x + under, y + before)
    return Spot(text, x - before, y - over, x - before + wide, y + under)
