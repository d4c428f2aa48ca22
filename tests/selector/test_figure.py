import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from selector.figure import Provenance, column_medians, figure, median, quantiles

PROVENANCE = Provenance("HRC", "a relation", "a source", {"steel": "C45"}, ("C outside",))
DRAWS = arrays(float, st.integers(1, 60), elements=st.floats(-1e6, 1e6))


@given(DRAWS)
def test_range_holds_the_median_and_lies_within_the_sample(sample):
    computed = figure(sample, PROVENANCE)
    slack = 1e-9 * (1 + abs(sample).max())
    assert computed.p05 <= computed.value + slack
    assert computed.value <= computed.p95 + slack
    assert sample.min() - slack <= computed.p05
    assert computed.p95 <= sample.max() + slack


@given(DRAWS, st.floats(-1e3, 1e3))
def test_a_shift_of_the_sample_shifts_the_figure(sample, shift):
    assert figure(sample + shift, PROVENANCE).value == pytest.approx(
        figure(sample, PROVENANCE).value + shift, abs=1e-6
    )


def test_provenance_is_carried_over():
    computed = figure(np.array([50.0, 52.0, 54.0]), PROVENANCE)
    assert (computed.unit, computed.relation, computed.source) == (
        "HRC",
        "a relation",
        "a source",
    )
    assert computed.validity == ("C outside",)


def test_a_quantity_that_does_not_exist_has_no_range():
    computed = figure(np.array([50.0, np.nan]), PROVENANCE)
    assert np.isnan([computed.value, computed.p05, computed.p95]).all()


@given(DRAWS)
def test_the_quick_median_is_the_upper_middle_value(sample):
    assert median(sample) == np.sort(sample)[len(sample) // 2]
    assert np.isnan(median(np.append(sample, np.nan)))


@pytest.mark.parametrize("count", [1, 2, 5, 512])
def test_quantiles_and_medians_are_those_of_the_library(count):
    sample = np.random.default_rng(count).normal(size=(count, 3))
    shares = (0.0, 0.05, 0.5, 0.9, 1.0)
    assert quantiles(sample[:, 0], *shares) == pytest.approx(np.quantile(sample[:, 0], shares))
    assert column_medians(sample).tolist() == np.median(sample, axis=0).tolist()


def test_what_holds_an_unknown_value_has_no_quantile_and_no_median():
    sample = np.array([[1.0, np.nan], [2.0, 0.0], [3.0, 0.0]])
    assert np.isnan(quantiles(sample[:, 1], 0.5, 0.9)).all()
    assert np.isnan(column_medians(sample)).tolist() == [False, True]
