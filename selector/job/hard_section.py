"""Which sections wear, which zone leads, and which sections a local treatment hardens."""

from selector.job.demand import Demand, demands
from selector.kept import per_record
from selector.requirement import Requirement


def worn_sections(requirement: Requirement) -> tuple[int, ...]:
    """Return the indices, from 0, of the sections whose zone wears or has a least hardness.

    Parameters
    ----------
    requirement : Requirement
        What is asked.

    Returns
    -------
    tuple of int
        All sections where no zone asks for any.
    """
    wanted = {
        index - 1
        for zone in requirement.zone
        for index in zone.section
        if zone.wear != "none" or (zone.hardness is not None and zone.hardness.min is not None)
    }
    return tuple(sorted(wanted)) or tuple(range(len(requirement.part.section)))


def leading(all_demands: tuple[Demand, ...], worn: tuple[int, ...]) -> Demand:
    """Return the demand that sets the treatment: the one that wants the most hardness.

    Parameters
    ----------
    all_demands : tuple of Demand
        Of all zones.
    worn : tuple of int
        Sections whose zone wears or has a least hardness.

    Returns
    -------
    Demand
        The first of those with the highest floor, one on a worn section before others.
    """
    return max(
        all_demands,
        key=lambda d: (
            d.floor_hrc if d.floor_hrc is not None else -1e3,
            not set(worn).isdisjoint(d.sections),
        ),
    )


@per_record(64)
def hard_sections(requirement: Requirement) -> tuple[int, ...]:
    """Return the indices, from 0, of the sections that a local treatment hardens.

    Parameters
    ----------
    requirement : Requirement
        What is asked.

    Returns
    -------
    tuple of int
        Those that wear or have a least hardness, and those of the leading demand: the end of
        a drive may ask more for its corners than a zone beside it asks for wear.
    """
    worn = worn_sections(requirement)
    return tuple(sorted({*worn, *leading(demands(requirement), worn).sections}))
