"""The one pipeline: requirement and catalogue in, ranked and reasoned advice out."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog, load_catalog
from catalog.route import Route
from catalog.steel import Steel
from selector.decision.comparison import Comparison, other_methods
from selector.decision.criteria import Range
from selector.decision.drawback import drawbacks, unheard_of
from selector.decision.option import Beaten, Option, Rejected, scorer_of
from selector.decision.preference import LESS_SURE, certified
from selector.decision.ranking import pairwise_share
from selector.decision.weighing import Progress, silent, weigh
from selector.figure import median
from selector.job.candidates import screened
from selector.job.demand import Demand
from selector.job.job import Job, resolved
from selector.option.reference_bar import reference_cost
from selector.requirement import Requirement
from selector.requirement.priority import CRITERIA
from selector.requirement.zone import Zone
from selector.undisturbed import undisturbed

Floats = NDArray[np.float64]
TOSS_UP = 0.60
# A first option that comes right less often is worth a change. [-]
SURE = 0.80
# What comes so near is named where nothing meets every demand. [-]
NEARLY = 0.1
# A hardness so near the window is as good as in it. [HRC]
ABOUT_HRC = 0.5
# So many leading options are set against each other, and given to the other methods.
PAIRED, COMPARED = 8, 40


@dataclass(frozen=True, slots=True, eq=False)
class Advice:
    """Everything the outputs are made of."""

    asked: Requirement
    job: Job
    options: tuple[Option, ...]
    rejected: tuple[Rejected, ...]
    apart: tuple[Rejected, ...]
    ranges: tuple[Range, ...]
    weights: Mapping[str, float]
    comparisons: tuple[Comparison, ...] = ()
    reference_cost: float = 0.0
    shares: Mapping[tuple[str, str], float] = field(default_factory=dict)
    outdone: tuple[Option, ...] = ()
    beaten: tuple[Beaten, ...] = ()

    @property
    def leading_zone(self) -> Zone:
        """The zone that sets the treatment."""
        return self.asked.zone[self.job.leading.zone]

    @property
    def toss_up(self) -> bool:
        """Whether the first two are level within their error bars, and about as sure.

        A second that is set back, as by rust or the wear of a dear mate, is no way to toss for.
        """
        if len(self.options) < 2:
            return False
        first, second = self.options[:2]
        if drawbacks(second, self.asked) - drawbacks(first, self.asked):
            return False
        less_sure = abs(first.judged.passing_all - second.judged.passing_all)
        return self.shares[first.id, second.id] < TOSS_UP and less_sure <= LESS_SURE

    @property
    def as_bought(self) -> Option | None:
        """The best option without heat treatment that passes outright and is so used."""
        # What is softer than was aimed at may come right, but hardness is not needless there.
        return next(
            (
                option
                for option in self.options
                if option.treatment.route.process == "none"
                and option.treatment.condition.name != "hard-element"
                and option.judged.verdict == "pass"
                and not _is_under(option, self.job.leading)
                and not unheard_of(option)
            ),
            None,
        )

    @property
    def known_came_near(self) -> bool:
        """Whether what is known came so near that an unknown bar is one way among others."""
        # What goes beyond the models is known too: its coupon says whether they hold.
        if any(item.gate.name == "model" for item in self.apart):
            return False
        budget = self.asked.limit.budget
        return any(item.nearness(budget) >= NEARLY for item in self.rejected)

    @property
    def verdict(self) -> str:
        """One word for the whole advice, which the first option answers for."""
        if self.asked.safety_critical:
            return "safety_referral"
        if not self.options:
            return "coupon_first" if self.apart and not self.known_came_near else "no_option"
        first = self.options[0]
        if self.toss_up and first is not self.as_bought:
            return "toss_up"
        return "leave_as_bought" if first.treatment.route.process == "none" else "harden"


def _is_under(option: Option, demand: Demand) -> bool:
    """Return whether an option comes out softer than was aimed at."""
    low, hrc = demand.low_hrc, option.judged.prediction.surface_hrc
    return low is not None and median(hrc) < low - ABOUT_HRC


@undisturbed()
def advise(
    requirement: Requirement,
    catalog: Catalog | None = None,
    *,
    steel: str | None = None,
    route: str | None = None,
    progress: Progress | None = None,
) -> Advice:
    """Return ranked advice for one part in one workshop.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    catalog : Catalog, optional
        What is known; the shipped catalogue if absent.
    steel, route : str, optional
        Look only at this steel (any designation) or route (slug or kind).
    progress : callable, optional
        Called with a sentence and a fraction.

    Returns
    -------
    Advice
        Ranked options, what was rejected and why, what stands apart as unknown.

    Raises
    ------
    RequirementError
        When the requirement names things the catalogue does not hold.
    """
    known = (catalog or load_catalog()).assuming(steel)
    report = progress or silent
    job = resolved(requirement, known)
    report("Screening steels and routes", 0.05)
    steels = None if steel is None else {s.slug for s in known.find(steel)}

    def wanted(bar: Steel, by: Route) -> bool:
        named = route is None or route in {by.slug, by.kind}
        return named and (steels is None or bar.slug in steels)

    pool = screened(requirement, known, job.bench, wanted)
    reference = reference_cost(job)
    scorer = scorer_of(job, reference)
    weighed = weigh(job, pool, scorer, lambda text, share: report(text, 0.1 + 0.85 * share))
    options = weighed.options
    if requirement.safety_critical:
        options = certified(options)
    report("Comparing", 0.97)
    return Advice(
        asked=requirement,
        job=job,
        options=options,
        rejected=weighed.rejected,
        apart=weighed.apart,
        ranges=scorer.ranges,
        weights={str(k): v for k, v in requirement.priorities.weights().items()},
        comparisons=other_methods(expected_merits(options), scorer.weights),
        reference_cost=reference,
        shares=_pairwise(options[:PAIRED]),
        outdone=weighed.outdone,
        beaten=weighed.beaten,
    )


def expected_merits(options: tuple[Option, ...]) -> Floats:
    """Return the expected merits that other methods are given.

    Parameters
    ----------
    options : tuple of Option
        The best first.

    Returns
    -------
    ndarray
        Mean over the samples; shape (options up to `COMPARED`, criteria). [-]
    """
    merits = [option.merit.mean(axis=0) for option in options[:COMPARED]]
    return np.array(merits).reshape(len(merits), len(CRITERIA))


def _pairwise(options: tuple[Option, ...]) -> dict[tuple[str, str], float]:
    """Return the share of samples in which each leading option beats each other."""
    return {
        (a.id, b.id): pairwise_share(a.scores, b.scores)
        for a in options
        for b in options
        if a is not b
    }


__all__ = ["Advice", "advise"]
