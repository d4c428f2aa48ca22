"""In which turn treatments are weighed: what the trade would think of first comes first.

A catalogue holds many steels that are near one another, and many that nobody makes such a part
of. They are weighed where those before them do not serve, so that a large catalogue costs
little more than a small one. What lies in the rack is always weighed, and so is what a user
asks for by name, where little else stands.
"""

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass

from selector.decision.option import Option
from selector.duty.custom import custom
from selector.duty.merit import NEVER
from selector.gate import Gate
from selector.job.job import Job
from selector.job.supply import is_rare
from selector.job.treatment import Treatment

# So many families and routes that serve leave no need of one that nobody would use. Estimate.
ENOUGH = 8
_HAD = ("easy", "order", "rare")

Group = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Turn:
    """Treatments weighed together, and what makes one of them needless after those before."""

    treatments: tuple[Treatment, ...]
    needless: Callable[[Treatment, Mapping[Group, Option]], Gate | None]


def turns(going: Iterable[Treatment], job: Job) -> tuple[Turn, ...]:
    """Return treatments by turn: usual and easily had, rarer near-equals, rare or unheard of.

    Parameters
    ----------
    going : iterable of Treatment
        Treatments that passed screening.
    job : Job
        Part and workshop.

    Returns
    -------
    tuple of Turn
        Each treatment stands in one of them, in the order given.
    """
    treatments = list(going)
    nearest = _easiest_had(treatments)
    first: list[Treatment] = []
    rarer: list[Treatment] = []
    unheard: list[Treatment] = []
    for work in treatments:
        if work.stock is not None:
            first.append(work)
        elif is_rare(work) or custom(work, job.leading, job.asked) <= NEVER:
            unheard.append(work)
        else:
            near = _had(work) <= nearest[work.steel.family]
            (first if near else rarer).append(work)
    return (
        Turn(tuple(first), _never),
        Turn(tuple(rarer), _near_equal_serves),
        Turn(tuple(unheard), _others_serve),
    )


def _had(work: Treatment) -> int:
    """Return how easily a steel is had in any of its conditions, least first."""
    return min(_HAD.index(condition.availability) for condition in work.steel.condition)


def _easiest_had(treatments: Collection[Treatment]) -> dict[str, int]:
    """Return how easily the commonest steel of each family is had."""
    easiest: dict[str, int] = {}
    for work in treatments:
        family = work.steel.family
        easiest[family] = min(_had(work), easiest.get(family, len(_HAD)))
    return easiest


def _never(work: Treatment, served: Mapping[Group, Option]) -> Gate | None:
    """Return no gate: what is usual and easily had is always weighed."""
    del work, served
    return None


def _near_equal_serves(work: Treatment, served: Mapping[Group, Option]) -> Gate | None:
    """Return the gate of a steel whose near-equal serves and is easier had."""
    if work.group not in served:
        return None
    other = served[work.group].treatment.steel.spoken
    text = f"{other}, a near-equal that is easier had, serves"
    return Gate("near", "fail", text)


def _others_serve(work: Treatment, served: Mapping[Group, Option]) -> Gate | None:
    """Return the gate of what nobody makes such a part of or sells, where enough serve."""
    rare = is_rare(work)
    near = _near_equal_serves(work, served) if rare else None
    if near is not None or len(served) < ENOUGH:
        return near
    if rare:
        return Gate("near", "fail", "few sell it, and what is easier had serves")
    return Gate("custom", "fail", "nobody makes such a part of it, and usual ways serve")
