"""A letter read back from what is printed, and the figures that it may hold."""

import io
import re

from pypdf import PdfReader

from selector.handover.letter.ways import ways


def text_of(content: bytes) -> tuple[str, int]:
    """Return the text of a PDF on one line, and how many pages it has."""
    pages = PdfReader(io.BytesIO(content)).pages
    text = " ".join(page.extract_text() for page in pages)
    # A long word may break anywhere: it holds places to break at.
    return " ".join(text.replace("\u200b", "").split()), len(pages)


def figures(text: str, unit: str) -> set[str]:
    """Return the figures before a unit, those of ranges too."""
    text = text.replace("\u00a0", " ")
    found = re.findall(rf"(?:(\d+(?:\.\d+)?) (?:to|and) )?(\d+(?:\.\d+)?) ?{unit}", text)
    return {value for pair in found for value in pair if value}


def hundred(share: float) -> str:
    return f"{round(100 * share)}"


def allowed(requirement, out, option) -> dict[str, set[str]]:
    """Return, by unit, every figure that the record of the ways holds."""
    options = [way.option for way in ways(out, option)]
    spreads = [
        s for o in options for s in (o.hardness.surface, o.hardness.core, o.hardness.shank)
    ]
    hrc = [v for s in spreads for v in (s.p05, s.p50, s.p95) if v is not None]
    hrc += [v for z in out.zones for v in (z.low_hrc, z.high_hrc, z.floor_hrc) if v is not None]
    money = [
        v for o in options for v in (o.cost.spread.p05, o.cost.spread.p50, o.cost.spread.p95)
    ]
    mm = [z.depth_mm for z in out.zones] + [option.permitted_movement_mm]
    mm += [option.hardness.depth_mm.p50 or 0, 0.01]
    # The weakest place is named by its size, which the part itself gives.
    mm += [section.size for section in requirement.part.section]
    mm += [v or 0 for v in (option.movement_mm.p50, option.movement_mm.p95)]
    chances = [o.passing_all for o in options] + [o.within_budget or 0 for o in options]
    chances += [option.failing.p95 or 0, *(1 - o.passing_all for o in options)]
    return {
        "HRC": {f"{v:.0f}" for v in hrc},
        option.cost.currency: {f"{v:.0f}" for v in money},
        "mm": {form for v in mm for form in (f"{v:g}", f"{v:.1f}", f"{v:.2f}")},
        "times in 100": {hundred(v) for v in chances} | {"99"},
        "days": {f"{o.days:g}" for o in options},
        "°C": {f"{o.temper.temperature_c:.0f}" for o in options if o.temper.temperature_c},
        "minutes": {f"{o.temper.time_min:.0f}" for o in options if o.temper.time_min},
        "N m": {f"{v:.3g}" for v in (requirement.load.torque, requirement.load.bending) if v},
    }


def strange(text: str, held: dict[str, set[str]]) -> dict[str, set[str]]:
    """Return the figures of a text that a record does not hold, by unit."""
    beyond = {unit: figures(text, unit) - values for unit, values in held.items()}
    return {unit: values for unit, values in beyond.items() if values}
