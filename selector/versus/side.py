"""Two options in one job, judged at any quantity, prices and rate of cracking."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.decision.judgement import Judged, judge
from selector.decision.option import Option, Scorer, scorer_of
from selector.errors import OutOfRangeError, Problem, RequirementError, limits_left
from selector.job.job import Job, per_job
from selector.job.treatment import Treatment
from selector.option.cost import Bill, bill, order_of
from selector.option.prediction import Prediction, mishaps, predict
from selector.option.preparation import Prepared, cooled_points, prepare
from selector.option.reference_bar import reference_cost
from selector.option.skin import atmosphere
from selector.option.temper_choice import Choice, choice_of, choices
from selector.requirement.priority import CRITERIA
from selector.sampling import probability
from selector.versus.option_id import FIELD, option_of

Floats = NDArray[np.float64]
COST, DAYS = CRITERIA.index("cost"), CRITERIA.index("days")


@dataclass(frozen=True, slots=True, eq=False)
class Side:
    """One option, predicted once."""

    ready: Prepared
    prediction: Prediction
    choice: Choice

    @property
    def treatment(self) -> Treatment:
        """What is done."""
        return self.ready.treatment

    def cracking(self, rate: float) -> "Side":
        """Return the same with another rate of cracking throughout the sample."""
        old = self.prediction.crack
        cracked = _chance(self.ready.job, self.ready) < rate
        crack = replace(old, rate=np.full_like(old.rate, rate), cracked=cracked)
        return replace(self, prediction=replace(self.prediction, crack=crack))


@per_job
def _chance(_: Job, ready: Prepared) -> Floats:
    """Return from which rate of cracking on each sample cracks. [-]."""
    return probability(ready.normals["crack"])


def side_of(name: str, job: Job) -> Side:
    """Return the option that an id names, predicted.

    Parameters
    ----------
    name : str
        As `temperwright advise` prints it.
    job : Job
        Part, workshop and catalogue.

    Returns
    -------
    Side
        Ready to be judged.

    Raises
    ------
    RequirementError
        When there is no such option here, or it goes beyond what is modelled.
    """
    treatment, temper = option_of(name, job)
    middle = job.middle()
    try:
        points = cooled_points(treatment, middle)
        choice = choice_of(prepare(treatment, middle), temper, points)
        ready = prepare(treatment, job)
        return Side(ready, predict(ready, temper), choice)
    except OutOfRangeError as error:
        rule, got = "one that can be computed", f"{name!r} ({limits_left(error)})"
        step = "Choose another."
        raise RequirementError(Problem(FIELD, rule, got, step)) from error


def judged_option(name: str, job: Job) -> Option:
    """Return the option that an id names, judged and scored as `advise` does.

    Parameters
    ----------
    name : str
        As `temperwright advise` prints it.
    job : Job
        Part, workshop and catalogue.

    Returns
    -------
    Option
        The same as in the advice, where it stands there.
    """
    side = side_of(name, job)
    choice = _with_band(side, job.middle())
    judged = judge(side.prediction, choice.sensitivity_hrc, job)
    return scorer_of(job, reference_cost(job)).option(judged, choice)


def _with_band(side: Side, middle: Job) -> Choice:
    """Return the temper of an option with the band that serves as well, as `advise` has it."""
    ceilings = middle.temper_ceilings_c
    points = cooled_points(side.treatment, middle)
    weighed = choices(prepare(side.treatment, middle), ceilings, points)
    return next((c for c in weighed if c.temper == side.choice.temper), side.choice)


@per_job
def _uncracked(job: Job, ready: Prepared, choice: Choice) -> Judged:
    """Return an option judged as if none cracked, at its own bill."""
    prediction = predict(ready, choice.temper)
    none = np.zeros_like(prediction.crack.cracked)
    whole = replace(prediction, crack=replace(prediction.crack, cracked=none))
    return judge(whole, choice.sensitivity_hrc, job)


@dataclass(frozen=True, slots=True, eq=False)
class Pair:
    """Two options in one job; what changes along an axis is worked out again."""

    first: Side
    second: Side
    job: Job

    @property
    def sides(self) -> tuple[Side, Side]:
        """Both, in their order."""
        return self.first, self.second

    def bills(self) -> tuple[Bill, Bill]:
        """Return both bills made out anew."""
        return self._bill(self.first), self._bill(self.second)

    def _bill(self, side: Side) -> Bill:
        """Return the bill of one side made out anew."""
        paths = mishaps(side.ready, side.prediction.surface_hrc, self.job.leading)
        paths = replace(paths, crack_rate=side.prediction.crack.rate)
        layer = side.prediction.layer
        hours = layer.hours if layer else 0.0
        wrapped = atmosphere(side.treatment, self.job.asked.workshop) == "pack"
        order = order_of(self.job)
        return bill(side.treatment, side.choice.temper, order, paths, hours, wrapped=wrapped)

    def options(self) -> tuple[Option, Option]:
        """Return both options judged and scored, their bills made out anew."""
        scorer = scorer_of(self.job, reference_cost(self.job))
        first, second = self.bills()
        return self._option(self.first, first, scorer), self._option(
            self.second, second, scorer
        )

    def _option(self, side: Side, made_out: Bill, scorer: Scorer) -> Option:
        """Return one side judged and scored at a bill."""
        prediction = replace(side.prediction, bill=made_out)
        judged = judge(prediction, side.choice.sensitivity_hrc, self.job)
        return scorer.option(judged, side.choice)

    def scores(self, scorer: Scorer) -> tuple[float, float]:
        """Return what both score by the scorer of this job, their bills made out anew. [-]."""
        first, second = self.bills()
        return self._score(self.first, first, scorer), self._score(self.second, second, scorer)

    def _score(self, side: Side, made_out: Bill, scorer: Scorer) -> float:
        """Return the score of one side: along an axis bill and cracks alone are others."""
        whole = _uncracked(self.job, side.ready, side.choice)
        values = whole.values.copy()
        values[:, COST], values[:, DAYS] = made_out.cost, made_out.days
        passing, budget = (
            whole.right & ~side.prediction.crack.cracked,
            self.job.asked.limit.budget,
        )
        if budget is not None:
            passing &= made_out.cost <= budget
        return float(np.mean(scorer.scored(values, passing)[1]))

    def first_cracking(self, rate: float) -> "Pair":
        """Return the same with another rate of cracking of the first."""
        return replace(self, first=self.first.cracking(rate))

    def second_cracking(self, rate: float) -> "Pair":
        """Return the same with another rate of cracking of the second."""
        return replace(self, second=self.second.cracking(rate))

    def of_quantity(self, count: float) -> "Pair":
        """Return the same for another number of parts; nothing kept by the job reads it."""
        part = self.job.asked.part.model_copy(update={"quantity": round(count)})
        asked = self.job.asked.model_copy(update={"part": part})
        return replace(self, job=replace(self.job, asked=asked))

    def at_prices(self, changes: Mapping[str, object]) -> "Pair":
        """Return the same under another price list; nothing kept by the job reads a price."""
        known = self.job.catalog
        known = replace(known, prices=known.prices.model_copy(update=dict(changes)))
        return replace(self, job=replace(self.job, catalog=known))
