"""Why a way is proposed that is not the cheapest, in words that its own figures carry."""

from types import SimpleNamespace

import pytest

from selector.handover.letter.difference import difference
from selector.handover.letter.record import Way


def way(price, right, hrc=58.0, **merits):
    """Return a way with as much of its record as the sentences read."""
    spread = SimpleNamespace(p50=price)
    option = SimpleNamespace(
        id=f"{price}",
        cost=SimpleNamespace(spread=spread, currency="EUR"),
        passing_all=right,
        hardness=SimpleNamespace(surface=SimpleNamespace(p50=hrc)),
        criteria={name: SimpleNamespace(merit=m) for name, m in merits.items()},
        failing=SimpleNamespace(p95=None),
        gates=(),
    )
    return Way.model_construct(kind="proposed", option=option)


ADVICE = SimpleNamespace(
    toss_up=False, options=(), barred=(),
    ranges=(SimpleNamespace(criterion="movement", weight=0.1),
            SimpleNamespace(criterion="days", weight=0.1)),
)  # fmt: skip


def said(first, other):
    return " ".join(difference((first, other), ADVICE, life=False))


def test_what_comes_out_right_more_often_is_worth_its_price():
    text = said(way(97, 0.97), way(78, 0.67))
    assert "97 EUR against 78 EUR" in text
    assert "97 times in 100 instead of 67 times in 100" in text


@pytest.mark.parametrize("right", [0.96, 0.98, 0.999])
def test_chances_a_little_apart_are_both_given(right):
    text = said(way(142, 0.98, movement=0.9), way(101, right, movement=0.2))
    assert ("as often" in text) == (right == 0.98)
    if right == 0.96:
        assert "98 times in 100, the cheapest 96 times in 100" in text
    assert "because it moves less in the heat" in text


def test_where_nothing_else_speaks_for_it_the_customer_is_told():
    text = said(way(142, 0.98, movement=0.5, days=0.5), way(101, 0.98, movement=0.5, days=0.5))
    assert "say so if you would rather have it" in text
    better = said(way(142, 0.9, days=0.9), way(101, 0.98, days=0.1))
    assert "The cheapest comes out right more often: 98 times in 100." in better
    assert "because it is ready sooner" in better
