"""What methods of other families say of the same options, by scikit-criteria.

Loaded only where a person asks for it: the library takes longer to load than an advice takes to
compute. Of its methods those are asked that can disagree with the reference ideal. On merits
between 0 and 1 that are all to be high, MABAC, ARAS, RAM, SPOTIS and the ratio system of MOORA
rise with the weighted sum (plus a constant, over a constant, its root, 1 minus it, itself), and
so order as it does; PROBID, CODAS and CoCoSo are distances and sums as TOPSIS and the weighted
sum are. One method is asked for each idea that is left.
"""

import warnings
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from selector.decision.comparison import Comparison, set_apart

if TYPE_CHECKING:
    from skcriteria import DecisionMatrix

Floats = NDArray[np.float64]

# Merits nearer to each other than this are equal, and none is nil: a product takes logarithms,
# and what is worsened at random must have something to lose.
GRAIN, LEAST = 1e-9, 1e-6
# Each option is worsened this often; the seed makes the answer the same each time.
REPEATS, SEED = 3, 20240117


@dataclass(frozen=True, slots=True)
class SecondOpinion:
    """Orders by methods of other families, and in a sentence how firm they are."""

    orders: tuple[Comparison, ...]
    remark: str


def second_opinion(merit: Floats, weights: Floats) -> SecondOpinion:
    """Return what methods of other families say of the same options.

    Parameters
    ----------
    merit : ndarray
        Expected merits, to be high, between 0 and 1; shape (options, criteria). [-]
    weights : ndarray
        Weights that add up to 1; shape (criteria,). [-]

    Returns
    -------
    SecondOpinion
        Orders; none, and a sentence that says why, where there is nothing to compare.

    Notes
    -----
    ELECTRE II outranks by majority of weight without a veto [1]_, with the thresholds of
    scikit-criteria. VIKOR weighs the sum of shortfalls against the largest one, half and half
    [2]_. The weighted product lets no strength make good a criterion that is nil [3]_. EDAS
    measures from the average option [4]_. Rank invariance: a worse also-ran must leave the
    first in its place [5]_.

    References
    ----------
    .. [1] B. Roy, P. Bertier, La méthode ELECTRE II, OR'72, 1973, 291-302.
    .. [2] S. Opricovic, G.-H. Tzeng, Compromise solution by MCDM methods, European Journal of
       Operational Research 156, 2004, 445-455.
    .. [3] P. W. Bridgman, Dimensional Analysis, Yale University Press, 1922.
    .. [4] M. Keshavarz Ghorabaee et al., Multi-criteria inventory classification using EDAS,
       Informatica 26, 2015, 435-451.
    .. [5] X. Wang, E. Triantaphyllou, Ranking irregularities when evaluating alternatives by
       using some ELECTRE methods, Omega 36, 2008, 45-63.
    """
    if len(merit) < 2:
        some = "only one option" if len(merit) else "no option"
        return SecondOpinion((), f"There is {some}: nothing to compare.")
    counting = weights > 0.0
    seen = np.maximum(np.round(merit[:, counting] / GRAIN) * GRAIN, LEAST)
    if not set_apart(seen, weights[counting]):
        text = "Nothing that carries weight sets the options apart: no order to compare."
        return SecondOpinion((), text)
    # Equal options are one: they share a place, and worsening one to the next would be nothing.
    distinct, which = np.unique(seen, axis=0, return_inverse=True)
    with _quiet():
        import skcriteria  # noqa: PLC0415 - slow to load

        matrix = skcriteria.mkdm(distinct, [max] * distinct.shape[1], weights=weights[counting])
        methods = _methods()
        orders = tuple(
            Comparison(name, tuple(int(rank) for rank in method.evaluate(matrix).rank_[which]))
            for name, method in methods.items()
        )
        return SecondOpinion(orders, _invariance(methods, matrix))


@contextmanager
def _quiet() -> Iterator[None]:
    """Silence the library: it warns of a criterion on which all options are alike."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def _methods() -> dict[str, Any]:
    """Return the methods asked, by the name they are shown with."""
    from skcriteria.agg.edas import EDAS  # noqa: PLC0415
    from skcriteria.agg.electre import ELECTRE2  # noqa: PLC0415
    from skcriteria.agg.simple import WeightedProductModel  # noqa: PLC0415
    from skcriteria.agg.vikor import VIKOR  # noqa: PLC0415

    return {
        "outranking (ELECTRE II)": ELECTRE2(),
        "least regret (VIKOR)": VIKOR(use_compromise_set=False),
        "weighted product": WeightedProductModel(),
        "distance from the average (EDAS)": EDAS(),
    }


def _invariance(methods: Mapping[str, Any], matrix: "DecisionMatrix") -> str:
    """Return in a sentence whether the first stays first while the others are made worse."""
    from skcriteria.ranksrev import RankInvariantChecker  # noqa: PLC0415

    count = len(matrix.alternatives)
    if count < 3:
        return "With two options apart there is no third to make worse: firmness not tested."
    upset = []
    for name, method in methods.items():
        checker = RankInvariantChecker(
            method, repeat=REPEATS, last_diff_strategy="mean", random_state=SEED
        )
        kept = checker.evaluate(matrix).extra_["opr"]
        if kept < 1.0:
            upset.append(f"{name} in {100.0 * (1.0 - kept):.0f} of 100 trials")
    tried = f"Each also-ran was made worse {REPEATS} times, to no worse than the next below it"
    if not upset:
        return f"{tried}: the first of each method stayed first."
    return f"{tried}: the first lost its place by {', '.join(upset)}; that order is less firm."
