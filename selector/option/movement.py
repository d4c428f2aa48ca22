"""How far the part moves in the heat, and what this job permits."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.figure import median
from selector.hazards.distortion import Bow, Heating, bow, size_change
from selector.job.hard_section import hard_sections
from selector.job.treatment import LAID_ON, Treatment
from selector.option.skin import GRINDERS
from selector.requirement import Requirement
from selector.requirement.part import Part
from selector.sampling import Normals
from selector.wording import beside, shown_mm

Floats = NDArray[np.float64]
# What is permitted when the user names no limit: of an ordinary hand-fitted part, and of a tool
# that cuts, digs or is struck and fits into nothing. Assumed. [mm]
USUAL_MM, UNFITTED_MM = 0.2, 0.5
# Of the stock left for grinding or lapping, what may be used up by movement. [-]
GRINDABLE = 0.7
# What is left on for grinding where nobody says how much, per side. Common practice. [mm]
STOCK_MM = 0.25

# What a patient hand leaves of a bow it straightens warm, after the temper. Common practice.
STRAIGHTENED = 0.4
# A thin flat is clamped between plates while it is tempered, and is straighter after. Common
# practice.
CLAMPED = 0.2


# What old stress of cold-drawn bar adds to a bow. Estimate. [-]
STRESSED = 0.5
# Bows are said in hundredths of a millimetre where no less is allowed. [mm]
HUNDREDTH_MM = 0.01


@dataclass(frozen=True, slots=True, eq=False)
class Movement:
    """Bow over the sample, before and after straightening, growth, and what is permitted.

    `stated` is False for an assumed limit.
    """

    raw_mm: Floats
    moved_mm: Floats
    growth_mm: float
    permitted_mm: float
    stated: bool


@dataclass(frozen=True, slots=True)
class Permitted:
    """How far the part may move, and whether the user stated it."""

    mm: float
    stated: bool


def permitted_movement(asked: Requirement, *, last: bool = False) -> Permitted:
    """Return how far the part may move: its run-out limit or a usual one, or grinding stock."""
    # Nothing is ground after what comes last on a finished part.
    limit, part = asked.limit.runout, asked.part
    grinds = GRINDERS & set(part.finish_after) and not last
    stock = GRINDABLE * (part.stock_removal or STOCK_MM) if grinds else 0.0
    if limit is None:
        usual_mm = UNFITTED_MM if _fits_nothing(asked) else USUAL_MM
        return Permitted(max(usual_mm, stock), stated=False)
    return Permitted(max(limit, stock), stated=True)


def _fits_nothing(asked: Requirement) -> bool:
    """Return whether a part is a tool that nothing slides on, is set by or turned with."""
    works = any(zone.wear in {"abrasive", "edge-impact"} for zone in asked.zone)
    slides = any(zone.wear in {"sliding", "rolling-contact"} for zone in asked.zone)
    driven = bool(asked.load.torque) or asked.part.is_toothed
    return works and not (slides or driven or asked.presses or asked.measures)


def movement_words(move: Movement) -> str:
    """Return how far the part bows: "bows 0.05 of the 0.3 mm you allow"."""
    bow_mm = median(move.moved_mm)
    bow = shown_mm(bow_mm).removesuffix(" mm")
    if not move.stated:
        return f"bows {bow} mm"
    # As fine as what is allowed, finer only where the two would read alike.
    places = 2 if move.permitted_mm >= HUNDREDTH_MM else 3
    if places > 2:
        bow = f"{bow_mm:.{places}f}"
    if bow == f"{move.permitted_mm:.{places}f}":
        bow = beside(bow_mm, move.permitted_mm, places)
    return f"bows {bow} of the {move.permitted_mm:g} mm you allow"


def movement(
    treatment: Treatment, asked: Requirement, normals: Normals, torch: Bow | None = None
) -> Movement:
    """Return how far the part moves."""
    permitted = permitted_movement(asked, last=treatment.route.process in LAID_ON)
    still = np.zeros(len(normals["movement"]))
    if treatment.route.movement_factor.value == 0:
        return Movement(still, still, 0.0, permitted.mm, permitted.stated)
    stressed = treatment.condition.name == "cold-drawn"
    bend = _usual_bow(treatment, asked) if torch is None else torch
    if torch is not None:
        bend = replace(torch, median_mm=(1.0 + STRESSED * stressed) * torch.median_mm)
    bent = bend.median_mm * np.exp(bend.log_sd * normals["movement"])
    # A bow beyond the limit is straightened warm after the temper, just far enough.
    flat = all(section.shape == "flat" for section in asked.part.section)
    left = (CLAMPED if flat else STRAIGHTENED) * bent
    straight = np.where(bent > permitted.mm, np.maximum(left, permitted.mm), bent)
    growth_mm = _growth(treatment, asked)
    return Movement(np.asarray(bent), straight, growth_mm, permitted.mm, permitted.stated)


def _usual_bow(treatment: Treatment, asked: Requirement) -> Bow:
    """Return the bow by kind of heating and bath, of a part whose history is not followed."""
    route = treatment.route
    medium = treatment.medium.kind if treatment.medium else "air"
    heating, length = _heating(treatment, asked)
    long, slim = _slenderness(asked.part)
    bend = bow(
        long,
        slim,
        {"hot-salt": "oil", "hot-oil": "oil"}.get(medium, medium),
        heating,
        length,
        stressed=treatment.condition.name == "cold-drawn",
    )
    share = route.movement_factor.value if route.extent == "whole" else 1.0
    return replace(bend, median_mm=share * bend.median_mm)


def _slenderness(part: Part) -> tuple[float, float]:
    """Return the length that bows and the thickness that resists; a disc dishes. [mm]."""
    slim = min(s.size for s in part.section)
    broad = max(max(s.size, s.width or 0.0) for s in part.section)
    if part.length_mm < slim:
        return broad, part.length_mm
    return part.length_mm, slim


def _growth(treatment: Treatment, asked: Requirement) -> float:
    """Return the growth of the working section across, at the middle. [mm]."""
    thick = max(asked.part.section[i].size for i in hard_sections(asked))
    hardened = treatment.steel.hardened
    if not treatment.hardens or hardened is None:
        return 0.0
    return float(size_change(hardened.quench).growth_pct) / 100 * thick


def _heating(treatment: Treatment, asked: Requirement) -> tuple[Heating, float]:
    """Return the kind of heating and the length it hardens. [mm]."""
    part = asked.part
    if treatment.route.extent == "whole":
        return "through", part.length_mm
    length = sum(part.section[i].length for i in hard_sections(asked))
    turned = asked.workshop.turns_part or treatment.route.place == "subcontract"
    return ("local-turned" if turned else "local-still"), length
