"""T. L. Saaty, How to make a decision: the analytic hierarchy process, European Journal of
Operational Research 48, 1990, 9-26: choosing a house, comparisons of the eight criteria; and
T. L. Saaty, Decision-making with the AHP: why is the principal eigenvector necessary, ibid.
145, 2003, 85-91: the same with its oddest judgement revised (both from memory).
"""

import numpy as np
import pytest

from selector.requirement.pairwise import consistency_ratio, oddest, principal
from tests.printed import agrees

# Size, transport, neighbourhood, age, yard, facilities, condition, financing.
HOUSE = np.array(
    [
        [1, 5, 3, 7, 6, 6, 1 / 3, 1 / 4],
        [1 / 5, 1, 1 / 3, 5, 3, 3, 1 / 5, 1 / 7],
        [1 / 3, 3, 1, 6, 3, 4, 6, 1 / 5],
        [1 / 7, 1 / 5, 1 / 6, 1, 1 / 3, 1 / 4, 1 / 7, 1 / 8],
        [1 / 6, 1 / 3, 1 / 3, 3, 1, 1 / 2, 1 / 5, 1 / 6],
        [1 / 6, 1 / 3, 1 / 4, 4, 2, 1, 1 / 5, 1 / 6],
        [3, 5, 1 / 6, 7, 5, 5, 1, 1 / 2],
        [4, 7, 5, 8, 6, 6, 2, 1],
    ]
)


@pytest.mark.parametrize(
    ("row", "printed"),
    list(enumerate(("0.173", "0.054", "0.188", "0.018", "0.031", "0.036", "0.167", "0.333"))),
)
def test_weights_of_the_criteria(row, printed):
    assert agrees(principal(HOUSE)[0][row], printed)


def test_largest_eigenvalue_index_and_ratio():
    _, largest = principal(HOUSE)
    assert agrees(largest, "9.669")
    assert agrees((largest - 8) / 7, "0.238")
    assert agrees(consistency_ratio(HOUSE), "0.169")


def test_the_oddest_judgement_is_neighbourhood_against_condition():
    assert oddest(HOUSE) == (2, 6)


@pytest.mark.parametrize(
    ("row", "printed"),
    list(enumerate(("0.175", "0.062", "0.103", "0.019", "0.034", "0.041", "0.221", "0.345"))),
)
def test_weights_with_that_judgement_revised(row, printed):
    revised = HOUSE.copy()
    revised[2, 6], revised[6, 2] = 1 / 2, 2.0
    assert agrees(principal(revised)[0][row], printed)
    assert consistency_ratio(revised) < 0.10
