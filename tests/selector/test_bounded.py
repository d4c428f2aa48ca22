import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.bounded import bounded

ANY = st.floats(allow_nan=True, allow_infinity=True)


@given(st.lists(ANY, min_size=1), st.floats(-1e3, 0.0), st.floats(0.0, 1e3))
def test_values_are_held_as_numpy_holds_them(values, low, high):
    given_values = np.array(values)
    np.testing.assert_array_equal(
        bounded(given_values, low, high), np.clip(given_values, low, high)
    )


@pytest.mark.parametrize("places", [np.array([3, -1, 7]), np.int64(9)])
def test_places_stay_whole_numbers(places):
    held = bounded(places, 0, 5)
    assert held.dtype.kind == "i"
    np.testing.assert_array_equal(held, np.clip(places, 0, 5))
