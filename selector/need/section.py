"""What each section needs to bear its load, its corners and a blow."""

import numpy as np

from selector.duty.contact import CORNER_YIELD, Corner, blow_force_n, corner_factor, corners
from selector.duty.strength import Bearing, section_factor
from selector.job.geometry import area_mm2
from selector.mechanics.strength import strength
from selector.need import words
from selector.need.record import SectionNeed
from selector.need.span import (
    HARDEST_HRC,
    HV,
    NINE_IN_TEN,
    hrc,
    over,
    span_of,
    spans_of,
    spread,
    window,
)
from selector.requirement import Requirement
from selector.wording import shown


def section_needs(asked: Requirement, bears: Bearing) -> tuple[SectionNeed, ...]:
    """Return what the sections need of hardness: for their load, at corners, for a blow.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    bears : Bearing
        What the part bears.

    Returns
    -------
    tuple of SectionNeed
        Empty where no load is given.
    """
    return (*_strengths(asked, bears), *_corner_needs(asked), *_blow_need(asked))


def _strengths(asked: Requirement, bears: Bearing) -> tuple[SectionNeed, ...]:
    """Return what each section needs to bear torque, bending and axial load together."""
    if not bears.is_known:
        return ()
    return tuple(
        _strength(asked, bears, number)
        for number, stresses in enumerate(bears.stressed)
        if stresses
    )


def _strength(asked: Requirement, bears: Bearing, number: int) -> SectionNeed:
    """Return what one section needs."""
    section, factor = asked.part.section[number], section_factor(bears, number, HV)
    spans, sure = spans_of(factor), span_of(factor, over(NINE_IN_TEN))
    load = asked.load
    kinds = {
        "torque": load.torque if load.twists(number) else None,
        "bending": load.bending if load.bends(number) else None,
        "axial load": load.axial,
    }
    governs = " and ".join(name for name, value in kinds.items() if value)
    if load.cycles == "fatigue":
        governs += ", in fatigue too"
    notch = max(bears.notches.torsion[number], bears.notches.bending[number])
    inputs = {name: value for name, value in kinds.items() if value} | {
        "shape": section.shape,
        "size_mm": section.size,
        "notch_factor": round(float(notch), 2),
    }
    light, stated, heavy = spans.light, spans.stated, spans.heavy
    least = most = None
    if light and stated:
        name = "least hardness whose factor of strength is 1"
        least = spread(spans.softest(), "HRC", name, **inputs)
    if stated and heavy and heavy.high_hrc < HARDEST_HRC:
        ends = (heavy.high_hrc, stated.high_hrc, (light or stated).high_hrc)
        name = "greatest hardness at which its notch does not decide"
        most = spread(ends, "HRC", name, **inputs)
    return SectionNeed(
        section=number + 1,
        name=section.name,
        governs=governs,
        least=least,
        most=most,
        text=words.strength(window(sure), window(stated), governs),
    )


def _corner_needs(asked: Requirement) -> tuple[SectionNeed, ...]:
    """Return what the corners of squares and hexagons need not to round."""
    return tuple(_corner(asked, corner) for corner in corners(asked))


def _corner(asked: Requirement, corner: Corner) -> SectionNeed:
    """Return what one drive end needs at its corners."""
    section = asked.part.section[corner.section]
    factor = corner_factor(corner, HV)
    sure = span_of(factor, over(NINE_IN_TEN))
    text = "no hardness keeps the corners from rounding: a longer or larger drive"
    if sure is not None:
        text = (
            f"{shown(sure.low_hrc)} or more keeps the corners from rounding "
            f"({corner.pressure_mpa:.0f} MPa on them, {CORNER_YIELD:g} of yield strength borne)"
        )
    if corner.mate_hv is not None:
        sides = "keeps" if corner_factor(corner, corner.mate_hv) >= 1 else "rounds first"
        text += f"; what it runs in, {shown(hrc(corner.mate_hv))}, {sides}"
    return SectionNeed(
        section=corner.section + 1,
        name=section.name,
        governs="corners of the drive",
        least=spread(
            spans_of(factor).softest(),
            "HRC",
            "corner bearing",
            torque_nm=float(asked.load.torque or 0.0),
            flats_mm=section.size,
            engaged_mm=section.length,
        ),
        most=None,
        text=text,
    )


def _blow_need(asked: Requirement) -> tuple[SectionNeed, ...]:
    """Return what the thinnest section needs to spring back from the stated blow."""
    force = blow_force_n(asked)
    if force is None:
        return ()
    areas = [area_mm2(section) for section in asked.part.section]
    thin = int(np.argmin(areas))
    stress = force / areas[thin]
    span = span_of(strength(HV).yield_mpa / stress, 1.0)
    low = span.low_hrc if span else HARDEST_HRC
    relation = "least hardness that springs back from the blow"
    energy = float(asked.load.impact_energy or 0.0)
    least = spread((low, low, low), "HRC", relation, energy_j=energy, area_mm2=areas[thin])
    return (
        SectionNeed(
            section=thin + 1,
            name=asked.part.section[thin].name,
            governs="blow",
            least=least,
            most=None,
            text=words.blow(energy, force, None if span is None else low),
        ),
    )
