"""All that stays the same while options are weighed: part, demands, bench, prices, draws."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog
from selector import sampling
from selector.job.bench import Bench, bench
from selector.job.demand import Demand, demands, leading
from selector.job.geometry import Notches, mass_kg, notches
from selector.job.screening import hard_sections
from selector.requirement import Requirement

Floats = NDArray[np.float64]
T = TypeVar("T")

_MIDDLE = dict.fromkeys((*sampling.SHARED, *sampling.STEEL), np.zeros(1))


@dataclass(frozen=True, slots=True, eq=False)
class Job:
    """The fixed side of every prediction."""

    asked: Requirement
    catalog: Catalog
    bench: Bench
    demands: tuple[Demand, ...]
    notches: Notches
    mass_kg: float
    hard: tuple[int, ...]
    count: int = sampling.COUNT
    # What many treatments share is worked out once: compositions by steel, points by bath.
    memo: dict[tuple[object, ...], Any] = field(default_factory=dict)
    # Heat histories follow the part, not the draws: middle and draws share them.
    courses: dict[tuple[object, ...], Any] = field(default_factory=dict)

    def once(self, key: tuple[object, ...], work: Callable[[], T]) -> T:
        """Return the result of `work`, done once for each key.

        Parameters
        ----------
        key : tuple
            What the result depends on, besides these surroundings.
        work : callable
            Takes nothing.

        Returns
        -------
        object
            What `work` returned the first time.
        """
        return _kept(self.memo, key, work)

    def course(self, key: tuple[object, ...], work: Callable[[], T]) -> T:
        """Return the result of `work` that takes no draws, done once for each key.

        Parameters
        ----------
        key : tuple
            What the result depends on, besides part and workshop.
        work : callable
            Takes nothing.

        Returns
        -------
        object
            What `work` returned the first time, here or in the `middle`.
        """
        return _kept(self.courses, key, work)

    def middle(self) -> "Job":
        """Return the same at the middle of all uncertainties."""
        return replace(self, count=1, memo={})

    @property
    def leading(self) -> Demand:
        """The demand that sets the treatment."""
        return leading(self.demands)

    def shared(self) -> sampling.Normals:
        """Return the draws all steels share; all zero when only the middle is asked for."""
        if self.count == 1:
            return _MIDDLE
        return sampling.shared(self.count)

    def of_steel(self, slug: str) -> dict[str, Floats]:
        """Return one steel's draws together with the shared ones."""
        if self.count == 1:
            return _MIDDLE
        shared = sampling.shared(self.count)
        return self.once(
            ("draws", slug), lambda: {**shared, **sampling.of_steel(slug, self.count)}
        )


def _kept(
    memo: dict[tuple[object, ...], Any], key: tuple[object, ...], work: Callable[[], T]
) -> T:
    """Return what is kept under a key, working it out the first time."""
    if key not in memo:
        memo[key] = work()
    found: T = memo[key]
    return found


def resolved(asked: Requirement, catalog: Catalog, count: int = sampling.COUNT) -> Job:
    """Return the fixed side of an advice.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    catalog : Catalog
        What is known.
    count : int
        Number of draws; 1 gives the middle alone.

    Returns
    -------
    Job
        Shared by all predictions.
    """
    return Job(
        asked=asked,
        catalog=catalog,
        bench=bench(asked, catalog),
        demands=demands(asked),
        notches=notches(asked.part),
        mass_kg=mass_kg(asked.part),
        hard=hard_sections(asked),
        count=count,
    )
