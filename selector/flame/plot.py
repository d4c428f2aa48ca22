"""The hardness map as a plot: as characters for a terminal, as a figure for a file."""

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from selector.torch.hardness_map import HardnessMap
from selector.torch.part import Stretch
from selector.torch.reading import wall_at

if TYPE_CHECKING:
    from matplotlib.figure import Figure

Floats = NDArray[np.float64]
WIDE, STEP_HRC, LOWEST_HRC = 64, 5.0, 0.0
# Shown beyond the zone. [mm]
BEYOND_MM = 45.0
SURFACE, CORE, BOTH, ZONE = "*", "o", "@", "="


def _shown_mm(part: Stretch) -> tuple[float, float]:
    """Return the stretch worth showing."""
    start, end = part.zone_mm
    return max(start - BEYOND_MM, 0.0), min(end + BEYOND_MM, part.length_mm)


def _canvas(lines: list[tuple[str, Floats]], top: float) -> list[str]:
    """Return curves as rows of characters, the hardest on top; the first curve is in front."""
    rows = int((top - LOWEST_HRC) / STEP_HRC) + 1
    grid = [[" "] * WIDE for _ in range(rows)]
    for mark, values in reversed(lines):
        for x, value in enumerate(values):
            if np.isnan(value):
                continue
            row = round((top - max(value, LOWEST_HRC)) / STEP_HRC)
            seen = grid[row][x]
            grid[row][x] = BOTH if seen not in {" ", mark} else mark
    return [f"{top - n * STEP_HRC:4.0f} |{''.join(row).rstrip()}" for n, row in enumerate(grid)]


def _axis(low: float, high: float, unit: str) -> list[str]:
    """Return the axis below a plot, with its ends and middle."""
    ends = f"{low:.0f}", f"{0.5 * (low + high):.0f}", f"{high:.0f} {unit}"
    half = WIDE // 2
    text = ends[0] + ends[1].rjust(half - len(ends[0]) + 1)
    return ["     +" + "-" * WIDE, "      " + text + ends[2].rjust(WIDE - len(text) + 2)]


def _top(hard: HardnessMap) -> float:
    """Return the highest line of the plots. [HRC]."""
    return float(STEP_HRC * np.ceil(np.nanmax(hard.hrc) / STEP_HRC))


def axial_text(part: Stretch, hard: HardnessMap) -> list[str]:
    """Return hardness along the axis as lines of text."""
    low, high = _shown_mm(part)
    at = np.linspace(low, high, WIDE)
    curves = [
        (mark, np.asarray(np.interp(at, hard.along_mm, row)))
        for mark, row in ((SURFACE, hard.surface()), (CORE, hard.core()))
    ]
    inside = (at >= part.zone_mm[0]) & (at <= part.zone_mm[1])
    zone = "".join(ZONE if hard else " " for hard in inside)
    where = "the other end" if part.turned_round else "the working end"
    head = f" HRC  along the axis: {SURFACE} surface, {CORE} core, {BOTH} both, {ZONE} zone"
    return [
        head,
        *_canvas(curves, _top(hard)),
        f"     |{zone}".rstrip(),
        *_axis(low, high, f"mm from {where}"),
    ]


def _across(part: Stretch, hard: HardnessMap) -> tuple[Floats, Floats, tuple[float, float]]:
    """Return places and hardness across the middle of the zone, and where the steel lies."""
    middle_mm = 0.5 * sum(part.zone_mm)
    column, wall = hard.column(middle_mm), wall_at(part, middle_mm)
    kept = np.isfinite(column)
    # A flat stands as a round of more than its thickness, and is plotted as thick as it is.
    half = wall.outer_mm if wall.inner_mm > 0.0 else wall.true_mm
    return hard.across_mm[kept] * half / wall.outer_mm, column[kept], (wall.inner_mm, half)


def section_text(part: Stretch, hard: HardnessMap) -> list[str]:
    """Return hardness across the middle of the zone as lines of text."""
    radius, hrc, (bore, half) = _across(part, hard)
    at = np.linspace(-half, half, WIDE)
    curve = np.interp(np.abs(at), radius, hrc)
    curve = np.where(np.abs(at) < bore, np.nan, curve)
    lines = _canvas([(SURFACE, np.asarray(curve))], _top(hard))
    return [
        " HRC  across the middle of the zone",
        *lines,
        *_axis(-half, half, "mm from the axis"),
    ]


def figure(part: Stretch, hard: HardnessMap, title: str) -> "Figure":
    """Return the map as a figure: curves along the axis, the field, and a section."""
    # Of matplotlib, not shown anywhere.
    from matplotlib.figure import Figure  # noqa: PLC0415 - slow to load

    shown = Figure(figsize=(9.0, 8.0), layout="constrained")
    along, field, section = shown.subplots(3, 1, height_ratios=[2.0, 1.0, 1.5])
    low, high = _shown_mm(part)
    for name, row, style in (
        ("surface", hard.surface(), "-"),
        ("core", hard.core(), "--"),
        ("surface as quenched", hard.surface(hard.quenched_hrc), ":"),
    ):
        along.plot(hard.along_mm, row, style, label=name)
    along.axvspan(*part.zone_mm, alpha=0.12, label="zone")
    along.set(xlim=(low, high), ylabel="hardness, HRC")
    along.set_title(title, parse_math=False)  # a dollar sign in a name is no formula
    along.legend()
    image = field.pcolormesh(hard.along_mm, hard.across_mm, hard.hrc, shading="nearest")
    field.set(xlim=(low, high), xlabel="distance from the end, mm", ylabel="radius, mm")
    shown.colorbar(image, ax=field, label="HRC")
    section.plot(*_across(part, hard)[:2])
    section.set(xlabel="from the axis at the middle of the zone, mm", ylabel="hardness, HRC")
    return shown
