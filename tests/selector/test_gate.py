import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.gate import BREAKING, FUNCTIONAL, Gate, judged, looked_at, worst

VERDICTS = ("pass", "marginal", "unknown", "fail")


def met(share, count=200):
    return np.arange(count) < round(share * count)


@pytest.mark.parametrize(
    ("share", "functional", "breaking"),
    [
        (1.0, "pass", "pass"),
        (0.95, "pass", "pass"),
        (0.945, "pass", "marginal"),
        (0.90, "pass", "marginal"),
        (0.895, "marginal", "marginal"),
        (0.80, "marginal", "marginal"),
        (0.795, "marginal", "fail"),
        (0.50, "marginal", "fail"),
        (0.495, "fail", "fail"),
        (0.0, "fail", "fail"),
    ],
)
def test_the_share_of_draws_decides(share, functional, breaking):
    assert judged("depth", met(share), "", FUNCTIONAL).verdict == functional
    assert judged("snap", met(share), "", BREAKING).verdict == breaking
    assert judged("depth", met(share), "").share == pytest.approx(share)


@given(st.floats(0, 1), st.floats(0, 1))
def test_more_draws_that_meet_it_never_judge_worse(first, second):
    low, high = sorted((first, second))
    for limits in (FUNCTIONAL, BREAKING):
        worse, better = (
            judged("snap", met(share), "", limits).verdict for share in (low, high)
        )
        assert VERDICTS.index(better) <= VERDICTS.index(worse)


@given(st.lists(st.sampled_from(VERDICTS), max_size=6))
def test_the_worst_verdict_decides_in_any_order(verdicts):
    gates = [Gate("depth", verdict, "") for verdict in verdicts]
    computed = worst(gates)
    assert computed == worst(reversed(gates))
    assert computed == max(verdicts, key=VERDICTS.index, default="pass")


def test_what_was_predicted_was_looked_at_further_than_what_shop_or_steel_bars():
    names = ("response", "near", "equipment", "stock", "hard_enough", "budget")
    order = [looked_at(Gate(name, "fail", "")) for name in names]
    assert order == [0, 0, 1, 1, 2, 2]
