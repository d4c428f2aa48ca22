"""Which parts may share one load of furnace or oven: a heat and a hold that serve them all."""

from collections import defaultdict
from collections.abc import Mapping

from selector.batch.record import HeatRunOut, LoadOut, PartOut

RULE = (
    "Parts share a load where their first choices are hardened from the same furnace into "
    "the same bath, at a heat within every steel's range and for a hold no shorter than each "
    "needs and no longer than each bears; or are tempered by the same means, as often and as "
    "long, at a heat within every temper's band. Groups are formed one after the other, from "
    "the part with the coolest upper limit: not proved the fewest. Whether they fit the "
    "chamber and belong to one workshop is not looked at; parts sent out are left out."
)
# Furnaces are set to this step, where it lies within the range. [°C]
STEP_C = 5.0
Run = tuple[str, HeatRunOut]


def loads(parts: Mapping[str, PartOut]) -> tuple[LoadOut, ...]:
    """Return the loads that at least two parts share.

    Parameters
    ----------
    parts : mapping of str to PartOut
        By their places in the batch.

    Returns
    -------
    tuple of LoadOut
        Hardening before tempering, then the largest first.
    """
    runs = [(place, heat) for place, part in parts.items() for heat in part.heats]
    alike: dict[tuple[str, str, str], list[Run]] = defaultdict(list)
    for place, heat in runs:
        alike[heat.kind, heat.by, heat.then].append((place, heat))
    shared = [
        _load(group) for same in alike.values() for group in groups(same) if len(group) > 1
    ]
    return tuple(
        sorted(
            shared, key=lambda load: (load.kind, -len(load.places), load.by, load.temperature_c)
        )
    )


def groups(runs: list[Run]) -> list[list[Run]]:
    """Return runs in groups of which each has a heat and a hold in common.

    Parameters
    ----------
    runs : list of tuple
        Place and heat, of one furnace and bath.

    Returns
    -------
    list of list
        Every run once.
    """
    left = sorted(runs, key=lambda run: (run[1].high_c, run[1].most_min, run[0]))
    grouped = []
    while left:
        heat_c = left[0][1].high_c
        warm = [run for run in left if run[1].low_c <= heat_c]
        group = _held_alike(warm)
        grouped.append(group)
        taken = {id(run) for run in group}
        left = [run for run in left if id(run) not in taken]
    return grouped


def _held_alike(warm: list[Run]) -> list[Run]:
    """Return the most runs that a hold of the first of them serves too."""
    first = warm[0][1]
    starts = sorted({run[1].least_min for run in warm if run[1].least_min <= first.most_min})
    holds = [minutes for minutes in starts if minutes >= first.least_min]
    served = (
        [run for run in warm if run[1].least_min <= hold <= run[1].most_min] for hold in holds
    )
    return max(served, key=len)


def _load(group: list[Run]) -> LoadOut:
    """Return a group with its heat and its hold: nearest to what its parts ask for."""
    heats = [heat for _, heat in group]
    low, high = max(heat.low_c for heat in heats), min(heat.high_c for heat in heats)
    wished = sum(heat.aim_c for heat in heats) / len(heats)
    stepped = STEP_C * round(wished / STEP_C)
    first = heats[0]
    return LoadOut(
        kind=first.kind,
        by=first.by,
        then=first.then,
        temperature_c=min(max(stepped, low), high),
        range_c=(low, high),
        hold_min=max(heat.least_min for heat in heats),
        places=tuple(place for place, _ in group),
    )
