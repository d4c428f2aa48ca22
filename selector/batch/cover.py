"""The fewest names of which each of many demands holds one: greedy, then exact."""

from collections.abc import Collection, Mapping

import numpy as np

# The exact search is cut short here; what is had by then is no worse than the greedy one. [s]
LONGEST_S = 30.0
# All dislikes together are worth less than one name.
_DISLIKES = 0.5
Demands = Collection[frozenset[str]]


def fewest(
    demands: Demands, dislike: Mapping[str, float], longest_s: float = LONGEST_S
) -> tuple[frozenset[str], bool]:
    """Return the fewest names of which each demand holds one, and whether fewer do not serve.

    Parameters
    ----------
    demands : collection of frozenset of str
        The names that serve each demand; none is empty.
    dislike : mapping of str to float
        What decides between covers of one size, from 0 to 1 a name: the least sum is taken.
    longest_s : float
        Time for the exact search. [s]

    Returns
    -------
    tuple
        The names; false with them where the search was cut short.
    """
    left = least(demands)
    quick = greedy(left, dislike)
    exact = _exact(left, dislike, longest_s) if left else (frozenset[str](), True)
    if exact is None or not _covers(exact[0], left):
        return quick, False
    names, proved = exact
    return (names, proved) if proved or len(names) <= len(quick) else (quick, False)


def least(demands: Demands) -> list[frozenset[str]]:
    """Return the demands that no other one meets: whoever serves a few serves more.

    Parameters
    ----------
    demands : collection of frozenset of str
        The names that serve each demand.

    Returns
    -------
    list of frozenset of str
        Each once, without those that hold all names of another; the shortest first.
    """
    kept: list[frozenset[str]] = []
    for demand in sorted(set(demands), key=lambda d: (len(d), sorted(d))):
        if not any(other <= demand for other in kept):
            kept.append(demand)
    return kept


def greedy(demands: Demands, dislike: Mapping[str, float]) -> frozenset[str]:
    """Return names of which each demand holds one, taking the most useful one at a time.

    Parameters
    ----------
    demands : collection of frozenset of str
        The names that serve each demand; none is empty.
    dislike : mapping of str to float
        What decides between names that are as useful.

    Returns
    -------
    frozenset of str
        Seldom more than the fewest, and not proved to be so few.
    """
    left, taken = list(demands), set[str]()
    while left:
        counts: dict[str, int] = {}
        for demand in left:
            for name in demand:
                counts[name] = counts.get(name, 0) + 1
        best = min(counts, key=lambda name: (-counts[name], dislike.get(name, 0.0), name))
        taken.add(best)
        left = [demand for demand in left if best not in demand]
    # One that came early may be idle by the end.
    for name in sorted(taken, key=lambda name: (-dislike.get(name, 0.0), name)):
        if _covers(taken - {name}, demands):
            taken.discard(name)
    return frozenset(taken)


def _covers(names: Collection[str], demands: Demands) -> bool:
    """Return whether each demand holds one of the names."""
    return all(not demand.isdisjoint(names) for demand in demands)


def _exact(
    demands: Demands, dislike: Mapping[str, float], longest_s: float
) -> tuple[frozenset[str], bool] | None:
    """Return the fewest names by integer programming, None where there was no time for any."""
    from scipy.optimize import Bounds, LinearConstraint, milp  # noqa: PLC0415 - slow to load
    from scipy.sparse import csr_array  # noqa: PLC0415

    names = sorted(set().union(*demands))
    place = {name: column for column, name in enumerate(names)}
    rows = [row for row, demand in enumerate(demands) for _ in demand]
    columns = [place[name] for demand in demands for name in sorted(demand)]
    holds = csr_array((np.ones(len(rows)), (rows, columns)), shape=(len(demands), len(names)))
    worth = _DISLIKES / (len(names) + 1)
    solved = milp(
        np.array([1.0 + worth * dislike.get(name, 0.0) for name in names]),
        integrality=np.ones(len(names), dtype=int),
        bounds=Bounds(0.0, 1.0),
        constraints=LinearConstraint(holds, 1.0, np.inf),
        options={"time_limit": longest_s, "mip_rel_gap": 0.0},
    )
    if solved.x is None:
        return None
    taken = frozenset(name for name, x in zip(names, solved.x, strict=True) if x > 0.5)
    return taken, bool(solved.status == 0)
