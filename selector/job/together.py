"""How many of a lot of parts are heated together, and how many heats the lot takes."""

from selector.job.treatment import FLAMES, Treatment
from selector.requirement.part import Part

# Small parts lie together in a tray or a length of pipe in a flame that heats evenly what is so
# many times as thick as one; they fill so much of it. Longer ones would bow as they fall into
# the bath. Common practice. [-], [-], lengths of their thickness
TRAYED, FILLED, SHORT = 2.0, 0.7, 10.0
# Bars that lie side by side in a fire, each taken out alone: as many as one eye keeps from
# burning. Common practice. [-]
IN_A_ROW = 3


def is_trayed(treatment: Treatment, part: Part) -> bool:
    """Return whether small parts are heated and quenched together, all of each of them.

    Parameters
    ----------
    treatment : Treatment
        What is done to which steel, at which source.
    part : Part
        One of them.

    Returns
    -------
    bool
        Never where an end or a zone alone is to be hard: a tray heats all of it.
    """
    source, thick_mm = treatment.source, max(s.across_mm for s in part.section)
    if source is None or source.kind not in FLAMES or treatment.route.extent == "local":
        return False
    return source.section_mm.value >= TRAYED * thick_mm and part.length_mm <= SHORT * thick_mm


def at_once(treatment: Treatment, part: Part) -> int:
    """Return how many parts a flame or fire heats together: in a tray, or in a row.

    Parameters
    ----------
    treatment : Treatment
        What is done to which steel, at which source.
    part : Part
        One of them.

    Returns
    -------
    int
        1 of what is not small beside the flame, or heated at one end in a flame. [-]
    """
    source = treatment.source
    if source is None or source.kind not in FLAMES:
        return 1
    beside = source.section_mm.value / max(section.across_mm for section in part.section)
    if is_trayed(treatment, part):
        return int(FILLED * beside**2)
    return min(max(int(beside), 1), IN_A_ROW) if source.kind == "fire" else 1


def heats(treatment: Treatment, part: Part) -> int:
    """Return how many heats a lot takes.

    Parameters
    ----------
    treatment : Treatment
        What is done to which steel, at which source.
    part : Part
        One of the lot, and how many there are.

    Returns
    -------
    int
        As many as there are parts, where they are heated one by one. [-]
    """
    return -(-part.quantity // at_once(treatment, part))
