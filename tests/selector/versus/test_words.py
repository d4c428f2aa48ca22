import math

import pytest

from selector.versus.words import Course, failing, number, swapped


@pytest.mark.parametrize(
    ("value", "axis", "text"),
    [
        (0.018, "crack rate", "1.8 in 100"),
        (1.44, "bar price", "1.4"),
        (37.6, "hourly rate", "38"),
        (12.0, "quantity", "12"),
    ],
)
def test_a_place_in_words(value, axis, text):
    assert number(value, axis) == text


@pytest.mark.parametrize(
    ("places", "text"),
    [
        ((1.0, None, 1.0, 500.0), "quantity: never; C45 is the cheaper from 1 to 500 (pieces)"),
        ((1.0, 8.0, 1.0, 500.0), "C45 is the cheaper now (1), the other from 8 (pieces)"),
        ((20.0, 8.0, 1.0, 500.0), "C45 is the cheaper now (20), the other below 8 (pieces)"),
    ],
    ids=["never", "above", "below"],
)
def test_a_swap_in_words(places, text):
    assert text in swapped("quantity", "cost", "pieces", Course(*places), "C45")


@pytest.mark.parametrize(
    ("at", "chances", "text"),
    [
        (None, (math.nan, 0.1), "unknown"),
        (
            None,
            (0.01, 0.02),
            "never; C45 stays the cheaper (they fail once in 100 against 2 times in 100)",
        ),
        (500.0, (0.02, 0.01), "until a failure in service costs 500 EUR"),
    ],
)
def test_failure_in_words(at, chances, text):
    assert text in failing("C45", at, chances, "EUR")
