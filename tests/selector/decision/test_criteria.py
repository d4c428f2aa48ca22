import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.decision.criteria import Range, merits, range_table
from selector.requirement.priority import CRITERIA

TABLE = range_table(200.0, 50.0, 10.0)
ROWS = pytest.mark.parametrize("row", TABLE, ids=[row.criterion for row in TABLE])


def test_one_row_a_criterion_in_their_order():
    assert tuple(row.criterion for row in TABLE) == CRITERIA


@ROWS
def test_a_row_says_what_it_is_and_where_its_ends_come_from(row):
    assert row.words
    assert row.unit
    assert row.basis
    assert row.ideal != row.worst
    if row.scale == "log":
        assert min(row.ideal, row.worst) > 0


@ROWS
def test_merit_is_one_at_the_ideal_and_nil_at_the_worst(row):
    assert row.merit(row.ideal) == pytest.approx(1)
    assert row.merit(row.worst) == pytest.approx(0)


@ROWS
@given(share=st.floats(0, 1), more=st.floats(0, 1))
def test_nearer_the_ideal_is_never_worse(row, share, more):
    def value(s):
        return row.worst + s * (row.ideal - row.worst)

    low, high = sorted((share, more))
    assert 0 <= row.merit(value(low)) <= row.merit(value(high)) + 1e-12 <= 1 + 2e-12


@ROWS
def test_beyond_either_end_is_clipped(row):
    span = row.ideal - row.worst
    assert row.merit(row.ideal + 3 * span) == 1
    assert row.merit(row.worst - 3 * span) == 0
    assert row.merit(0.0) in {0.0, 1.0} or row.scale == "linear"


def test_a_log_row_counts_factors_alike():
    row = Range("cost", "", "", 10.0, 160.0, "log", "")
    np.testing.assert_allclose(row.merit([10, 20, 40, 80, 160]), [1, 0.75, 0.5, 0.25, 0])


def cost_of(table):
    return table[CRITERIA.index("cost")]


@given(st.floats(1, 1e6), st.floats(1, 1e6))
def test_a_budget_takes_the_place_of_the_reference(budget, reference):
    stated = cost_of(range_table(budget, reference, None))
    assert stated == cost_of(range_table(budget, reference + 1, None))
    assert stated.ideal < budget < stated.worst
    unstated = cost_of(range_table(None, reference, None))
    assert unstated.ideal < reference < unstated.worst


@pytest.mark.parametrize("days", [None, 0.0, 0.5, 1.0, 2.0, 40.0])
def test_days_have_room_between_ideal_and_worst(days):
    row = range_table(100.0, 100.0, days)[CRITERIA.index("days")]
    assert row.ideal < row.worst
    if days and days > row.ideal:
        assert row.worst == max(days, 2.0)


def test_a_wanted_life_stands_for_the_window():
    window, life = (range_table(100.0, 100.0, None, by_life=by)[0] for by in (False, True))
    assert (window.unit, life.unit) == ("HRC", "-")
    assert life.merit(1.0) == 1
    assert life.merit(0.25) == 0
    np.testing.assert_allclose(life.merit(0.5), 0.5)


@given(st.floats(1, 1e4), st.booleans())
def test_the_whole_table_is_read_as_row_by_row(reference, by_life):
    table = range_table(None, reference, None, by_life=by_life)
    values = np.geomspace(0.01, 1e4, 7 * len(table)).reshape(7, len(table))
    rows = [row.merit(values[:, k]) for k, row in enumerate(table)]
    np.testing.assert_array_equal(merits(table, values), np.stack(rows, axis=1))
