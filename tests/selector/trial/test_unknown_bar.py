import pytest

from selector.trial.unknown_bar import carbon_wt_pct, needs_trial, trial_steps, unknown_plan
from tests.once import advised


def of(*bars):
    stock = {"workshop.stock": [{"steel": name} for name in bars]}
    return advised(stock, "42crmo4", "unknown", "c105u", "100mncrw4").job


def test_a_known_bar_needs_no_trial(advice):
    assert not needs_trial(advice.job)
    assert trial_steps(advice.job) == ()
    assert trial_steps(of("42CrMo4")) == ()


@pytest.mark.parametrize("bar", ["unknown", "drill rod"])
def test_an_unknown_or_unclear_bar_needs_one(bar):
    job = of(bar)
    assert needs_trial(job)
    steps = trial_steps(job)
    assert len(steps) >= 5
    assert all(step.endswith((".", "it.")) for step in steps)


def test_it_asks_before_it_heats_and_tests_before_the_part():
    text = " ".join(trial_steps(of("unknown")))
    assert text.index("certificate") < text.index("magnet") < text.index("file on it")
    assert text.index("snap the coupon") < text.index("Only then treat the part")


def test_its_plan_has_coupons_and_a_test_but_forecasts_nothing():
    plan = unknown_plan(of("unknown"))
    assert [coupon.number for coupon in plan.coupons] == [1, 2, 3]
    assert {coupon.size_mm for coupon in plan.coupons} == {25.0}
    assert (plan.forecast, plan.cost, plan.option) == (None, None, None)
    assert plan.readings[0].go_low == 55.0


def test_the_coupon_is_quenched_in_the_oil_of_the_workshop():
    bath = [{"medium": "vegetable-oil"}]
    shop = {"workshop.stock": [{"steel": "unknown"}], "workshop.bath": bath}
    job = advised(shop, "42crmo4", "unknown").job
    assert "quench in vegetable oil" in " ".join(trial_steps(job))
    assert unknown_plan(job).coupons[0].note == "quenched in vegetable oil"


def test_an_unclear_bar_is_named_with_all_that_it_may_be():
    assert "may be any of" in unknown_plan(of("drill rod")).why


def test_carbon_is_read_off_the_hardness_of_martensite():
    # Hodge and Orehoski 1946, 95 % martensite: 0.22 % C 41.9, 0.40 % C 52.4, 0.60 % C 60.0 HRC.
    assert carbon_wt_pct(41.9) == pytest.approx(0.22, abs=0.01)
    assert carbon_wt_pct(52.4) == pytest.approx(0.40, abs=0.01)
    assert carbon_wt_pct(60.0) == pytest.approx(0.60, abs=0.01)
