"""How much a forecast is expected to narrow by readings that are still to be taken.

The samples of a forecast are its prior. Every outcome that a trial may have is thought of with
its chance, the samples are weighed anew by how likely each makes that outcome, and what is left
of their spread is averaged over the outcomes. Nothing is drawn by chance, and all that may be
read is counted, so by the law of total variance no trial widens the forecast and further
coupons never make it worse.
"""

from dataclasses import dataclass, replace
from itertools import combinations_with_replacement
from math import comb, factorial, prod

import numpy as np
from numpy.typing import NDArray

from selector.sampling import probability

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
# A reading is thought of at steps of this share of its error, out to so many errors beyond the
# samples: the sum over them is then the integral to nine places.
STEP, BEYOND = 0.25, 7.0
# A test without error would single out one sample, which is no forecast. Share of the spread.
LEAST_ERROR = 0.005
# At so many places a lasting error of a test is looked at (Gauss-Hermite).
PLACES = 9


@dataclass(frozen=True, slots=True, eq=False)
class Trial:
    """Coupons that are all treated and read alike.

    `centre` is what a coupon would show by the lasting errors of a sample alone, `scatter` the
    standard deviation from one coupon to the next (heat, quench and reading), `bias` that of an
    error which the test has in every reading. A test reads a number, or between which of its
    `edges` the coupon lies. All in the unit of what is read.
    """

    centre: Floats
    scatter: float
    bias: float
    count: int
    edges: tuple[float, ...] = ()

    def of(self, count: int) -> "Trial":
        """Return the same with so many coupons."""
        return replace(self, count=count)


@dataclass(frozen=True, slots=True, eq=False)
class Outcomes:
    """What a trial may show: how likely each sample makes it; shape (outcomes, samples).

    `lowest` and `highest` are the ends of what the coupons read in each outcome.
    """

    likelihood: Floats
    lowest: Floats
    highest: Floats

    @property
    def chance(self) -> Floats:
        """How likely each outcome is; shape (outcomes,)."""
        return np.asarray(self.likelihood.mean(axis=1))

    def within(self, low: float, high: float) -> Bools:
        """Return in which outcomes all that is read lies in a window."""
        return np.asarray((self.lowest >= low) & (self.highest <= high))


def outcomes(trial: Trial) -> Outcomes:
    """Return all that a trial may show.

    Parameters
    ----------
    trial : Trial
        At least one coupon.

    Returns
    -------
    Outcomes
        Of a test that reads a number, by the mean of the coupons; of one that sorts, by how
        many coupons lie where. The chances of each sample add up to 1.
    """
    return _sorted(trial) if trial.edges else _measured(trial)


def expected_sd(value: Floats, seen: Outcomes) -> float:
    """Return the standard deviation of a forecast that is expected after a trial.

    Parameters
    ----------
    value : ndarray
        What is forecast, over the samples.
    seen : Outcomes
        What the trial may show.

    Returns
    -------
    float
        Root of the mean variance that is left; the unit of `value`.
    """
    value = value - value.mean()
    chance = seen.chance
    there = chance > 0
    likely = seen.likelihood[there] / len(value)
    first, second = likely @ value, likely @ value**2
    left = float(np.sum(second - first**2 / chance[there]))
    return float(np.sqrt(max(left, 0.0)))


def narrowing(value: Floats, seen: Outcomes) -> float:
    """Return by what share a trial is expected to narrow a forecast.

    Parameters
    ----------
    value : ndarray
        What is forecast, over the samples.
    seen : Outcomes
        What the trial may show.

    Returns
    -------
    float
        0 where it teaches nothing, 1 where nothing is left open. [-]
    """
    before = float(np.std(value))
    if before <= 1e-12 * max(float(np.max(np.abs(value))), 1.0):
        return 0.0
    return float(np.clip(1.0 - expected_sd(value, seen) / before, 0.0, 1.0))


def after_go(good: Bools, seen: Outcomes, go: Bools) -> tuple[float, float]:
    """Return how often a trial says go, and how often the part then comes out right.

    Parameters
    ----------
    good : ndarray of bool
        Which samples come out right.
    seen : Outcomes
        What the trial may show.
    go : ndarray of bool
        Which outcomes are a go.

    Returns
    -------
    tuple of float
        Chance of a go; chance of a good part after one, NaN where none is ever given. [-]
    """
    weight = seen.likelihood[go].sum(axis=0)
    total = float(weight.sum())
    right = float(weight[good].sum()) / total if total > 0 else float("nan")
    return total / len(good), right


def _measured(trial: Trial) -> Outcomes:
    """Return the outcomes of a test that reads a number: the mean of its readings."""
    centre, spread = trial.centre, float(np.ptp(trial.centre))
    error = float(np.hypot(trial.bias, trial.scatter / np.sqrt(trial.count)))
    error = max(error, LEAST_ERROR * spread, 1e-9)
    low, high = float(centre.min()) - BEYOND * error, float(centre.max()) + BEYOND * error
    read = np.linspace(low, high, int(np.ceil((high - low) / (STEP * error))) + 1)
    likelihood = np.exp(-0.5 * ((read[:, None] - centre) / error) ** 2)
    return Outcomes(likelihood / likelihood.sum(axis=0), read, read)


def _sorted(trial: Trial) -> Outcomes:
    """Return the outcomes of a test that sorts: how many coupons lie between which edges."""
    nodes, weights = np.polynomial.hermite_e.hermegauss(PLACES)
    weights = weights / weights.sum()
    edges = np.array(trial.edges)
    scatter = max(trial.scatter, LEAST_ERROR * float(np.ptp(trial.centre)), 1e-9)
    # Places of the lasting error × samples, against the edges.
    at = trial.centre + trial.bias * nodes[:, None]
    below = probability((edges[:, None, None] - at) / scatter)
    none, every = np.zeros_like(below[:1]), np.ones_like(below[:1])
    band = np.diff(np.concatenate([none, below, every]), axis=0)
    ends = np.array([-np.inf, *edges, np.inf])
    chances, lowest, highest = [], [], []
    for coupons in combinations_with_replacement(range(len(band)), trial.count):
        orders = factorial(trial.count) / prod(
            factorial(coupons.count(k)) for k in set(coupons)
        )
        chances.append(orders * np.tensordot(weights, np.prod(band[list(coupons)], axis=0), 1))
        lowest.append(ends[coupons[0]])
        highest.append(ends[coupons[-1] + 1])
    return Outcomes(np.array(chances), np.array(lowest), np.array(highest))


def counted(rate: Floats, count: int) -> Outcomes:
    """Return how many of some coupons may crack.

    Parameters
    ----------
    rate : ndarray
        Chance of a crack, over the samples. [-]
    count : int
        How many coupons.

    Returns
    -------
    Outcomes
        None, one, up to all: the binomial law.
    """
    number = np.arange(count + 1)
    orders = np.array([comb(count, int(k)) for k in number])[:, None]
    likelihood = orders * rate ** number[:, None] * (1.0 - rate) ** (count - number[:, None])
    return Outcomes(likelihood, number.astype(float), number.astype(float))
