import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from selector.figure import Provenance, figure, median

TOLD = Provenance("HRC", "a relation", "a source", {"steel": "C45"}, ("C outside",))
DRAWS = arrays(float, st.integers(1, 60), elements=st.floats(-1e6, 1e6))


@given(DRAWS)
def test_range_holds_the_median_and_lies_among_the_draws(draws):
    found = figure(draws, TOLD)
    slack = 1e-9 * (1 + abs(draws).max())
    assert found.p05 <= found.value + slack
    assert found.value <= found.p95 + slack
    assert draws.min() - slack <= found.p05
    assert found.p95 <= draws.max() + slack


@given(DRAWS, st.floats(-1e3, 1e3))
def test_a_shift_of_all_draws_shifts_the_figure(draws, shift):
    assert figure(draws + shift, TOLD).value == pytest.approx(
        figure(draws, TOLD).value + shift, abs=1e-6
    )


def test_provenance_is_carried_over():
    found = figure(np.array([50.0, 52.0, 54.0]), TOLD)
    assert (found.unit, found.relation, found.source) == ("HRC", "a relation", "a source")
    assert found.validity == ("C outside",)


def test_a_quantity_that_does_not_exist_has_no_range():
    found = figure(np.array([50.0, np.nan]), TOLD)
    assert np.isnan([found.value, found.p05, found.p95]).all()


@given(DRAWS)
def test_the_quick_median_is_the_upper_middle_value(draws):
    assert median(draws) == np.sort(draws)[len(draws) // 2]
    assert np.isnan(median(np.append(draws, np.nan)))
