import pytest

from selector.advice.coupon import coupon_plan, needs_coupon
from tests.once import advised


def of(*bars):
    stock = {"workshop.stock": [{"steel": name} for name in bars]}
    return advised(stock, "42crmo4", "unknown", "c105u", "100mncrw4")


def test_a_known_bar_needs_no_coupon(advice):
    assert not needs_coupon(advice)
    assert coupon_plan(advice) == ()
    assert coupon_plan(of("42CrMo4")) == ()


@pytest.mark.parametrize("bar", ["unknown", "drill rod"])
def test_an_unknown_or_unclear_bar_needs_one(bar):
    answer = of(bar)
    assert needs_coupon(answer)
    plan = coupon_plan(answer)
    assert len(plan) >= 5
    assert all(step.endswith((".", "it.")) for step in plan)


def test_it_asks_before_it_heats_and_tests_before_the_part():
    text = " ".join(coupon_plan(of("unknown")))
    assert text.index("certificate") < text.index("magnet") < text.index("file on it")
    assert text.index("snap the coupon") < text.index("Only then treat the part")
