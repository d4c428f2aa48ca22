"""Which parts bend under their load as a spring does, by their form alone."""

from selector.requirement.load import Load
from selector.requirement.part import Part

# Strip no thicker than the first, so many times as long, flexes. Common practice. [mm], [-]
STRIP_MM, STRIP_LONG = 1.6, 25.0
# More than this on its outside bends plain bar for good, the second pre-hardened bar too.
# Common practice. [MPa]
SOFT_BENDS_MPA, HARD_BENDS_MPA = 250.0, 600.0
# A thicker flat is a lever or a beam, which its load alone makes no spring. Estimate. [mm]
LEAF_MM = 4.0


def is_strip(part: Part) -> bool:
    """Return whether a part is thin strip, long enough to flex."""
    thickest = max(section.narrowest_mm for section in part.section)
    flat = all(section.shape == "flat" for section in part.section)
    return flat and thickest <= STRIP_MM and part.length_mm >= STRIP_LONG * thickest


def flexes(part: Part, load: Load) -> bool:
    """Return whether a load would bend a flat for good if it were soft, strip sooner."""
    if load.impact == "hammered" or load.cycles == "static":
        return False
    strip = (STRIP_MM, SOFT_BENDS_MPA)
    most_mm, bends_mpa = strip if is_strip(part) else (LEAF_MM, HARD_BENDS_MPA)
    slim = part.length_mm >= STRIP_LONG * min(s.narrowest_mm for s in part.section)
    return slim and any(
        section.shape == "flat"
        and section.narrowest_mm <= most_mm
        and flat_bending_mpa(part, load, index) > bends_mpa
        for index, section in enumerate(part.section)
    )


def flat_bending_mpa(part: Part, load: Load, index: int) -> float:
    """Return the bending stress on the outside of a flat that bends over its thickness.

    Parameters
    ----------
    part : Part
        What bends.
    load : Load
        What bends it.
    index : int
        Section of the part, from 0, a flat.

    Returns
    -------
    float
        Of the whole section, without a notch, 0 where no bending lies on it. [MPa]
    """
    section = part.section[index]
    if not load.bends(index):
        return 0.0
    modulus_mm3 = (section.width or section.size) * section.size**2 / 6.0
    return (load.bending or 0.0) * 1e3 / modulus_mm3
