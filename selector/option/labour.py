"""The work of a route on each of many parts: a load or a parcel holds them all, a flame few."""

from selector.job.together import heats
from selector.job.treatment import Treatment
from selector.requirement.part import Part

# How work falls with the number of parts: of parcels and furnace loads, which hold them all,
# and of what is heated piece by piece, where the hand gets quicker. Common practice. [-]
TOGETHER, ONE_BY_ONE = 0.8, 0.3
_HOLD_MANY = frozenset({"furnace", "salt-bath"})


def _falling(treatment: Treatment) -> float:
    """Return with which power of the number of parts the work on each falls. [-]."""
    source = treatment.source
    many = treatment.route.place == "subcontract" or (
        source is not None and source.kind in _HOLD_MANY
    )
    return TOGETHER if many else ONE_BY_ONE


def labour_h(treatment: Treatment, part: Part) -> float:
    """Return the work that the route of a treatment is on each of the parts. [h].

    Parameters
    ----------
    treatment : Treatment
        What is done to which steel.
    part : Part
        One of them, and how many there are.

    Returns
    -------
    float
        A parcel or a furnace holds them all, a flame some or one. [h]
    """
    share = heats(treatment, part) ** (1.0 - _falling(treatment)) / part.quantity
    return float(treatment.route.labour_h.value * share)
