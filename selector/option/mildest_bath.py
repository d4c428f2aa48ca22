"""The mildest bath that hardens is the best one: which baths need not be weighed at all."""

from collections.abc import Iterable

from catalog.medium import Medium
from catalog.steel import Steel
from selector.gate import Gate
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.option.preparation import bath_of

# What a quicker quench can mend: harder and deeper it gets. Cracks, bending and snapping it can
# only make worse, and what a zone of full hardness is drawn to is the temper's affair.
# Where the bath itself is in doubt, such as too small, another one may be better.
MENDED_BY_QUENCH = frozenset({"hard_enough", "depth", "strength", "contact", "medium"})


def mild_first(treatments: Iterable[Treatment], job: Job) -> list[Treatment]:
    """Return treatments with those of milder baths first.

    Parameters
    ----------
    treatments : iterable of Treatment
        What may be done.
    job : Job
        Part and workshop.

    Returns
    -------
    list of Treatment
        Otherwise in the order given.
    """
    return sorted(treatments, key=lambda work: _severity(work, job))


def _severity(work: Treatment, job: Job) -> float:
    """Return how hard a treatment's bath quenches, 0 without one. [1/in]."""
    bath = bath_of(work, job)
    return 0.0 if bath is None else bath.severity


def is_too_harsh(steel: Steel, medium: Medium | None) -> bool:
    """Return whether a bath is of water and a steel made for a milder one.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.
    medium : Medium or None
        The bath.

    Returns
    -------
    bool
        False without a bath, or for a steel of which nothing is known.
    """
    made_for = steel.hardened.quench if steel.hardened else "water"
    return medium is not None and medium.severity_class == "water" and made_for != "water"


def but_for_bath(work: Treatment) -> tuple[str, str, str]:
    """Return what treatments share that differ in nothing but their bath.

    Parameters
    ----------
    work : Treatment
        What is done.

    Returns
    -------
    tuple of str
        Steel, supply condition and route.
    """
    return work.steel.slug, work.condition.name, work.route.slug


def hardens_fully(work: Treatment, gates: Iterable[Gate]) -> bool:
    """Return whether no quicker quench could better what was judged.

    Parameters
    ----------
    work : Treatment
        What was done.
    gates : iterable of Gate
        How it was judged.

    Returns
    -------
    bool
        True where every demand that a quicker quench could mend is met outright.
    """
    # How deep a case is, the box and the hours decide.
    mended = MENDED_BY_QUENCH - ({"depth"} if work.route.process == "case" else set())
    asked = [gate for gate in gates if gate.name in mended]
    return work.medium is not None and all(gate.verdict == "pass" for gate in asked)


def needless(work: Treatment, milder: Treatment) -> Gate:
    """Return why a harsher bath is not weighed.

    Parameters
    ----------
    work : Treatment
        In the harsher bath.
    milder : Treatment
        The same in a milder bath that hardens as asked.

    Returns
    -------
    Gate
        Failed.
    """
    mild = milder.medium.name.lower() if milder.medium else "a milder bath"
    harsh = work.medium.name.lower() if work.medium else "a harsher one"
    text = f"{mild} hardens it as asked here; {harsh} would only add cracks and bending"
    return Gate("medium", "fail", text)
