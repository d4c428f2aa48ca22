"""Whether what is sold or racked can be cut to a part: by shape, size, and what it is for."""

import re
from math import ceil

from catalog.steel import Condition
from selector.gate import Gate
from selector.job.blank import DISC, corners_mm
from selector.job.geometry import solid_mm2
from selector.job.ready_hard import delivered_hrc, ready_hard
from selector.job.treatment import Treatment
from selector.requirement import Requirement
from selector.requirement.part import Part, Section
from selector.requirement.part_name import itself
from selector.requirement.workshop import Stock

# Bar as thick as a part of that shape, within this. [mm]
SAME_SIZE_MM = 0.02
# Fires in which bar is drawn out.
FORGES = frozenset({"forge", "charcoal-forge"})
# Strip delivered harder breaks where it is bent sharp. Common practice. [HRC]
BENT_HRC = 35.0
# Nobody mills flat bar that is delivered hard down to less than this share of its thickness.
# Common practice. [-]
MILLED_SHARE = 0.5


def stock_rule(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to what cannot be bought or cut to this part."""
    if asked.workshop.only_stock and work.stock is None:
        return Gate("stock", "fail", "not in the rack, and only the rack is to be used")
    # What lies in the rack has the shape it has, and its owner knows what it was sold for.
    if work.stock is not None:
        unfit = unfit_bar(asked, work.stock, work.condition)
    else:
        unfit = _hardened_again(work) or _sold(asked, work.condition)
    # A bar of the rack may be softened before it is bent or cut, and hardened again.
    if unfit is None and (work.stock is None or work.route.process == "none"):
        unfit = _bent_sharp(asked, work.condition)
    return unfit or ready_hard(asked, work)


def _hardened_again(work: Treatment) -> Gate | None:
    """Object to buying bar hardened and tempered in order to harden all of it again."""
    # What lies in the rack is hardened again without a thought, and comes out no worse for it.
    if work.condition.name != "prehard" or not work.hardens or work.route.extent != "whole":
        return None
    return Gate("stock", "fail", "bought soft where all of it is hardened after")


def unfit_bar(asked: Requirement, bar: Stock, sold: Condition) -> Gate | None:
    """Object to a bar of the rack that the part can be neither cut from nor forged of.

    Parameters
    ----------
    asked : Requirement
        The part, and the workshop with its fires.
    bar : Stock
        The bar.
    sold : Condition
        How bar of its steel is sold.

    Returns
    -------
    Gate or None
        None where the bar will do.
    """
    return None if is_forged(asked, bar, sold) else too_thin(asked.part, bar, sold)


def is_forged(asked: Requirement, bar: Stock, sold: Condition) -> bool:
    """Return whether a smith forges a bar of the rack to a head too thick to be cut from it.

    Parameters
    ----------
    asked : Requirement
        The part, and the workshop with its fires.
    bar : Stock
        The bar.
    sold : Condition
        How bar of its steel is sold.

    Returns
    -------
    bool
        True where a square, hexagon or flat has no more steel across than the bar.
    """
    fire = any(heat.source in FORGES for heat in asked.workshop.heat)
    if not fire or bar.size is None or sold.name in {"prehard", "hard-element"}:
        return False
    whole_mm2 = solid_mm2("round", bar.size)
    drawn = all(
        section.size <= bar.size + SAME_SIZE_MM
        if _is_round(section)
        else solid_mm2(section.shape, section.size, section.width) <= whole_mm2
        for section in asked.part.section
    )
    return drawn and (
        too_thin(asked.part, bar, sold) is not None or _is_round_bar(asked.part, bar.size)
    )


def _is_round_bar(part: Part, size_mm: float) -> bool:
    """Return whether a bar is a round as thick as a stem, and a head is wider than that."""
    like = any(_is_round(s) and abs(s.size - size_mm) <= SAME_SIZE_MM for s in part.section)
    return like and any(corners_mm(s) > size_mm + SAME_SIZE_MM for s in part.section)


def too_thin(part: Part, bar: Stock, sold: Condition) -> Gate | None:
    """Object to a bar of the rack that the part is thicker than.

    Parameters
    ----------
    part : Part
        The part.
    bar : Stock
        The bar; one whose size is not given is not held against the part.
    sold : Condition
        How bar of its steel is sold, which says what shape it may have.

    Returns
    -------
    Gate or None
        None where the part can be cut from it.
    """
    if bar.size is None:
        return None
    wanted = _thinnest_mm(part, sold)
    if bar.size + SAME_SIZE_MM >= wanted or _is_of_its_shape(part, bar.size, sold):
        return None
    takes = ceil(10 * wanted - 1e-6) / 10
    text = f"the bar in the rack is {bar.size:g} mm; the part takes {takes:g} mm"
    return Gate("stock", "fail", text)


def _is_of_its_shape(part: Part, size_mm: float, sold: Condition) -> bool:
    """Return whether a bar is just as thick as the hexagon or square that a part is made of."""
    # Whoever has a hexagon to make and bar of that size has hexagon bar. Ground stock comes in
    # the shapes it is listed in alone.
    thickest = max(part.section, key=lambda section: section.across_mm)
    rolled = sold.surface != "ground" or thickest.shape in sold.shapes
    like = abs(size_mm - thickest.size) <= SAME_SIZE_MM
    return rolled and like and thickest.shape in {"hexagon", "square"}


def _thinnest_mm(part: Part, sold: Condition) -> float:
    """Return the thinnest bar of a kind sold that a part can be cut from. [mm]."""
    flats = "flat" in sold.shapes
    shapes = {section.shape for section in part.section}
    if flats and "flat" in shapes:
        # What has a flat is cut from plate as thick as its thickest section, stem and all.
        return max(section.narrowest_mm for section in part.section)
    squared = shapes <= {"flat", "square"} and {"flat", "square"} & set(sold.shapes)
    if squared or (len(shapes) == 1 and shapes <= set(sold.shapes)):
        widest = max(section.across_mm for section in part.section)
    else:
        # Of other sections, or mixed ones where no flat is sold, the bar is a round about
        # their corners.
        widest = max(corners_mm(section) for section in part.section)
    return part.length_mm if flats and part.length_mm <= DISC * widest else widest


def _sold(asked: Requirement, sold: Condition) -> Gate | None:
    """Object to what is not sold for such a part, or in its size or shape."""
    if not sold_for(sold, asked):
        text = f"sold as a {sold.sold_for[0]}, ready made; this part is none"
        return Gate("stock", "fail", text)
    long = any(_is_round(s) and s.length > s.size for s in asked.part.section)
    if long and _flat_only(sold):
        return Gate("stock", "fail", "sold as plate or strip: it gives discs, no round bar")
    largest = max(_bar_size(section, sold) for section in asked.part.section)
    least, most = sold.size_mm.low, sold.size_mm.high
    if asked.part.shape_class == "coil-spring" and largest < least:
        text = f"sold from {least:g} mm; a spring is wound of wire of its own size"
        return Gate("stock", "fail", text)
    flat = all(section.shape == "flat" for section in asked.part.section)
    if flat and "flat" in sold.shapes and sold.name == "prehard":
        thickest = max(section.narrowest_mm for section in asked.part.section)
        if thickest < MILLED_SHARE * least:
            text = (
                f"bought hard it is sold from {least:g} mm; nobody mills it to {thickest:g} mm"
            )
            return Gate("stock", "fail", text)
    if largest > most:
        return Gate("stock", "fail", f"sold up to {most:g} mm; the part is {largest:g} mm")
    return None


def sold_for(sold: Condition, asked: Requirement) -> bool:
    """Return whether a thing sold for a purpose is sold for this one, by the part's name.

    Parameters
    ----------
    sold : Condition
        How it is sold.
    asked : Requirement
        The part.

    Returns
    -------
    bool
        True where it is sold for no purpose in particular.
    """
    if not sold.sold_for:
        return True
    words = "|".join(map(re.escape, sold.sold_for))
    return re.search(rf"\b({words})s?\b", itself(asked.part.name), re.IGNORECASE) is not None


def is_made_for(work: Treatment, asked: Requirement) -> bool:
    """Return whether a thing is used as it is sold for such a part."""
    return is_used_as_sold(work) and sold_for(work.condition, asked)


def is_used_as_sold(work: Treatment) -> bool:
    """Return whether what is sold for a purpose is used as it comes."""
    return bool(work.condition.sold_for) and work.route.process == "none"


def _bar_size(section: Section, sold: Condition) -> float:
    """Return the size of bar a section needs: a flat by its thickness if flats are sold."""
    if section.shape == "flat" and "flat" not in sold.shapes:
        return max(section.size, section.width or 0.0)
    if _is_round(section) and _flat_only(sold):
        return section.length
    return section.size


def _is_round(section: Section) -> bool:
    """Return whether a section is turned."""
    return section.shape in {"round", "tube"}


def _flat_only(sold: Condition) -> bool:
    """Return whether a steel is sold as plate or strip alone."""
    return set(sold.shapes) == {"flat"}


def _bent_sharp(asked: Requirement, sold: Condition) -> Gate | None:
    """Object to a folded spring of strip that is delivered too hard to bend."""
    if not asked.is_folded_spring or delivered_hrc(sold) <= BENT_HRC:
        return None
    text = "strip bought hard breaks where it is bent sharp: bend it soft, then harden"
    return Gate("stock", "fail", text)
