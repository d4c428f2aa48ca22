"""All that stays the same while options are weighed: part, demands, bench, prices, samples."""

from collections.abc import Callable, Hashable
from dataclasses import dataclass, field, replace
from functools import wraps
from typing import Any, Concatenate, ParamSpec, TypeVar

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog
from selector import sampling
from selector.job.bench import Bench, bench
from selector.job.demand import Demand, demands
from selector.job.geometry import Notches, mass_kg, notches
from selector.job.hard_section import hard_sections, leading, worn_sections
from selector.job.tempers import temper_ceilings
from selector.job.treatment import Means
from selector.requirement import Requirement

Floats = NDArray[np.float64]
P = ParamSpec("P")
T = TypeVar("T")
JobFunction = Callable[Concatenate["Job", P], T]

_NOTHING: Any = object()


@dataclass(frozen=True, slots=True, eq=False)
class Job:
    """The fixed side of every prediction.

    `leading` is the demand that sets the treatment, `hard` the sections a local one hardens.
    `off` are uncertainties that stand so many standard deviations off their middle, where one
    heat that goes amiss is asked for, and `meant` is the job without them. `memo` keeps what
    functions marked `per_job` or `per_part` have returned for it.
    """

    asked: Requirement
    catalog: Catalog
    bench: Bench
    demands: tuple[Demand, ...]
    leading: Demand
    notches: Notches
    mass_kg: float
    hard: tuple[int, ...]
    count: int = sampling.COUNT
    off: tuple[tuple[str, float], ...] = ()
    memo: dict[tuple[Hashable, ...], Any] = field(default_factory=dict, repr=False)
    meant: "Job | None" = field(default=None, repr=False)
    _once: "Job | None" = field(default=None, init=False, repr=False)

    @property
    def lead_section(self) -> int:
        """Index, from 0, of the thickest section of the leading zone."""
        sections = self.asked.part.section
        return max(self.leading.sections, key=lambda i: sections[i].size)

    @property
    def temper_ceilings_c(self) -> dict[Means, float]:
        """Means of tempering that the workshop has, each with how hot it goes. [°C]."""
        return temper_ceilings(self.asked.workshop, self.bench.sources)

    @property
    def ordered_depth_mm(self) -> float:
        """How deep the leading zone is to be hard before anything is ground off it. [mm]."""
        return self.leading.depth_mm + (self.asked.part.stock_removal or 0.0)

    def middle(self) -> "Job":
        """Return the same job at the middle of all uncertainties; the two share one memo."""
        if self.meant is not None:
            return self.meant
        if self.count == 1:
            return self
        if self._once is None:
            object.__setattr__(self, "_once", replace(self, count=1))
        return self._once or self

    def one_heat(self) -> "Job":
        """Return the job of a single heat: the middle, or as far off it as this job is."""
        return self if self.count == 1 else self.middle()

    def strayed(self, **sds: float) -> "Job":
        """Return the middle of this job with some uncertainties off by so many sd."""
        once = self.middle()
        return replace(once, off=tuple(sds.items()), memo={}, meant=once)

    def forget_samples(self) -> None:
        """Let go of what was worked out over the samples, and of all that holds on to a job."""
        # A memo that holds its own job would keep both until garbage is looked for.
        for key, value in list(self.memo.items()):
            if (self.count > 1 and key[1] == self.count) or hasattr(value, "job"):
                del self.memo[key]

    def shared(self) -> sampling.Normals:
        """Return the samples all steels share; all zero when only the middle is asked for."""
        if self.count == 1:
            return {**sampling.middle(), **{n: np.array([sd]) for n, sd in self.off}}
        return sampling.shared(self.count)

    def of_steel(self, slug: str) -> dict[str, Floats]:
        """Return one steel's samples together with the shared ones."""
        if self.count == 1:
            return dict(self.shared())
        return _samples(self, slug)


def per_job(work: JobFunction[P, T]) -> JobFunction[P, T]:
    """Keep what a function makes of a job and hashable arguments, for each number of samples.

    The function itself and all that it is given are the key, so nothing that moves its result
    can be left out of it. Records that differ by identity alone serve as well as equal ones:
    the key holds on to them.

    Parameters
    ----------
    work : callable
        Takes a job first; whatever else it reads must be an argument too.

    Returns
    -------
    callable
        The same, computed once for each job and arguments.
    """

    @wraps(work)
    def kept(job: Job, /, *args: P.args, **kwargs: P.kwargs) -> T:
        key = (work, job.count, args, *kwargs.items())
        # One look: to hash a key takes as long as some of what is kept.
        found: T = job.memo.get(key, _NOTHING)
        if found is _NOTHING:
            found = job.memo[key] = work(job, *args, **kwargs)
        return found

    return kept


def per_part(work: JobFunction[P, T]) -> JobFunction[P, T]:
    """Keep what a function makes of part and workshop alone, for the middle and all samples.

    It is handed the middle of the job, so that no sample can get into what both share.

    Parameters
    ----------
    work : callable
        Takes a job first; whatever else it reads must be an argument too.

    Returns
    -------
    callable
        The same, computed once for each job and arguments.
    """

    @wraps(work)
    def kept(job: Job, /, *args: P.args, **kwargs: P.kwargs) -> T:
        once, key = job.middle(), (work, args, *kwargs.items())
        found: T = once.memo.get(key, _NOTHING)
        if found is _NOTHING:
            found = once.memo[key] = work(once, *args, **kwargs)
        return found

    return kept


@per_job
def _samples(job: Job, slug: str) -> dict[str, Floats]:
    """Return the samples of a steel beside those that all share."""
    return sampling.with_shared(slug, job.count)


def resolved(asked: Requirement, catalog: Catalog, count: int = sampling.COUNT) -> Job:
    """Return the fixed side of an advice.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    catalog : Catalog
        What is known.
    count : int
        Number of samples; 1 gives the middle alone.

    Returns
    -------
    Job
        Shared by all predictions.
    """
    every, there = demands(asked), bench(asked, catalog)
    # A copy would look its names up anew: made only where the workshop pays other prices.
    own = there.prices is not catalog.prices
    return Job(
        asked=asked,
        catalog=replace(catalog, prices=there.prices) if own else catalog,
        bench=there,
        demands=every,
        leading=leading(every, worn_sections(asked)),
        notches=notches(asked.part),
        mass_kg=mass_kg(asked.part),
        hard=hard_sections(asked),
        count=count,
    )
