"""An option: a treatment with its temper, judged and scored; or rejected, and by which gate."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from selector.decision.criteria import Range, merits, range_table
from selector.decision.judgement import Judged
from selector.decision.ranking import reference_ideal
from selector.figure import quantiles
from selector.gate import FUNCTIONAL, Gate
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.option.temper_choice import Choice
from selector.requirement.priority import CRITERIA

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]


# A sum is enough that pays for so many of the samples. [-]
ENOUGH = 0.9


@dataclass(frozen=True, eq=False)
class Option:
    """One judged and scored option, with the band of tempers that serves as well."""

    judged: Judged
    choice: Choice
    merit: Floats
    scores: Floats

    @property
    def treatment(self) -> Treatment:
        """What is done to which steel."""
        return self.judged.prediction.treatment

    @property
    def id(self) -> str:
        """`steel/condition/route/temper`, stable as the catalogue grows."""
        return f"{self.treatment.label}/{self.choice.temper.label}"

    @cached_property
    def score(self) -> float:
        """Expected score: mean over the samples, one that fails a gate counting nothing."""
        return float(np.mean(self.scores))


@dataclass(frozen=True, slots=True, eq=False)
class Rejected:
    """A treatment that fails, or that cannot be judged, and the gate that decided.

    `share` of the samples come out right and are `within_budget`; 0 and None where it was not
    worked out to its end, being far from the demand of its gate. So with `cost` in the middle
    and what is `enough` nine times in ten, in currency. The `option` itself is kept where
    somebody asks for it: its samples are large.
    """

    treatment: Treatment
    gate: Gate
    share: float = 0.0
    within_budget: float | None = None
    option: Option | None = None
    cost: float | None = None
    enough: float | None = None

    @staticmethod
    def of(option: Option, gate: Gate) -> "Rejected":
        """Return a sampled option turned down by a gate."""
        judged, cost = option.judged, option.judged.prediction.bill.cost
        shares = judged.passing_all, judged.within_budget
        sums = quantiles(cost, 0.5, ENOUGH)
        return Rejected(option.treatment, gate, *shares, option, *sums)

    def nearness(self, budget: float | None) -> float:
        """Return how near it came: its share, or budget over cost where that stops it. [-]."""
        gate, near = self.gate, self.share
        if gate.name == "budget" and near >= FUNCTIONAL[1]:
            # What comes right often enough is as near as its cost.
            near = 1.0
        elif gate.name != "budget" and gate.share is not None:
            # The heat as a means is no part of coming out right.
            near = min(near, gate.share)
        return (
            near if budget is None or self.cost is None else near * min(1.0, budget / self.cost)
        )


@dataclass(frozen=True, slots=True, eq=False)
class Beaten:
    """An option whose place another of its family and route took: its figures, no samples.

    `stands_back` says that it stands behind all others, or that nobody makes such a part so.
    """

    treatment: Treatment
    id: str
    score: float
    stands_back: bool


@dataclass(frozen=True, slots=True, eq=False)
class Scorer:
    """Ranges and weights of one requirement."""

    ranges: tuple[Range, ...]
    weights: Floats

    def option(self, judged: Judged, choice: Choice) -> Option:
        """Return a judged option with its score over the samples."""
        return Option(judged, choice, *self.scored(judged.values, judged.passing))

    def scored(self, values: Floats, passing: Bools) -> tuple[Floats, Floats]:
        """Return merit, shape (samples, criteria), and score of each sample. [-]."""
        merit = merits(self.ranges, values)
        index = reference_ideal(merit, self.weights)
        # What is not known counts nothing, as what fails does.
        return merit, np.where(passing & np.isfinite(index), index, 0.0)


def scorer_of(job: Job, reference: float) -> Scorer:
    """Return what scores the options of one requirement; `reference` is in currency."""
    limit, weights = job.asked.limit, job.asked.priorities.weights()
    by_life = job.asked.zone[job.leading.zone].life_ratio is not None
    ranges = range_table(limit.budget, reference, limit.days, by_life=by_life)
    return Scorer(ranges, np.array([weights[name] for name in CRITERIA]))
