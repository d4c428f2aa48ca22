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
    computed = figure(draws, TOLD)
    slack = 1e-9 * (1 + abs(draws).max())
    assert computed.p05 <= computed.value + slack
    assert computed.value <= computed.p95 + slack
    assert draws.min() - slack <= computed.p05
    assert computed.p95 <= draws.max() + slack


@given(DRAWS, st.floats(-1e3, 1e3))
def test_a_shift_of_all_draws_shifts_the_figure(draws, shift):
    assert figure(draws + shift, TOLD).value == pytest.approx(
        figure(draws, TOLD).value + shift, abs=1e-6
    )


def test_provenance_is_carried_over():
    computed = figure(np.array([50.0, 52.0, 54.0]), TOLD)
    assert (computed.unit, computed.relation, computed.source) == (
        "HRC",
        "a relation",
        "a source",
    )
    assert computed.validity == ("C outside",)


def test_a_quantity_that_does_not_exist_has_no_range():
    computed = figure(np.array([50.0, np.nan]), TOLD)
    assert np.isnan([computed.value, computed.p05, computed.p95]).all()


@given(DRAWS)
def test_the_quick_median_is_the_upper_middle_value(draws):
    assert median(draws) == np.sort(draws)[len(draws) // 2]
    assert np.isnan(median(np.append(draws, np.nan)))
