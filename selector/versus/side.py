"""One of two options that are compared, and both judged at any quantity and prices."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr

from selector.decision.judgement import judge
from selector.decision.option import Option, Scorer, scorer_of
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.option.cost import Bill, bill, order_of
from selector.option.prediction import Prediction, mishaps
from selector.option.preparation import Prepared
from selector.option.reference_bar import reference_cost
from selector.option.temper_choice import Choice

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Side:
    """One option, predicted once; what depends on quantity and prices is worked out anew."""

    ready: Prepared
    prediction: Prediction
    choice: Choice

    @property
    def treatment(self) -> Treatment:
        """What is done."""
        return self.ready.treatment

    def bill(self, job: Job) -> Bill:
        """Return its bill in a job."""
        paths = mishaps(self.ready, self.prediction.surface_hrc, job)
        paths = replace(paths, crack_rate=self.prediction.crack.rate)
        return bill(self.treatment, self.choice.temper, order_of(job), paths)

    def cost(self, job: Job) -> Floats:
        """Return the cost of a good part, over the samples."""
        return self.bill(job).cost

    def option(self, job: Job, scorer: Scorer) -> Option:
        """Return the option judged and scored, with its bill in a job."""
        here = replace(self.prediction, bill=self.bill(job))
        return scorer.option(judge(here, self.choice.sensitivity_hrc, job), self.choice)

    def cracking(self, rate: float) -> "Side":
        """Return the same with another rate of cracking in every sample."""
        old = self.prediction.crack
        chance = ndtr(self.ready.normals["crack"])
        crack = replace(old, rate=np.full_like(old.rate, rate), cracked=chance < rate)
        return replace(self, prediction=replace(self.prediction, crack=crack))


Pair = tuple[Side, Side]


def both(pair: Pair, job: Job) -> tuple[Option, Option]:
    """Return both options judged and scored in the same job.

    Parameters
    ----------
    pair : tuple of Side
        The two.
    job : Job
        Part, prices, samples.

    Returns
    -------
    tuple of Option
        In the same order.
    """
    scorer = scorer_of(job, reference_cost(job))
    return pair[0].option(job, scorer), pair[1].option(job, scorer)
