"""How many of a lot of parts are heated together, and how many heats the lot takes."""

from selector.job.treatment import FLAMES, Treatment
from selector.requirement.part import Part

# Small parts lie together in a tray or a length of pipe in a flame that heats evenly what is so
# many times as thick as one; they fill so much of it. Common practice. [-]
TRAYED, FILLED = 2.0, 0.7


def at_once(treatment: Treatment, part: Part) -> int:
    """Return how many parts a flame or fire heats together in a tray or a pipe.

    Parameters
    ----------
    treatment : Treatment
        What is done to which steel, at which source.
    part : Part
        One of them.

    Returns
    -------
    int
        1 of what is not small beside the flame. [-]
    """
    source = treatment.source
    if source is None or source.kind not in FLAMES:
        return 1
    beside = source.section_mm.value / max(section.across_mm for section in part.section)
    return max(int(FILLED * beside**2), 1) if beside >= TRAYED else 1


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
